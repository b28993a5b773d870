using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Physics;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;

namespace Simfeel.CommandLine.Determinism;

/// <summary>
/// Hashes of what the determinism contract promises: rotor tables, gains, the states of all flights in every lane width, on one
/// and two threads and in another order, a session and its replay, and the numbers of studies.
/// </summary>
internal static class ContractHashes
{
    /// <summary>Start of the names of hashes that must all be the same.</summary>
    public const string FlightsPrefix = "flights_";

    /// <summary>The hashes by name, in sixteen hexadecimal digits; <see cref="All"/> last.</summary>
    /// <param name="flights">What is flown.</param>
    /// <param name="brief">
    /// One craft at a time on one thread only, without studies and <see cref="All"/>: where vectors are emulated the rest takes
    /// minutes.
    /// </param>
    public static Dictionary<string, string> Make(ContractFlights flights, bool brief = false)
    {
        (ulong live, ulong replayed) = SessionProof.Fly(flights);
        Dictionary<string, ulong> hashes = new()
        {
            ["rotor_tables"] = Join(flights.Builds.Select(build => Table(build.Unit.Unit.Craft))),
            ["gains"] = Join(flights.Units.Select(unit => Join(GainsOf(unit).Select(Bits)))),
            [FlightsPrefix + "one_lane"] = Flights<Lane1>(flights, 1),
            ["session_live"] = live,
            ["session_replayed"] = replayed,
        };
        if (!brief)
        {
            hashes[FlightsPrefix + "four_lanes"] = Flights<Lane4>(flights, 1);
            hashes[FlightsPrefix + "eight_lanes"] = Flights<Lane8>(flights, 1);
            hashes[FlightsPrefix + "one_lane_two_threads"] = Flights<Lane1>(flights, 2);
            hashes[FlightsPrefix + "eight_lanes_two_threads"] = Flights<Lane8>(flights, 2);
            hashes[FlightsPrefix + "in_reversed_order"] = Flights<Lane8>(flights, 1, reversed: true);
            hashes["metrics"] = Join(flights.Metrics.SelectMany(numbers => numbers).Select(Bits));
            hashes["metrics_in_single_precision"] = Join(flights.MetricsInSinglePrecision().SelectMany(numbers => numbers).Select(Bits));
            hashes[All] = Join([.. hashes.Values]);
        }
        return hashes.ToDictionary(hash => hash.Key, hash => Text(hash.Value));
    }

    /// <summary>Name of the hash over all others.</summary>
    public const string All = "all";

    /// <summary>Whether all ways to fly gave the same, the replay included.</summary>
    public static bool Agree(IReadOnlyDictionary<string, string> hashes) =>
        hashes.Where(hash => hash.Key.StartsWith(FlightsPrefix, StringComparison.Ordinal)).Select(hash => hash.Value).Distinct().Count() == 1
        && hashes["session_live"] == hashes["session_replayed"];

    /// <summary>Hash of a craft's rotor table.</summary>
    public static ulong Table(Craft craft)
    {
        ulong hash = StateHash.Start;
        foreach (double number in craft.Rotors[0].Table.Nodes) hash = StateHash.Mix(hash, number);
        return hash;
    }

    /// <summary>Every gain of the three axes.</summary>
    public static double[] GainsOf(TunedUnit unit) =>
        [.. Enumerable.Range(0, 3).Select(axis => unit.Gains[axis]).SelectMany(axis => (double[])[axis.Proportional, axis.Integral, axis.Derivative, axis.FeedForward])];

    /// <summary>A hash as text.</summary>
    public static string Text(ulong hash) => hash.ToString("x16");

    private static ulong Flights<T>(ContractFlights flights, int threads, bool reversed = false)
        where T : unmanaged, ILane<T>
    {
        int count = ContractFlights.All.Count;
        TunedUnit[] units = flights.Units;
        if (reversed) Array.Reverse(units);
        ulong[][] hashes = new ulong[count][];
        Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = threads }, n => Fly(reversed ? count - 1 - n : n));
        return Join(hashes.SelectMany(flight => reversed ? flight.Reverse() : flight));

        void Fly(int n)
        {
            ContractFlight flight = ContractFlights.All[n];
            hashes[n] = T.Width >= units.Length
                ? [.. DrillRunner.FlyLanes<T>(flight.Drill, units, flights.Profile, field: flight.Field).Select(log => log.Hash())]
                : [.. units.Select(unit => DrillRunner.Fly(flight.Drill, unit, flights.Profile, field: flight.Field).Hash())];
        }
    }

    private static ulong Bits(double number) => BitConverter.DoubleToUInt64Bits(number);

    private static ulong Join(IEnumerable<ulong> hashes) =>
        hashes.Aggregate(StateHash.Start, (all, hash) => StateHash.Mix(all, BitConverter.UInt64BitsToDouble(hash)));
}
