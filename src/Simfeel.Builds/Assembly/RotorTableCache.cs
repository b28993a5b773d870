using Simfeel.Physics.Air;
using Simfeel.Physics.Rotors;

namespace Simfeel.Builds.Assembly;

/// <summary>
/// Rotor tables by propeller and air, kept because one takes far longer to compute than anything else here. Safe for
/// threads: the same table asked for twice at once is computed once. The oldest go first when there are too many. Behind
/// it stands a <see cref="RotorTableStore"/> that outlives the process.
/// </summary>
internal static class RotorTableCache
{
    // A table takes about 5 MB.
    private const int Capacity = 64;

    private static readonly Lock Gate = new();
    private static readonly Dictionary<(PropellerBlades, AirState), Lazy<RotorTable>> Tables = [];
    private static readonly Queue<(PropellerBlades, AirState)> Age = [];

    /// <summary>The table of a propeller.</summary>
    public static RotorTable Get(PropellerBlades blades, AirState air)
    {
        // what stations replace must not make two tables of one shape
        if (blades.Stations is not null) blades = blades with { Pitch = 0, ChordScale = 1 };
        if (blades.ThrustFactor != 1 || blades.TorqueFactor != 1)
            return Get(blades with { ThrustFactor = 1, TorqueFactor = 1 }, air).Scaled(blades.ThrustFactor, blades.TorqueFactor);
        Lazy<RotorTable> table;
        lock (Gate)
        {
            if (!Tables.TryGetValue((blades, air), out table!))
            {
                if (Age.Count == Capacity) Tables.Remove(Age.Dequeue());
                table = new(() => Compute(blades.Geometry(), air, RotorTableStore.Default));
                Tables.Add((blades, air), table);
                Age.Enqueue((blades, air));
            }
        }
        return table.Value;
    }

    /// <summary>The table out of a store, else computed and stored.</summary>
    internal static RotorTable Compute(RotorGeometry geometry, AirState air, RotorTableStore? store)
    {
        byte[]? key = store is null ? null : RotorTableKey.Of(geometry, air);
        if (key is null) return RotorTableBuilder.Build(geometry, air);
        if (store!.Load(key) is RotorTable stored) return stored;
        RotorTable table = RotorTableBuilder.Build(geometry, air);
        store.Save(key, table);
        return table;
    }
}
