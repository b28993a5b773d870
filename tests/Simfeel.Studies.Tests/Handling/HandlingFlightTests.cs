using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Studies.Handling;
using Xunit.Abstractions;

namespace Simfeel.Studies.Tests.Handling;

/// <summary>Handling flights of starter builds.</summary>
public class HandlingFlightTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData("wagtail", HandlingAxis.Roll)]
    [InlineData("curlew", HandlingAxis.Roll)]
    [InlineData("wagtail", HandlingAxis.Yaw)]
    [InlineData("curlew", HandlingAxis.Yaw)]
    public void Sweep_is_coherent_and_agrees_with_the_step(string name, HandlingAxis axis)
    {
        TunedUnit unit = Starters.Get(name);
        HandlingReading sweep = Swept(unit, axis);
        FlightLog stepLog = DrillRunner.Fly(StepIdentification.Step(axis), unit, Starters.Profile);
        BandwidthCriterion step = BandwidthCriterion.Of(StepIdentification.Stepped(stepLog, axis), ResponseType.Rate);
        output.WriteLine($"{name} {axis} sweep {sweep.Bandwidth}\n coherence {sweep.CoherenceFloor} saturated {sweep.Saturated} doubt '{sweep.Doubt}'");
        output.WriteLine($"step {step} saturated {HandlingFlight.Saturates(stepLog)}");
        Assert.Equal("", sweep.Doubt);
        Assert.InRange(sweep.CoherenceFloor, 0.95, 1);
        Assert.False(HandlingFlight.Saturates(stepLog));
        Assert.InRange(step.Bandwidth / sweep.Bandwidth.Bandwidth, 0.97, 1.03);
    }

    [Fact]
    public void A_craft_at_its_limits_is_told_and_its_metrics_are_not_read()
    {
        FlightLog log = DrillRunner.Fly(
            HandlingDrills.Chirp(HandlingAxis.Roll) with { NewScript = start => view => new(0.9 * Math.Sign(Math.Sin(20 * view.Time)), 0, 0, start.Hover) },
            Starters.Get("curlew"), Starters.Profile);
        Assert.True(HandlingFlight.Saturates(log));
        Assert.Contains("limits", HandlingReading.Of(log, HandlingAxis.Roll).Doubt, StringComparison.Ordinal);
        Assert.True(double.IsNaN(HandlingMetrics.All.Single(metric => metric.Name == "roll_bandwidth").Read(log)));
    }

    [Fact]
    public void Metrics_read_what_the_flights_are_read_for()
    {
        TunedUnit unit = Starters.Get("wagtail");
        HandlingReading roll = Swept(unit, HandlingAxis.Roll);
        FlightLog change = DrillRunner.Fly(HandlingDrills.AttitudeChange(HandlingAxis.Roll, Math.PI / 3, Starters.Profile), unit, Starters.Profile);
        Assert.Equal(roll.Bandwidth.Bandwidth, Read("roll_bandwidth"));
        Assert.Equal(roll.Bandwidth.PhaseDelay, Read("roll_phase_delay"));
        Assert.Equal(HandlingFlight.Quickness(change, HandlingAxis.Roll).Quickness, Read("roll_quickness"));

        double Read(string name)
        {
            Simfeel.Studies.Metrics.Metric metric = HandlingMetrics.All.Single(metric => metric.Name == name);
            return metric.Read(DrillRunner.Fly(metric.Drill, unit, Starters.Profile));
        }
    }

    private static HandlingReading Swept(TunedUnit unit, HandlingAxis axis) =>
        HandlingReading.Of(DrillRunner.Fly(HandlingDrills.Chirp(axis), unit, Starters.Profile), axis);
}
