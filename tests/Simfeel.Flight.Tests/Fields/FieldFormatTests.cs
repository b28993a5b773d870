using Simfeel.Builds.Format;
using Simfeel.Flight.Fields;

namespace Simfeel.Flight.Tests.Fields;

/// <summary>The table of keys of field files, and what the README says of them.</summary>
public class FieldFormatTests
{
    [Fact]
    public void EveryKeyIsWellFormed()
    {
        Assert.Equal(FieldFormat.Keys.Count, FieldFormat.Keys.Select(key => key.Path).Distinct().Count());
        Assert.All(FieldFormat.Keys, key =>
        {
            Assert.NotEqual("", key.Meaning);
            Assert.EndsWith(key.Unit.Length > 0 ? "_" + key.Unit : "", key.Path, StringComparison.Ordinal);
            if (key.Kind is not (KeyKind.Number or KeyKind.Count)) return;
            Assert.True(key.Minimum < key.Maximum);
            if (key.Default is double value) Assert.InRange(value, key.Minimum, key.Maximum);
        });
    }

    [Fact]
    public void ReadmeShowsTheReference()
    {
        foreach (string table in FieldFormat.Markdown().Split("\n\n", StringSplitOptions.RemoveEmptyEntries))
            Assert.Contains("\n" + table.TrimEnd() + "\n\n", ProjectFolder.Readme, StringComparison.Ordinal);
    }

    /// <summary>The example of the README reads without a finding.</summary>
    [Fact]
    public void ReadmeExampleIsAField()
    {
        string section = ProjectFolder.Readme[ProjectFolder.Readme.IndexOf("\n## Fields\n", StringComparison.Ordinal)..];
        string example = section.Split("```toml\n")[1].Split("```")[0];
        FieldResult result = FieldReader.Parse(example, "README.md");
        Assert.Empty(result.Diagnostics);
        Assert.Equal("Square", result.Map!.Name);
    }
}
