namespace Simfeel.Studies.Tests.Approved;

/// <summary>
/// Pages that somebody has looked at and found right, kept beside this file. Words, numbers and every stroke of a drawing stay as they
/// are until somebody looks again: <c>SIMFEEL_APPROVE=1 dotnet test tests/Simfeel.Studies.Tests --filter Approved</c> writes them anew,
/// for the change that goes with it to show.
/// </summary>
internal static class ApprovedPage
{
    /// <summary>Fails with the first line in which a page is not the approved one.</summary>
    public static void Check(string name, string text)
    {
        string path = Path.Combine(ProjectFolder.Root, "tests", "Simfeel.Studies.Tests", "Approved", name);
        // a line for each element makes differences readable
        string page = text.ReplaceLineEndings("\n").Replace("><", ">\n<", StringComparison.Ordinal);
        if (Environment.GetEnvironmentVariable("SIMFEEL_APPROVE") == "1") File.WriteAllText(path, page);
        string[] approved = File.ReadAllText(path).ReplaceLineEndings("\n").Split('\n'), lines = page.Split('\n');
        int line = Enumerable.Range(0, Math.Max(approved.Length, lines.Length)).FirstOrDefault(n => approved.ElementAtOrDefault(n) != lines.ElementAtOrDefault(n), -1);
        Assert.True(line < 0, $"{name}, line {line + 1}: {lines.ElementAtOrDefault(line)}\nwas approved as: {approved.ElementAtOrDefault(line)}");
    }
}
