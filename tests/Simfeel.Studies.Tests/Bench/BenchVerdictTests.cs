using Simfeel.Builds;
using Simfeel.Builds.Format;
using Simfeel.Builds.Writing;
using Simfeel.Studies.Bench;
using Simfeel.Studies.Fit;

namespace Simfeel.Studies.Tests.Bench;

/// <summary>Verdicts name the part that is at fault; what cannot be true is seen.</summary>
public class BenchVerdictTests
{
    /// <summary>The real craft has heavier motors than its build file says: mass and inertias say so, and the verdict names them.</summary>
    [Fact]
    public void Heavier_motors_are_found()
    {
        AssembledBuild model = BenchCases.Assemble(Unweighed);
        AssembledBuild real = BenchCases.Assemble(Unweighed.Replace("mass_g = { value = 33, source = \"measured\" }", "mass_g = 38", StringComparison.Ordinal));
        BenchReport report = BenchCases.Report($"[mass]\nmass_g = {1e3 * real.Craft.Mass:F1}\n" + Swing(real, BenchAxis.X), model);
        BenchQuantity roll = BenchCases.Of(report, BenchKind.Inertia, BenchAxis.X);
        Assert.False(roll.Agrees);
        Assert.Equal(100 * ((model.Craft.I_BBcm_B.M00 / real.Craft.I_BBcm_B.M00) - 1), roll.Percent, 2);
        string verdict = BenchVerdicts.Of(report, roll);
        Assert.Matches(@"^Inertia, roll: the model is [89]\.\d % low: look at the motors \(6\d % of it: motor\.mass_g", verdict);
        // 38 g for 33 g is 15 %
        Assert.Contains("The motors alone would have to weigh 15 % more.", verdict, StringComparison.Ordinal);
        Assert.Contains("only estimated", BenchVerdicts.Of(report, report.Quantities[0]), StringComparison.Ordinal);
    }

    [Fact]
    public void A_pack_that_sits_elsewhere_is_found()
    {
        AssembledBuild model = BenchCases.Wagtail, real = BenchCases.Assemble(BenchCases.TextOf("wagtail").Replace("x_mm = -4 ", "x_mm = 11 ", StringComparison.Ordinal));
        BenchReport report = BenchCases.Report($"[balance_x]\nedge_mm = {1e3 * real.p_OBcm.X:F3}", model);
        string verdict = BenchVerdicts.Of(report, BenchCases.Of(report, BenchKind.Balance, BenchAxis.X));
        Assert.Contains("5.1 mm too far back: look at battery.x_mm", verdict, StringComparison.Ordinal);
        Assert.Contains("so 15 mm would explain it", verdict, StringComparison.Ordinal);
    }

    [Fact]
    public void Agreement_and_earlier_measurements_are_told_apart()
    {
        BenchReport report = BenchCases.Report("[mass]\nmass_g = 598.5\n" + Swing(BenchCases.Wagtail, BenchAxis.Z));
        Assert.Equal("Mass: the build's earlier measurement (measured.all_up_mass_g) agrees within the band.", BenchVerdicts.Of(report, report.Quantities[0]));
        Assert.Equal("Inertia, yaw: the model agrees within the band.", BenchVerdicts.Of(report, BenchCases.Of(report, BenchKind.Inertia, BenchAxis.Z)));
        Assert.Equal("Inertia, roll: not measured.", BenchVerdicts.Of(report, BenchCases.Of(report, BenchKind.Inertia, BenchAxis.X)));
        Assert.Empty(BenchPlausibility.Of(report));
        report = BenchCases.Report("[mass]\nmass_g = 612");
        Assert.Contains("2.3 % low. Was something changed on the craft since?", BenchVerdicts.Of(report, report.Quantities[0]), StringComparison.Ordinal);
    }

