using Simfeel.Builds;
using Simfeel.Cockpit.Marks;
using Simfeel.Flight.Fields;
using Simfeel.Studies.Lessons;

namespace Simfeel.Tests.Documents;

/// <summary>Every fenced block of the documents is of some use to a test; what nobody checks is listed with a reason.</summary>
public class DocumentBlockTests
{
    /// <summary>First lines of blocks that are not run or read, each with the reason.</summary>
    private static readonly Dictionary<string, string> Unchecked = new()
    {
        ["import pyarrow.ipc as ipc"] = "needs a Python package that the tests do not; its names are checked against the table of columns below it",
    };

    private static readonly (string What, Predicate<MarkdownBlock> Is, Action<MarkdownBlock> Check)[] Kinds =
    [
        ("run", block => DocumentRunTests.Runs.Contains(block), _ => { }), // DocumentRunTests
        ("commands", block => block.Language == "" && block.Lines.All(CommandWords.Starts), Commands),
        ("scripts", block => block.Lines.All(line => Tool(line) is not null), Tools),
        ("lesson", block => Toml(block, "[lesson]"), block => Assert.Empty(LessonReader.Parse(block.Text, "lesson.toml").Diagnostics)),
        ("field", block => Toml(block, "[field]"), block => Assert.Empty(FieldReader.Parse(block.Text, "field.toml").Diagnostics)),
        ("build", block => Toml(block, "[frame]"), block => Assert.Empty(BuildReader.Parse(block.Text, "build.toml").Diagnostics)),
        ("marks", block => Toml(block, "[[mark]]"), Marks),
        ("propeller", block => Toml(block, "[propeller]"), Propeller),
        ("polar", block => block.First == "angle_deg,reynolds,lift,drag", _ => { }), // read with the propeller above it
        ("numbers", block => block.Language == "toml" && block.Lines.All(line => line.StartsWith("mass_g = ", StringComparison.Ordinal)), Numbers),
        ("mistakes", block => block.Lines.All(line => line.StartsWith("mybuild.toml:", StringComparison.Ordinal)), Mistakes),
        ("folders", block => block.First.StartsWith("src/", StringComparison.Ordinal), Folders),
        ("chain", block => block.First.Contains(" <- ", StringComparison.Ordinal), block => Assert.Equal(ReferenceGraphTests.Chain, block.First.Split(" <- "))),
        ("code", block => block.File == "DEVELOPERS.md" && block.Lines.Any(line => line.Contains("-> ", StringComparison.Ordinal)), CodeNames.Check),
        ("listed", block => Unchecked.ContainsKey(block.First), _ => { }),
    ];

    public static TheoryData<string> Blocks => [.. MarkdownBlock.All.Select(block => block.ToString())];

    [Theory]
    [MemberData(nameof(Blocks))]
    public void Every_block_is_of_one_kind_and_right(string name)
    {
        MarkdownBlock block = MarkdownBlock.All.Single(known => known.ToString() == name);
        string[] kinds = [.. Kinds.Where(kind => kind.Is(block)).Select(kind => kind.What)];
        Assert.True(kinds.Length == 1, $"{block} is of {kinds.Length} kinds ({string.Join(", ", kinds)}): {block.First}");
        Kinds.Single(kind => kind.What == kinds[0]).Check(block);
    }

    [Fact]
    public void Nothing_is_listed_that_is_not_there() =>
        Assert.All(Unchecked.Keys, first => Assert.Contains(MarkdownBlock.All, block => block.First == first));

    /// <summary>Commands within sentences, and the commands of a block by themselves.</summary>
    [Fact]
    public void Commands_in_sentences_exist()
    {
        foreach (string file in MarkdownBlock.Documents)
        {
            string[] commands = [.. MarkdownBlock.Spans(file).Where(CommandWords.Starts)];
            Assert.NotEmpty(commands);
            Assert.All(commands, Known);
        }
    }

    /// <summary>Examples that the help of a verb gives, and the next steps that a run proposes, are understood.</summary>
    [Fact]
    public void Examples_of_every_verb_are_understood()
    {
        Assert.NotEmpty(CommandModel.Own.Verbs);
        foreach (string verb in CommandModel.Own.Verbs.Where(verb => verb != "fit"))
        {
            string[][] examples = [.. CommandModel.Own.Examples(verb)];
            Assert.True(examples.Length > 0, $"{verb} --help has no example.");
            Assert.All(examples, example => Assert.True(CommandModel.Own.Fault(example) is null, $"{string.Join(' ', example)}: {CommandModel.Own.Fault(example)}"));
        }
    }

    /// <summary>Somebody who reads "What you can ask" learns of every verb.</summary>
    [Fact]
    public void The_readme_shows_every_verb()
    {
        string[] unseen = ["tour", "sweep-merge", "fit stand"]; // for contributors; below sweep; the same as fit
        string[] shown = [.. MarkdownBlock.All.Single(block => block.Section == "What you can ask").Lines.Select(line => string.Join(' ', CommandWords.Arguments(line)))];
        foreach (string verb in CommandModel.Own.Verbs.Except(unseen))
            Assert.Contains(shown, line => line == verb || line.StartsWith(verb + " ", StringComparison.Ordinal));
    }

