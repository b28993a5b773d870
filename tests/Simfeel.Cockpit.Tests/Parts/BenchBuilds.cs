using Simfeel.Builds;
using Simfeel.Cockpit.Loading;
using Simfeel.Flight;
using Simfeel.Physics.Air;

namespace Simfeel.Cockpit.Tests.Parts;

/// <summary>Builds for the bench.</summary>
internal static class BenchBuilds
{
    public static AirState Air { get; } = StandardAtmosphere.At(0);

    public static PilotProfile Profile { get; } = new();

    public static FlyableBuild Starter(string name) => Good(BuildLoader.Load(name, BuildShelf.Starters, Air, Profile));

    public static FlyableBuild Of(string text) => Good(FlyableBuild.Of(new(text, null, null), "test", [], Air, Profile));

    public static FlyableBuild Good(FlyableResult result)
    {
        Assert.True(result.Build is not null, result.Message);
        return result.Build;
    }
}