    public static TheoryData<string, string> Doubts => new()
    {
        { "build = \"Curlew\"\n[mass]\nmass_g = 598", "The readings are of \"Curlew\"" },
        { "[mass]\nmass_g = 395", "was the pack strapped in?" },
        { "[mass]\nmass_g = 760", "is it the same craft" },
        { "[mass]\nmass_g = 598\n[balance_x]\nfront_g = 240\nrear_g = 250\nfront_at_mm = 60\nrear_at_mm = -60", "show 490 g together" },
        { "[balance_x]\nedge_mm = 95", "lies outside the craft (-80 to 80 mm)" },
        { "[balance_z]\nedge_mm = 30", "x forward, y right, z down" },
        { "[mass]\nmass_g = 598\n[yaw]\nspacing_mm = 170\nlength_mm = 1000\ntimes_s = [36.5, 36.6, 36.4]", "No body has these inertias (yaw 3.561, pitch 1.688 (model), roll 1.447 (model) g m2)" },
        { "[mass]\nmass_g = 598\n[roll]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = [15.2, 15.3, 15.2]", "Check the axis, the units" },
    };

    [Theory]
    [MemberData(nameof(Doubts))]
    public void What_cannot_be_true_is_seen(string text, string words) =>
        Assert.Contains(BenchPlausibility.Of(BenchCases.Report(text)), finding => finding.Contains(words, StringComparison.Ordinal));

    /// <summary>Every key that a verdict can name is one of the format's.</summary>
    [Fact]
    public void Named_keys_exist_and_every_part_of_every_starter_has_one()
    {
        Assert.All(PartShare.AllKeys, key => Assert.NotNull(BuildFormat.Find(key)));
        foreach (string name in Simfeel.Flight.Tests.Starters.Names)
        {
            AssembledBuild build = BenchCases.Starter(name);
            IReadOnlyList<PartShare> parts = PartShare.Of(build);
            Assert.Equal(build.Craft.Mass, parts.Sum(part => part.Whole.Mass), 12);
            Assert.All(parts, part => Assert.NotEmpty(part.MassKeys));
            Assert.Equal(build.Craft.I_BBcm_B.M00, parts.Sum(part => part.InertiaIn(build, BenchAxis.X)), 12);
        }
    }

    /// <summary>The copy flies with what was measured.</summary>
    [Fact]
    public void Measured_numbers_go_into_a_copy()
    {
        BenchReport report = BenchCases.Report("[mass]\nmass_g = 604\n[balance_x]\nedge_mm = [1, 2, 3]\n" + Swing(BenchCases.Wagtail, BenchAxis.X, 1.03));
        AssembledBuild copy = BenchCases.Assemble(BuildWriter.WithMeasured(BenchCases.TextOf("wagtail"), report.Numbers()));
        Assert.Equal(0.604, copy.Craft.Mass, 9);
        Assert.Equal(0.002, copy.p_OBcm.X, 9);
        double roll = BenchCases.Of(report, BenchKind.Inertia, BenchAxis.X).Measured!.Value;
        Assert.Equal(1, copy.Craft.I_BBcm_B.M00 / roll, 3);
        BuildValue written = copy.Values.Single(value => value.Key == "measured.all_up_mass_g");
        Assert.Equal((ValueSource.Measured, true), (written.Source, written.Low < 604 && written.High > 604));
    }

    private static string Unweighed => BenchCases.TextOf("wagtail").Replace("all_up_mass_g = 598", "# ", StringComparison.Ordinal);

    /// <summary>Readings without error of a craft's swings; its inertia may be taken larger.</summary>
    private static string Swing(AssembledBuild craft, BenchAxis axis, double factor = 1)
    {
        double mass = craft.Craft.Mass, inertia = factor * axis.Moment(craft.Craft.I_BBcm_B);
        double time = 20 * SwingTest.ExactPeriod(inertia, mass, 0.17, 1, 10 * Math.PI / 180, 9.80665);
        return $"[{axis.Turn()}]\nspacing_mm = 170\nlength_mm = 1000\ntimes_s = [{time:F5}, {time:F5}, {time:F5}]\n";
    }
}
