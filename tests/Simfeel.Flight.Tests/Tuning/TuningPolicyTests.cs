using Simfeel.Flight.Drills;
using Simfeel.Flight.Tuning;
using Simfeel.Physics;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Tests.Tuning;

public class TuningPolicyTests
{
    public static TheoryData<string> Some => ["dunlin", "wagtail", "curlew", "gannet"];

    [Fact]
    public void Words_lead_back_to_their_policies()
    {
        foreach (TuningPolicy policy in Enum.GetValues<TuningPolicy>())
        {
            Assert.Equal(policy, TuningPolicies.Parse(TuningPolicies.Word(policy)));
            Assert.NotEmpty(TuningPolicies.Describe(policy));
        }
        Assert.Null(TuningPolicies.Parse("Matched"));
    }

    /// <summary>Whose rotors lift more than the weight while they idle can neither hover nor come down, whatever the policy.</summary>
    [Fact]
    public void A_craft_that_idling_lifts_is_told()
    {
        TunedUnit wagtail = Starters.Get("wagtail");
        double hover = wagtail.Hover.Rotor.Duty;
        foreach (TuningPolicy policy in Enum.GetValues<TuningPolicy>())
        {
            InvalidOperationException told = Assert.Throws<InvalidOperationException>(() =>
                TunedUnit.Tuned(wagtail.Unit with { IdleDuty = hover + 1e-3 }, Starters.Air, Starters.Profile, new(policy, wagtail)));
            Assert.Contains("lower idle_percent", told.Message, StringComparison.Ordinal);
            Assert.Contains($"takes {100 * hover:F1} %", told.Message, StringComparison.Ordinal);
        }
        Assert.Equal("Wagtail", TunedUnit.Matched(wagtail.Unit with { IdleDuty = hover - 1e-3 }, Starters.Air, Starters.Profile).Unit.Name);
    }

    /// <summary>Copied to itself a craft keeps its gains; copied to another the rotors are asked for the same shares.</summary>
    [Fact]
    public void Same_gains_ask_the_same_shares()
    {
        TunedUnit wagtail = Starters.Get("wagtail");
        TuningRule rule = new(TuningPolicy.SameGains, wagtail);
        TunedUnit self = TunedUnit.Tuned(wagtail.Unit, Starters.Air, Starters.Profile, rule);
        TunedUnit curlew = TunedUnit.Tuned(Starters.Unit("curlew"), Starters.Air, Starters.Profile, rule);
        for (int axis = 0; axis < 3; axis++)
        {
            Assert.Equal(wagtail.Gains[axis].Proportional, self.Gains[axis].Proportional, 1e-9);
            double ofWagtail = Largest(wagtail, axis) * wagtail.Gains[axis].Proportional;
            Assert.Equal(1, Largest(curlew, axis) * curlew.Gains[axis].Proportional / ofWagtail, 0.2);
            Assert.Equal(wagtail.Gains[axis].Derivative / wagtail.Gains[axis].Proportional, curlew.Gains[axis].Derivative / curlew.Gains[axis].Proportional, 1e-9);
        }
        // a heavier craft with another's numbers is slower to answer than with its own
        Assert.True(curlew.Roll.Crossover < Starters.Get("curlew").Roll.Crossover);
        Assert.Throws<ArgumentException>(() => TunedUnit.Tuned(wagtail.Unit, Starters.Air, Starters.Profile, new(TuningPolicy.SameGains)));

        static double Largest(TunedUnit unit, int axis) =>
            Enumerable.Range(0, unit.Unit.Craft.Rotors.Count).Max(k => Math.Abs(unit.Allocation.Shares[k, axis]));
    }

