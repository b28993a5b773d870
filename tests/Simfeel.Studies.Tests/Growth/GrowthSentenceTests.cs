using Simfeel.Builds;
using Simfeel.Flight.Tests;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Growth;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Tests.Growth;

/// <summary>Every sentence about a growth curve and about a match that is not found, word by word, for curves by hand.</summary>
public class GrowthSentenceTests
{
    private const double None = double.NaN;

    private static readonly Metric Stop = Named("stop_time"), Climb = Named("climb_in_1_s"), Lift = Named("thrust_to_weight");

    [Fact]
    public void An_optimum_inside_says_where_how_flat_and_what_comes_beyond()
    {
        Assert.Equal(
            [
                "Gull's time to stop the roll is best, 80 ms, at 1.50 times its stator volume; as built it is 90 ms.",
                "From 1.50 times to 2.00 times it stays within 5 % of that; beyond, more makes it worse: 100 ms at 2.50 times.",
            ],
            Said(Stop, [0.12, 0.09, 0.08, 0.082, 0.1]));
        Assert.Equal("Beyond, more makes it worse: 90 ms at 2.00 times.", Said(Stop, [0.12, 0.1, 0.08, 0.09])[1]);
        Assert.Equal("Gull's time to stop the roll is best, 80 ms, at 1.00 times its stator volume; as built it is 80 ms.", Said(Stop, [0.12, 0.08, 0.09])[0]);
        // without the build's own size among the points nothing is said of it
        Assert.Equal("Gull's time to stop the roll is best, 80 ms, at 1.25 times its stator volume.", Said(Stop, [0.12, 0.08, 0.09], first: 0.75)[0]);
        // nor where that size cannot be flown
        Assert.Equal("Gull's time to stop the roll is best, 80 ms, at 1.50 times its stator volume.", Said(Stop, [0.12, None, 0.08, 0.09])[0]);
    }

    [Fact]
    public void A_best_at_an_end_goes_on_and_one_as_built_stays()
    {
        Assert.Equal(
            ["Gull's time to stop the roll goes on getting better to the end of the range: 70 ms at 1.50 times its stator volume; as built it is 90 ms."],
            Said(Stop, [0.12, 0.09, 0.07]));
        Assert.Equal(
            ["Gull's climb in the first second goes on getting better to the end of the range: 30.0 m at 0.50 times its stator volume; as built it is 20.0 m."],
            Said(Climb, [30, 20, 10]));
        Assert.Equal(
            ["Gull's largest thrust to weight is best as built, 3.0: in this range no other size that flies is better."],
            Said(Lift, [3, 2, 1], first: 1));
    }

    [Fact]
    public void Where_there_is_no_best_the_reason_is_said_alone()
    {
        Assert.Equal(["For the radius of that half circle neither more nor less is better, so the curve has no best point."], Said(Named("turn_radius"), [1, 2, 3]));
        Assert.Equal(["No size in this range can be made and flown: It does not fly."], Said(Stop, [None, None, None]));
    }

    [Fact]
    public void Sizes_that_cannot_be_flown_are_counted_and_the_first_is_named()
    {
        IReadOnlyList<string> said = Said(Stop, [None, 0.09, 0.07, None, None]);
        Assert.Equal(2, said.Count);
        Assert.Equal("3 of 5 sizes cannot be flown, the first at 0.50 times: It does not fly.", said[1]);
    }

    /// <summary>100 ms at the last size that flies: a fiftieth of it, 2 ms, is the least that matters.</summary>
    [Fact]
    public void Consequences_are_told_the_costliest_first()
    {
        double[] values = [0.12, 0.08, 0.1, None];
        Assert.Equal(
            [
                "If bells stayed: 60 ms at 1.50 times in place of 100 ms, and best at 1.50 times: this is part of what ends the cure.",
                "If arms stayed: 97 ms at 1.50 times in place of 100 ms, and best at 0.50 times: this is part of what ends the cure.",
                "If nothing stayed: 99 ms at 1.50 times, hardly another curve.",
                "If all stayed: 101 ms at 1.50 times, hardly another curve.",
                "If mass stayed: 103 ms at 1.50 times in place of 100 ms; growing without it is worse.",
            ],
            Consequences(Stop, values,
                ("mass stayed", [0.11, 0.1, 0.103, 0.05]), ("nothing stayed", [0.12, 0.08, 0.099, 0.05]), ("all stayed", [0.12, 0.08, 0.101, 0.05]), ("air stayed", [0.12, 0.08, None, 0.05]),
                ("bells stayed", [0.11, 0.08, 0.06, 0.2]), ("arms stayed", [0.09, 0.1, 0.097, 0.2])));
    }

