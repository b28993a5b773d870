using System.Globalization;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Text;
using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Physics;
using Simfeel.Physics.Kernel;
using Simfeel.Studies.Metrics;

namespace Simfeel.CommandLine.Determinism;

/// <summary>
/// The bits of everything the determinism contract speaks of, as text that two machines can compare with <c>diff</c>: one line for
/// each library function, rotor table, set of gains, moment of a flight and metric, in an order from causes to effects, so that
/// the first line that differs tells where two machines part. Nothing in it names a user, a place or a time.
/// </summary>
internal static class BitLog
{
    /// <summary>First line of every log.</summary>
    public const string Title = "# Simfeel bit-log 1: name, then bits of doubles in hexadecimal. Lines that begin with machine may differ.";

    /// <summary>Moments of a flight that are written, as shares of its duration.</summary>
    private static readonly double[] Moments = [0.125, 0.25, 0.5, 1];

    private static readonly (string Name, Func<double, double> Of, double At)[] Library =
    [
        ("sin", Math.Sin, 0.7), ("cos", Math.Cos, 0.7), ("tan", Math.Tan, 0.7), ("asin", Math.Asin, 0.7), ("acos", Math.Acos, 0.7),
        ("atan2", y => Math.Atan2(y, 1.3), 0.7), ("exp", Math.Exp, 0.7), ("log", Math.Log, 0.7), ("pow", x => Math.Pow(x, 1.7), 0.7),
        ("cbrt", Math.Cbrt, 0.7), ("atan", Math.Atan, 0.7), ("log2", Math.Log2, 0.7), ("log10", Math.Log10, 0.7),
    ];

    /// <summary>Names of the numbers of a line of a flight, after its hash.</summary>
    public static IReadOnlyList<string> StateNames { get; } =
    [
        "position north", "position east", "position down", "velocity north", "velocity east", "velocity down",
        "attitude w", "attitude x", "attitude y", "attitude z", "roll rate", "pitch rate", "yaw rate", "charge", "pair voltage",
        .. Enumerable.Range(1, 4).Select(rotor => $"speed of rotor {rotor}"), .. Enumerable.Range(1, 4).Select(rotor => $"induced velocity of rotor {rotor}"),
    ];

    /// <summary>Names of the gains in a line of gains.</summary>
    public static IReadOnlyList<string> GainNames { get; } =
        [.. ((string[])["roll", "pitch", "yaw"]).SelectMany(axis => ((string[])["proportional", "integral", "derivative", "feed-forward"]).Select(gain => $"{gain} gain of {axis}"))];

    /// <summary>The whole log.</summary>
    public static string Write()
    {
        StringBuilder text = new();
        text.Append(Title).Append('\n');
        Line(text, ["machine", "runtime", RuntimeInformation.FrameworkDescription.Replace(' ', '-')]);
        Line(text, ["machine", "system", RuntimeInformation.RuntimeIdentifier]);
        Line(text, ["machine", "vectors", Vector512.IsHardwareAccelerated ? "512" : Vector256.IsHardwareAccelerated ? "256" : "128"]);
        foreach ((string name, Func<double, double> of, double at) in Library) Line(text, ["library", name], of(at));
        ContractFlights flights = ContractFlights.Load();
        for (int n = 0; n < flights.Builds.Count; n++)
        {
            Craft craft = flights.Builds[n].Unit.Unit.Craft;
            Line(text, ["mass", ContractFlights.BuildNames[n]], craft.Mass, craft.I_BBcm_B.M00, craft.I_BBcm_B.M11, craft.I_BBcm_B.M22, craft.I_BBcm_B.M02);
            Line(text, ["table", ContractFlights.BuildNames[n], ContractHashes.Text(ContractHashes.Table(craft))]);
            Line(text, ["gains", ContractFlights.BuildNames[n]], ContractHashes.GainsOf(flights.Builds[n].Unit));
        }
        foreach (ContractFlight flight in ContractFlights.All)
        {
            for (int n = 0; n < flights.Builds.Count; n++) Fly(text, flight, flights.Builds[n], ContractFlights.BuildNames[n], flights.Profile);
        }
        double[][] metrics = flights.Metrics;
        for (int m = 0; m < MetricCatalogue.All.Count; m++) Line(text, ["metric", MetricCatalogue.All[m].Name], [.. metrics.Select(build => build[m])]);
        foreach ((string name, string hash) in ContractHashes.Make(flights)) Line(text, ["hash", name, hash]);
        return text.ToString();
    }

    private static void Fly(StringBuilder text, ContractFlight flight, FlyableBuild build, string name, PilotProfile profile)
    {
        FlightLog log = DrillRunner.Fly(flight.Drill, build.Unit, profile, field: flight.Field);
        int rotors = build.Unit.Unit.Craft.Rotors.Count, row = 0, moment = 0;
        double[] block = new double[StateIndex.Stride];
        ulong hash = StateHash.Start;
        foreach (LogRow sample in log.Samples)
        {
            CraftState state = sample.State;
            hash = StateBlock.Mix(hash, state, rotors, true);
            if (row++ != (int)Math.Round(Moments[moment] * (log.Samples.Count - 1))) continue;
            moment++;
            StateBlock.Write(state, rotors, block);
            string time = log.TimeOf(row - 1).ToString("F3", CultureInfo.InvariantCulture);
            Line(text, ["flight", flight.Name, name, time, ContractHashes.Text(hash)], block.AsSpan(0, StateIndex.Used(rotors, true)));
            if (moment == Moments.Length) break;
        }
    }

    private static void Line(StringBuilder text, string[] words, params ReadOnlySpan<double> numbers)
    {
        text.AppendJoin(' ', words);
        foreach (double number in numbers) text.Append(' ').Append(ContractHashes.Text(BitConverter.DoubleToUInt64Bits(number)));
        text.Append('\n');
    }
}