    /// <summary>The margins that copied gains are said to have are those that the flight shows.</summary>
    [Fact]
    public void Copied_gains_have_the_margins_they_are_said_to_have()
    {
        TunedUnit curlew = TunedUnit.Tuned(
            Starters.Unit("curlew"), Starters.Air, Starters.Profile, new(TuningPolicy.SameGains, Starters.Get("wagtail")));
        LoopMeasurement flown = LoopMeasurement.Of(curlew, Starters.Profile, 0, 0.6 * curlew.Roll.Crossover, 2 * curlew.Roll.Crossover, 24);
        Assert.False(flown.Saturated);
        Assert.Equal(1, flown.Crossover / curlew.Roll.Crossover, 0.03);
        Assert.Equal(1, flown.PhaseMargin / curlew.Roll.PhaseMargin, 0.03);
    }

    [Theory]
    [MemberData(nameof(Some))]
    public void Limit_is_never_worse_than_matched_in_what_it_makes_small(string name)
    {
        TunedUnit matched = Starters.Get(name);
        TunedUnit limit = TunedUnit.Tuned(matched.Unit, Starters.Air, Starters.Profile, new(TuningPolicy.Limit));
        FieldConditions field = new() { Effects = AirEffects.DynamicInflow };
        double before = Price(matched), after = Price(limit);
        Assert.True(after <= before, $"{after} {before}");
        Assert.True(limit.Roll.PhaseMargin >= LimitTuning.LeastPhaseMargin - 1e-6);
        Assert.True(limit.Roll.GainMargin >= LimitTuning.LeastGainMargin - 1e-6);

        double Price(TunedUnit unit) => LimitTuning.Price(DrillRunner.Fly(DrillCatalogue.Stop, unit, Starters.Profile, 1, field));
    }

    /// <summary>Constant torque without a loop: the rate grows, and letting go does not stop it.</summary>
    [Fact]
    public void Bare_craft_turns_ever_faster_and_does_not_stop()
    {
        TunedUnit bare = Bare();
        FlightLog log = DrillRunner.Fly(DrillCatalogue.Stop, bare, Starters.Profile, 0.5);
        double Rate(double time) => log.Samples[(int)Math.Round(time / log.Period)].State.w_WB_B.X;
        Assert.True(Rate(0.35) > 1.8 * Rate(0.28), $"{Rate(0.28)} {Rate(0.35)}");
        Assert.True(Rate(0.45) > 1.3 * Rate(0.35), $"{Rate(0.35)} {Rate(0.45)}");
        double released = Rate(Drill.LeadIn + DrillCatalogue.TurnBeforeStop + 0.1);
        Assert.True(Rate(Drill.LeadIn + DrillCatalogue.TurnBeforeStop + 0.3) > 0.3 * released);
        Assert.True(double.IsNaN(bare.Roll.PhaseMargin));
    }

    /// <summary>The rotors of a bare craft are asked for the same whether it turns or not.</summary>
    [Fact]
    public void Bare_craft_does_not_hear_its_gyro()
    {
        TunedUnit bare = Bare();
        Assert.Equal(Duties(bare, Vec3.Zero), Duties(bare, new(3, -2, 1)));
        TunedUnit matched = Starters.Get("wagtail");
        Assert.NotEqual(Duties(matched, Vec3.Zero), Duties(matched, new(3, -2, 1)));

        static double[] Duties(TunedUnit unit, Vec3 rate)
        {
            using FlightLoop<Physics.Lanes.Lane1> loop = new(4, Starters.Profile, new());
            loop.SetUnit(0, unit, unit.Hover.State);
            loop.Batch.SetState(0, unit.Hover.State with { w_WB_B = rate });
            loop.SetCommand(0, new(1, 0, 0), unit.HoverShare);
            for (int tick = 0; tick < 40; tick++) loop.Tick();
            loop.Batch.Evaluate();
            Sample sample = loop.Batch.GetSample(0);
            return [sample.Duty[0], sample.Duty[1], sample.Duty[2], sample.Duty[3]];
        }
    }

    private static TunedUnit Bare() =>
        TunedUnit.Tuned(Starters.Unit("wagtail"), Starters.Air, Starters.Profile, new(TuningPolicy.Bare));
}
