namespace Simfeel.Tests.Documents;

/// <summary>Whatever a document shows as run at a prompt prints what it shows there.</summary>
public sealed class DocumentRunTests(DocumentRunTests.Cache cache) : IClassFixture<DocumentRunTests.Cache>
{
    /// <summary>One cache of rotor tables for all runs; not the user's.</summary>
    public sealed class Cache : IDisposable
    {
        private readonly TempFolder _folder = new();

        internal string Folder => _folder.Path;

        public void Dispose() => _folder.Dispose();
    }

    private const string Prompt = "$ ";

    /// <summary>Typed at the question of a lesson, at the end of its line.</summary>
    private const string Question = "Enter to skip): ";

    /// <summary>Sections with blocks that are run.</summary>
    public static TheoryData<string> Sections => [.. Runs.Select(block => block.Section).Distinct()];

    /// <summary>The blocks.</summary>
    internal static IEnumerable<MarkdownBlock> Runs => MarkdownBlock.All.Where(block => block.First.StartsWith(Prompt, StringComparison.Ordinal));

    /// <summary>In one folder, one after the other, as a reader of the section would.</summary>
    [Theory]
    [MemberData(nameof(Sections))]
    public void What_is_shown_is_printed(string section)
    {
        using DocumentFolder folder = new();
        foreach (MarkdownBlock block in Runs.Where(block => block.Section == section))
        {
            Prepare(block, folder);
            string command = block.First[Prompt.Length..];
            string output = command.StartsWith("cat ", StringComparison.Ordinal) ? File.ReadAllText(folder.At(command[4..])) : Run(block, command, folder);
            string? fault = ShownLines.Fault(block.Lines.Skip(1), output);
            Assert.True(fault is null, $"{block} {command}\n{fault}");
        }
    }

    private static void Prepare(MarkdownBlock block, DocumentFolder folder)
    {
        if (block.First.EndsWith(" two.toml", StringComparison.Ordinal))
            folder.WriteLesson(MarkdownBlock.All.Single(other => other.Section == block.Section && other.Language == "toml").Text);
        if (block.First.EndsWith(" votes.csv", StringComparison.Ordinal)) folder.SpoilVotes();
    }

    private string Run(MarkdownBlock block, string command, DocumentFolder folder)
    {
        Assert.True(CommandWords.Starts(command), $"{block} runs something else than {CommandWords.Launcher}.");
        string typed = block.Lines.Select(line => line.Split(Question)).FirstOrDefault(parts => parts.Length == 2)?[1] ?? "";
        Dictionary<string, string> environment = new() { ["SIMFEEL_CACHE"] = cache.Folder };
        CliResult result = Cli.RunIn(folder.Root, typed, environment, CommandWords.Arguments(command));
        bool fails = block.Lines.Any(line => line.Contains(": error: ", StringComparison.Ordinal));
        Assert.True(fails == (result.ExitCode == 1) && result.ExitCode < 2, $"{block} {command} ended with {result.ExitCode}.\n{result.Errors}");
        if (!fails) Assert.Equal("", result.Errors);
        return fails ? result.Errors : result.Output;
    }
}
