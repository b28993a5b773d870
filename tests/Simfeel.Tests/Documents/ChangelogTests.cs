using System.Text.RegularExpressions;

namespace Simfeel.Tests.Documents;

/// <summary>The changelog tells of every change of numbers: its newest hash is that of the reference that comes along.</summary>
public partial class ChangelogTests
{
    private static readonly string[] Entries =
        [.. File.ReadLines(SourceTree.FullPath("assets/handbook/changelog.md")).Where(line => line.StartsWith("- ", StringComparison.Ordinal))];

    [Fact]
    public void The_newest_hash_is_that_of_the_reference()
    {
        string reference = File.ReadLines(SourceTree.FullPath("assets/reference/bits.txt")).Single(line => line.StartsWith("hash all ", StringComparison.Ordinal)).Split(' ')[2];
        Assert.Equal(reference, Entries.Select(line => Hash().Match(line)).First(match => match.Success).Groups[1].Value);
    }

    [Fact]
    public void Every_change_of_numbers_has_a_hash_or_says_that_none_was_written_down() =>
        Assert.All(Entries.Where(line => line.StartsWith("- **numbers changed** ", StringComparison.Ordinal)), line => Assert.True(Hash().IsMatch(line) || line.EndsWith("Hash not written down.", StringComparison.Ordinal), line));

    [GeneratedRegex("Hash `([0-9a-f]{16})`")]
    private static partial Regex Hash();
}