    /// <summary>Where more is better the cost is what is missing: 20 m in place of 30.</summary>
    [Fact]
    public void Consequences_of_a_curve_that_goes_on_are_what_growing_costs()
    {
        Assert.Equal(
            [
                "If bells stayed: 30.0 m at 1.50 times in place of 20.0 m: this is part of what growing costs.",
                "If mass stayed: 19.0 m at 1.50 times in place of 20.0 m; growing without it is worse.",
            ],
            Consequences(Climb, [10, 15, 20], ("mass stayed", [10, 15, 19]), ("bells stayed", [10, 15, 30])));
    }

    [Fact]
    public void Without_a_target_or_a_craft_there_is_nothing_to_match()
    {
        Check(None, [0.12, 0.09, 0.08], found: false, "Tern never gets there within the drill, so there is nothing to match.");
        Check(0.05, [None, None, None], found: false, "No size in this range can be flown: It does not fly.");
    }

    [Theory]
    [InlineData(0.05, "80 ms at 1.50 times", 1.5)]
    [InlineData(0.2, "120 ms at 0.50 times", 0.5)]
    public void The_closest_is_told_where_no_size_meets_the_target(double target, string closest, double factor)
    {
        GrowthMatch match = Check(
            target, [0.12, None, 0.08], found: false,
            $"No stator volume between 0.50 times and 1.50 times meets Tern's time to stop the roll of {1000 * target:F0} ms; the closest is {closest}. This part alone does not reach that far.");
        Assert.Equal((factor, "Tern", target), (match.Reached.Factor, match.Other, match.Target));
    }

    /// <summary>The target is 50 ms and the closest 80: what comes within 24 ms of it, eight tenths of the rest, stands in the way.</summary>
    [Fact]
    public void What_stands_in_the_way_is_told()
    {
        const string closest = "No stator volume between 0.50 times and 1.50 times meets Tern's time to stop the roll of 50 ms; the closest is 80 ms at 1.50 times. ";
        double[] values = [0.12, 0.09, 0.08];
        Check(0.05, values, false, closest + "It could be met if bells stayed, or if arms stayed.",
            ("mass stayed", [0.1, 0.08, 0.06]), ("bells stayed", [0.1, 0.06, 0.04]), ("arms stayed", [0.1, 0.06, 0.05]));
        Check(0.05, values, false, closest + "It could be met if arms stayed.", ("arms stayed", [0.04, 0.06, 0.07]));
        Check(0.05, values, false, closest + "What stands in the way most: if arms stayed it would come to 55 ms, and still not there.",
            ("mass stayed", [0.1, 0.08, 0.06]), ("arms stayed", [0.1, 0.055, None]), ("bells stayed", [None, None, None]));
        Check(0.05, values, false, closest + "What stands in the way most: if arms stayed it would come to 73 ms, and still not there.", ("arms stayed", [0.1, 0.09, 0.073]));
        Check(0.05, values, false, closest + "This part alone does not reach that far.", ("arms stayed", [0.1, 0.09, 0.075]));
    }

    private static GrowthMatch Check(double target, double[] values, bool found, string sentence, params (string Name, double[] Values)[] variants)
    {
        GrowthMatch match = GrowthMatch.Solve(
            GrowthFlightTests.Wagtail, BuildKnobs.MotorVolume, Read(Stop, values, 0.5, variants), "Tern", target, new StudyConditions(Starters.Air, Starters.Profile, new()));
        Assert.Equal(sentence, match.Sentence);
        Assert.Equal(found, match.Found);
        return match;
    }

    private static IReadOnlyList<string> Said(Metric metric, double[] values, double first = 0.5) => Read(metric, values, first).Sentences;

    private static IEnumerable<string> Consequences(Metric metric, double[] values, params (string Name, double[] Values)[] variants) =>
        Read(metric, values, 0.5, variants).Sentences.Where(sentence => sentence.StartsWith("If ", StringComparison.Ordinal));

    /// <summary>A curve at steps of a half.</summary>
    private static GrowthCurve Read(Metric metric, double[] values, double first, params (string Name, double[] Values)[] variants) => GrowthReading.Read(
        "Gull", BuildKnobs.MotorVolume, metric,
        [.. values.Select((value, n) => new GrowthPoint(first + (0.5 * n), n, value, double.IsNaN(value) ? "It does not fly." : ""))], variants, 0.05);

    private static Metric Named(string name) => MetricCatalogue.All.Single(metric => metric.Name == name);
}
