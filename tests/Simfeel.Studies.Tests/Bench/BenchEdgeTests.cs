using Simfeel.Builds;
using Simfeel.Studies.Bench;
using Simfeel.Studies.Bench.Pages;
using Simfeel.Studies.Bench.Reading;
using Simfeel.Studies.Fit;

namespace Simfeel.Studies.Tests.Bench;

/// <summary>Each bound of what readings may be from both sides, with the whole sentence. Wagtail was weighed with 598 g, 205 g of it the pack.</summary>
public class BenchEdgeTests
{
    /// <summary>A tenth of 598 g is 59.8 g; the pack is 205 g, give or take 15 %: 174 to 236 g.</summary>
    [Theory]
    [InlineData(539, "")]
    [InlineData(538, "The craft weighs 538 g and the build 598 g: is it the same craft, ready to fly?")]
    [InlineData(657, "")]
    [InlineData(659, "The craft weighs 659 g and the build 598 g: is it the same craft, ready to fly?")]
    [InlineData(425, "The craft weighs 425 g and the build 598 g: is it the same craft, ready to fly?")]
    [InlineData(423, "The craft is 175 g lighter than the build, about the battery's mass: was the pack strapped in?")]
    [InlineData(363, "The craft is 235 g lighter than the build, about the battery's mass: was the pack strapped in?")]
    [InlineData(361, "The craft weighs 361 g and the build 598 g: is it the same craft, ready to fly?")]
    public void A_mass_of_another_craft(double grams, string words) => Check(words, $"[mass]\nmass_g = {grams}");

    [Theory]
    [InlineData("Wagtail", "")]
    [InlineData(" wagTAIL ", "")]
    [InlineData("", "")]
    [InlineData("Wag", "The readings are of \"Wag\" and the build is \"Wagtail\".")]
    public void A_name_of_another_craft(string name, string words) => Check(words, $"build = \"{name}\"\n[mass]\nmass_g = 598");

    /// <summary>
    /// Two percent of 598 g are 12.0 g. Scales of 5 g each beside one of 1 g: three times sqrt(25 + 25 + 1) are 21.4 g; of 1 g each beside one
    /// of 5 g: 15.6 g.
    /// </summary>
    [Theory]
    [InlineData(586.1, 1, 1, "")]
    [InlineData(585.9, 1, 1, "The two scales of [balance_x] show 586 g together and the craft weighs 598 g: were the supports tared, and did nothing else carry?")]
    [InlineData(609.9, 1, 1, "")]
    [InlineData(610.1, 1, 1, "The two scales of [balance_x] show 610 g together and the craft weighs 598 g: were the supports tared, and did nothing else carry?")]
    [InlineData(576.7, 1, 5, "")]
    [InlineData(576.4, 1, 5, "The two scales of [balance_x] show 576 g together and the craft weighs 598 g: were the supports tared, and did nothing else carry?")]
    [InlineData(582.5, 5, 1, "")]
    [InlineData(582.3, 5, 1, "The two scales of [balance_x] show 582 g together and the craft weighs 598 g: were the supports tared, and did nothing else carry?")]
    public void Two_scales_carry_the_whole_craft(double sum, double scale, double each, string words) =>
        Check(words, $"[mass]\nmass_g = 598\nmass_pm_g = {scale}\n[balance_x]\nfront_g = {sum / 2}\nrear_g = {sum / 2}\nfront_at_mm = 60\nrear_at_mm = -60\nscale_pm_g = {each}");

    /// <summary>
    /// Motors stand 225 / (2 sqrt 2) = 79.55 mm from the middle; one reading to a millimetre has a band of 1.96 mm. Down, the craft goes from
    /// the pack's top to the lowest of the frame.
    /// </summary>
    [Theory]
    [InlineData("x", 81.4, false)]
    [InlineData("x", 81.6, true)]
    [InlineData("x", -81.4, false)]
    [InlineData("x", -81.6, true)]
    [InlineData("y", 81.4, false)]
    [InlineData("y", -81.6, true)]
    public void A_balance_point_lies_within_the_motors(string axis, double millimetres, bool outside) =>
        Check(outside ? $"The balance point at {axis} = {millimetres:F1} mm lies outside the craft (-80 to 80 mm): check sign and origin, x forward, y right, z down, from the middle of the bottom plate." : "", $"[balance_{axis}]\nedge_mm = {millimetres}");

