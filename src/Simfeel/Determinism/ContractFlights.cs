using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Physics.Air;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Metrics;

namespace Simfeel.CommandLine.Determinism;

/// <summary>
/// What the determinism contract is proved on: every drill, experiments of the lessons and a fall onto the ground, with four
/// starter builds from 65 mm to 10 inch.
/// </summary>
internal sealed class ContractFlights
{
    /// <summary>Height over flat ground from which <see cref="Fall"/> begins, m: it ends lying there.</summary>
    private const double FallHeight = 3;

    private static readonly string[] Names = ["sanderling", "wagtail", "curlew", "gannet"];

    /// <summary>The builds, tuned by the policy "matched" in sea-level air.</summary>
    public required IReadOnlyList<FlyableBuild> Builds { get; init; }

    /// <summary>The same as craft that fly.</summary>
    public TunedUnit[] Units => [.. Builds.Select(build => build.Unit)];

    /// <summary>Every metric of every build, by build, then by metric; flown when first asked for.</summary>
    public double[][] Metrics => field ??= Read(Precision.Double);

    /// <summary>The same in single precision, flown at every call.</summary>
    public double[][] MetricsInSinglePrecision() => Read(Precision.Single);

    /// <summary>The pilot.</summary>
    public PilotProfile Profile { get; } = new();

    /// <summary>Names of the builds' files.</summary>
    public static IReadOnlyList<string> BuildNames => Names;

    /// <summary>Flights by name, in the order of reports.</summary>
    public static IReadOnlyList<ContractFlight> All { get; } =
    [
        .. DrillCatalogue.All.Select(drill => new ContractFlight(drill.Name, drill, new())),
        new("push", Experiments.Push(0, 0.2), new()),
        new("release", Experiments.Release(1, 0.5), new()),
        new("tumble", Experiments.Tumble(0, 20), new()),
        new("sink", Experiments.Sink(4, 4), new()),
        new("climb", Experiments.Climb(5), new()),
        new("level", Experiments.Level(5), new()),
        new(Fall, DrillCatalogue.Drop, new() { StartHeight = FallHeight }),
    ];

    private const string Fall = "fall";

    private double[][] Read(Precision precision) =>
        MetricFlights.Read(Units, MetricCatalogue.All, new(StandardAtmosphere.At(0), Profile, new()) { Precision = precision });

    /// <summary>Reads, assembles and tunes the builds.</summary>
    public static ContractFlights Load()
    {
        AirState air = StandardAtmosphere.At(0);
        PilotProfile profile = new();
        return new()
        {
            Builds =
            [
                .. Names.Select(name =>
                {
                    FlyableResult result = FlyableBuild.Read(BuildLibrary.PathOf(name), air, profile);
                    return result.Build ?? throw new UserError(result.Message, ExitCode.Environment);
                }),
            ],
        };
    }
}

/// <summary>One flight of the contract.</summary>
/// <param name="Name">Its name in reports.</param>
/// <param name="Drill">The drill.</param>
/// <param name="Field">Where it is flown.</param>
internal sealed record ContractFlight(string Name, Drill Drill, FieldConditions Field);
