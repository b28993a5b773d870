using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Uncertainty;

namespace Simfeel.Studies.Tests.Uncertainty;

/// <summary>Which numbers are drawn, how, and what percentiles are told; builds of which one or two numbers are not known.</summary>
public class UncertainInputTests
{
    private static readonly StudyConditions Conditions = new(Starters.Air, Starters.Profile, new FieldConditions());
    private static readonly Metric Power = MetricCatalogue.All.Single(metric => metric.Name == "hover_power");

    /// <summary>
    /// Worked out apart, in Python with the constants of the published splitmix64 (its first five numbers after 1234567 being
    /// 6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821).
    /// </summary>
    [Theory]
    [InlineData(1, 0, "", 0.4669663109258259)]
    [InlineData(1, 0, "x", 0.5800938228143875)]
    [InlineData(1, 1, "x", 0.57359709178716)]
    [InlineData(2, 0, "x", 0.3693648755773576)]
    [InlineData(-1, -3, "motor.mass_g/A", 0.5561000851533475)]
    [InlineData(1234567, 0, "", 0.05161274672751376)]
    public void Uniform_numbers_are_those_of_the_published_mix(int seed, int count, string name, double number) =>
        Assert.Equal(number, SeededNumbers.Uniform(seed, count, name), 1e-15);

    /// <summary>The distribution's own inverse by hand: an eighth of a triangle lies below -0.5.</summary>
    [Theory]
    [InlineData(0, -1)]
    [InlineData(0.125, -0.5)]
    [InlineData(0.5, 0)]
    [InlineData(0.875, 0.5)]
    [InlineData(1, 1)]
    public void Triangles_by_hand(double uniform, double place) => Assert.Equal(place, SeededNumbers.Triangular(uniform), 1e-12);

    [Fact]
    public void Inputs_belong_to_one_build_or_both()
    {
        UncertainInputs inputs = new(Known(Stated("a", 1, 2, 3), Stated("b", 1, 2, 3), Estimated("c", 1, "rule"), Estimated("d", 1, "")), Known(Stated("b", 1, 2, 3), Estimated("c", 2, "rule"), Stated("d", 1, 2, 4), Stated("e", 1, 2, 3)));
        Assert.Equal(
            [
                new("a", InputOwner.A, "stated band"), new("b", InputOwner.Both, "stated band"), new("c", InputOwner.A, "rule"), new("c", InputOwner.B, "rule"),
                new("d", InputOwner.A, "default"), new("d", InputOwner.B, "stated band"), new("e", InputOwner.B, "stated band"),
            ],
            inputs.All);
        (Dictionary<string, double> a, Dictionary<string, double> b) = inputs.Draw(1, 0);
        Assert.Equal(["a", "b", "c", "d"], a.Keys.Order());
        Assert.Equal(["b", "c", "d", "e"], b.Keys.Order());
        Assert.Equal(a["b"], b["b"]);
        Assert.NotEqual(a["c"], b["c"]);
        // any one of the three ends that differs makes it another number
        foreach (BuildValue other in (BuildValue[])[Stated("b", 0.9, 2, 3), Stated("b", 1, 2.1, 3), Stated("b", 1, 2, 3.1)])
            Assert.Equal([InputOwner.A, InputOwner.B], new UncertainInputs(Known(Stated("b", 1, 2, 3)), Known(other)).All.Select(input => input.Owner));
    }

