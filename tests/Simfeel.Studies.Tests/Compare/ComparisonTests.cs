using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Studies.Compare;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Tests.Compare;

public class ComparisonTests
{
    private static readonly Lazy<Comparison> Demo =
        new(() => Comparison.Run(Starters.Get("wagtail"), Starters.Get("curlew"), Starters.Profile));

    [Fact]
    public void A_against_itself_is_exactly_zero_in_every_metric()
    {
        TunedUnit wagtail = Starters.Get("wagtail");
        Comparison same = Comparison.Run(wagtail, wagtail, Starters.Profile);
        Assert.All(same.Metrics, pair =>
        {
            Assert.Equal(0.0, pair.Difference);
            Assert.Equal(0.0, pair.DifferencePercent);
            Assert.Equal(pair.Metric.Instrument ? Feel.Reading : Feel.NotFelt, pair.Feel);
        });
        Assert.Equal("Wagtail (A) and Wagtail (B) fly exactly alike in every drill.", Assert.Single(TellingSentences.Of(same)));
    }

    [Fact]
    public void Touching_the_ground_is_said_with_the_drills()
    {
        TunedUnit wagtail = Starters.Get("wagtail");
        Assert.DoesNotContain(Cautions.Of(Demo.Value), caution => caution.Contains("ground", StringComparison.Ordinal));
        Comparison low = Comparison.Run(wagtail, Starters.Get("pipit"), Starters.Profile, 1, new() { StartHeight = 10 });
        Assert.Contains(Cautions.Of(low), caution => caution == "Caution: Wagtail touches the ground in drop, wash; their numbers tell of the ground, too, and nothing is said of what a pilot would feel.");
        string[] touched = [.. low.Metrics.Where(pair => pair.TouchesGround).Select(pair => pair.Metric.Drill.Name).Distinct()];
        Assert.Equal(["drop", "wash"], touched);
        Assert.All(low.Metrics, pair => Assert.Equal(pair.TouchesGround, pair.Feel == Feel.Unknown));
        Assert.DoesNotContain(TellingSentences.Ranked(low), pair => pair.TouchesGround);
    }

    /// <summary>An arm reaches the ground before the middle does: a craft that is tilted touches with its middle higher than a level one.</summary>
    [Fact]
    public void A_tilted_craft_touches_with_its_arm()
    {
        TunedUnit wagtail = Starters.Get("wagtail");
        FlightLog low = Roll(0.3), high = Roll(50);
        int struck = Enumerable.Range(0, low.Samples.Count).First(row => Math.Abs(low.Samples[row].State.w_WB_B.X - high.Samples[row].State.w_WB_B.X) > 3);
        Assert.True(low.TouchesGround && !high.TouchesGround);
        Assert.InRange(0.3 - low.Samples[struck].State.p_WB.Z, wagtail.Unit.Body!.RestHeight + 0.01, 0.3);

        FlightLog Roll(double height) => DrillBatch.Fly(DrillCatalogue.Roll, [wagtail], Starters.Profile, 1, new() { StartHeight = height })[0];
    }

    [Fact]
    public void Swapping_the_builds_negates_every_difference()
    {
        Comparison back = Comparison.Run(Starters.Get("curlew"), Starters.Get("wagtail"), Starters.Profile);
        foreach ((MetricPair there, MetricPair swapped) in Demo.Value.Metrics.Zip(back.Metrics))
        {
            Assert.Equal(there.Metric.Name, swapped.Metric.Name);
            Assert.Equal(there.Difference, -swapped.Difference);
            Assert.Equal(there.DifferencePercent, -swapped.DifferencePercent);
            Assert.Equal(there.Feel, swapped.Feel);
        }
        Assert.Equal(TellingSentences.Of(Demo.Value), TellingSentences.Of(back));
    }

    [Fact]
    public void Every_metric_of_the_demo_exists() =>
        Assert.All(Demo.Value.Metrics, pair => Assert.True(double.IsFinite(pair.A) && double.IsFinite(pair.B), pair.Metric.Name));

