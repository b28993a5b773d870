using System.Text;
using System.Text.RegularExpressions;

namespace Simfeel.Tests;

/// <summary>House rules that hold for every tracked file.</summary>
public partial class TreeTests
{
    private static readonly string[] TopLevel =
    [
        "README.md", "DEVELOPERS.md", "LICENSE", "Simfeel.sln", "global.json", "simfeel",
        "src", "tests", "assets", "benchmarks",
    ];

    private const int LongestFile = 400;

    private static readonly Dictionary<string, string> LongFiles = new()
    {
        ["README.md"] = "The manual is one page that a browser can search; its tables are printed by the program and compared by tests.",
    };

    [Fact]
    public void Top_level_holds_only_what_belongs_there()
    {
        string[] strangers =
        [
            .. SourceTree.Files
                .Select(path => path.Split('/')[0])
                .Distinct()
                .Where(name => !TopLevel.Contains(name) && !name.StartsWith('.') && !SharedProperties().IsMatch(name)),
        ];

        Assert.Empty(strangers);
    }

    /// <summary>Files that people write and read stay short; each exception has its reason.</summary>
    [Fact]
    public void No_file_that_people_write_is_longer_than_400_lines()
    {
        string[] longer =
        [
            .. TextFiles()
                .Where(path => !IsGenerated(path) && File.ReadLines(SourceTree.FullPath(path)).Count() > LongestFile)
                .Where(path => !LongFiles.ContainsKey(path)),
        ];
        Assert.Empty(longer);
        Assert.All(LongFiles.Keys, path => Assert.True(File.ReadLines(SourceTree.FullPath(path)).Count() > LongestFile, $"{path} is short by now; take it off the list."));
    }

    [Fact]
    public void No_text_file_names_a_path_of_one_machine()
    {
        Assert.NotEmpty(TextFiles());
        Assert.Empty(Findings(TextFiles(), line => MachinePath().IsMatch(line)));
    }

    [Fact]
    public void No_source_line_is_indented_with_tabs()
    {
        IEnumerable<string> sources = TextFiles().Where(path => path.EndsWith(".cs", StringComparison.Ordinal));

        Assert.Empty(Findings(sources, line => TabIndent().IsMatch(line)));
    }

    [Theory]
    [InlineData("see /ho" + "me/ann/simfeel", true)]
    [InlineData("\"/U" + "sers/ann/x\"", true)]
    [InlineData("cd /r" + "oot/x", true)]
    [InlineData("/t" + "mp/out.html", true)]
    [InlineData("C:\\U" + "sers\\ann", true)]
    [InlineData("c:\\\\w" + "ork\\\\x", true)]
    [InlineData("/usr/share/dotnet/dotnet", false)]
    [InlineData("https://example.org/home/page", false)]
    [InlineData("$root/src and ../work/x", false)]
    [InlineData("C:\\n", false)]
    public void Machine_paths_are_told_from_others(string text, bool machine) =>
        Assert.Equal(machine, MachinePath().IsMatch(text));

    /// <summary>Written by a program: package locks, bit-logs, data of measurements and of fuzzing, drawings, approved pages.</summary>
    private static bool IsGenerated(string path) =>
        path.EndsWith("packages.lock.json", StringComparison.Ordinal) || path.StartsWith("assets/reference/", StringComparison.Ordinal)
        || path.Contains("/corpus/", StringComparison.Ordinal)
        || (path.Contains("/Approved/", StringComparison.Ordinal) && Path.GetExtension(path) != ".cs") || Path.GetExtension(path) is ".csv" or ".tsv" or ".svg" or ".sln";

    private static IEnumerable<string> TextFiles() =>
        SourceTree.Files.Where(path => !File.ReadAllBytes(SourceTree.FullPath(path)).AsSpan().Contains((byte)0));

    private static IEnumerable<string> Findings(IEnumerable<string> paths, Predicate<string> bad)
    {
        foreach (string path in paths)
        {
            int number = 0;
            foreach (string line in File.ReadLines(SourceTree.FullPath(path), Encoding.UTF8))
            {
                number++;
                if (bad(line)) yield return $"{path}:{number}: {line.Trim()}";
            }
        }
    }

    [GeneratedRegex(@"^Directory\..*\.props$")]
    private static partial Regex SharedProperties();

    [GeneratedRegex(@"(?<![\w.}-])/(home|Users|root|work|tmp|mnt)/\w|\b[A-Za-z]:\\{1,2}(Users|Windows|Program|work|temp|src|dev)\b")]
    private static partial Regex MachinePath();

    [GeneratedRegex(@"^[ ]*\t")]
    private static partial Regex TabIndent();
}
