using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Physics.Air;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;

namespace Simfeel.CommandLine;

/// <summary>
/// Hashes of the states of every scripted drill and of one over the ground on four starter builds: one hash for each lane width, and for one and two
/// threads. All must be the same, here and on any machine of the same platform class.
/// </summary>
internal static class DeterminismReport
{
    private static readonly string[] Builds = ["sanderling", "wagtail", "curlew", "gannet"];

    /// <summary>The hashes by name.</summary>
    public static Dictionary<string, object?> Make()
    {
        AirState air = StandardAtmosphere.At(0);
        PilotProfile profile = new();
        TunedUnit[] units = [.. Builds.Select(name => TunedUnit.Matched(FlightUnit.Of(BuildLibrary.Load(name, air)), air, profile))];
        return new()
        {
            ["one_lane"] = Hash<Lane1>(units, profile, 1),
            ["four_lanes"] = Hash<Lane4>(units, profile, 1),
            ["eight_lanes"] = Hash<Lane8>(units, profile, 1),
            ["one_lane_two_threads"] = Hash<Lane1>(units, profile, 2),
            ["eight_lanes_two_threads"] = Hash<Lane8>(units, profile, 2),
        };
    }

    private static string Hash<T>(TunedUnit[] units, PilotProfile profile, int threads)
        where T : unmanaged, ILane<T>
    {
        // one drill over the ground stands for all of them: they are long, and share the pilot
        IReadOnlyList<Drill> drills = [.. DrillCatalogue.Scripted, CourseDrills.Turn];
        ulong[][] hashes = new ulong[drills.Count][];
        Parallel.For(0, drills.Count, new ParallelOptions { MaxDegreeOfParallelism = threads }, n => hashes[n] = Fly(drills[n]));
        ulong all = StateHash.Start;
        foreach (ulong hash in hashes.SelectMany(drill => drill)) all = StateHash.Mix(all, BitConverter.UInt64BitsToDouble(hash));
        return all.ToString("x16");

        ulong[] Fly(Drill drill) =>
            T.Width >= units.Length
                ? [.. DrillRunner.FlyLanes<T>(drill, units, profile).Select(log => log.Hash())]
                : [.. units.Select(unit => DrillRunner.Fly(drill, unit, profile).Hash())];
    }
}
