using Simfeel.Builds;
using Simfeel.Flight.Tuning;
using Simfeel.Studies.Lessons;
using Simfeel.Studies.Tests.Approved;

namespace Simfeel.Studies.Tests.Lessons;

/// <summary>What a lesson says of outcomes that are made up, and its pages for one that is flown.</summary>
public class LessonWordTests
{
    private static readonly Lesson Lesson = LessonReader.Read(LessonShelf.Files.PathOf("ballast-to-the-tips")!).Lesson!;
    private static readonly Build Build = BuildReader.Read(LessonShelf.BuildFile(Lesson, null)!).Build!;

    private static readonly Lazy<LessonResult> Flown = new(() => LessonRun.Fly(Lesson, Build));

    [Fact]
    public void The_lesson_is_flown_once_for_all_its_pages() => Assert.True(Flown.Value.ClaimHolds);

    [Fact]
    public void Page_with_answers() => ApprovedPage.Check("lesson.html", Sheet(new([2, 6, 3, 1])).Html(withAnswers: true));

    [Fact]
    public void Page_to_fill_in() => ApprovedPage.Check("lesson-to-fill-in.html", Sheet(new([2, 6, 3, 1])).Html(withAnswers: false));

    [Fact]
    public void Page_as_text() => ApprovedPage.Check("lesson.txt", Sheet(null).Markdown(withAnswers: true));

    /// <summary>Values over the range of the lesson in five equal steps, ends included, each flown.</summary>
    [Fact]
    public void Values_to_try_are_even_steps_or_all_words()
    {
        Assert.Equal([0, 25, 50, 75, 100], LessonTrial.Values(Lesson).Select(value => value.Number));
        Assert.Equal([10, 15, 20, 25, 30], LessonTrial.Values(Lesson with { Try = new("", 10, 30) }).Select(value => value.Number));
        LessonKey axis = LessonKeys.Find("drill.axis")!;
        Lesson words = Lesson with { Change = new(axis, new(double.NaN, "roll"), new(double.NaN, "yaw")) };
        Assert.Equal(["roll", "pitch", "yaw"], LessonTrial.Values(words).Select(value => value.Word));
        Assert.Equal(("NUMBER", "WORD", "xNUMBER"), (LessonWords.ValueForm(Lesson), LessonWords.ValueForm(words), LessonWords.ValueForm(Lesson with { Change = Lesson.Change with { B = new(2, "", true) } })));
    }

    [Theory]
    [InlineData(10, 13, 30, "30 % more", 3)]
    [InlineData(10, 7.5, -25, "25 % less", 1)]
    [InlineData(10, 10.04, 0.4, "no difference", 0)]
    [InlineData(10, 9.94, -0.6, "1 % less", 0)]
    [InlineData(-10, -7, 30, "30 % more", 3)]
    [InlineData(10, double.NaN, double.NaN, "one of the two never got so far", null)]
    [InlineData(0, 1, double.PositiveInfinity, "one of the two never got so far", null)]
    public void A_difference_in_percent_is_of_the_first_craft(double a, double b, double percent, string words, int? right)
    {
        LessonResult result = Result(a, b);
        Assert.Equal(percent, result.Percent, 6);
        Assert.Equal(result.Percent, result.Outcome);
        Assert.Equal(words, LessonWords.Difference(result));
        if (double.IsFinite(percent))
        {
            Assert.Equal(right, result.RightChoice);
            Assert.Equal($"Right is {"ABCD"[right!.Value]}: {Lesson.Choices[right.Value].Text}.", LessonWords.Right(result));
        }
    }

    [Fact]
    public void A_difference_in_its_unit_is_said_with_it()
    {
        Lesson centimetres = Lesson with { Claim = new(1, 2, false), Number = Lesson.Number with { Display = new("cm", 100, 1), Title = "way" } };
        foreach ((double a, double b, string words) in new[] { (0.1, 0.123, "2.3 cm more"), (0.1, 0.0876, "1.2 cm less"), (0.1, 0.1004, "no difference"), (0.1, 0.1006, "0.1 cm more") })
        {
            LessonResult result = Result(a, b, centimetres);
            Assert.Equal(100 * (b - a), result.Outcome, 9);
            Assert.Equal(words, LessonWords.Difference(result));
        }
        Assert.Equal("Way: 10.0 cm (first), 12.0 cm (second): 2.0 cm more.", LessonWords.Outcome(Result(0.1, 0.12, centimetres)));
        Assert.Equal("1.2", LessonWords.Number(centimetres with { Number = centimetres.Number with { Display = new("", 1, 1) } }, 1.2));
    }

