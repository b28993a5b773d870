using Simfeel.Studies.Compare;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Style;
using Simfeel.Studies.Tests.Sheet;
using Simfeel.Studies.Uncertainty;

namespace Simfeel.Studies.Tests.Compare;

/// <summary>What is felt, what is told first, and which build suits a style; numbers made up, two builds named Gull (A) and Tern (B).</summary>
public class FeelTests
{
    /// <summary>The ends of the bands are "perhaps"; a difference of the floor itself counts.</summary>
    [Theory]
    [InlineData(4.999, 1, Feel.NotFelt)]
    [InlineData(5, 1, Feel.Perhaps)]
    [InlineData(15, 1, Feel.Perhaps)]
    [InlineData(15.001, 1, Feel.Felt)]
    [InlineData(50, 2, Feel.Felt)]
    [InlineData(50, 2.001, Feel.NotFelt)]
    public void Bands_and_floor_count_with_their_ends(double percent, double floor, Feel feel)
    {
        Metric metric = Named("stop_time") with { Floor = floor };
        Assert.Equal(feel, FeelBands.Usual.Of(metric, 3, 5, percent));
        Assert.Equal(feel, FeelBands.Usual.Of(metric, 5, 3, -percent));
        Assert.Equal(Feel.Unknown, FeelBands.Usual.Of(metric with { Instrument = true }, 3, 5, double.NaN));
    }

    [Fact]
    public void Percent_are_of_the_mean_of_both_sizes()
    {
        Assert.Equal(40, MetricPair.Percent(4, 6), 12);
        Assert.Equal(-40, MetricPair.Percent(6, 4), 12);
        Assert.Equal(-200, MetricPair.Percent(4, -4), 12);
        Assert.Equal(0, MetricPair.Percent(0, 0));
        MetricPair pair = new(Named("stop_time"), 0.04, 0.06, FeelBands.Usual);
        Assert.Equal((0.02, 40, Feel.Felt), (Math.Round(pair.Difference, 9), Math.Round(pair.DifferencePercent, 9), pair.Feel));
        Assert.Equal(Feel.Unknown, (pair with { TouchesGround = true }).Feel);
        Assert.Equal(["not felt", "perhaps", "felt", "unknown", "a reading"], Enum.GetValues<Feel>().Select(FeelBands.Word));
    }

    /// <summary>Felt before perhaps, then by percent times weight, of each topic one, then the rest.</summary>
    [Fact]
    public void The_most_telling_comes_first_and_no_two_of_a_topic_while_others_are_left()
    {
        Comparison comparison = Made(
            ("stop_time", 0.1, 0.13), ("roll_rise_time", 0.1, 0.14), ("climb_in_1_s", 10, 11), ("yaw_stop_time", 0.1, 0.13), ("hover_power", 100, 200), ("fall_in_1_s", 4, 4.01), ("catch_time", 0.2, double.NaN));
        Assert.Equal(["roll_rise_time", "yaw_stop_time", "climb_in_1_s", "stop_time"], TellingSentences.Ranked(comparison).Select(pair => pair.Metric.Name));
        Assert.Equal(
            [
                "Thrown into a roll, Tern needs 140 milliseconds to get up to speed and Gull needs 100.",
                "Let go of the stick in a spin on the spot, and Tern's nose swings on for 130 milliseconds, Gull's for 100.",
                "With the throttle thrown open in a hover, Tern is 11.0 metres up after one second and Gull is 10.0. A pilot may or may not feel that.",
            ],
            TellingSentences.Of(comparison));
        Assert.Equal(2, TellingSentences.Of(comparison, 2).Count);
        Assert.Equal(4, TellingSentences.Of(comparison, 9).Count);
    }

    [Fact]
    public void The_larger_number_goes_to_the_build_that_has_it()
    {
        Assert.Equal(["Gull reaches 2.0 times the roll acceleration of Tern."], TellingSentences.Of(Made(("peak_roll_acceleration", 400, 200))));
        Assert.Equal(["Tern reaches 1.5 times the roll acceleration of Gull."], TellingSentences.Of(Made(("peak_roll_acceleration", 200, 300))));
        Assert.Equal(["Tern reaches many times the roll acceleration of Gull."], TellingSentences.Of(Made(("peak_roll_acceleration", 0, 300))));
        Assert.Equal(["A pilot would not feel the difference between Gull and Tern in these drills."], TellingSentences.Of(Made(("stop_time", 0.1, 0.101), ("yaw_stop_time", 0.1, 0.1))));
        Assert.Equal(["Gull and Tern fly exactly alike in every drill."], TellingSentences.Of(Made(("stop_time", 0.1, 0.1), ("catch_time", double.NaN, double.NaN))));
    }

