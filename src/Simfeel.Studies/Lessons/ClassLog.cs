using System.Globalization;
using System.Text;
using Simfeel.Builds.Writing;
using Simfeel.Studies.Blind;

namespace Simfeel.Studies.Lessons;

/// <summary>
/// Answers of a class as a table (RFC 4180, UTF-8): one line for each lesson and answer with how many gave it. It asks for no name and
/// keeps none; it is written only where somebody asks for it.
/// </summary>
public static class ClassLog
{
    /// <summary>The first line.</summary>
    public const string Header = "date,lesson,build,answer,text,hands,right,outcome,unit,program";

    /// <summary>Adds what a class answered to a file; makes it with its header where there is none. Each call is one write, down to the disk.</summary>
    /// <param name="path">The file.</param>
    /// <param name="result">What came out.</param>
    /// <param name="answers">What was answered.</param>
    /// <param name="date">The day.</param>
    /// <param name="version">Version of the program.</param>
    /// <exception cref="IOException">The file cannot be written, or is another table.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be written.</exception>
    public static void Append(string path, LessonResult result, ClassAnswers answers, DateOnly date, string version)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(answers);
        using FileStream file = LoneFile.OpenToAdd(path);
        StringBuilder text = new();
        if (file.Length == 0) text.Append(Header).Append("\r\n");
        else Check(file, path, text);
        for (int n = 0; n < result.Lesson.Choices.Count; n++)
        {
            text.Append(CsvLine.Join(
            [
                date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), result.Lesson.Name, result.A.Assembled.Build.Name, $"{Lesson.Letter(n)}", result.Lesson.Choices[n].Text,
                answers.Hands[n].ToString(CultureInfo.InvariantCulture), result.RightChoice == n ? "yes" : "no",
                result.Outcome.ToString("0.###", CultureInfo.InvariantCulture), result.Lesson.Claim.IsPercent ? "%" : result.Lesson.Number.Display.Symbol, version,
            ]));
            text.Append("\r\n");
        }
        LoneFile.Add(file, Encoding.UTF8.GetBytes(text.ToString()));
    }

    /// <summary>A file that is another table is left alone; a last line that was cut off is ended first.</summary>
    private static void Check(FileStream file, string path, StringBuilder text)
    {
        byte[] start = new byte[Math.Min(file.Length, Header.Length + 1)];
        file.ReadExactly(start);
        if (Encoding.UTF8.GetString(start).TrimEnd('\r', '\n') != Header)
            throw new IOException($"{path} is no log of a class: its first line is not \"{Header}\". It is left as it is.");
        file.Seek(-1, SeekOrigin.End);
        if (file.ReadByte() != '\n') text.Append("\r\n");
    }
}