    [Fact]
    public void A_balance_point_lies_between_top_and_bottom()
    {
        AssembledBuild build = BenchCases.Wagtail;
        // boxes, cylinders and balls by hand: half their height to either side of their middle
        double[] tops = [.. build.Parts.Select(part => part.Shape.p_OC.Z - Half(part.Shape))], bottoms = [.. build.Parts.Select(part => part.Shape.p_OC.Z + Half(part.Shape))];
        double top = 1e3 * tops.Min(), bottom = 1e3 * bottoms.Max();
        // the pack of 48 mm lies on the plates, 28 mm apart
        Assert.InRange(top, -90, -76);
        Assert.InRange(bottom, 0, 10);
        foreach ((double place, bool outside) in ((double, bool)[])[(top - 1.88, false), (top - 2.12, true), (bottom + 1.88, false), (bottom + 2.12, true)])
            Check(outside ? $"The balance point at z = {place:F1} mm lies outside the craft ({top:F0} to {bottom:F0} mm): check sign and origin, x forward, y right, z down, from the middle of the bottom plate." : "", $"[balance_z]\nedge_mm = {place:F4}");

        static double Half(Simfeel.Builds.PartShape shape) => shape.Kind switch
        {
            ShapeKind.Box or ShapeKind.Cylinder or ShapeKind.Ring => shape.Size.Z / 2,
            ShapeKind.Sphere => shape.Size.X / 2,
            _ => 0,
        };
    }

    /// <summary>
    /// About a body's third axis it has at most the sum of the two other inertias (any book of mechanics): 1.447 and 1.688 make 3.135 g m2.
    /// Within the band of the swing, 1.7 %, that is a doubt, beyond it a fault.
    /// </summary>
    [Theory]
    [InlineData(3.13, "")]
    [InlineData(3.15, "These inertias (yaw 3.150, pitch 1.688 (model), roll 1.447 (model) g m2) are at the edge of what a body can have, though within their bands: none can be more than the sum of the two others.")]
    [InlineData(3.25, "No body has these inertias (yaw 3.250, pitch 1.688 (model), roll 1.447 (model) g m2): none can be more than the sum of the two others. Check axes, wires and the number of swings.")]
    public void No_inertia_exceeds_the_sum_of_the_others(double yaw, string words) => Check(words, "[mass]\nmass_g = 598\n" + Swing(BenchAxis.Z, 1e-3 * yaw));

    [Fact]
    public void Inertias_of_the_model_alone_are_not_doubted() => Check("", "[mass]\nmass_g = 598");

    /// <summary>Twice or half the model's 1.447 g m2 is a swing gone wrong.</summary>
    [Theory]
    [InlineData(2.88, false)]
    [InlineData(2.91, true)]
    [InlineData(0.73, false)]
    [InlineData(0.72, true)]
    public void An_inertia_far_from_the_model_is_doubted(double roll, bool doubted)
    {
        IReadOnlyList<string> findings = BenchPlausibility.Of(BenchCases.Report("[mass]\nmass_g = 598\n" + Swing(BenchAxis.X, 1e-3 * roll)));
        Assert.Equal(doubted, findings.Contains("Inertia, roll: Caution: that is far from what the parts say. Check the axis, the units and the time of one swing."));
    }

    /// <summary>Twenty unknown keys and tables are named, then it is enough.</summary>
    [Theory]
    [InlineData(19, 1, 20)]
    [InlineData(20, 0, 20)]
    [InlineData(0, 20, 20)]
    [InlineData(21, 0, 20)]
    [InlineData(0, 21, 20)]
    [InlineData(15, 15, 20)]
    [InlineData(3, 2, 5)]
    public void What_is_unknown_is_named_up_to_twenty_times(int keys, int tables, int named)
    {
        string text = "format = 1\n[mass]\nmass_g = 598\n" + string.Concat(Enumerable.Range(0, keys).Select(n => $"zzz{n} = 1\n")) + string.Concat(Enumerable.Range(0, tables).Select(n => $"[qqq{n}]\n"));
        BenchResult result = BenchReader.Parse(text, "mine-bench.toml");
        Assert.Equal(named, result.Diagnostics.Count);
        Assert.All(result.Diagnostics, diagnostic => Assert.Matches("There is no such (key|table); it is ignored.", diagnostic.Message));
        Assert.NotNull(result.Readings);
    }