    [Fact]
    public void A_clear_lead_names_the_build_and_its_two_strongest_reasons()
    {
        Assert.Equal(
            "For tests: Gull, clearly. Time to 90 % of the roll rate 100 ms against 140 ms; time to stop the roll 100 ms against 130 ms.",
            Verdict([("stop_time", 1), ("roll_rise_time", 1), ("yaw_stop_time", 1)], ("stop_time", 0.1, 0.13), ("roll_rise_time", 0.1, 0.14), ("yaw_stop_time", 0.1, 0.12)));
        Assert.Equal(
            "For tests: Tern, clearly. Largest thrust to weight 6.0 against 4.0.", Verdict([("thrust_to_weight", 2)], ("thrust_to_weight", 4, 6)));
        // 30 % less stop for Gull, three times as heavy as 18 % more climb for Tern
        Assert.Equal(
            "For tests: Gull, clearly. Time to stop the roll 100 ms against 130 ms. What speaks for Tern: climb in the first second 12.0 m against 10.0 m.",
            Verdict([("stop_time", 3), ("climb_in_1_s", 1)], ("stop_time", 0.1, 0.13), ("climb_in_1_s", 10, 12)));
    }

    /// <summary>Logarithms of ratios, in percent: 18.2 of the climb against 9.5 and 26.2 of the stop.</summary>
    [Fact]
    public void A_small_lead_is_said_to_be_small_and_a_smaller_one_is_none()
    {
        Assert.Equal(
            "For tests: Tern, by a little. Climb in the first second 12.0 m against 10.0 m. What speaks for Gull: time to stop the roll 100 ms against 110 ms.",
            Verdict([("climb_in_1_s", 2), ("stop_time", 1)], ("climb_in_1_s", 10, 12), ("stop_time", 0.1, 0.11)));
        Assert.Equal(
            "For tests: about even, it depends on what you want: Tern is ahead in climb in the first second, Gull in time to stop the roll.",
            Verdict([("climb_in_1_s", 1), ("stop_time", 1)], ("climb_in_1_s", 10, 12), ("stop_time", 0.1, 0.11)));
        Assert.Equal(
            "For tests: about even, it depends on what you want: Tern is ahead in nothing that is felt, Gull in time to stop the roll.",
            Verdict([("stop_time", 1), ("climb_in_1_s", 9)], ("stop_time", 0.1, 0.11), ("climb_in_1_s", 10, 10)));
        Assert.Equal(
            "For tests: no difference that would be felt for certain; either build will do.", Verdict([("stop_time", 1)], ("stop_time", 0.1, 0.101)));
    }

    [Fact]
    public void What_counts_nothing_says_why_and_what_counts_is_a_logarithm()
    {
        FlyingStyle style = Style(("stop_time", 2), ("climb_in_1_s", 3), ("catch_time", 1), ("yaw_stop_time", 1), ("bounce_back", 1));
        const double degree = Math.PI / 180;
        Comparison comparison = Made(("stop_time", 0.1, 0.13), ("climb_in_1_s", 10, 12), ("catch_time", double.NaN, 0.2), ("yaw_stop_time", 0.1, 0.101), ("bounce_back", 1 * degree, 6 * degree));
        UncertaintyStudy open = new()
        {
            Draws = 9,
            Seed = 1,
            Refused = 0,
            Inputs = [],
            Metrics = [Drawn("climb_in_1_s", -1, 5), Drawn("stop_time", 0.01, 0.05), Drawn("yaw_stop_time", -1, 1)],
        };
        StyleFit fit = StyleReading.Of(style, comparison, open);
        Assert.Equal(["", "undecided", "a build never gets there", "not felt", ""], fit.Lines.Select(line => line.Why));
        double[] points = [-200 * Math.Log(1.3), 0, 0, 0, -100 * Math.Log(2)];
        // a bounce of less than 3 degrees counts as 3
        foreach ((double expected, StyleLine line) in points.Zip(fit.Lines)) Assert.Equal(expected, line.Points, 9);
        Assert.Equal(points.Sum() / 8, fit.Total, 9);
        Assert.Equal(300 * Math.Log(1.2), StyleReading.Of(style, comparison).Lines[1].Points, 9);
    }

    [Fact]
    public void Weights_are_changed_added_and_taken_out()
    {
        FlyingStyle style = Style(("stop_time", 2), ("climb_in_1_s", 3)).With([new("climb_in_1_s", 0), new("stop_time", 100), new("dash_speed", 4)]);
        Assert.Equal([("stop_time", 100.0, false), ("dash_speed", 4, true)], style.Asks.Select(ask => (ask.Metric.Name, ask.Weight, ask.MoreIsBetter)));
        Assert.Throws<ArgumentException>(() => style.With([new("stop_time", 100.1)]));
    }

    private static string Verdict((string Metric, double Weight)[] asks, params (string Name, double A, double B)[] numbers) =>
        StyleReading.Of(Style(asks), Made(numbers)).Verdict;

    private static FlyingStyle Style(params (string Metric, double Weight)[] asks) =>
        new FlyingStyle("tests", []).With(asks.Select(ask => new KeyValuePair<string, double>(ask.Metric, ask.Weight)));

    private static UncertainMetric Drawn(string name, double low, double high) =>
        new() { Metric = Named(name), A = default, B = default, Difference = new(low, (low + high) / 2, high), Draws = 9 };

    private static Comparison Made(params (string Name, double A, double B)[] numbers) =>
        MadeSheet.Compared(numbers.Select(one => new MetricPair(Named(one.Name), one.A, one.B, FeelBands.Usual)));

    private static Metric Named(string name) => MetricCatalogue.All.Single(metric => metric.Name == name);
}
