using System.Collections.Concurrent;
using Simfeel.Builds;
using Simfeel.Physics.Air;

namespace Simfeel.Flight.Tests;

/// <summary>Starter builds, assembled and tuned once for all tests.</summary>
internal static class Starters
{
    private static readonly ConcurrentDictionary<string, Lazy<TunedUnit>> Tuned = new();

    public static AirState Air { get; } = StandardAtmosphere.At(0);

    public static PilotProfile Profile { get; } = new();

    /// <summary>Names of all starter builds.</summary>
    public static IReadOnlyList<string> Names { get; } =
        [.. Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "builds"), "*.toml").Select(path => Path.GetFileNameWithoutExtension(path)!).Order(StringComparer.Ordinal)];

    public static FlightUnit Unit(string name)
    {
        string path = Path.Combine(AppContext.BaseDirectory, "builds", name + ".toml");
        BuildResult result = BuildReader.Read(path);
        Assert.NotNull(result.Build);
        return FlightUnit.Of(BuildAssembler.Assemble(result.Build, Air));
    }

    public static TunedUnit Get(string name) =>
        Tuned.GetOrAdd(name, key => new(() => TunedUnit.Matched(Unit(key), Air, Profile))).Value;
}