    /// <summary>Work and touches are told for every drill, each craft's own, as its log has it.</summary>
    [Fact]
    public void Work_is_that_of_each_flight()
    {
        Comparison demo = Demo.Value;
        Assert.Equal(MetricCatalogue.All.Select(metric => metric.Drill).Distinct(), demo.Work.Select(work => work.Drill));
        Assert.Equal(DrillCatalogue.Scripted.Select(drill => drill.Name), demo.Logs.Select(logs => logs.A.Drill));
        foreach ((FlightLog a, FlightLog b) in demo.Logs)
        {
            DrillWork work = demo.Work.Single(one => one.Drill.Name == a.Drill);
            Assert.Equal((ControlEffort.Of(a), ControlEffort.Of(b)), (work.A, work.B));
            Assert.Equal(("Wagtail", "Curlew"), (a.Unit.Unit.Name, b.Unit.Unit.Name));
        }
        Assert.DoesNotContain(demo.Work, work => work.ATouches || work.BTouches);
    }

    /// <summary>The numbers in the sentences are those of the table, and a changed build changes them.</summary>
    [Fact]
    public void Sentences_are_computed_from_the_metrics()
    {
        IReadOnlyList<string> demo = TellingSentences.Of(Demo.Value);
        Assert.Equal(3, demo.Count);
        foreach (string sentence in demo)
        {
            Assert.Contains(Demo.Value.Metrics, pair =>
                pair.Feel != Feel.NotFelt
                && sentence.Contains(pair.Metric.Display.Number(pair.A), StringComparison.Ordinal)
                && sentence.Contains(pair.Metric.Display.Number(pair.B), StringComparison.Ordinal));
        }

        FlightUnit curlew = Starters.Get("curlew").Unit;
        FlightUnit sluggish = curlew with
        {
            Craft = curlew.Craft with
            {
                Rotors = [.. curlew.Craft.Rotors.Select(rotor => rotor with { SpinInertia = 2 * rotor.SpinInertia })],
            },
        };
        TunedUnit tuned = TunedUnit.Matched(sluggish, Starters.Air, Starters.Profile);
        Assert.NotEqual(demo, TellingSentences.Of(Comparison.Run(Starters.Get("wagtail"), tuned, Starters.Profile)));
    }

    /// <summary>More rotor inertia slows the stop and leaves the settled fall almost alone.</summary>
    [Fact]
    public void Rotor_inertia_is_felt_where_it_should_be()
    {
        FlightUnit wagtail = Starters.Get("wagtail").Unit;
        FlightUnit heavy = wagtail with
        {
            Craft = wagtail.Craft with
            {
                Rotors = [.. wagtail.Craft.Rotors.Select(rotor => rotor with { SpinInertia = 1.5 * rotor.SpinInertia })],
            },
        };
        Comparison pair = Comparison.Run(
            Starters.Get("wagtail"), TunedUnit.Matched(heavy, Starters.Air, Starters.Profile), Starters.Profile);
        Assert.Equal(Feel.Felt, Of(pair, "stop_time").Feel);
        Assert.True(Of(pair, "stop_time").Difference > 0);
        Assert.Equal(Feel.NotFelt, Of(pair, "settled_fall_speed").Feel);
        Assert.Equal(Feel.NotFelt, Of(pair, "fall_in_1_s").Feel);
        Assert.Equal(Feel.Reading, Of(pair, "hover_power").Feel);
    }

    [Theory]
    [InlineData(100, 104, 1, Feel.NotFelt)]
    [InlineData(100, 110, 1, Feel.Perhaps)]
    [InlineData(100, 140, 1, Feel.Felt)]
    [InlineData(0.1, 0.2, 1, Feel.NotFelt)]
    public void Feel_bands(double a, double b, double floor, Feel expected)
    {
        double percent = 100 * (b - a) / ((a + b) / 2);
        Metric metric = MetricCatalogue.All.First(m => !m.Instrument) with { Floor = floor };
        Assert.Equal(expected, FeelBands.Usual.Of(metric, a, b, percent));
        Assert.Equal(expected, FeelBands.Usual.Of(metric, b, a, -percent));
        Assert.Equal(Feel.Reading, FeelBands.Usual.Of(metric with { Instrument = true }, a, b, percent));
    }

    [Fact]
    public void Without_an_event_the_feel_is_unknown() =>
        Assert.Equal(Feel.Unknown, FeelBands.Usual.Of(MetricCatalogue.All[0], 1, double.NaN, double.NaN));

    private static MetricPair Of(Comparison comparison, string name) =>
        comparison.Metrics.Single(pair => pair.Metric.Name == name);
}
