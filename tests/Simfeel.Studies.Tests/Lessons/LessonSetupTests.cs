using Simfeel.Builds;
using Simfeel.Flight.Tuning;
using Simfeel.Studies.Lessons;

namespace Simfeel.Studies.Tests.Lessons;

/// <summary>What a lesson's keys mean in SI units, what is done to the build, and where lessons and their builds are found.</summary>
public class LessonSetupTests
{
    private static readonly Build Wagtail = BuildReader.Read(Path.Combine(AppContext.BaseDirectory, "builds", "wagtail.toml")).Build!;

    [Fact]
    public void Keys_become_SI_numbers_and_what_is_not_set_is_as_usual()
    {
        LessonSetup set = new(
        [
            Word("drill.name", "sink"), Word("drill.axis", "pitch"), Number("drill.effort", 0.5), Number("drill.hold_s", 0.4), Number("drill.speed_m_s", 7), Number("drill.sink_m_s", 3),
            Number("drill.tilt_deg", 30), Number("drill.spin_deg_per_s", 180), Number("pack.charge_percent", 50), Number("display.delay_ms", 40), Word("tuning.policy", "bare"),
            // of two of one key the last counts
            Number("drill.speed_m_s", 8),
        ]);
        Assert.Equal(("sink", 1, 0.5, 0.4, 8.0, 3.0), (set.DrillName, set.Axis, set.Effort, set.Hold, set.Speed, set.SinkSpeed));
        Assert.Equal(Math.PI / 6, set.Tilt, 12);
        Assert.Equal(Math.PI, set.Spin, 12);
        Assert.Equal((0.5, 0.04), (set.Profile.StateOfCharge, set.Profile.DisplayDelay));
        Assert.Equal(TuningPolicies.Parse("bare"), set.Policy);
        LessonSetup usual = new([]);
        Assert.Equal((0, 1.0, 0.3, 0.0, 4.0), (usual.Axis, usual.Effort, usual.Hold, usual.Speed, usual.SinkSpeed));
        Assert.Equal(15 * Math.PI / 180, usual.Tilt, 12);
        Assert.Equal(4 * Math.PI, usual.Spin, 12);
        Assert.Equal((0.9, 0.0, TuningPolicy.Matched), (usual.Profile.StateOfCharge, usual.Profile.DisplayDelay, usual.Policy));
        Assert.Equal(2, new LessonSetup([Word("drill.axis", "yaw")]).Axis);
    }

    /// <summary>US Standard Atmosphere 1976, as ISO 2533: 1.2250 kg/m3 at sea level and 0.90925 at 3000 m of geometric altitude (from memory).</summary>
    [Fact]
    public void Air_is_that_of_the_altitude()
    {
        Assert.Equal(1.225, new LessonSetup([]).Air.Density, 1e-4);
        Assert.Equal(0.90925, new LessonSetup([Number("air.altitude_m", 3000)]).Air.Density, 1e-5);
    }

    [Fact]
    public void Parts_grow_and_numbers_of_the_build_are_set_or_multiplied()
    {
        double mass = Wagtail.Motor.Body.Mass, wheelbase = Wagtail.Frame.Wheelbase;
        Assert.Equal(0.04, Changed(Number("motor.mass_g", 40)).Motor.Body.Mass, 9);
        Assert.Equal(1.5 * mass, Changed(Factor("motor.mass_g", 1.5)).Motor.Body.Mass, 9);
        Build both = Changed(Factor("arm.length", 1.2), Number("motor.mass_g", 40));
        Assert.Equal((Math.Round(1.2 * wheelbase, 9), 0.04), (Math.Round(both.Frame.Wheelbase, 9), Math.Round(both.Motor.Body.Mass, 9)));
        Assert.Same(Wagtail, Changed());
        Assert.Contains("overlap", Assert.Throws<LessonException>(() => Changed(Factor("arm.length", 0.4))).Message, StringComparison.Ordinal);
        Build bare = Wagtail with { Values = [.. Wagtail.Values.Where(value => value.Key != "motor.mass_g")] };
        Assert.Equal("Wagtail has no motor.mass_g to change.", Assert.Throws<LessonException>(() => new LessonSetup([Factor("motor.mass_g", 2)]).Changed(bare)).Message);
    }