    /// <summary>
    /// A triangle's variance is 1/6 (any handbook of statistics), shared or not; two estimates of one rule have half of it in common, a
    /// stated band beside an estimate nothing.
    /// </summary>
    [Fact]
    public void Draws_have_the_variance_and_correlation_that_is_said()
    {
        UncertainInputs inputs = new(Known(Estimated("c", 1, "rule"), Stated("d", 1, 2, 3)), Known(Estimated("c", 2, "rule"), Estimated("d", 1, "rule")));
        List<double> ca = [], cb = [], da = [], db = [];
        for (int draw = 0; draw < 4000; draw++)
        {
            (Dictionary<string, double> a, Dictionary<string, double> b) = inputs.Draw(3, draw);
            ca.Add(a["c"]);
            cb.Add(b["c"]);
            da.Add(a["d"]);
            db.Add(b["d"]);
        }
        foreach (List<double> places in (List<double>[])[ca, cb, da, db])
        {
            Assert.Equal(0, places.Average(), 0.02);
            Assert.Equal(1.0 / 6, places.Average(place => place * place), 0.01);
            Assert.All(places, place => Assert.InRange(place, -1, 1));
        }
        Assert.Equal(0.5, MathNet.Numerics.Statistics.Correlation.Pearson(ca, cb), 0.05);
        Assert.Equal(0, MathNet.Numerics.Statistics.Correlation.Pearson(da, db), 0.05);
        Assert.Equal(0, MathNet.Numerics.Statistics.Correlation.Pearson(ca, da), 0.05);
        Assert.Equal(inputs.Draw(3, 7).A, inputs.Draw(3, 7).A);
        Assert.NotEqual(inputs.Draw(3, 7).A, inputs.Draw(4, 7).A);
    }

    /// <summary>Blades move in steps of half the way to an end, so that few rotor tables are needed.</summary>
    [Fact]
    public void Shapes_move_in_steps()
    {
        UncertainInputs inputs = new(Known(Stated("propeller.pitch_in", 4, 4.3, 4.5), Stated("propeller.mass_g", 4, 4.5, 5)), Known());
        Dictionary<string, double>[] draws = [.. Enumerable.Range(0, 300).Select(draw => inputs.Draw(1, draw).A)];
        Assert.Equal([-1, -0.5, 0, 0.5, 1], draws.Select(draw => draw["propeller.pitch_in"]).Distinct().Order());
        Assert.Equal(300, draws.Select(draw => draw["propeller.mass_g"]).Distinct().Count());
    }

    [Fact]
    public void An_end_moves_the_builds_that_own_the_input()
    {
        Check(InputOwner.A, true, false);
        Check(InputOwner.B, false, true);
        Check(InputOwner.Both, true, true);

        static void Check(InputOwner owner, bool ofA, bool ofB)
        {
            (Dictionary<string, double> a, Dictionary<string, double> b) = UncertainInputs.AtEnd(new("x", owner, ""), -1);
            Assert.Equal(ofA ? [new("x", -1)] : [], a);
            Assert.Equal(ofB ? [new("x", -1)] : [], b);
        }
    }

    [Theory]
    [InlineData(-1, 1, true)]
    [InlineData(0, 1, true)]
    [InlineData(-1, 0, true)]
    [InlineData(0.1, 1, false)]
    [InlineData(-1, -0.1, false)]
    public void A_band_may_cover_zero(double low, double high, bool covers)
    {
        Assert.Equal(covers, new Band(low, 0.3, high).CoversZero);
        Assert.Equal(3, new TornadoBar(new("x", InputOwner.A, ""), 1, -2).Swing);
    }

