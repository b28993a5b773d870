using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Physics;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Tests.Metrics;

public class ControlEffortTests
{
    /// <summary>Root mean square of a sine of amplitude 0.1 is 0.1 / sqrt 2; two of four rotors that move: half the squares.</summary>
    [Theory]
    [InlineData(4)]
    [InlineData(2)]
    public void Movement_is_root_mean_square_about_each_mean(int moving)
    {
        ControlEffort effort = ControlEffort.Of(Log((t, k) => 0.4 + (0.05 * k) + (k < moving ? 0.1 * Math.Sin(2 * Math.PI * 5 * t) : 0)));
        Assert.Equal(0.1 / Math.Sqrt(2) * Math.Sqrt(moving / 4.0), effort.DutyMovement, 4);
        Assert.Equal(0, effort.SaturatedShare);
    }

    /// <summary>A quarter of the time one rotor at full duty, another quarter another at idle.</summary>
    [Fact]
    public void Saturation_counts_the_time_that_any_rotor_has_no_more_to_give()
    {
        double idle = Starters.Get("wagtail").Map.Duty(Starters.Get("wagtail").IdleShare);
        ControlEffort effort = ControlEffort.Of(Log((t, k) => (t - Drill.LeadIn, k) switch
        {
            ( >= 0 and < 0.25, 0) => 1,
            ( >= 0.5 and < 0.75, 3) => idle,
            _ => 0.5,
        }));
        Assert.Equal(0.5, effort.SaturatedShare, 0.003);
    }

    [Fact]
    public void A_full_throttle_climb_is_saturated_and_a_hover_is_not()
    {
        Assert.InRange(ControlEffort.Of(DrillRunner.Fly(DrillCatalogue.Punch, Starters.Get("wagtail"), Starters.Profile)).SaturatedShare, 0.9, 1);
        ControlEffort hover = ControlEffort.Of(DrillRunner.Fly(DrillCatalogue.Hover, Starters.Get("wagtail"), Starters.Profile));
        Assert.Equal(0, hover.SaturatedShare);
        Assert.InRange(hover.DutyMovement, 0, 0.01);
    }

    private static FlightLog Log(Func<double, int, double> duty)
    {
        FlightLog log = SyntheticLog.Of(Drill.LeadIn + 1);
        Sample[] samples = [.. log.Samples.Select(row => row.ToSample())];
        for (int row = 0; row < samples.Length; row++)
        {
            for (int k = 0; k < 4; k++) samples[row].Duty[k] = duty(row * log.Period, k);
        }
        return new() { Drill = log.Drill, Unit = log.Unit, Profile = log.Profile, Field = log.Field, Effort = 1, Samples = LogRows.Of(samples, log.Samples.RotorCount), Sticks = log.Sticks };
    }
}
