using Simfeel.Builds;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Growth;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Tests.Growth;

/// <summary>
/// Growth of the battery, 205 g of a craft of 598 g, where the number that is read is the mass itself: 0.598 kg + 0.205 kg (f - 1), whatever
/// the flight, which is a few readings long.
/// </summary>
public class GrowthFlightTests
{
    private static readonly StudyConditions Conditions = new(Starters.Air, Starters.Profile, new());

    private static readonly Drill Glance = new("glance", "A few readings of a hover.", 0.005, (hover, _) => _ => new(0, 0, 0, hover));

    /// <summary>Less of it is better, and it is printed in thousandths, so in grams under another name.</summary>
    private static readonly Metric Mass = Reading(mass => mass);

    private static readonly BuildKnob Battery = BuildKnobs.BatteryMass with
    {
        UsualRange = (0.5, 2),
        Consequences = [("it did not grow", (build, _) => build), ("it grew twice", (_, grown) => BuildKnobs.BatteryMass.Grow(grown, 2))],
    };

    internal static Build Wagtail { get; } = BuildReader.Read(Path.Combine(AppContext.BaseDirectory, "builds", "wagtail.toml")).Build!;

    [Theory]
    [InlineData(0.5, 2, 4, new[] { 0.5, 0.793700526, 1, 1.25992105, 2 })]
    [InlineData(0.5, 2, 3, new[] { 0.5, 1, 2 })]
    [InlineData(1, 4, 3, new[] { 1.0, 2, 4 })]
    [InlineData(0.25, 1, 3, new[] { 0.25, 0.5, 1 })]
    [InlineData(1.5, 6, 3, new[] { 1.5, 3, 6 })]
    [InlineData(0.2, 0.8, 3, new[] { 0.2, 0.4, 0.8 })]
    public void Sizes_are_in_equal_ratios_and_the_builds_own_is_among_them(double from, double to, int points, double[] factors)
    {
        GrowthCurve curve = GrowthStudy.Run(Wagtail, Battery with { Consequences = [] }, [Mass], Conditions, (from, to), points)[0];
        Assert.Equal(factors.Length, curve.Points.Count);
        foreach ((double factor, GrowthPoint point) in factors.Zip(curve.Points))
        {
            Assert.Equal(factor, point.Factor, 1e-9);
            Assert.Equal(205 * factor, point.Size, 1e-6);
            Assert.Equal(0.598 + (0.205 * (factor - 1)), point.Value, 1e-9);
            Assert.Equal("", point.Refusal);
        }
        Assert.Equal(factors[0], curve.Best!.Value.Factor, 1e-9);
        Assert.Equal(("Wagtail", "battery.mass", "battery mass", "g"), (curve.Build, curve.Knob.Name, curve.Knob.Title, curve.Knob.Unit));
    }

    [Fact]
    public void Each_consequence_is_left_out_of_a_curve_of_its_own()
    {
        Metric twice = Reading(mass => 2 * mass);
        List<double> told = [];
        IReadOnlyList<GrowthCurve> curves = GrowthStudy.Run(Wagtail, Battery, [Mass, twice], Conditions, points: 3, progress: new Told(told));
        for (int m = 0; m < 2; m++)
        {
            Assert.Same(m == 0 ? Mass : twice, curves[m].Metric);
            Assert.Equal([0.5, 1, 2], curves[m].Points.Select(point => point.Factor));
            Assert.Equal(["it did not grow", "it grew twice"], curves[m].Variants.Select(variant => variant.Name));
            for (int n = 0; n < 3; n++)
            {
                double factor = curves[m].Points[n].Factor;
                Assert.Equal((m + 1) * (0.598 + (0.205 * (factor - 1))), curves[m].Points[n].Value, 1e-9);
                Assert.Equal((m + 1) * 0.598, curves[m].Variants[0].Values[n], 1e-9);
                Assert.Equal((m + 1) * (0.598 + (0.205 * ((2 * factor) - 1))), curves[m].Variants[1].Values[n], 1e-9);
            }
            Assert.Equal(0.5, curves[m].Variants[1].BestFactor);
        }
        Assert.Equal(1, told.Max());
    }

