using Simfeel.Builds.Format;
using Simfeel.Cockpit.Loading;
using Simfeel.Cockpit.Parts;
using Simfeel.Flight;

namespace Simfeel.Cockpit.Tests.Parts;

public class PartBenchTests
{
    private static readonly FlyableBuild Wagtail = BenchBuilds.Starter("wagtail");

    [Fact]
    public void Every_part_that_matters_lies_on_the_bench_within_the_formats_range()
    {
        IReadOnlyList<PartBenchItem> items = New(Wagtail).Items;
        string[] wanted =
        [
            "frame.wheelbase_mm", "frame.arm_width_mm", "motor.stator_diameter_mm", "motor.stator_height_mm", "motor.kv_rpm_per_V", "motor.mass_g",
            "propeller.diameter_in", "propeller.pitch_in", "battery.capacity_mAh", "battery.x_mm", "battery.z_mm", "extra[1].mass_g",
        ];
        Assert.Empty(wanted.Except(items.Select(item => item.Key)));
        Assert.Equal("Video transmitter mass", items.Single(item => item.Key == "extra[1].mass_g").Label);
        Assert.Equal(items.Count, items.Select(item => item.Label).Distinct().Count());
        foreach (PartBenchItem item in items)
        {
            KeySpec spec = BuildFormat.Find(item.Key)!;
            Assert.Equal(spec.Unit, item.Unit);
            Assert.Equal(item.Original, item.Value);
            Assert.InRange(item.Value, item.Low, item.High);
            Assert.True(item.Low >= spec.Minimum && item.High <= spec.Maximum && item.Low < item.High, item.Key);
            Assert.InRange(item.Step, 1e-3, (item.High - item.Low) / 3);
        }
    }

    [Theory]
    [InlineData("frame.wheelbase_mm", 110, 450, 5)]
    [InlineData("motor.stator_height_mm", 3.5, 14, 0.1)]
    [InlineData("motor.kv_rpm_per_V", 880, 3540, 20)]
    [InlineData("propeller.blades", 2, 6, 1)]
    [InlineData("battery.cells", 3, 12, 1)]
    [InlineData("battery.x_mm", -113, 113, 1)]
    public void Sliders_go_from_half_to_twice_in_round_steps(string key, double low, double high, double step)
    {
        PartBenchItem item = New(Wagtail).Items.Single(item => item.Key == key);
        Assert.Equal((low, high, step), (item.Low, item.High, item.Step));
    }

    [Theory]
    [InlineData("sanderling")]
    [InlineData("kittiwake")]
    [InlineData("wagtail-swept")]
    [InlineData("gannet")]
    public void Every_starter_has_a_bench(string name)
    {
        IReadOnlyList<PartBenchItem> items = New(BenchBuilds.Starter(name)).Items;
        Assert.True(items.Count > 12);
        Assert.All(items, item => Assert.InRange(item.Value, item.Low, item.High));
    }

    [Fact]
    public async Task Two_hundred_quick_changes_end_in_the_last_value()
    {
        PartBench bench = New(Wagtail);
        for (int n = 0; n <= 200; n++) bench.Change("frame.wheelbase_mm", 225 + (n / 4.0));
        Assert.Equal(PartBenchState.Working, bench.State);
        Assert.Null(bench.Result);
        await bench.Settled;
        Assert.Equal(PartBenchState.Ready, bench.State);
        Assert.Equal(275, bench.Result!.Edits.Single(edit => edit.Key == "frame.wheelbase_mm").Value);
        Assert.Equal(0.275, bench.Result.Assembled.Build.Frame.Wheelbase, 12);
        Assert.Equal(Wagtail.Path, bench.Result.Path);
        Assert.Equal(Wagtail.Source.Text, bench.Result.Source.Text);
    }

    [Fact]
    public async Task Changes_of_several_items_in_a_row_are_all_kept()
    {
        PartBench bench = New(Wagtail);
        Dictionary<string, double> wanted = [];
        for (int n = 1; n <= 40; n++)
        {
            foreach (string key in new[] { "frame.wheelbase_mm", "frame.arm_width_mm", "motor.mass_g", "battery.x_mm", "battery.capacity_mAh" })
            {
                PartBenchItem item = bench.Items.Single(item => item.Key == key);
                item.Value = wanted[key] = Math.Round(item.Original + (n * item.Step / 10), 6);
                bench.Changed(item);
            }
            if (n % 10 == 0) await bench.Settled;
        }
        await bench.Settled;
        Assert.Equal(PartBenchState.Ready, bench.State);
        Assert.All(wanted, change => Assert.Contains(change, bench.Result!.Edits));
        Assert.All(wanted, change => Assert.Equal(change.Value, bench.Items.Single(item => item.Key == change.Key).Value));
    }

