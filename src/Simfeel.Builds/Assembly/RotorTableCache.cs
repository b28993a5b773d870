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

    /// <summary>Scaled tables beyond which those that nobody flies any more are forgotten.</summary>
    private const int ScaledCapacity = 256;

    private static readonly Lock Gate = new();
    private static readonly Dictionary<(PropellerBlades, AirState), Lazy<RotorTable>> Tables = [];
    private static readonly Dictionary<(PropellerBlades, AirState), WeakReference<RotorTable>> ScaledTables = [];
    private static readonly Queue<(PropellerBlades, AirState)> Age = [];

    /// <summary>The table of a propeller.</summary>
    public static RotorTable Get(PropellerBlades blades, AirState air)
    {
        // what stations replace must not make two tables of one shape
        if (blades.Stations is not null) blades = blades with { Pitch = 0, ChordScale = 1 };
        if (blades.ThrustFactor != 1 || blades.TorqueFactor != 1) return Scaled(blades, air);
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

    /// <summary>
    /// Thrust and the hub moment go with the lift of the blades, torque and in-plane drag with their drag. The table lives as long as
    /// somebody flies it: a build that is drawn a hundred times shares a few of them, and they must not push out the rest.
    /// </summary>
    private static RotorTable Scaled(PropellerBlades blades, AirState air)
    {
        RotorTable table = Get(blades with { ThrustFactor = 1, TorqueFactor = 1 }, air);
        lock (Gate)
        {
            if (ScaledTables.TryGetValue((blades, air), out WeakReference<RotorTable>? kept) && kept.TryGetTarget(out RotorTable? alive)) return alive;
        }
        RotorTable scaled = table.Scaled([blades.ThrustFactor, blades.TorqueFactor, blades.TorqueFactor, blades.ThrustFactor]);
        lock (Gate)
        {
            if (ScaledTables.Count > ScaledCapacity)
            {
                foreach ((PropellerBlades, AirState) dead in ScaledTables.Where(pair => !pair.Value.TryGetTarget(out _)).Select(pair => pair.Key).ToArray())
                    ScaledTables.Remove(dead);
            }
            ScaledTables[(blades, air)] = new(scaled);
        }
        return scaled;
    }
}
