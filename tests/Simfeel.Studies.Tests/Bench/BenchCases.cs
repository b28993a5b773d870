using System.Collections.Concurrent;
using Simfeel.Builds;
using Simfeel.Flight.Tests;
using Simfeel.Studies.Bench;
using Simfeel.Studies.Bench.Reading;

namespace Simfeel.Studies.Tests.Bench;

/// <summary>Builds and readings for the tests of the bench.</summary>
internal static class BenchCases
{
    private static readonly ConcurrentDictionary<string, AssembledBuild> Known = new();

    public static AssembledBuild Wagtail => Starter("wagtail");

    public static AssembledBuild Starter(string name) => Known.GetOrAdd(name, _ => Assemble(TextOf(name)));

    public static string TextOf(string name) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "builds", name + ".toml"));

    public static AssembledBuild Assemble(string text)
    {
        BuildResult result = BuildReader.Parse(text, "build.toml");
        Assert.NotNull(result.Build);
        return BuildAssembler.Assemble(result.Build, Starters.Air);
    }

    /// <summary>Readings that must be without fault.</summary>
    public static BenchReadings Read(string text)
    {
        BenchResult result = BenchReader.Parse("format = 1\n" + text, "mine-bench.toml");
        Assert.Empty(result.Diagnostics);
        return result.Readings!;
    }

    public static BenchReport Report(string text, AssembledBuild? build = null) => BenchStudy.Run(build ?? Wagtail, Read(text));

    public static BenchQuantity Of(BenchReport report, BenchKind kind, BenchAxis axis) =>
        report.Quantities.Single(quantity => quantity.Kind == kind && quantity.Axis == axis);
}
