using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Flight.Tests;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Sweep;

namespace Simfeel.Studies.Tests.Sweep;

/// <summary>What a plan makes of a build, row by row, and which of its blocks are flown; a hovering power for a number.</summary>
public class SweepBuildTests
{
    private static readonly StudyConditions Conditions = new(Starters.Air, Starters.Profile, new FieldConditions());
    private static readonly Build Wagtail = BuildReader.Read(Path.Combine(AppContext.BaseDirectory, "builds", "wagtail.toml")).Build!;

    [Theory]
    [InlineData("motor.mass_g", 20, 40, 5, null)]
    [InlineData("propeller.pitch", 0.9, 1.1, 25, null)]
    [InlineData("propeller.pitch", 0.9, 1.1, 26, "propeller.pitch has 26 grid points; a propeller's shape takes at most 25, since each needs a rotor table of its own.")]
    [InlineData("motor.volume", 0.9, 1.1, 26, null)]
    [InlineData("motor.volume", 0, 1.1, 5, "motor.volume is a factor of the part's own size and must be above 0.")]
    [InlineData("battery.x_mm", 5, 5, 5, "battery.x_mm runs from 5 to 5; write two rising numbers.")]
    [InlineData("battery.x_mm", 5, double.NaN, 5, "battery.x_mm runs from 5 to NaN; write two rising numbers.")]
    [InlineData("battery.x_mm", double.NegativeInfinity, 5, 5, "battery.x_mm runs from -Infinity to 5; write two rising numbers.")]
    [InlineData("name", 1, 2, 5, "Nothing called 'name' can be varied.")]
    [InlineData("format", 1, 2, 5, "Nothing called 'format' can be varied.")]
    [InlineData("pilot.rate_deg_s", 1, 2, 5, "Nothing called 'pilot.rate_deg_s' can be varied.")]
    [InlineData("motor.no_load_current_A", 1, 2, 5, "Wagtail has no motor.no_load_current_A to vary.")]
    public void Axes_are_refused_with_their_reason(string name, double from, double to, int points, string? reason)
    {
        string? fault = new SweepAxis(name, from, to, points).Fault(Wagtail);
        if (reason is null) Assert.Null(fault);
        else Assert.StartsWith(reason, fault, StringComparison.Ordinal);
    }

    /// <summary>A range is allowed up to the key's own ends, and not a step beyond.</summary>
    [Fact]
    public void An_axis_may_reach_the_ends_of_its_key()
    {
        Simfeel.Builds.Format.KeySpec spec = Simfeel.Builds.Format.BuildFormat.Find("motor.mass_g")!;
        Assert.Null(new SweepAxis("motor.mass_g", spec.Minimum, spec.Maximum, 3).Fault(Wagtail));
        Assert.Equal($"motor.mass_g runs from {spec.Minimum / 2} to {spec.Maximum}; allowed is {spec.Range}.", new SweepAxis("motor.mass_g", spec.Minimum / 2, spec.Maximum, 3).Fault(Wagtail));
        Assert.Contains("allowed is", new SweepAxis("motor.mass_g", spec.Minimum, spec.Maximum + 1, 3).Fault(Wagtail), StringComparison.Ordinal);
    }

    [Fact]
    public void A_row_is_the_build_with_its_values()
    {
        SweepPlan plan = Plan(0, new("motor.mass_g", 30, 40, 3), new("arm.length", 1, 1.2, 2));
        Build row = plan.BuildOf(Wagtail, 5);
        Assert.Equal([40, 1.2], plan.Values(5));
        Assert.Equal(0.040, row.Motor.Body.Mass, 1e-12);
        Assert.Equal(BuildKnobs.Find("arm.length")!.Grow(Wagtail, 1.2).Frame.Wheelbase, row.Frame.Wheelbase, 1e-12);
        Assert.True(row.Frame.Wheelbase > Wagtail.Frame.Wheelbase);
        Build same = plan.BuildOf(Wagtail, 0);
        Assert.Equal((0.030, Wagtail.Frame.Wheelbase), (same.Motor.Body.Mass, same.Frame.Wheelbase));
        Assert.Equal(Wagtail.Motor.Body.Mass, Plan(0, new SweepAxis("arm.length", 1, 1.2, 2)).BuildOf(Wagtail, 1).Motor.Body.Mass);
        // arms so short that propellers meet
        Assert.Contains("overlap", Assert.Throws<InvalidOperationException>(() => Plan(0, new SweepAxis("arm.length", 0.5, 0.6, 2)).BuildOf(Wagtail, 0)).Message, StringComparison.Ordinal);
        Assert.Contains("overlap", Assert.Throws<InvalidOperationException>(() => Plan(0, new SweepAxis("frame.wheelbase_mm", 120, 130, 2)).BuildOf(Wagtail, 0)).Message, StringComparison.Ordinal);
    }