    /// <summary>
    /// 200 g of lead (11340 kg/m3, any handbook) in four balls on the lines to the motors: half way they sit at half the motors' places from
    /// the middle, and 25 mm higher, which is -z.
    /// </summary>
    [Fact]
    public void Ballast_is_four_balls_of_lead_on_the_arms()
    {
        Build loaded = Changed(Number("ballast.mass_g", 200), Number("ballast.spread_percent", 50), Number("ballast.height_mm", 25));
        ExtraSpec[] added = [.. loaded.Extras.Skip(Wagtail.Extras.Count)];
        Assert.Equal(["ballast 1", "ballast 2", "ballast 3", "ballast 4"], added.Select(extra => extra.Name));
        IReadOnlyList<MotorMount> mounts = Wagtail.Frame.Mounts;
        double x = mounts.Average(mount => mount.p_OM.X), y = mounts.Average(mount => mount.p_OM.Y), z = mounts.Average(mount => mount.p_OM.Z);
        for (int n = 0; n < 4; n++)
        {
            Assert.Equal(0.05, added[n].Mass, 12);
            Assert.Equal(0.05, Math.PI / 6 * Math.Pow(added[n].Shape.Size.X, 3) * 11340, 9);
            Assert.Equal((x + mounts[n].p_OM.X) / 2, added[n].Shape.p_OC.X, 9);
            Assert.Equal((y + mounts[n].p_OM.Y) / 2, added[n].Shape.p_OC.Y, 9);
            Assert.Equal(((z + mounts[n].p_OM.Z) / 2) - 0.025, added[n].Shape.p_OC.Z, 9);
        }
        Assert.Same(Wagtail, Changed(Number("ballast.mass_g", 0), Number("ballast.height_mm", 25)));
    }

