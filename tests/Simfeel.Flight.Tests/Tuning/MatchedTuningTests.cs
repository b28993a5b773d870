using System.Numerics;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tuning;

namespace Simfeel.Flight.Tests.Tuning;

public class MatchedTuningTests
{
    [Theory]
    [InlineData("wagtail")]
    [InlineData("curlew")]
    public void Loops_have_the_stated_margins(string name)
    {
        TunedUnit unit = Starters.Get(name);
        (AxisPlant rollPitch, AxisPlant yaw) = AxisPlant.Of(unit.Unit, unit.Hover, unit.Map, unit.Density);
        Check(unit, rollPitch, unit.RollPitch);
        Check(unit, yaw, unit.Yaw);
    }

    /// <summary>A build with more dead time is given less bandwidth, not less margin.</summary>
    [Fact]
    public void Delay_costs_bandwidth()
    {
        FlightUnit wagtail = Starters.Get("wagtail").Unit;
        TunedUnit slow = TunedUnit.Matched(wagtail with { CommandDelay = wagtail.CommandDelay + 0.004 }, Starters.Air, Starters.Profile);
        TunedUnit fast = Starters.Get("wagtail");
        Assert.True(slow.RollPitch.Crossover < 0.7 * fast.RollPitch.Crossover);
        Assert.Equal(fast.RollPitch.PhaseMargin, slow.RollPitch.PhaseMargin, 9);
    }

    /// <summary>
    /// Long delays leave too little gain margin at 60 degrees; the gains are then lower, both margins hold, and the craft flies.
    /// </summary>
    [Theory]
    [InlineData(0.010)]
    [InlineData(0.030)]
    [InlineData(0.050)]
    public void Long_delays_are_tuned_too(double delay)
    {
        TunedUnit unit = TunedUnit.Matched(
            Starters.Get("wagtail").Unit with { CommandDelay = delay }, Starters.Air, Starters.Profile);
        foreach (AxisTuning tuning in new[] { unit.RollPitch, unit.Yaw })
        {
            Assert.True(tuning.PhaseMargin >= MatchedTuning.PhaseMargin);
            Assert.True(tuning.GainMargin >= MatchedTuning.GainMargin);
        }
        FlightLog stop = DrillRunner.Fly(DrillCatalogue.Stop, unit, Starters.Profile);
        Assert.True(stop.Samples[^1].State.w_WB_B.Length < 2, $"{stop.Samples[^1].State.w_WB_B}");
    }

    /// <summary>
    /// The linear plant against the flight itself: a small step of wanted acceleration through mixer, motors and rotors
    /// settles at gain x step, and passes 63 % at the rotor's time constant after the dead time.
    /// </summary>
    [Fact]
    public void Plant_gain_and_lag_are_those_of_the_flight()
    {
        TunedUnit unit = Starters.Get("wagtail");
        (AxisPlant plant, _) = AxisPlant.Of(unit.Unit, unit.Hover, unit.Map, unit.Density);
        const double wanted = 20;
        PilotProfile profile = Starters.Profile;
        using FlightLoop<Simfeel.Physics.Lanes.Lane1> loop = new(4, profile, new());
        // open loop: only the feed-forward-free proportional path with a gain so small that the rate does not come back
        Simfeel.Flight.Control.AxisGains open = new(1e-6, 0, 0, 0);
        TunedUnit bare = unit with { RollPitch = unit.RollPitch with { Gains = open }, Yaw = unit.Yaw with { Gains = open } };
        loop.SetUnit(0, bare, unit.Hover.State);
        loop.SetCommand(0, new(wanted / 1e-6, 0, 0), unit.HoverShare);
        double settled = 0, rise = double.NaN;
        for (int tick = 0; tick < 0.12 * profile.StepRate; tick++)
        {
            loop.Batch.Evaluate();
            double acceleration = loop.Batch.GetSample(0).AngularAcceleration_B.X;
            if (double.IsNaN(rise) && acceleration > (1 - Math.Exp(-1)) * plant.Gain * wanted) rise = loop.Time;
            settled = Math.Max(settled, acceleration);
            loop.Tick();
        }
        Assert.Equal(plant.Gain * wanted, settled, 0.03 * wanted);
        Assert.Equal(plant.Lag + plant.DeadTime, rise, 0.05 * plant.Lag);
    }

    private static void Check(TunedUnit unit, AxisPlant plant, AxisTuning tuning)
    {
        RateLoop loop = new(plant, unit.Unit.GyroLowPass_Hz, Starters.Profile);
        Complex at = loop.Response(tuning.Crossover, tuning.Gains);
        Assert.Equal(1, at.Magnitude, 6);
        Assert.Equal(MatchedTuning.PhaseMargin, at.Phase + Math.PI, 6);
        Assert.True(tuning.GainMargin >= MatchedTuning.GainMargin);

        // at the phase crossover, found here by a fine scan, the gain must lie under 1 / margin
        double phase = at.Phase;
        for (double w = tuning.Crossover; w < loop.HighestFrequency; w *= 1.0005)
        {
            Complex response = loop.Response(w, tuning.Gains);
            phase += Math.IEEERemainder(response.Phase - phase, 2 * Math.PI);
            if (phase > -Math.PI) continue;
            Assert.Equal(1 / tuning.GainMargin, response.Magnitude, 0.02);
            return;
        }
        Assert.Fail("The phase never reaches -180 degrees.");
    }
}
