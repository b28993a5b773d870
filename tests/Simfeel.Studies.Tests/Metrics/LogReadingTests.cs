using Simfeel.Flight.Drills;
using Simfeel.Studies.Metrics;
using static Simfeel.Studies.Metrics.LogReading;

namespace Simfeel.Studies.Tests.Metrics;

/// <summary>Times and sums read off straight lines, whose answers are exact whatever the rows are.</summary>
public class LogReadingTests
{
    /// <summary>Height 3 t, climb 1 - t, roll rate 2 and pitch rate -4 t.</summary>
    private static readonly FlightLog Log = SyntheticLog.Of(1, height: t => 3 * t, climb: t => 1 - t, rate: t => new(2, -4 * t, 5));

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.12345, 0.37035)]
    [InlineData(1, 3)]
    [InlineData(-1, 0)]
    [InlineData(9, 3)]
    public void Between_rows_by_straight_lines_and_never_beyond_the_log(double time, double height) =>
        Assert.Equal(height, Log.At(time, Height), 1e-9);

    [Fact]
    public void Levels_are_passed_between_rows()
    {
        Assert.Equal(0.74321, Log.TimeBelow(0, 1 - 0.74321, Climb), 1e-9);
        Assert.Equal(0.41117, Log.TimeAbove(0, 3 * 0.41117, Height), 1e-9);
        // what lies below from the start is there at the start
        Assert.Equal(0.8, Log.TimeBelow(0.8, 0.5, Climb), 1e-12);
        Assert.Equal(0.30003, Log.TimeAbove(0.30003, 0.1, Height), 1e-12);
        Assert.True(double.IsNaN(Log.TimeBelow(0, -1, Climb)) && double.IsNaN(Log.TimeAbove(0.5, 4, Height)));
        Assert.True(double.IsNaN(Log.TimeBelow(double.NaN, 1, Climb)));
    }

    [Fact]
    public void Largest_and_mean_look_at_their_span_only()
    {
        Assert.Equal(0.5, Log.Largest(0.5, Climb), 1e-9);
        Assert.Equal(3, Log.Largest(0.5, Height), 1e-9);
        Assert.Equal(1.2, Log.Mean(0.2, 0.6, Height), 1e-9);
        // trapezoids over t^2 are too large by h^2 / 6 on the mean
        double mean = Log.Mean(0, 1, row => Height(row) * Height(row) / 9);
        Assert.Equal((1.0 / 3) + (Log.Period * Log.Period / 6), mean, 1e-9);
    }

    [Fact]
    public void Angles_are_areas_under_rates()
    {
        Assert.Equal(2, Log.Turned(0)[^1], 1e-9);
        Assert.Equal(-2, Log.Turned(1)[^1], 1e-9);
        Assert.Equal(0, Log.Turned(0)[0]);
        Assert.Equal(0.25, Log.TimeTurned(0.1, 0, 0.5), 1e-9);
        Assert.True(double.IsNaN(Log.TimeTurned(0.1, 0, 1.9)) && double.IsNaN(Log.TimeTurned(0, 1, 0.1)));
        Assert.Equal(4 + 4, RollPitchRateSquared(Log.Samples[(int)Math.Round(0.5 / Log.Period)]), 1e-9);
    }

    [Fact]
    public void Most_metrics_have_a_better_way_and_tastes_have_none()
    {
        Assert.All(MetricCatalogue.All, metric => Assert.True(MetricSense.Judges(metric), metric.Name));
        Assert.Equal(Sense.Less, MetricSense.Of(MetricCatalogue.All.Single(metric => metric.Name == "stop_time")));
        Assert.Equal(Sense.More, MetricSense.Of(MetricCatalogue.All.Single(metric => metric.Name == "thrust_to_weight")));
        Assert.Equal(Sense.Neither, MetricSense.Of(MetricCatalogue.All.Single(metric => metric.Name == "turn_radius")));
    }
}