    /// <summary>Three axes of 2, 3 and 4 points: row 17 is 1, 1, 1 in the mixed counting; more than a million rows are counted no further.</summary>
    [Fact]
    public void A_grid_counts_like_a_clock()
    {
        SweepPlan plan = Plan(0, new("motor.mass_g", 30, 31, 2), new("battery.x_mm", 0, 2, 3), new("battery.y_mm", 0, 3, 4));
        Assert.Equal(24, plan.Rows);
        Assert.Equal([31, 1, 1], plan.Values(17));
        Assert.Equal([30, 2, 3], plan.Values(11));
        SweepAxis thousand = new("motor.mass_g", 30, 31, 1000);
        Assert.Equal(1_000_000, Plan(0, thousand, thousand).Rows);
        Assert.Equal(1_000_000_000, Plan(0, thousand, thousand, thousand, thousand).Rows);
        Assert.Equal(7, Plan(7, thousand, thousand).Rows);
    }

    /// <summary>
    /// The shard that is asked for does its blocks, those that are done are not done again, and the share is told block by block. A heavier
    /// motor takes more power to hover, by momentum theory at most as mass^1.5, since not all of it grows.
    /// </summary>
    [Fact]
    public void Blocks_are_flown_where_they_lack()
    {
        SweepPlan plan = Plan(0, new SweepAxis("motor.mass_g", 30, 40, 3), new SweepAxis("arm.length", 0.5, 1, 2));
        using SweepJournal journal = SweepJournal.InMemory(plan.ToLine());
        List<double> told = [];
        SweepRun.Run(plan, Wagtail, Conditions, journal, (2, 2), new Now(told.Add));
        Assert.Empty(journal.Done);
        Assert.Empty(told);
        SweepRun.Run(plan, Wagtail, Conditions, journal, (1, 2), new Now(told.Add));
        SweepRun.Run(plan, Wagtail, Conditions, journal, (1, 1), new Now(told.Add));
        Assert.Equal([1, 1], told);
        SweepBlock block = Assert.Single(journal.Blocks(1));
        Assert.Equal([true, false, true, false, true, false], block.Refusals.Select(refusal => refusal.Contains("overlap", StringComparison.Ordinal)));
        Assert.All(block.Values.Where((_, n) => n % 2 == 0), row => Assert.True(double.IsNaN(row[0])));
        double[] powers = [block.Values[1][0], block.Values[3][0], block.Values[5][0]];
        double lightest = BuildAssembler.Assemble(plan.BuildOf(Wagtail, 1), Starters.Air).Craft.Mass, heaviest = BuildAssembler.Assemble(plan.BuildOf(Wagtail, 5), Starters.Air).Craft.Mass;
        Assert.InRange(powers[2] / powers[0], 1, Math.Pow(heaviest / lightest, 1.5));
        Assert.True(powers[0] < powers[1] && powers[1] < powers[2]);
    }

    private sealed class Now(Action<double> told) : IProgress<double>
    {
        public void Report(double value) => told(value);
    }

    private static SweepPlan Plan(int samples, params SweepAxis[] axes) => new()
    {
        Version = "test",
        Build = "Wagtail",
        Fingerprint = "",
        Conditions = "",
        Axes = axes,
        Samples = samples,
        Seed = 1,
        Metrics = ["hover_power"],
        Front = [],
    };
}
