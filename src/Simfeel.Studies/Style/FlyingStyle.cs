using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Style;

/// <summary>A style of flying and what it asks of a craft: named metrics with weights.</summary>
/// <param name="Name">Such as "flips and stops".</param>
/// <param name="Asks">What it asks, most important first.</param>
public sealed record FlyingStyle(string Name, IReadOnlyList<StyleWeight> Asks)
{
    /// <summary>
    /// Tricks: the craft has to turn, stop dead, be caught and climb out. Weights are our judgement, to be edited.
    /// </summary>
    public static FlyingStyle FlipsAndStops { get; } = new("flips and stops",
    [
        Ask("stop_time", 3), Ask("roll_rise_time", 2), Ask("flip_height_lost", 2), Ask("catch_height", 2), Ask("climb_in_1_s", 1),
        Ask("yaw_stop_time", 1), Ask("bounce_back", 1),
    ]);

    /// <summary>
    /// Long lines: the craft has to follow a line, keep its height, carry itself far and stay up. Weights are our judgement, to be edited.
    /// </summary>
    public static FlyingStyle FlowingLines { get; } = new("flowing lines",
    [
        Ask("slalom_miss", 3), Ask("specific_range", 2), Ask("hover_endurance", 2), Ask("turn_height_change", 2), Ask("brake_distance", 1),
        Ask("wash_rate", 1), Ask("slalom_stick_work", 1),
    ]);

    /// <summary>Both.</summary>
    public static IReadOnlyList<FlyingStyle> All { get; } = [FlipsAndStops, FlowingLines];

    /// <summary>The style with some weights changed; 0 takes a metric out, a metric that was not asked comes in.</summary>
    /// <param name="weights">Names of metrics and their weights, 0 to 100.</param>
    /// <exception cref="ArgumentException">A metric is unknown, neither way of it is better, or a weight is out of range.</exception>
    public FlyingStyle With(IEnumerable<KeyValuePair<string, double>> weights)
    {
        ArgumentNullException.ThrowIfNull(weights);
        List<StyleWeight> asks = [.. Asks];
        foreach ((string name, double weight) in weights)
        {
            if (!(weight >= 0 && weight <= 100)) throw new ArgumentException($"The weight of {name} is {weight}; it must lie between 0 and 100.");
            int at = asks.FindIndex(ask => ask.Metric.Name == name);
            if (at >= 0) asks[at] = asks[at] with { Weight = weight };
            else asks.Add(Ask(name, weight));
        }
        return this with { Asks = [.. asks.Where(ask => ask.Weight > 0)] };
    }

    private static StyleWeight Ask(string name, double weight)
    {
        Metric metric = MetricCatalogue.All.FirstOrDefault(known => known.Name == name)
            ?? throw new ArgumentException($"There is no metric '{name}'. Metrics: {string.Join(", ", MetricCatalogue.All.Select(known => known.Name))}.");
        Sense sense = MetricSense.Of(metric);
        return sense == Sense.Neither
            ? throw new ArgumentException($"Neither more nor less of {name} is better, so no style can ask for it.")
            : new(metric, weight, sense == Sense.More);
    }
}