    private static bool Toml(MarkdownBlock block, string table) => block.Language == "toml" && block.Lines.Any(line => line == table) && (table != "[propeller]" || !block.Lines.Contains("[frame]"));

    private static void Commands(MarkdownBlock block) => Assert.All(block.Lines, Known);

    private static void Known(string line)
    {
        string[] words = CommandWords.Arguments(line);
        // the launcher's own verb
        string? fault = words.FirstOrDefault() == "test" ? null : CommandModel.Own.Fault(words);
        Assert.True(fault is null, $"{line}: {fault}");
    }

    /// <summary>What is started from the root of the tree without the launcher: a script, or a project with its own options.</summary>
    private static string? Tool(string line) =>
        CommandWords.Of(line).FirstOrDefault(word => word.StartsWith("benchmarks/", StringComparison.Ordinal) || word.StartsWith(".ci/", StringComparison.Ordinal)) is { } path
            && line.Split(' ')[0] is "dotnet" or "xvfb-run" or "bash" || line.StartsWith("benchmarks/", StringComparison.Ordinal) ? CommandWords.Of(line).First(word => word.Contains('/', StringComparison.Ordinal)) : null;

    private static void Tools(MarkdownBlock block)
    {
        foreach (string line in block.Lines)
        {
            string path = Tool(line)!;
            Assert.Contains(SourceTree.Files, file => file == path || file.StartsWith(path + "/", StringComparison.Ordinal));
            if (!line.Contains(" -- ", StringComparison.Ordinal)) continue;
            string code = string.Concat(SourceTree.Files.Where(file => file.StartsWith(path, StringComparison.Ordinal) && file.EndsWith(".cs", StringComparison.Ordinal)).Select(file => File.ReadAllText(SourceTree.FullPath(file))));
            foreach (string option in CommandWords.Of(line[line.IndexOf(" -- ", StringComparison.Ordinal)..]).Where(word => word.Length > 2 && word.StartsWith("--", StringComparison.Ordinal)))
                Assert.Contains(option, code, StringComparison.Ordinal);
        }
    }

    private static void Marks(MarkdownBlock block)
    {
        List<string> wrong = [];
        Assert.Equal(block.Lines.Count(line => line == "[[mark]]"), TimeMarksFile.Read(block.Text, "flight.marks.toml", wrong).Count);
        Assert.Empty(wrong);
    }

    /// <summary>The propeller with the section that the next block shows flies in the wind tunnel.</summary>
    private static void Propeller(MarkdownBlock block)
    {
        using DocumentFolder folder = new();
        File.WriteAllText(folder.At("propeller.toml"), "format = 1\n" + block.Text);
        File.WriteAllText(folder.At("section.csv"), MarkdownBlock.All.Single(other => other.First.StartsWith("angle_deg,", StringComparison.Ordinal)).Text);
        PropellerResult result = BuildReader.ReadPropeller(folder.At("propeller.toml"));
        Assert.Empty(result.Diagnostics);
        Assert.NotNull(result.Propeller);
    }

    /// <summary>Each way to write a number, in turn, in the smallest build.</summary>
    private static void Numbers(MarkdownBlock block)
    {
        Assert.Equal(3, block.Lines.Count);
        foreach (string line in block.Lines) Assert.Empty(BuildReader.Parse(SmallestBuild.Replace("[motor]\n", $"[motor]\n{line}\n", StringComparison.Ordinal), "build.toml").Diagnostics);
    }

    /// <summary>A build in which the two shown mistakes stand in the shown lines.</summary>
    private static void Mistakes(MarkdownBlock block)
    {
        List<string> lines = [.. SmallestBuild.TrimEnd().Split('\n')];
        Pad("stator_diameter_mm = 22", 30);
        lines.Insert(30, "mass_g = -33");
        Pad("diameter_in = 5.1", 39);
        lines.Insert(39, "diamter_in = 5.1");
        Assert.Equal(block.Lines, BuildReader.Parse(string.Join('\n', lines), "mybuild.toml").Diagnostics.Select(diagnostic => diagnostic.ToString()));

        void Pad(string after, int before)
        {
            int at = lines.IndexOf(after) + 1;
            lines.InsertRange(at, Enumerable.Repeat("", before - at));
        }
    }

    private static void Folders(MarkdownBlock block)
    {
        Assert.All(block.Lines, line => Assert.True(Directory.Exists(SourceTree.FullPath(CommandWords.Of(line)[0])), line));
        string[] projects = [.. SourceTree.Files.Where(file => file.StartsWith("src/", StringComparison.Ordinal) && file.EndsWith(".csproj", StringComparison.Ordinal)).Select(file => Path.GetDirectoryName(file)!)];
        Assert.Empty(projects.Except(block.Lines.Select(line => CommandWords.Of(line)[0])));
    }

    private static string SmallestBuild => MarkdownBlock.All.Single(block => Toml(block, "[frame]")).Text;
}