    /// <summary>A format that is no number is one error, not a missing one too; text of 2000 letters is a name, of one more none.</summary>
    [Fact]
    public void Texts_and_formats_are_what_they_are()
    {
        Assert.Equal("format", Assert.Single(BenchReader.Parse("format = \"one\"\n[mass]\nmass_g = 598", "b.toml").Diagnostics).Key);
        Assert.Equal(2000, BenchCases.Read($"build = \"{new string('x', 2000)}\"\n[mass]\nmass_g = 598").BuildName.Length);
        Assert.Single(BenchReader.Parse($"format = 1\nbuild = \"{new string('x', 2001)}\"\n[mass]\nmass_g = 598", "b.toml").Diagnostics);
        Assert.Single(BenchReader.Parse("format = 1\nbuild = \"x\\u0007\"\n[mass]\nmass_g = 598", "b.toml").Diagnostics);
        // a list of twenty is the longest
        Assert.Equal(20, BenchCases.Read($"[balance_x]\nedge_mm = [{string.Join(", ", Enumerable.Repeat("1.0", 20))}]").Balances.Values.OfType<EdgeReadings>().Single().Places.Count);
        Assert.Contains("There are 21 readings", Assert.Single(BenchReader.Parse($"format = 1\n[balance_x]\nedge_mm = [{string.Join(", ", Enumerable.Repeat("1.0", 21))}]", "b.toml").Diagnostics).Message, StringComparison.Ordinal);
    }

    /// <summary>Supports 20 mm apart are far enough; less is not, whichever way.</summary>
    [Theory]
    [InlineData(10, -10, "")]
    [InlineData(10, -9.9, "10.1 to 1000 mm")]
    [InlineData(10, 60, "80 to 1000 mm")]
    public void Supports_stand_apart(double front, double rear, string allowed)
    {
        BenchResult result = BenchReader.Parse($"format = 1\n[balance_x]\nfront_g = 300\nrear_g = 298\nfront_at_mm = {front}\nrear_at_mm = {rear}", "b.toml");
        if (allowed.Length == 0) Assert.Empty(result.Diagnostics);
        else Assert.Contains($"This support must stand at least 20 mm ahead of the other (or to its right); allowed is {allowed}.", Assert.Single(result.Diagnostics).Message, StringComparison.Ordinal);
    }

    /// <summary>Of two readings beside an edge the first of the table's own order is named; wires may not be as far apart as they are long.</summary>
    [Fact]
    public void The_first_wrong_key_is_named()
    {
        Assert.Equal("balance_x.front_g", Assert.Single(BenchReader.Parse("format = 1\n[balance_x]\nrear_at_mm = -60\nfront_g = 300\nedge_mm = 3", "b.toml").Diagnostics).Key);
        Assert.Contains("allowed is 10 to 500 mm", Assert.Single(BenchReader.Parse("format = 1\n[roll]\nspacing_mm = 500\nlength_mm = 500\ntimes_s = 30", "b.toml").Diagnostics).Message, StringComparison.Ordinal);
    }

    /// <summary>A stated error of the scale counts; else a gram, or 0.2 % of a light craft.</summary>
    [Fact]
    public void A_scale_has_a_gram_or_less()
    {
        Assert.Equal(1e-3, BenchCases.Read("[mass]\nmass_g = 598").Mass!.Value.Sigma, 1e-12);
        Assert.Equal(0.2e-3, BenchCases.Read("[mass]\nmass_g = 100").Mass!.Value.Sigma, 1e-12);
        Assert.Equal(7e-3, BenchCases.Read("[mass]\nmass_g = 598\nmass_pm_g = 7").Mass!.Value.Sigma, 1e-12);
        // the build's weighed mass stands in with the same error: what it costs shows in the band
        BenchReport borrowed = BenchCases.Report(Swing(BenchAxis.X, 1.447e-3)), weighed = BenchCases.Report("[mass]\nmass_g = 598\n" + Swing(BenchAxis.X, 1.447e-3));
        Assert.Equal(BenchCases.Of(weighed, BenchKind.Inertia, BenchAxis.X).Measured!.Sigma, BenchCases.Of(borrowed, BenchKind.Inertia, BenchAxis.X).Measured!.Sigma, 1e-12);
        Assert.Contains("The readings have no mass: the swing tests are worked out with the build's weighed 598 g.", BenchWords.Notes(borrowed));
        Assert.DoesNotContain(BenchWords.Notes(weighed), note => note.StartsWith("The readings have no mass", StringComparison.Ordinal));
    }