    [Fact]
    public async Task The_result_is_made_again_from_its_text_and_edits_bit_for_bit()
    {
        PartBench bench = New(Wagtail);
        bench.Change("motor.mass_g", 38);
        bench.Change("battery.x_mm", 10);
        await bench.Settled;
        FlyableBuild again = BenchBuilds.Good(FlyableBuild.Of(bench.Result!.Source, "again", bench.Result.Edits, BenchBuilds.Air, BenchBuilds.Profile));
        Assert.Equal(again.Assembled.Craft.I_BBcm_B, bench.Result.Assembled.Craft.I_BBcm_B);
        Assert.Equal(again.Unit.Gains, bench.Result.Unit.Gains);
    }

    [Fact]
    public async Task A_refused_value_says_range_and_unit_and_the_last_good_craft_stays()
    {
        PartBench bench = New(Wagtail);
        bench.Change("motor.mass_g", 40);
        await bench.Settled;
        FlyableBuild good = bench.Result!;
        bench.Change("frame.wheelbase_mm", 2000);
        await bench.Settled;
        Assert.Equal(PartBenchState.Refused, bench.State);
        Assert.Contains("frame.wheelbase_mm = 2000", bench.Message, StringComparison.Ordinal);
        Assert.Contains("40 to 1500 mm", bench.Message, StringComparison.Ordinal);
        Assert.Same(good, bench.Result);
        bench.Change("frame.wheelbase_mm", 230);
        await bench.Settled;
        Assert.Equal((PartBenchState.Ready, ""), (bench.State, bench.Message));
        Assert.Equal(40, bench.Result!.Edits.Single(edit => edit.Key == "motor.mass_g").Value);
    }

    [Fact]
    public async Task A_craft_that_cannot_hover_is_refused_in_words()
    {
        PartBench bench = New(Wagtail);
        bench.Change("motor.kv_rpm_per_V", 200);
        await bench.Settled;
        Assert.Equal(PartBenchState.Refused, bench.State);
        Assert.Contains("cannot hover", bench.Message, StringComparison.Ordinal);
        Assert.Same(Wagtail, bench.Result);
        bench.Reset();
        await bench.Settled;
        Assert.Equal(PartBenchState.Ready, bench.State);
    }

    [Fact]
    public async Task Heavier_motors_are_felt_although_the_craft_was_weighed_whole()
    {
        // Wagtail's file says 598 g all up; 5 g on each of four motors, each 225 mm / (2 sqrt 2) off both axes
        PartBench bench = New(Wagtail);
        bench.Change("motor.mass_g", 38);
        await bench.Settled;
        PartBenchDifference mass = Difference(bench, "Mass"), roll = Difference(bench, "Roll inertia");
        Assert.Equal(598, mass.Before, 6);
        Assert.Equal(618, mass.After, 6);
        // parallel axes: 4 m r^2 in g m2, and a little for the motors' own size and their height over the centre of gravity
        double least = 4 * 5 * Math.Pow(0.225 / (2 * Math.Sqrt(2)), 2);
        Assert.InRange(roll.After - roll.Before, least, 1.1 * least);
        Assert.True(Difference(bench, "Hover throttle").After > Difference(bench, "Hover throttle").Before);
        Assert.True(Difference(bench, "Thrust to weight").After < Difference(bench, "Thrust to weight").Before);
    }

