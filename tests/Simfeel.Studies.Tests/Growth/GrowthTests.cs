using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Flight.Tests;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Growth;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Tests.Growth;

public class GrowthTests
{
    private static readonly StudyConditions Conditions = new(Starters.Air, Starters.Profile, new FieldConditions());
    private static readonly Build Wagtail = BuildReader.Read(Path.Combine(AppContext.BaseDirectory, "builds", "wagtail.toml")).Build!;
    private static readonly Metric StopTime = Named("stop_time");

    private static readonly Lazy<GrowthCurve> Curve = new(() =>
        GrowthStudy.Run(Wagtail, BuildKnobs.MotorVolume, [StopTime], Conditions, (0.4, 2.6), 11)[0]);

    /// <summary>
    /// More motor shortens the stop only up to a point (common practice). Where it ends, bell inertia, mass at the arm ends and the current
    /// limit each have a part in it: without any of them the largest motor stops sooner.
    /// </summary>
    [Fact]
    public void Stop_time_over_stator_volume_has_an_inner_optimum()
    {
        GrowthCurve curve = Curve.Value;
        Assert.True(curve.InnerOptimum);
        Assert.InRange(curve.Best!.Value.Factor, 0.8, 2);
        Assert.True(curve.Points[0].Value > 1.2 * curve.Best.Value.Value);
        Assert.True(curve.Points[^1].Value > 1.05 * curve.Best.Value.Value);
        Assert.Equal(3, curve.Variants.Count);
        foreach (GrowthVariant variant in curve.Variants)
        {
            Assert.True(variant.Values[^1] < curve.Points[^1].Value);
            Assert.Contains(curve.Sentences, sentence => sentence.Contains(variant.Name, StringComparison.Ordinal));
        }
    }

    /// <summary>Three rotors that spin in turns about fixed shafts cannot hold roll, pitch and yaw at once: three thrusts for four wishes.</summary>
    [Fact]
    public void Where_nothing_flies_the_reason_is_said_as_one_sentence()
    {
        string text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "builds", "kittiwake.toml"));
        int first = text.IndexOf("  [ 48", StringComparison.Ordinal);
        Build three = BuildReader.Parse(text.Remove(first, text.IndexOf('\n', first) + 1 - first), "three").Build!;

        GrowthCurve curve = GrowthStudy.Run(three, BuildKnobs.MotorVolume, [StopTime], Conditions, (0.9, 1.1), 3)[0];

        Assert.Null(curve.Best);
        string said = curve.Sentences[0];
        Assert.Contains("cannot turn the craft about roll, pitch and yaw", said, StringComparison.Ordinal);
        Assert.EndsWith("ways.", said, StringComparison.Ordinal);
        Assert.DoesNotContain("..", said, StringComparison.Ordinal);
    }

    [Fact]
    public void The_build_itself_is_a_point_of_its_curve() =>
        Assert.Equal(
            MetricFlights.Read([Starters.Get("wagtail")], [StopTime], Conditions)[0][0],
            Curve.Value.Points.Single(point => point.Factor == 1).Value);

    [Fact]
    public void A_like_build_is_found_or_told_what_is_in_the_way()
    {
        GrowthMatch found = GrowthMatch.Solve(Wagtail, BuildKnobs.MotorVolume, Curve.Value, "Other", 0.07, Conditions);
        Assert.True(found.Found);
        Assert.Equal(0.07, found.Reached.Value, 0.0007);
        Assert.Equal(found.Reached.Value, GrowthStudy.Run(Wagtail, BuildKnobs.MotorVolume, [StopTime], Conditions, (found.Reached.Factor, found.Reached.Factor * 1.1), 3)[0].Points[0].Value, 1e-9);
        GrowthMatch none = GrowthMatch.Solve(Wagtail, BuildKnobs.MotorVolume, Curve.Value, "Other", 0.020, Conditions);
        Assert.False(none.Found);
        Assert.Equal(Curve.Value.Best!.Value.Factor, none.Reached.Factor);
        Assert.Contains("What stands in the way most", none.Sentence, StringComparison.Ordinal);
        Assert.False(GrowthMatch.Solve(Wagtail, BuildKnobs.MotorVolume, Curve.Value, "Other", double.NaN, Conditions).Found);
    }

    [Fact]
    public void Matters_of_taste_have_no_best_and_overlaps_no_value()
    {
        GrowthCurve taste = GrowthStudy.Run(Wagtail, BuildKnobs.ArmLength, [Named("hover_rotor_speed")], Conditions, (0.6, 1.2), 3)[0];
        Assert.Null(taste.Best);
        Assert.True(double.IsNaN(taste.Points[0].Value));
        Assert.Contains("overlap", taste.Points[0].Refusal, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => GrowthStudy.Run(Wagtail, BuildKnobs.ArmLength, [StopTime], Conditions, (2, 1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => GrowthStudy.Run(Wagtail, BuildKnobs.ArmLength, [StopTime], Conditions, (1, 2), 2));
    }

    private static Metric Named(string name) => MetricCatalogue.All.Single(metric => metric.Name == name);
}
