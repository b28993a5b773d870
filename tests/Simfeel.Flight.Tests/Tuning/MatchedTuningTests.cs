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
        Check(unit, Plant(0), unit.Roll);
        Check(unit, Plant(1), unit.Pitch);
        Check(unit, Plant(2), unit.Yaw);

        AxisPlant Plant(int axis) =>
            AxisPlant.Of(unit.Unit, unit.Hover, unit.Map, unit.Allocation, unit.Density, unit.Gravity, axis);
    }

    /// <summary>The search leaves out lead times whose bound is too low; trying every one finds no more.</summary>
    [Fact]
    public void No_lead_time_that_was_left_out_would_have_been_better()
    {
        foreach (string name in Starters.Names)
        {
            TunedUnit unit = Starters.Get(name);
            foreach (double delay in new[] { 0, 0.004, 0.02 })
            {
                AxisPlant plant = AxisPlant.Of(unit.Unit with { CommandDelay = delay }, unit.Hover, unit.Map, unit.Allocation, unit.Density, unit.Gravity, 0);
                RateLoop loop = new(plant, unit.Unit.GyroLowPass_Hz, Starters.Profile);
                LoopCurve curve = new(loop);
                double lag = unit.Hover.TimeConstant;
                double best = Enumerable.Range(0, 21)
                    .Max(n => MatchedTuning.AtMargins(loop, curve, lag * n / 20, 0.5, new(MatchedTuning.PhaseMargin, MatchedTuning.GainMargin))?.Crossover ?? 0);
                Assert.True(best > 1, name);
                Assert.Equal(best, MatchedTuning.Of(loop, lag, 0.5).Crossover, 1e-9 * best);
            }
        }
    }

    /// <summary>A build with more dead time is given less bandwidth, not less margin.</summary>
    [Fact]
    public void Delay_costs_bandwidth()
    {
        FlightUnit wagtail = Starters.Get("wagtail").Unit;
        TunedUnit slow = TunedUnit.Matched(wagtail with { CommandDelay = wagtail.CommandDelay + 0.004 }, Starters.Air, Starters.Profile);
        TunedUnit fast = Starters.Get("wagtail");
        Assert.True(slow.Roll.Crossover < 0.7 * fast.Roll.Crossover);
        Assert.Equal(fast.Roll.PhaseMargin, slow.Roll.PhaseMargin, 9);
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
        foreach (AxisTuning tuning in new[] { unit.Roll, unit.Yaw })
        {
            Assert.True(tuning.PhaseMargin >= MatchedTuning.PhaseMargin - 1e-6);
            Assert.True(tuning.GainMargin >= MatchedTuning.GainMargin - 1e-6);
        }
        FlightLog stop = DrillRunner.Fly(DrillCatalogue.Stop, unit, Starters.Profile);
        Assert.True(stop.Samples[^1].State.w_WB_B.Length < 2, $"{stop.Samples[^1].State.w_WB_B}");
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
        for (double w = tuning.Crossover; w < Math.PI / Starters.Profile.LoopPeriod; w *= 1.0005)
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
