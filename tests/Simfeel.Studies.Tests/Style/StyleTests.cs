using Simfeel.Flight.Tests;
using Simfeel.Studies.Compare;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Style;

namespace Simfeel.Studies.Tests.Style;

public class StyleTests
{
    private static readonly Lazy<Comparison> Demo = new(() => Comparison.Run(Starters.Get("wagtail"), Starters.Get("curlew"), Starters.Profile));

    [Fact]
    public void Every_metric_is_judged() => Assert.All(MetricCatalogue.All, metric => Assert.True(MetricSense.Judges(metric), metric.Name));

    [Fact]
    public void Verdict_names_the_same_build_whichever_comes_first()
    {
        StyleFit fit = StyleReading.Of(FlyingStyle.FlipsAndStops, Demo.Value);
        StyleFit back = StyleReading.Of(FlyingStyle.FlipsAndStops, Comparison.Run(Starters.Get("curlew"), Starters.Get("wagtail"), Starters.Profile));
        Assert.Equal(-fit.Total, back.Total, 1e-9);
        Assert.StartsWith("For flips and stops: Wagtail, clearly.", fit.Verdict, StringComparison.Ordinal);
        Assert.StartsWith("For flips and stops: Wagtail, clearly.", back.Verdict, StringComparison.Ordinal);
    }

    /// <summary>By hand: weight times 100 times the logarithm of the ratio, felt metrics only, over the sum of the weights.</summary>
    [Fact]
    public void Points_are_what_they_are_said_to_be()
    {
        FlyingStyle style = new FlyingStyle("one", []).With([new("stop_time", 2), new("hover_endurance", 1), new("time_to_360_deg", 3)]);
        StyleFit fit = StyleReading.Of(style, Demo.Value);
        MetricPair stop = Pair("stop_time"), hover = Pair("hover_endurance");
        double byHand = ((-200 * Math.Log(stop.B / stop.A)) + (100 * Math.Log(hover.B / hover.A))) / 6;
        Assert.Equal(byHand, fit.Total, 1e-9);
        Assert.Equal("not felt", fit.Lines[2].Why);

        static MetricPair Pair(string name) => Demo.Value.Metrics.Single(pair => pair.Metric.Name == name);
    }

    [Fact]
    public void Weights_that_cannot_be_are_refused()
    {
        Assert.DoesNotContain(FlyingStyle.FlipsAndStops.With([new("stop_time", 0)]).Asks, ask => ask.Metric.Name == "stop_time");
        Assert.Throws<ArgumentException>(() => FlyingStyle.FlipsAndStops.With([new("speed", 1)]));
        Assert.Throws<ArgumentException>(() => FlyingStyle.FlipsAndStops.With([new("fall_in_1_s", 1)]));
        Assert.Throws<ArgumentException>(() => FlyingStyle.FlipsAndStops.With([new("stop_time", -1)]));
        Assert.Throws<ArgumentException>(() => FlyingStyle.FlipsAndStops.With([new("stop_time", double.NaN)]));
    }
}
