using Simfeel.Builds.Format;
using Simfeel.Builds.Reading;

namespace Simfeel.Builds.Tests;

/// <summary>The table of keys itself.</summary>
public class FormatTests
{
    [Fact]
    public void EveryKeyIsWellFormed()
    {
        Assert.Equal(BuildFormat.Keys.Count, BuildFormat.Keys.Select(k => k.Path).Distinct().Count());
        Assert.All(BuildFormat.Keys, key =>
        {
            Assert.NotEqual("", key.Meaning);
            Assert.True(key.ToSI > 0);
            if (key.Kind is KeyKind.Number or KeyKind.Count)
            {
                Assert.True(key.Minimum < key.Maximum);
                if (key.Default is double value) Assert.InRange(value, key.Minimum, key.Maximum);
            }
            // Every number with a unit says so in its name: the unit's letters close the key.
            string letters = key.Unit.Replace(" ", "_", StringComparison.Ordinal).Replace("/", "_", StringComparison.Ordinal).Replace("%", "percent", StringComparison.Ordinal);
            string ending = letters == "rpm_V" ? "rpm_per_V" : letters;
            Assert.EndsWith(ending, key.Path, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void ReferenceNamesEveryKey()
    {
        string text = FormatReference.Markdown();
        foreach (KeySpec key in BuildFormat.Keys)
        {
            Assert.Contains($"| `{key.Key}` | {key.Range} |", text, StringComparison.Ordinal);
        }
        foreach (string table in BuildFormat.Tables) Assert.Contains($"[{table}]", text, StringComparison.Ordinal);
    }

    /// <summary>The tables of the README are those of the format.</summary>
    [Fact]
    public void ReadmeShowsTheReference()
    {
        string readme = ProjectFolder.Readme;
        foreach (string table in FormatReference.Markdown().Split("\n\n", StringSplitOptions.RemoveEmptyEntries))
            Assert.Contains("\n" + table.TrimEnd() + "\n\n", readme, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "abc", 3)]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("mass_g", "masg_s", 2)]
    [InlineData("abcd", "abdc", 1)]
    [InlineData("same", "same", 0)]
    public void EditDistance(string a, string b, int distance)
    {
        Assert.Equal(distance, NearestName.Distance(a, b));
        Assert.Equal(distance, NearestName.Distance(b, a));
    }
}