    [Fact]
    public void A_size_without_a_number_says_why()
    {
        Metric light = Reading(mass => mass > 0.7 ? double.NaN : mass);
        BuildKnob refused = Battery with
        {
            Consequences = [],
            Grow = (build, factor) => factor < 0.6 ? throw new InvalidOperationException("Nobody makes it so small.") : BuildKnobs.BatteryMass.Grow(build, factor),
        };
        GrowthCurve curve = GrowthStudy.Run(Wagtail, refused, [light], Conditions, (0.5, 2), 3)[0];
        Assert.Equal(["Nobody makes it so small.", "", "never gets there within the drill"], curve.Points.Select(point => point.Refusal));
        Assert.Equal([true, false, true], curve.Points.Select(point => double.IsNaN(point.Value)));
        // a battery of 20 kg cannot be lifted
        GrowthCurve heavy = GrowthStudy.Run(Wagtail, Battery with { Consequences = [] }, [Mass], Conditions, (1, 100), 3)[0];
        Assert.Contains("hover", heavy.Points[2].Refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void Ranges_and_numbers_of_points_that_make_no_curve_are_refused()
    {
        foreach ((double from, double to, int points) in new[] { (0, 2, 5), (-1, 2, 5), (2, 2, 5), (2, 1, 5), (double.NaN, 2, 5), (0.5, 2, 2), (0.5, 2, 1001) })
            Assert.Throws<ArgumentOutOfRangeException>(() => GrowthStudy.Run(Wagtail, Battery, [Mass], Conditions, (from, to), points));
        Assert.Throws<OperationCanceledException>(() => GrowthStudy.Run(Wagtail, Battery, [Mass], Conditions, points: 3, cancellation: new(true)));
    }

    /// <summary>700 g are met at 1 + 102/205 times; four rounds of eighths leave a 4096th of the bracket.</summary>
    [Fact]
    public void The_size_that_meets_a_target_is_found_to_a_four_thousandth()
    {
        GrowthCurve curve = ByHand(mass => mass, 0.5, 1, 2);
        GrowthMatch match = GrowthMatch.Solve(Wagtail, Battery, curve, "Tern", 0.7, Conditions);
        Assert.True(match.Found);
        Assert.Equal(1 + (102 / 205.0), match.Reached.Factor, 0.5001 / 4096);
        Assert.Equal(205 * match.Reached.Factor, match.Reached.Size, 1e-9);
        Assert.Equal(0.598 + (0.205 * (match.Reached.Factor - 1)), match.Reached.Value, 1e-9);
        Assert.Equal("Wagtail meets Tern's time to stop the roll of 700 ms at 1.50 times its battery mass (307 g): 700 ms.", match.Sentence);
    }

    /// <summary>A number that is least at the build's own size meets 100 g at 1 - 100/205 and at 1 + 100/205 times.</summary>
    [Theory]
    [InlineData(new[] { 0.5, 0.55, 1, 2 }, 1 + (100 / 205.0))]
    [InlineData(new[] { 0.4, 1, 1.45, 3 }, 1 - (100 / 205.0))]
    public void Of_two_sizes_the_one_nearest_to_the_builds_own_is_taken(double[] factors, double met)
    {
        GrowthMatch match = GrowthMatch.Solve(Wagtail, Battery, ByHand(mass => Math.Abs(mass - 0.598), factors), "Tern", 0.1, Conditions);
        Assert.Equal(met, match.Reached.Factor, 0.0005);
    }

    /// <summary>Between 1.5 and 1.6 times nothing is read; the target lies beyond.</summary>
    [Fact]
    public void Sizes_without_a_number_are_no_end_of_a_bracket()
    {
        GrowthMatch match = GrowthMatch.Solve(
            Wagtail, Battery, ByHand(mass => mass > 0.7005 && mass < 0.721 ? double.NaN : mass, 0.5, 1, 2), "Tern", 0.76, Conditions);
        Assert.Equal(1 + (162 / 205.0), match.Reached.Factor, 0.0005);
    }

    [Fact]
    public void A_size_of_the_curve_that_is_just_right_is_taken_itself()
    {
        GrowthCurve curve = ByHand(mass => mass, 0.5, 1, 2);
        foreach (GrowthPoint point in new[] { curve.Points[0], curve.Points[2] })
        {
            GrowthMatch match = GrowthMatch.Solve(Wagtail, Battery, curve, "Tern", point.Value, Conditions);
            Assert.Equal((true, point.Factor), (match.Found, match.Reached.Factor));
        }
    }

    private static Metric Reading(Func<double, double> ofMass) => MetricCatalogue.All.Single(metric => metric.Name == "stop_time") with
    {
        Drill = Glance,
        Read = log => ofMass(log.Unit.Unit.Craft.Mass),
    };

    private static GrowthCurve ByHand(Func<double, double> ofMass, params double[] factors) => GrowthReading.Read(
        "Wagtail", Battery, Reading(ofMass), [.. factors.Select(factor => new GrowthPoint(factor, 205 * factor, ofMass(0.598 + (0.205 * (factor - 1)))))], [], 0.05);

    private sealed class Told(List<double> told) : IProgress<double>
    {
        public void Report(double value)
        {
            lock (told) told.Add(value);
        }
    }
}