    [Fact]
    public void What_does_not_fit_is_said()
    {
        // between the answers of 8 % less and nothing there is none
        Lesson gap = Lesson with { Choices = [new("less", new(-100, -20, true)), new("more", new(20, 100, true))] };
        Assert.Equal("None of the answers fits what came out.", LessonWords.Right(Result(10, 11, gap)));
        Assert.Equal("Right is B: more.", LessonWords.Right(Result(10, 12, gap)));
        Assert.Equal("Right is A: less.", LessonWords.Right(Result(10, 8, gap)));
        // the claim is 28 to 50 % less
        Assert.Equal("", LessonWords.ClaimMissed(Result(10, 5)));
        Assert.Equal("", LessonWords.ClaimMissed(Result(10, 7.2)));
        Assert.Equal(
            "The lesson expects -50 to -28 % on its own build, and that is not what came out: this is another build, or the claim does not hold. Read the explanation with care.", LessonWords.ClaimMissed(Result(10, 7.3)));
        Assert.NotEqual("", LessonWords.ClaimMissed(Result(10, 4.9)));
        LessonResult own = Result(10, 4.9) with { B = Flight("second", 4.9, new(30)) };
        Assert.Equal((true, "", ""), (own.IsOwnValue, LessonWords.Right(own), LessonWords.ClaimMissed(own)));
        Assert.Equal("One thing differs: where the lumps of lead sit, from 0 in the middle of the motors to 100 at the motors (ballast.spread_percent): 0 % for the first craft, 30 % for the second.", LessonWords.Change(own));
    }

    [Fact]
    public void A_class_hears_how_many_had_it_right()
    {
        LessonResult b = Result(10, 8);
        Assert.Equal("Nobody answered beforehand.", LessonWords.Class(b, new(4)));
        Assert.Equal("3 of 9 had it right beforehand.", LessonWords.Class(b, new([2, 3, 4, 0])));
        Assert.Equal("0 of 2 had it right beforehand.", LessonWords.Class(b, new([2, 0, 0, 0])));
        Assert.Equal("The answer given beforehand was right.", LessonWords.Class(b, new([0, 1, 0, 0])));
        Assert.Equal("The answer given beforehand was not right.", LessonWords.Class(b, new([1, 0, 0, 0])));
        Assert.Equal("0 of 5 had it right beforehand.", LessonWords.Class(Result(10, double.NaN), new([1, 1, 1, 2])));
    }

    [Fact]
    public void Ranges_and_values_in_words()
    {
        Assert.Equal("+10 to +20.5 %", new LessonRange(10, 20.5, true).Text("m"));
        Assert.Equal("-3 to 0 m", new LessonRange(-3, 0, false).Text("m"));
        Assert.Equal("+5 m or more", new LessonRange(5, double.PositiveInfinity, false).Text("m"));
        Assert.Equal("-5 % or less", new LessonRange(double.NegativeInfinity, -5, true).Text("m"));
        Assert.Equal([false, true, true, true, false], new[] { 0.9, 1, 1.5, 2, 2.1 }.Select(new LessonRange(1, 2, true).Contains));
        Assert.Equal("as it is", new LessonValue(1, "", true).Text("g"));
        Assert.Equal("1.5 times as much", new LessonValue(1.5, "", true).Text("g"));
        Assert.Equal("1.5 g", new LessonValue(1.5).Text("g"));
        Assert.Equal("1", new LessonValue(1).Text(""));
        Assert.Equal("yaw", new LessonValue(double.NaN, "yaw").Text("g"));
        Assert.Equal("ABCDEF", string.Concat(Enumerable.Range(0, 6).Select(Lesson.Letter)));
    }

    [Fact]
    public void Two_tuning_policies_are_each_said_with_their_craft()
    {
        LessonKey policy = LessonKeys.Find("tuning.policy")!;
        LessonResult result = Flown.Value;
        string[] words = [.. policy.Words.Take(2)];
        LessonResult two = result with
        {
            A = result.A with { Setup = new([.. Lesson.Same, new(policy, new(double.NaN, words[0]))]) },
            B = result.B with { Setup = new([.. Lesson.Same, new(policy, new(double.NaN, words[1]))]) },
        };
        string said = LessonWords.Flown(two);
        Assert.Contains($"lead in the middle: {TuningPolicies.Describe(two.A.Setup.Policy)}. lead at the arm tips: {TuningPolicies.Describe(two.B.Setup.Policy)}. ", said, StringComparison.Ordinal);
        Assert.DoesNotContain("Tuning policy", said, StringComparison.Ordinal);
        Assert.StartsWith("Drill push: ", said, StringComparison.Ordinal);
        Assert.EndsWith("Stick effort 0.5, pack at 90 % charge, still air.", said, StringComparison.Ordinal);
        Assert.Contains("Tuning policy bare: ", LessonWords.Flown(result), StringComparison.Ordinal);
    }

    private static LessonResult Result(double a, double b, Lesson? lesson = null) => new(lesson ?? Lesson, Flight("first", a, Lesson.Change.A), Flight("second", b, Lesson.Change.B));

    private static LessonFlight Flight(string name, double number, LessonValue value) => new(name, value, new([]), null!, null!, number);

    private static LessonSheet Sheet(ClassAnswers? answers) => new(Flown.Value, LessonTrial.Over(Lesson, Build), answers, new(2026, 5, 4), "0.1.0");
}