    /// <summary>A light craft that was weighed before stands in with 0.2 % of its mass, as a scale would.</summary>
    [Fact]
    public void A_light_craft_has_a_finer_scale()
    {
        double mass = BenchCases.Starter("sanderling").Craft.Mass, inertia = BenchCases.Starter("sanderling").Craft.I_BBcm_B.M00;
        Assert.InRange(mass, 0.01, 0.4);
        AssembledBuild weighed = BenchCases.Assemble($"{BenchCases.TextOf("sanderling")}\n[measured]\nall_up_mass_g = {1e3 * mass:F3}\n");
        double time = 20 * SwingTest.ExactPeriod(inertia, mass, 0.1, 1, 10 * Math.PI / 180, 9.80665);
        string swing = $"[roll]\nspacing_mm = 100\nlength_mm = 1000\ntimes_s = [{time:F5}, {time:F5}, {time:F5}]\n";
        BenchReport borrowed = BenchCases.Report(swing, weighed), measured = BenchCases.Report($"[mass]\nmass_g = {1e3 * mass:F3}\n" + swing, weighed);
        Assert.True(borrowed.MassFromBuild && !measured.MassFromBuild);
        Assert.Equal(1, BenchCases.Of(borrowed, BenchKind.Inertia, BenchAxis.X).Measured!.Sigma / BenchCases.Of(measured, BenchKind.Inertia, BenchAxis.X).Measured!.Sigma, 1e-6);
    }

    [Fact]
    public void A_page_on_which_all_agrees_says_so()
    {
        const string words = "Nothing to look at: every measured number agrees.";
        Assert.Contains(words, BenchResultPage.Markdown(BenchCases.Report("[mass]\nmass_g = 598")), StringComparison.Ordinal);
        Assert.DoesNotContain(words, BenchResultPage.Markdown(BenchCases.Report("[mass]\nmass_g = 612")), StringComparison.Ordinal);
    }

    /// <summary>A large craft hangs on wires longer than a metre; the worksheet gives them in millimetres.</summary>
    [Fact]
    public void Wires_of_a_large_craft_are_long()
    {
        BenchPlan plan = BenchPlan.Of(BenchCases.Starter("gannet"));
        string line = BenchWorksheet.Markdown(plan).Split('\n').Single(row => row.StartsWith("| free length of the wires, L | mm | 1", StringComparison.Ordinal) || row.StartsWith("| free length of the wires, L | mm | 2", StringComparison.Ordinal));
        Assert.Contains(plan.Tests, test => test.Length > 1);
        Assert.Equal($"| free length of the wires, L | mm | {string.Join(" | ", plan.Tests.Select(test => $"{1000 * test.Length:F0}"))} |", line.TrimEnd());
    }

    private static void Check(string words, string text)
    {
        IReadOnlyList<string> findings = BenchPlausibility.Of(BenchCases.Report(text));
        if (words.Length == 0) Assert.Empty(findings);
        else Assert.Equal(words, findings[0]);
    }

    /// <summary>Three timings without scatter of a swing with a given inertia, kg m^2.</summary>
    private static string Swing(BenchAxis axis, double inertia)
    {
        double time = 20 * SwingTest.ExactPeriod(inertia, 0.598, 0.17, 1, 10 * Math.PI / 180, 9.80665);
        return $"[{axis.Turn()}]\nspacing_mm = 170\nlength_mm = 1000\ntimes_s = [{time:F5}, {time:F5}, {time:F5}]\n";
    }
}