    /// <summary>
    /// Of 21 draws the 5th percentile, the median and the 95th are the second, the eleventh and the twentieth in order (straight between
    /// order statistics, the first at 0 and the last at 1); of 20 the 5th lies 0.95 of the way from first to second.
    /// </summary>
    [Theory]
    [InlineData(21)]
    [InlineData(20)]
    public void Percentiles_are_order_statistics(int draws)
    {
        (Build a, Build b) = Packs();
        double told = 0;
        UncertaintyStudy study = UncertaintyRun.Run(a, b, [Power], Conditions, draws, null, new Now(share => told = Math.Max(told, share)));
        UncertainInputs inputs = new(a, b);
        double[] ofA = Flown(a, n => inputs.Draw(Conditions.Field.Seed, n).A), ofB = Flown(b, n => inputs.Draw(Conditions.Field.Seed, n).B);
        UncertainMetric known = study.Of("hover_power")!;
        Check(known.A, ofA);
        Check(known.B, ofB);
        Check(known.Difference, [.. ofB.Zip(ofA, (x, y) => x - y)]);
        Assert.Equal((draws, draws, 0, Conditions.Field.Seed), (known.Draws, study.Draws, study.Refused, study.Seed));
        Assert.Equal(1, told, 1e-9);
        Assert.Empty(known.Tornado);
        Assert.Null(study.Of("stop_time"));
        Assert.Equal([new("battery.mass_g", InputOwner.A, "stated band"), new("battery.mass_g", InputOwner.B, "stated band")], study.Inputs);

        void Check(Band band, double[] values)
        {
            double[] sorted = [.. values.Order()];
            double low = draws == 21 ? sorted[1] : sorted[0] + (0.95 * (sorted[1] - sorted[0])), high = draws == 21 ? sorted[19] : sorted[18] + (0.05 * (sorted[19] - sorted[18]));
            Assert.Equal(low, band.Low, 1e-6 * Math.Abs(sorted[^1]) + 1e-6);
            Assert.Equal(draws == 21 ? sorted[10] : (sorted[9] + sorted[10]) / 2, band.Middle, 1e-6 * Math.Abs(sorted[^1]) + 1e-6);
            Assert.Equal(high, band.High, 1e-6 * Math.Abs(sorted[^1]) + 1e-6);
        }

        double[] Flown(Build build, Func<int, Dictionary<string, double>> places)
        {
            TunedUnit?[] units = [.. Enumerable.Range(0, draws).Select(n => Conditions.Tune(BuildVariation.Move(build, places(n)).Build!, out _))];
            return [.. MetricFlights.Read(units, [Power], Conditions with { Precision = Precision.Single }).Select(row => row[0])];
        }
    }

    /// <summary>A bar is the difference B - A with one input at either end: a heavier pack of B makes it larger, one of A smaller; B's band is twice as wide.</summary>
    [Fact]
    public void A_tornado_has_the_longest_bar_first()
    {
        (Build a, Build b) = Packs();
        UncertaintyStudy study = UncertaintyRun.Run(a, b, [Power], Conditions, 20, [Power]);
        IReadOnlyList<TornadoBar> bars = study.Of("hover_power")!.Tornado;
        Assert.Equal([InputOwner.B, InputOwner.A], bars.Select(bar => bar.Input.Owner));
        Assert.True(bars[0].AtHigh > 0 && bars[0].AtLow < 0);
        Assert.True(bars[1].AtHigh < 0 && bars[1].AtLow > 0);
        Assert.Equal(2, bars[0].Swing / bars[1].Swing, 0.1);
    }

    [Fact]
    public void Draws_are_twenty_at_least_and_a_hundred_thousand_at_most()
    {
        (Build a, Build b) = Packs();
        foreach (int draws in (int[])[19, 100_001])
            Assert.Throws<ArgumentOutOfRangeException>(() => UncertaintyRun.Run(a, b, [Power], Conditions, draws));
    }

    /// <summary>One craft whose pack weighs 205 g, once give or take 10 g, once give or take 20; nothing else of it is uncertain.</summary>
    private static (Build A, Build B) Packs() => (Pack(10), Pack(20));

    private static Build Pack(int band)
    {
        string text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "builds", "wagtail.toml"))
            .Replace("mass_g = { value = 205, source = \"measured\" }", $"mass_g = {{ low = {205 - band}, typical = 205, high = {205 + band} }}", StringComparison.Ordinal)
            .Replace("all_up_mass_g = 598", "# ", StringComparison.Ordinal);
        Build build = BuildReader.Parse(text, "pack.toml").Build!;
        return build with { Values = [.. build.Values.Where(value => value.Key == "battery.mass_g")] };
    }

    private static Build Known(params BuildValue[] values) => BuildReader.Read(Path.Combine(AppContext.BaseDirectory, "builds", "wagtail.toml")).Build! with { Values = values };

    private static BuildValue Stated(string key, double low, double typical, double high) => new(key, low, typical, high, "", ValueSource.Measured, "");

    private static BuildValue Estimated(string key, double typical, string rule) =>
        new(key, typical / 2, typical, 2 * typical, "", rule.Length > 0 ? ValueSource.Rule : ValueSource.Default, rule);

    private sealed class Now(Action<double> told) : IProgress<double>
    {
        private readonly Lock _one = new();

        public void Report(double value)
        {
            lock (_one) told(value);
        }
    }
}
