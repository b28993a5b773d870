using Simfeel.Builds;
using Simfeel.Studies.Growth;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Tests.Growth;

/// <summary>Where a curve is best, whether that lies inside, and how flat it is there; curves by hand.</summary>
public class GrowthReadingTests
{
    private const double None = double.NaN;

    [Theory]
    [InlineData("stop_time", new[] { None, 3, 2.06, 2, 2.09, 2.2, None }, 3, true, 2, 4)]
    [InlineData("stop_time", new[] { None, 1, 2, 3 }, 1, false, 1, 1)]
    [InlineData("stop_time", new[] { 3, 2, 1, None }, 2, false, 2, 2)]
    [InlineData("stop_time", new[] { 1, 1.01, 1.02, 2 }, 0, false, 0, 2)]
    [InlineData("stop_time", new[] { 2, 1.02, 1.01, 1 }, 3, false, 1, 3)]
    [InlineData("thrust_to_weight", new[] { 1, 4, 3.9, 2 }, 1, true, 1, 2)]
    public void The_best_size_and_how_flat_it_is(string metric, double[] values, int best, bool inner, int from, int to)
    {
        GrowthCurve curve = Read(metric, values);
        Assert.Equal(Factor(best), curve.Best!.Value.Factor);
        Assert.Equal(inner, curve.InnerOptimum);
        Assert.Equal((Factor(from), Factor(to)), curve.FlatRange);
        // the variant is the curve from the other end
        Assert.Equal(Factor(values.Length - 1 - best), curve.Variants[0].BestFactor);
    }

    [Theory]
    [InlineData("stop_time", new[] { None, None, None })]
    [InlineData("turn_radius", new[] { 1.0, 2, 3 })]
    public void Without_values_or_a_better_way_there_is_no_best(string metric, double[] values)
    {
        GrowthCurve curve = Read(metric, values);
        Assert.Null(curve.Best);
        Assert.False(curve.InnerOptimum);
        Assert.True(double.IsNaN(curve.FlatRange.From) && double.IsNaN(curve.Variants[0].BestFactor));
    }

    [Fact]
    public void A_group_grows_by_its_part_and_propellers_coarsely()
    {
        Assert.Equal(BuildKnobs.ArmLength, GrowthKnobs.Of(PartGroups.Frame));
        Assert.Equal(BuildKnobs.MotorVolume, GrowthKnobs.Of(PartGroups.BellInertia));
        Assert.Equal(BuildKnobs.PropellerDiameter, GrowthKnobs.Of(PartGroups.PropellerInertia));
        Assert.Equal(BuildKnobs.BatteryMass, GrowthKnobs.Of(PartGroups.Battery));
        Assert.Equal(GrowthKnobs.Points(BuildKnobs.PropellerDiameter), GrowthKnobs.Points(BuildKnobs.PropellerPitch));
        Assert.Equal(GrowthStudy.UsualPoints, GrowthKnobs.Points(BuildKnobs.MotorVolume));
        Assert.True(GrowthKnobs.Points(BuildKnobs.PropellerDiameter) < GrowthStudy.UsualPoints);
    }

    private static double Factor(int point) => 0.5 + (0.25 * point);

    private static GrowthCurve Read(string metric, double[] values) => GrowthReading.Read(
        "build", BuildKnobs.MotorVolume, MetricCatalogue.All.Single(known => known.Name == metric),
        [.. values.Select((value, n) => new GrowthPoint(Factor(n), n, value, double.IsNaN(value) ? "It does not fly." : ""))],
        [("all else stays", [.. values.Reverse()])], 0.05);
}