    [Fact]
    public void Drills_are_those_of_the_catalogue_and_the_experiments()
    {
        foreach (string name in LessonDrills.Names.Where(name => name is not "release")) Assert.Equal(name, LessonDrills.Of(new([Word("drill.name", name)])).Name);
        Assert.Equal("release", LessonDrills.Of(new([Word("drill.name", "release"), Word("drill.axis", "pitch")])).Name);
        Assert.Contains("not about yaw", Assert.Throws<ArgumentException>(() => LessonDrills.Of(new([Word("drill.name", "release"), Word("drill.axis", "yaw")]))).Message, StringComparison.Ordinal);
        Assert.Contains("'loop'", Assert.Throws<ArgumentException>(() => LessonDrills.Of(new([Word("drill.name", "loop")]))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Keys_say_what_may_stand_there()
    {
        LessonKey mass = LessonKeys.Find("motor.mass_g")!, arm = LessonKeys.Find("arm.length")!, effort = LessonKeys.Find("drill.effort")!, axis = LessonKeys.Find("drill.axis")!;
        Assert.Equal((LessonKeyKind.Build, LessonKeyKind.Part, LessonKeyKind.Own), (mass.Kind, arm.Kind, effort.Kind));
        Assert.StartsWith("motor, ", mass.Meaning, StringComparison.Ordinal);
        Assert.Equal("wheelbase", arm.Meaning);
        foreach (string no in (string[])["measured.all_up_mass_g", "format", "nothing.at_all"]) Assert.Null(LessonKeys.Find(no));
        Assert.Equal("drill.effort", LessonKeys.Near("drill.efort"));
        foreach (double factor in (double[])[LessonKeys.LeastFactor, 1, LessonKeys.LargestFactor]) Assert.Null(LessonKeys.Fault(mass, new(factor, "", true)));
        Assert.Equal("The factor 0.09 is out of range; allowed is 0.1 to 10.", LessonKeys.Fault(mass, new(0.09, "", true)));
        Assert.Equal("The factor 11 is out of range; allowed is 0.1 to 10.", LessonKeys.Fault(arm, new(11, "", true)));
        Assert.StartsWith("\"x 2\" is a factor, and this is no number of the build", LessonKeys.Fault(effort, new(2, "", true)), StringComparison.Ordinal);
        Assert.StartsWith("This is no number", LessonKeys.Fault(effort, new(double.NaN, "much")), StringComparison.Ordinal);
        Assert.Null(LessonKeys.Fault(effort, new(0.25)));
        Assert.NotNull(LessonKeys.Fault(effort, new(0.24)));
        Assert.Null(LessonKeys.Fault(axis, new(double.NaN, "yaw")));
        Assert.StartsWith("Allowed is ", LessonKeys.Fault(axis, new(double.NaN, "loop")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("motor.mass_g", "40", 40, "", false)]
    [InlineData("motor.mass_g", " x 1.5 ", 1.5, "", true)]
    [InlineData("motor.mass_g", "x2", 2, "", true)]
    [InlineData("motor.mass_g", " heavy ", double.NaN, "heavy", false)]
    [InlineData("motor.mass_g", "xx", double.NaN, "xx", false)]
    [InlineData("arm.length", "1.5", 1.5, "", true)]
    [InlineData("drill.axis", " yaw", double.NaN, "yaw", false)]
    [InlineData("drill.axis", "3", double.NaN, "3", false)]
    public void A_value_is_a_number_a_factor_or_a_word(string key, string text, double number, string word, bool isFactor) =>
        Assert.Equal(new LessonValue(number, word, isFactor), LessonReader.ValueOf(LessonKeys.Find(key)!, text));

    [Fact]
    public void A_folder_of_ones_own_adds_its_lessons_and_says_what_is_none()
    {
        using TempFolder temp = new();
        string lesson = File.ReadAllText(LessonShelf.Files.PathOf("size")!);
        File.WriteAllText(temp.File("mine.toml"), lesson);
        File.WriteAllText(temp.File("broken.toml"), lesson.Replace("[claim]", "[clam]", StringComparison.Ordinal));
        List<string> wrong = [];
        IReadOnlyList<(string File, Lesson Lesson)> all = LessonShelf.With(temp.Path, wrong);
        Assert.Equal((LessonShelf.All().Count + 1, temp.File("mine.toml"), "mine"), (all.Count, all[^1].File, all[^1].Lesson.Name));
        string said = Assert.Single(wrong);
        Assert.Contains("broken.toml", said, StringComparison.Ordinal);
        Assert.Contains("clam", said, StringComparison.Ordinal);

        // a build beside the lesson goes before a starter of that name
        Lesson mine = all[^1].Lesson with { Build = "wagtail" };
        Assert.EndsWith(Path.Combine("builds", "wagtail.toml"), LessonShelf.BuildFile(mine, temp.File("mine.toml")), StringComparison.Ordinal);
        File.WriteAllText(temp.File("wagtail"), "x");
        Assert.Equal(temp.File("wagtail"), LessonShelf.BuildFile(mine, temp.File("mine.toml")));
        Assert.Null(LessonShelf.BuildFile(mine with { Build = "nowhere" }, temp.File("mine.toml")));
    }

    /// <summary>Under same-gains the second craft flies with the gains that the first one has when matched.</summary>
    [Fact]
    public void Same_gains_are_those_of_the_first_craft()
    {
        Lesson lesson = LessonReader.Read(LessonShelf.Files.PathOf("ballast-to-the-tips")!).Lesson!;
        Lesson Under(string policy) => lesson with { Same = [.. lesson.Same, Word("tuning.policy", policy)] };
        LessonResult same = LessonRun.Fly(Under("same-gains"), Wagtail), matched = LessonRun.Fly(Under("matched"), Wagtail);
        Assert.Equal(matched.A.Number, same.A.Number);
        Assert.NotEqual(matched.B.Number, same.B.Number);
    }

    private static Build Changed(params LessonSetting[] settings) => new LessonSetup(settings).Changed(Wagtail);

    private static LessonSetting Number(string key, double number) => new(LessonKeys.Find(key)!, new(number));

    private static LessonSetting Factor(string key, double factor) => new(LessonKeys.Find(key)!, new(factor, "", true));

    private static LessonSetting Word(string key, string word) => new(LessonKeys.Find(key)!, new(double.NaN, word));
}
