using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Uncertainty;

namespace Simfeel.Studies.Tests.Uncertainty;

public class UncertaintyTests
{
    private static readonly StudyConditions Conditions = new(Starters.Air, Starters.Profile, new FieldConditions());
    private static readonly Build Wagtail = Read("wagtail"), Curlew = Read("curlew");
    private static readonly Metric[] Metrics = [Named("stop_time"), Named("hover_power")];

    /// <summary>Symmetric triangular distribution on -1 to 1: 5th percentile sqrt(0.1) - 1, variance 1/6 (any handbook of statistics).</summary>
    [Fact]
    public void Draws_are_triangular()
    {
        double[] draws = [.. Enumerable.Range(0, 20_000).Select(n => SeededNumbers.Triangular(SeededNumbers.Uniform(1, n, "x"))).Order()];
        Assert.Equal(Math.Sqrt(0.1) - 1, draws[1000], 0.015);
        Assert.Equal(0, draws.Average(), 0.01);
        Assert.Equal(1.0 / 6, draws.Average(x => x * x), 0.005);
    }

    /// <summary>Two estimates by one rule have half of their variance in common; a number that both builds share is one number.</summary>
    [Fact]
    public void Estimates_by_one_rule_move_together_by_half()
    {
        UncertainInputs inputs = new(Wagtail, Curlew);
        string[] both = [.. inputs.All.GroupBy(input => input.Key).Where(group => group.Count() == 2).Select(group => group.Key)];
        Assert.Contains("motor.winding_resistance_mohm", both);
        List<double> a = [], b = [];
        for (int draw = 0; draw < 3000; draw++)
        {
            (Dictionary<string, double> ofA, Dictionary<string, double> ofB) = inputs.Draw(1, draw);
            a.Add(ofA["motor.winding_resistance_mohm"]);
            b.Add(ofB["motor.winding_resistance_mohm"]);
        }
        Assert.Equal(UncertainInputs.SharedShare, MathNet.Numerics.Statistics.Correlation.Pearson(a, b), 0.05);
        Assert.All(a, place => Assert.InRange(place, -1, 1));
    }

    [Fact]
    public void A_build_against_itself_never_differs()
    {
        UncertaintyStudy study = UncertaintyRun.Run(Wagtail, Wagtail, Metrics, Conditions, 20);
        Assert.All(study.Inputs, input => Assert.Equal(InputOwner.Both, input.Owner));
        foreach (UncertainMetric known in study.Metrics)
        {
            Assert.Equal(new Band(0, 0, 0), known.Difference);
            Assert.True(known.Undecided);
            Assert.True(known.A.High > known.A.Low);
        }
    }

    [Fact]
    public void Bands_are_the_same_twice_hold_the_typical_value_and_know_their_tornado()
    {
        UncertaintyStudy one = UncertaintyRun.Run(Wagtail, Curlew, Metrics, Conditions, 40, [Metrics[0]]);
        UncertaintyStudy two = UncertaintyRun.Run(Wagtail, Curlew, Metrics, Conditions, 40);
        double[][] typical = MetricFlights.Read([Starters.Get("wagtail"), Starters.Get("curlew")], Metrics, Conditions);
        for (int m = 0; m < Metrics.Length; m++)
        {
            Assert.Equal(one.Metrics[m].Difference, two.Metrics[m].Difference);
            Assert.Equal(40, one.Metrics[m].Draws);
            Assert.InRange(typical[0][m], one.Metrics[m].A.Low, one.Metrics[m].A.High);
        }
        IReadOnlyList<TornadoBar> bars = one.Metrics[0].Tornado;
        Assert.Empty(one.Metrics[1].Tornado);
        Assert.Equal(bars.Select(bar => bar.Swing).OrderDescending(), bars.Select(bar => bar.Swing));
        // the widest bar is no wider than what all inputs together do
        Assert.InRange(bars[0].Swing, 1e-4, 2 * (one.Metrics[0].Difference.High - one.Metrics[0].Difference.Low));
        Assert.Equal(0, one.Refused);
    }

    /// <summary>The usual physics step against an eighth of it, with the same controller, on the smallest, a usual and a large craft.</summary>
    [Theory]
    [InlineData("dunlin")]
    [InlineData("wagtail")]
    [InlineData("gannet")]
    public void A_shorter_physics_step_hardly_moves_a_metric(string name)
    {
        Metric[] metrics = [.. MetricCatalogue.All.Where(metric => DrillCatalogue.Scripted.Contains(metric.Drill))];
        PilotProfile usual = Conditions.Profile;
        StudyConditions fine = Conditions with
        {
            Profile = usual with
            {
                StepRate = 8 * usual.StepRate,
                StepsPerLoop = 8 * usual.StepsPerLoop,
                StepsPerStickReading = 8 * usual.StepsPerStickReading,
            },
        };
        double[] full = MetricFlights.Read([fine.Tune(Read(name), out _)], metrics, fine)[0];
        double[] fast = MetricFlights.Read([Conditions.Tune(Read(name), out _)], metrics, Conditions)[0];
        for (int m = 0; m < metrics.Length; m++)
        {
            if (double.IsNaN(full[m])) Assert.True(double.IsNaN(fast[m]));
            else Assert.Equal(full[m], fast[m], Math.Max(1e-3 * Math.Abs(full[m]), 1e-3 * metrics[m].Floor));
        }
    }

    private static Metric Named(string name) => MetricCatalogue.All.Single(metric => metric.Name == name);

    private static Build Read(string name) => BuildReader.Read(Path.Combine(AppContext.BaseDirectory, "builds", name + ".toml")).Build!;
}
