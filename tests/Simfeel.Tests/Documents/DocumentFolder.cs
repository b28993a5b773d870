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

    /// <summary>The votes that come along, after a spreadsheet has put a semicolon into one of their numbers.</summary>
    public void SpoilVotes()
    {
        string[] lines = File.ReadAllLines(At(SimulatedVotes.File));
        lines[16] = lines[16].Replace(",-2.6,", ",-2;6,", StringComparison.Ordinal);
        File.WriteAllLines(At("votes.csv"), lines);
    }
}
