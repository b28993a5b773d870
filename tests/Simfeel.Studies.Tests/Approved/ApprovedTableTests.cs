using System.Globalization;
using Simfeel.Studies.Lessons;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Style;

namespace Simfeel.Studies.Tests.Approved;

/// <summary>What stands in code as a table, <see cref="ApprovedPage"/>.</summary>
public class ApprovedTableTests
{
    /// <summary>Drill, unit, which way is better, what a value of 1.25 looks like, and the sentence of each metric.</summary>
    [Fact]
    public void Metrics() => ApprovedPage.Check("metrics.txt", string.Concat(MetricCatalogue.All.Select(metric => string.Create(
        CultureInfo.InvariantCulture,
        $"{metric.Name} | {metric.Title} | {metric.Drill.Name} | {metric.Topic} | {metric.Unit} | {MetricSense.Of(metric)}{(metric.Instrument ? ", a reading" : "")} | weight {metric.Weight:0.##} | floor {metric.Display.Number(metric.Floor)} ({metric.Floor:G6}) | 1.25 is {metric.Display.Number(1.25)} {metric.Display.Symbol} | loads from {metric.LoadsFrom:G4} | {metric.Say(new("M", "L", "9", "3", "3.0 times"))}\n"))));

    [Fact]
    public void Channels_of_lessons() => ApprovedPage.Check("channels.txt", string.Concat(FlightChannel.All.Select(channel =>
        $"{channel.Name} | {channel.Title} | 1.25 is {channel.Display.Number(1.25)} {channel.Display.Symbol}\n")));

    [Fact]
    public void Styles() => ApprovedPage.Check("styles.txt", string.Concat(FlyingStyle.All.SelectMany(style => style.Asks.Select(ask =>
        $"{style.Name} | {ask.Metric.Name} | {ask.Weight} | {(ask.MoreIsBetter ? "more" : "less")}\n"))));
}