    [Fact]
    public async Task Measured_inertia_and_balance_move_along_with_the_parts()
    {
        // the same parts, once as they are and once with a swing test and a balance point that differ from what they add up to
        string plain = Wagtail.Source.Text[..Wagtail.Source.Text.IndexOf("[measured]", StringComparison.Ordinal)]
            .Replace("power_W = 20", "wiring_mass_g = 40\npower_W = 20", StringComparison.Ordinal);
        string measured = plain + "[measured]\nixx_g_m2 = 1.9\niyy_g_m2 = 2.6\nizz_g_m2 = 3.7\nbalance_x_mm = 3\n";
        (PartBench parts, PartBench swung) = (New(BenchBuilds.Of(plain)), New(BenchBuilds.Of(measured)));
        foreach (PartBench bench in new[] { parts, swung })
        {
            bench.Change("motor.mass_g", 38);
            bench.Change("battery.x_mm", 12);
            await bench.Settled;
            Assert.Equal(PartBenchState.Ready, bench.State);
        }
        foreach (string name in new[] { "Mass", "Roll inertia", "Pitch inertia", "Yaw inertia" })
        {
            PartBenchDifference expected = Difference(parts, name), found = Difference(swung, name);
            Assert.NotEqual(expected.Before, expected.After);
            Assert.Equal(expected.After - expected.Before, found.After - found.Before, 9);
        }
        Assert.Equal(1.9, Difference(swung, "Roll inertia").Before, 9);
        Assert.Equal(
            parts.Result!.Assembled.p_OBcm.X - parts.File.Assembled.p_OBcm.X,
            swung.Result!.Assembled.p_OBcm.X - swung.File.Assembled.p_OBcm.X, 9);
    }

    [Fact]
    public async Task What_the_file_leaves_to_a_rule_follows_on_the_bench()
    {
        FlyableBuild build = BenchBuilds.Of(Wagtail.Source.Text.Replace("arm_width_mm = 14", "", StringComparison.Ordinal));
        PartBench bench = New(build);
        PartBenchItem width = bench.Items.Single(item => item.Key == "frame.arm_width_mm");
        Assert.Equal(0.062 * 225, width.Value, 9);
        bench.Change("frame.wheelbase_mm", 300);
        await bench.Settled;
        Assert.Same(width, bench.Items.Single(item => item.Key == "frame.arm_width_mm"));
        Assert.Equal(0.062 * 300, width.Value, 9);
        Assert.DoesNotContain(bench.Result!.Edits, edit => edit.Key == "frame.arm_width_mm");
    }

    [Fact]
    public async Task A_value_put_back_is_no_edit_and_reset_gives_the_file()
    {
        PartBench bench = New(Wagtail);
        bench.Change("motor.mass_g", 40);
        bench.Change("motor.mass_g", 33);
        await bench.Settled;
        Assert.Same(Wagtail, bench.Result);
        bench.Change("motor.mass_g", 40);
        bench.Change("battery.x_mm", 20);
        bench.Reset();
        await bench.Settled;
        Assert.Same(Wagtail, bench.Result);
        Assert.All(bench.Items, item => Assert.Equal(item.Original, item.Value));
        Assert.All(bench.Differences, row => Assert.Equal(row.Before, row.After));
    }

    [Fact]
    public async Task Changes_are_taken_over_to_a_file_that_was_read_anew()
    {
        FlyableBuild anew = BenchBuilds.Of(Wagtail.Source.Text.Replace("deck_height_mm = 28", "deck_height_mm = 25", StringComparison.Ordinal));
        PartBench bench = new(anew, BenchBuilds.Profile, [new("motor.mass_g", 40), new("measured.all_up_mass_g", 626), new("battery.x_mm", 9)]);
        await bench.Settled;
        Assert.Equal(0.025, bench.Result!.Assembled.Build.Frame.DeckHeight, 12);
        Assert.Equal(40, bench.Items.Single(item => item.Key == "motor.mass_g").Value);
        Assert.Equal(9, bench.Items.Single(item => item.Key == "battery.x_mm").Value);
        Assert.Throws<ArgumentException>(() => new PartBench(bench.Result!, BenchBuilds.Profile));
    }

    [Fact]
    public void An_unknown_build_and_a_wrong_file_are_said_in_words()
    {
        FlyableResult unknown = BuildLoader.Load("wagtale", Simfeel.Builds.BuildShelf.Starters, BenchBuilds.Air, BenchBuilds.Profile);
        Assert.Null(unknown.Build);
        Assert.Contains("'wagtale'", unknown.Message, StringComparison.Ordinal);
        Assert.Contains("wagtail", unknown.Message, StringComparison.Ordinal);
        FlyableResult missing = BuildLoader.Load("nowhere/mine.toml", Simfeel.Builds.BuildShelf.Starters, BenchBuilds.Air, BenchBuilds.Profile);
        Assert.Contains("There is no such file", missing.Message, StringComparison.Ordinal);
    }

    private static PartBench New(FlyableBuild build) => new(build, BenchBuilds.Profile);

    private static PartBenchDifference Difference(PartBench bench, string name) => bench.Differences.Single(row => row.Name == name);
}
