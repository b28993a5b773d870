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
