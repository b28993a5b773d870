using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Physics.Lanes;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Tests.Metrics;

/// <summary>A flight for the sake of one metric works out the loads only from the time on that the metric states.</summary>
public class LoadsFromTests
{
    public static TheoryData<string> Late => [.. MetricCatalogue.All.Where(metric => metric.LoadsFrom > 0).Select(metric => metric.Name)];

    [Theory]
    [MemberData(nameof(Late))]
    public void A_metric_reads_no_loads_before_the_time_it_states(string name)
    {
        Metric metric = MetricCatalogue.All.Single(one => one.Name == name);
        FlightLog full = Fly(0), lean = Fly(metric.LoadsFrom);
        // rows without loads read as zeros, which no rotor in flight has
        Assert.Equal(0, lean.Samples[0].Thrust[0]);
        Assert.NotEqual(0, full.Samples[0].Thrust[0]);
        Assert.Equal(full.Hash(), lean.Hash());
        Assert.Equal(metric.Read(full), metric.Read(lean));
        Assert.Equal(ControlEffort.Of(full), ControlEffort.Of(lean));

        FlightLog Fly(double loadsFrom) => DrillRunner.FlyLanes<Lane1>(
            metric.Drill, [Starters.Get("wagtail")], Starters.Profile, loadsFrom: loadsFrom)[0];
    }

    /// <summary>The virtual pilot goes by accelerations, whether a log keeps them or not.</summary>
    [Fact]
    public void Drills_with_a_pilot_fly_alike_without_recorded_loads()
    {
        Assert.All(CourseDrills.All, drill => Assert.True(drill.FeelsLoads));
        Assert.Equal(Fly(0).Hash(), Fly(double.PositiveInfinity).Hash());

        static FlightLog Fly(double loadsFrom) =>
            DrillRunner.FlyLanes<Lane1>(CourseDrills.Brake, [Starters.Get("wagtail")], Starters.Profile, loadsFrom: loadsFrom)[0];
    }
}
