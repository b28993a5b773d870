using System.Xml.Linq;
using Simfeel.Builds;
using Simfeel.Studies.Lessons;

namespace Simfeel.Studies.Tests.Lessons;

/// <summary>Sheets with and without answers, and the log of a class.</summary>
public class LessonPaperTests
{
    private static readonly Lesson Lesson = LessonReader.Read(LessonShelf.Files.PathOf("size")!).Lesson!;
    private static readonly Build Build = BuildReader.Read(LessonShelf.BuildFile(Lesson, null)!).Build!;
    private static readonly LessonResult Result = LessonRun.Fly(Lesson, Build);

    [Fact]
    public void The_sheet_with_answers_has_question_prediction_result_and_plot()
    {
        string page = Sheet(new([2, 6, 3, 1, 0])).Html(withAnswers: true);
        XElement html = XDocument.Parse(page.Replace("<!DOCTYPE html>", "", StringComparison.Ordinal)).Root!;
        string text = html.Value;
        foreach (string part in (string[])[Lesson.Question, "12 hands", "6 of 12 had it right", LessonWords.Outcome(Result), LessonWords.Right(Result), Lesson.Explanation, Lesson.Try.Text, "Wagtail"])
            Assert.Contains(part, text, StringComparison.Ordinal);
        Assert.Single(html.Descendants("svg"));
        Assert.DoesNotContain("http", page, StringComparison.Ordinal);
        // the values to try, flown
        Assert.Contains(Lesson.Number.Display.Number(Result.B.Number), text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_sheet_to_fill_in_gives_nothing_away()
    {
        foreach (string page in (string[])[Sheet(new([2, 6, 3, 1, 0])).Html(withAnswers: false), Sheet(null).Markdown(withAnswers: false)])
        {
            Assert.Contains(Lesson.Question.Split('.')[0], page, StringComparison.Ordinal);
            Assert.Contains("Because", page, StringComparison.Ordinal);
            foreach (string secret in (string[])["hands", "Right is", "inertia about", Lesson.Explanation[..40], Lesson.Try.Text, "53 %", "89"]) Assert.DoesNotContain(secret, page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Markdown_has_the_plot_as_numbers()
    {
        string text = Sheet(null).Markdown(withAnswers: true);
        Assert.Contains("| time s |", text, StringComparison.Ordinal);
        Assert.Contains(LessonWords.Right(Result), text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_log_of_a_class_has_a_line_for_every_answer_and_no_name()
    {
        using TempFolder temp = new();
        string file = temp.File("class.csv");
        ClassLog.Append(file, Result, new([2, 6, 3, 1, 0]), new(2026, 5, 4), "0.1.0");
        // a line that a killed program left half-written is ended, not lost
        File.AppendAllText(file, "2026-05-04,size,Wag");
        ClassLog.Append(file, Result, new([0, 0, 1, 0, 0]), new(2026, 5, 5), "0.1.0");
        string[] lines = File.ReadAllLines(file);
        string outcome = FormattableString.Invariant($"{100 * (Result.B.Number - Result.A.Number) / Result.A.Number:0.###},%,0.1.0");
        Assert.Equal(ClassLog.Header, lines[0]);
        Assert.Equal(12, lines.Length);
        Assert.Equal("2026-05-04,size,Wagtail,B,\"Longer, by up to three quarters\",6,yes," + outcome, lines[2]);
        Assert.Equal("2026-05-04,size,Wag", lines[6]);
        Assert.Equal("2026-05-05,size,Wagtail,C,About twice as long,1,no," + outcome, lines[9]);

        File.WriteAllText(file, "my,own,table\r\n");
        Assert.Throws<IOException>(() => ClassLog.Append(file, Result, new([0, 0, 1, 0, 0]), new(2026, 5, 5), "0.1.0"));
        Assert.Equal("my,own,table\r\n", File.ReadAllText(file));
    }

    [Fact]
    public void Another_build_or_value_is_said_where_the_claim_does_not_hold()
    {
        LessonResult same = LessonRun.Fly(Lesson, Build, Lesson.Change.B with { Number = 1 });
        Assert.Equal(same.A.Number, same.B.Number);
        Assert.Equal("no difference", LessonWords.Difference(same));
        // the question was about another value, so no answer is right or wrong
        Assert.True(same.IsOwnValue);
        Assert.Equal("", LessonWords.Right(same));
        Assert.Contains("as it is for the first craft, as it is for the second", LessonWords.Change(same), StringComparison.Ordinal);
        LessonResult bold = LessonRun.Fly(Lesson with { Claim = new(60, 75, true) }, Build);
        Assert.False(bold.ClaimHolds);
        Assert.Contains("expects +60 to +75 %", LessonWords.ClaimMissed(bold), StringComparison.Ordinal);
    }

    private static LessonSheet Sheet(ClassAnswers? answers) =>
        new(Result, LessonTrial.Over(Lesson, Build), answers, new(2026, 5, 4), "0.1.0");
}
