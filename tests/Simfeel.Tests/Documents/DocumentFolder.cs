using Simfeel.Flight.Tuning;
using Simfeel.Studies.Blind;

namespace Simfeel.Tests.Documents;

/// <summary>
/// A scratch folder that holds what the blocks of one section of a document find there: the files of <c>assets</c>, those that the
/// section tells the reader to write, and those of people who used Simfeel before.
/// </summary>
internal sealed class DocumentFolder : IDisposable
{
    private readonly TempFolder _folder = new();

    public DocumentFolder()
    {
        foreach (string file in SourceTree.Files.Where(path => path.StartsWith("assets/", StringComparison.Ordinal) && Path.GetExtension(path) is ".toml" or ".csv"))
        {
            Directory.CreateDirectory(Path.GetDirectoryName(At(file))!);
            File.Copy(SourceTree.FullPath(file), At(file));
        }
    }

    /// <summary>Its path.</summary>
    public string Root => _folder.Path;

    /// <summary>Path of a file in it.</summary>
    public string At(string name) => _folder.File(name);

    public void Dispose() => _folder.Dispose();

    /// <summary>Stores a lesson as the README tells, and the same with a second change.</summary>
    public void WriteLesson(string lesson)
    {
        File.WriteAllText(At("steeper.toml"), lesson);
        const string change = "propeller.pitch = [1, 1.25]\n";
        Assert.Contains(change, lesson, StringComparison.Ordinal);
        File.WriteAllText(At("two.toml"), lesson.Replace(change, change + "motor.mass_g = [33, 40]\n", StringComparison.Ordinal));
    }

    /// <summary>
    /// The votes of a simulated pilot: sessions of the real kind, the first trials seen, the others wrong. A control, all of whose
    /// flights are alike, is voted 1 in a triangle; in a pair nobody can tell it from a trial, so it is seen as well.
    /// </summary>
    public void WriteVotes()
    {
        DateTimeOffset day = new(2026, 5, 1, 19, 0, 0, TimeSpan.FromHours(2));
        Fly(BlindTest.Triangle, "Curlew", 45.6, trials: 12, controls: 3, seen: 12, day);
        Fly(BlindTest.Triangle, "Pipit", -2.6, trials: 12, controls: 3, seen: 4, day.AddDays(1));
        Fly(BlindTest.Triangle, "Redshank", 27.8, trials: 12, controls: 3, seen: 10, day.AddDays(2));
        Fly(BlindTest.Pair, "Sanderling", -28.3, trials: 16, controls: 4, seen: 15, day.AddDays(3));
    }

    /// <summary>The same file after a spreadsheet has put a semicolon into one of its numbers.</summary>
    public void SpoilVotes()
    {
        string[] lines = File.ReadAllLines(At("votes.csv"));
        lines[16] = lines[16].Replace(",-2.6,", ",-2;6,", StringComparison.Ordinal);
        File.WriteAllLines(At("votes.csv"), lines);
    }

    private void Fly(BlindTest test, string other, double difference, int trials, int controls, int seen, DateTimeOffset day)
    {
        BlindSession session = new(test, trials, controls, seed: day.Day);
        VoteLog log = new(At("votes.csv"));
        while (!session.IsOver)
        {
            int[] builds = [.. Enumerable.Range(1, test.Flights).Select(flight => session.Select(flight).TakeOff())];
            bool control = test == BlindTest.Triangle && builds.Distinct().Count() == 1;
            int answer = test == BlindTest.Pair ? 1 + Math.Abs(builds[0] - builds[1]) : 1 + Math.Max(0, Array.FindIndex(builds, build => builds.Count(b => b == build) == 1));
            bool sees = control || seen-- > 0;
            int choice = sees ? answer : 1 + (answer % test.Choices.Count);
            log.Append(session.Vote(choice), new("Wagtail", other, "stop_time", difference, TuningPolicy.Matched, 0, "0.1.0"), day.AddMinutes(3 * session.Voted));
        }
    }
}
