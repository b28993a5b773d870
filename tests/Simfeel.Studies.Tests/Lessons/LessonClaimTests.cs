using Simfeel.Builds;
using Simfeel.Physics.Maths;
using Simfeel.Studies.Lessons;

namespace Simfeel.Studies.Tests.Lessons;

/// <summary>Every lesson that comes along is flown; what it claims comes out, in direction and size.</summary>
public class LessonClaimTests
{
    public static TheoryData<string> Names => [.. LessonShelf.Files.Names];

    [Fact]
    public void There_are_enough_of_them_and_every_topic_of_the_class_is_among_them()
    {
        Assert.True(Names.Count >= 16, $"{Names.Count} lessons");
        Assert.Equal(Names.Count, LessonShelf.All().Count);
        foreach (string name in (string[])[
            "ballast-to-the-tips", "mass-in-the-middle", "three-axes", "longer-push", "longer-arm", "heavy-propellers", "reserve-runs-out", "battery-height", "battery-forward",
            "power-against-speed", "static-is-not-dynamic", "mass-and-fall", "two-parts-of-yaw", "own-wake", "tired-pack", "thin-air", "size", "middle-axis", "bigger-motors", "late-picture"])
            Assert.Contains(name, LessonShelf.Files.Names);
        // in the order in which a class wants them, not in that of the alphabet
        Assert.Equal(["ballast-to-the-tips", "mass-in-the-middle", "longer-push"], LessonShelf.All().Take(3).Select(pair => pair.Lesson.Name));
        Assert.Equal(Names.Count, LessonShelf.All().Select(pair => pair.Lesson.Place).Distinct().Count());
        // one at least where "no difference" is right, and one to be flown blind
        Assert.Contains(LessonShelf.All(), pair => pair.Lesson.Claim is { Low: < 0, High: > 0 });
        Assert.Contains(LessonShelf.All(), pair => pair.Lesson.FlyBlind);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void What_a_lesson_claims_comes_out(string name)
    {
        LessonResult result = Fly(name);
        Assert.True(result.ClaimHolds, $"{LessonWords.Outcome(result)} Claimed: {result.Lesson.Claim.Text(result.Lesson.Number.Display.Symbol)}");
        int right = result.RightChoice!.Value;
        Assert.True(result.Lesson.Choices[right].Right.Contains(result.Lesson.Claim.Low) && result.Lesson.Choices[right].Right.Contains(result.Lesson.Claim.High));
        // a claim that everything fits is none
        Assert.Contains(result.Lesson.Choices, choice => !choice.Right.Contains(result.Outcome));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Nothing_but_the_one_key_differs(string name)
    {
        LessonResult result = Fly(name);
        Lesson lesson = result.Lesson;
        LessonResult swapped = LessonRun.Fly(
            lesson with { Change = new(lesson.Change.Key, lesson.Change.B, lesson.Change.A), CraftNames = (lesson.CraftNames.B, lesson.CraftNames.A) }, Build(lesson));
        Assert.Equal(result.A.Number, swapped.B.Number);
        Assert.Equal(result.B.Number, swapped.A.Number);
        Assert.Equal(result.A.Log.Hash(), LessonRun.Fly(lesson, Build(lesson)).A.Log.Hash());
    }

    /// <summary>The same change made twice as small lies between: the number answers to the key, and not to an accident.</summary>
    [Theory]
    [InlineData("ballast-to-the-tips", 50)]
    [InlineData("longer-push", 0.15)]
    [InlineData("longer-arm", 1.15)]
    [InlineData("heavy-propellers", 1.5)]
    [InlineData("two-parts-of-yaw", 1.5)]
    [InlineData("end-of-the-fall", 150)]
    [InlineData("twice-the-battery", 1.5)]
    [InlineData("thin-air", 1500)]
    [InlineData("static-is-not-dynamic", 12)]
    [InlineData("late-picture", 40)]
    [InlineData("size", 1.4)]
    public void Half_the_change_does_less(string name, double value)
    {
        LessonResult whole = Fly(name);
        LessonResult half = LessonRun.Fly(whole.Lesson, Build(whole.Lesson), whole.Lesson.Change.B with { Number = value });
        Assert.InRange((half.B.Number - whole.A.Number) / (whole.B.Number - whole.A.Number), 0.02, 0.98);
    }

    /// <summary>Parallel-axis theorem (any textbook of mechanics): four lumps of m/4 at a distance y from the roll axis add m y^2.</summary>
    [Fact]
    public void Ballast_at_the_tips_adds_what_the_parallel_axis_theorem_says()
    {
        LessonResult result = Fly("ballast-to-the-tips");
        Assert.Equal(result.A.Assembled.Craft.Mass, result.B.Assembled.Craft.Mass, 1e-12);
        Assert.Equal(0.598 + 0.2, result.A.Assembled.Craft.Mass, 1e-9);
        double y = result.A.Assembled.Build.Frame.Mounts[0].p_OM.Y;
        double more = result.B.Assembled.Craft.I_BBcm_B.M00 - result.A.Assembled.Craft.I_BBcm_B.M00;
        Assert.Equal(0.2 * y * y, more, 1e-9);
        // constant torque: rates in the inverse ratio of inertias, less what the turning rotors damp
        double inertias = result.A.Assembled.Craft.I_BBcm_B.M00 / result.B.Assembled.Craft.I_BBcm_B.M00;
        Assert.Equal(inertias, result.B.Number / result.A.Number, 0.05);
    }

    /// <summary>
    /// Momentum theory and quadratic drag in closed form: hover speed with 1/sqrt(density) (ISO 2533: 0.90912 kg/m3 at 3000 m), terminal
    /// speed with sqrt(weight), hover power with weight^1.5 at one figure of merit, which gets better with speed, so with a power between
    /// weight and weight^1.5, on top of 20 W for the electronics; the pack of 205 g is doubled on a craft of 598 g.
    /// </summary>
    [Fact]
    public void Sizes_are_those_of_closed_forms()
    {
        Assert.Equal(100 * (Math.Sqrt(1.225 / 0.90912) - 1), Fly("thin-air").Percent, 1.0);
        Assert.Equal(100 * (Math.Sqrt(898.0 / 598) - 1), Fly("end-of-the-fall").Percent, 2.0);
        double power = (122 - 20) / 122.0;
        Assert.InRange(Fly("twice-the-battery").Percent, Longer(1.5), Longer(1));
        // similarity after Froude: a craft's own times with sqrt(2); from one and the same roll rate torque alone takes twice as long
        Assert.InRange(Fly("size").Percent, 100 * (Math.Sqrt(2) - 1), 100);
        // fall in the first second: g/2 without air
        Assert.True(Fly("mass-and-fall").B.Number < 9.80665 / 2);

        double Longer(double exponent) => 100 * ((2 / ((power * Math.Pow(803.0 / 598, exponent)) + (1 - power))) - 1);
    }

    /// <summary>
    /// Euler's equations about the middle axis: a wobble grows with exp(sqrt((I2 - I1)(I3 - I2)/(I1 I3)) w t), so it stays under its double
    /// about the least axis and turns the craft over about the middle one (any textbook of mechanics).
    /// </summary>
    [Fact]
    public void The_middle_axis_is_the_one_that_does_not_keep()
    {
        LessonResult result = Fly("middle-axis");
        Mat3 i = result.A.Assembled.Craft.I_BBcm_B;
        Assert.True(i.M00 < i.M11 && i.M11 < i.M22);
        LessonResult yaw = LessonRun.Fly(result.Lesson, Build(result.Lesson), new(double.NaN, "yaw"));
        Assert.True(yaw.B.Number < 0.3, $"{yaw.B.Number} rad about yaw");
        Assert.True(result.A.Number < 0.3 && result.B.Number > Math.PI / 3);
    }

    /// <summary>A pendulum of the battery's height would swing to the other side in a quarter of a second: T = 2 pi sqrt(l/g), l below 6 cm.</summary>
    [Fact]
    public void No_craft_swings_back_like_a_pendulum()
    {
        LessonResult result = Fly("battery-height");
        double lower = result.A.Assembled.Craft.Rotors[0].p_BcmR_B.Z - result.B.Assembled.Craft.Rotors[0].p_BcmR_B.Z;
        Assert.InRange(lower, 0.02, 0.06);
        Assert.True(Math.Tau * Math.Sqrt(lower / 9.80665) / 2 < 0.25);
        Assert.All(new[] { result.A.Number, result.B.Number }, tilt => Assert.Equal(15 * Math.PI / 180, tilt, 0.02));
    }

    private static LessonResult Fly(string name)
    {
        Lesson lesson = LessonReader.Read(LessonShelf.Files.PathOf(name)!).Lesson!;
        return LessonRun.Fly(lesson, Build(lesson));
    }

    private static Build Build(Lesson lesson) => BuildReader.Read(LessonShelf.BuildFile(lesson, null)!).Build!;
}
