using Simfeel.Builds;
using Simfeel.Flight.Fields;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Tests.Fields;

/// <summary>Every mistake in a field file gets one clear finding with its line, key, range and unit.</summary>
public class FieldMistakeTests
{
    private const string Head = """
        format = 1
        [field]
        name = "Test"
        pilot_north_m = -5
        pilot_east_m = 0
        sea_depth_m = 10

        """;

    private const string Square = """
        [[land]]
        north_m = -50
        east_m = -50
        [[land]]
        north_m = 50
        east_m = -50
        [[land]]
        north_m = 50
        east_m = 50
        [[land]]
        north_m = -50
        east_m = 50

        """;

    private const string Gate = """
        [[gate]]
        name = "a"
        north_m = 20
        east_m = 0
        width_m = 3
        height_m = 2

        """;

    private const string Wall = """
        [[wall]]
        from_north_m = 10
        from_east_m = -10
        to_north_m = 10
        to_east_m = 10
        height_m = 2

        """;

    [Fact]
    public void SmallestFieldReadsWithoutFinding()
    {
        FieldResult result = FieldReader.Parse(Head + Square + Gate + Wall, "test.toml");
        Assert.Empty(result.Diagnostics);
        Assert.Equal((4, 1, 4), (result.Map!.Land.Count, result.Map.Gates.Count, result.Map.Solids.Count));
    }

    /// <summary>What is added below a good field, and the line of it (from 1) that the finding names.</summary>
    [Theory]
    [InlineData("[[gate]]\nname = \"b\"\nnorth_m = 30\neast_m = 0\nwidth_m = 300\nheight_m = 2", 5, "gate.width_m", "too large; allowed is 0.5 to 20 m")]
    [InlineData("[[gate]]\nname = \"b\"\nnorth_m = 30\neast_m = 0\nwidth_m = 3", 1, "gate.height_m", "missing: height of the opening. Allowed is 0.5 to 20 m")]
    [InlineData("[[gate]]\nname = 3\nnorth_m = 30\neast_m = 0\nwidth_m = 3\nheight_m = 2", 2, "gate.name", "text in quotes")]
    [InlineData("[[gate]]\nname = \" \"\nnorth_m = 30\neast_m = 0\nwidth_m = 3\nheight_m = 2", 2, "gate.name", "not empty")]
    [InlineData("[[gate]]\nname = \"a\"\nnorth_m = 30\neast_m = 0\nwidth_m = 3\nheight_m = 2", 2, "gate.name", "has this name already")]
    [InlineData("[[gate]]\nname = \"b\"\nnorth_m = 30\neast_m = 0\nwidth_m = 3\nheight_m = 2\nheading_deg = 400", 7, "gate.heading_deg", "allowed is -360 to 360 deg")]
    [InlineData("[[gate]]\nname = \"b\"\nnorth_m = 1\neast_m = 0\nwidth_m = 3\nheight_m = 2", 1, "gate", "needs 2 m of free room")]
    [InlineData("[[gate]]\nname = \"b\"\nnorth_m = 70\neast_m = 0\nwidth_m = 3\nheight_m = 2", 1, "gate", "stands in the sea; only rocks may")]
    [InlineData("[[pole]]\nnorth_m = \"20\"\neast_m = 0\nheight_m = 4", 2, "pole.north_m", "no number; allowed is -2000 to 2000 m")]
    [InlineData("[[pole]]\nnorth_m = 20\neast_m = nan\nheight_m = 4", 3, "pole.east_m", "not a finite number")]
    [InlineData("[[pole]]\nnorth_m = 20\neast_m = 0\nheight_m = 0.5\ndiameter_m = 1", 4, "pole.height_m", "at least as high as wide; its diameter_m is 1 m")]
    [InlineData("[[pole]]\nnorth_m = 20\neast_m = 5\nheight_m = 4\ncount = 2.5\nstep_north_m = 2", 5, "pole.count", "a whole number from 1 to 100")]
    [InlineData("[[pole]]\nnorth_m = 20\neast_m = 5\nheight_m = 4\ncount = 3", 5, "pole.count", "needs step_north_m or step_east_m, -500 to 500 m")]
    [InlineData("[[pole]]\nnorth_m = 20\neast_m = 5\nheight_m = 4\ncount = 9\nstep_north_m = 8", 1, "pole", "stands in the sea")]
    [InlineData("[[tree]]\nnorth_m = 20\neast_m = 5\nheight_m = 4\ncrown_m = 5", 5, "tree.crown_m", "allowed is at most height_m, 4 m")]
    [InlineData("[[tree]]\nnorth_m = 20\neast_m = 5\nheight_m = 4\ncrown_m = 2\ntrunk_m = 2", 6, "tree.trunk_m", "narrower than crown_m, 2 m")]
    [InlineData("[[wall]]\nfrom_north_m = 20\nfrom_east_m = 5\nto_north_m = 20\nto_east_m = 5\nheight_m = 1", 4, "wall.to_north_m", "0 m long; allowed is 0.2 m or more")]
    [InlineData("[[wall]]\nfrom_north_m = 20\nfrom_east_m = 5\nto_north_m = 20\nto_east_m = 9\nheight_m = 1\ngap_m = 3\ngap_from_m = 2", 7, "wall.gap_m", "below the wall's length of 4 m")]
    [InlineData("[[wall]]\nfrom_north_m = 20\nfrom_east_m = 5\nto_north_m = 20\nto_east_m = 9\nheight_m = 1\ngap_m = 1\ngap_from_m = 2\nlintel_m = 2", 9, "wall.lintel_m", "below 1 m, its height_m")]
    [InlineData("[[rock]]\nnorth_m = 0\neast_m = 2\ndiameter_m = 2\nheight_m = 1", 1, "rock", "in the way of the start")]
    [InlineData("[[lighthouse]]\nnorth_m = 20\neast_m = 20\ndiameter_m = 6\nheight_m = -24", 5, "lighthouse.height_m", "too small; allowed is 3 to 80 m")]
    [InlineData("[[building]]\nnorth_m = 20\neast_m = 20\nlength_m = true\nwidth_m = 3\nheight_m = 3", 4, "building.length_m", "no number; allowed is 0.2 to 100 m")]
    [InlineData("[[ring]]\nnorth_m = 0\neast_m = 0\nradius_m = 0", 4, "ring.radius_m", "allowed is 0.1 to 200 m")]
    [InlineData("[ring]\nnorth_m = 0\neast_m = 0\nradius_m = 1", 1, "ring", "a table of its own")]
    [InlineData("[[land]]\nnorth_m = 0\neast_m = 60", 1, "land", "meets the edge from the corner in line")]
    [InlineData("[[land]]\nnorth_m = -50\neast_m = -50", 1, "land", "lies where the one in line 7 does")]
    [InlineData("[[land]]\nnorth_m = 1\neast_m = 0", 1, "land", "needs at least 2 m")]
    [InlineData("[[ring]]\nnorth_m = 0\neast_m = 0\nradius_m = 1\nradius_m = 2", 5, "ring.radius_m", "given twice")]
    [InlineData("[[ring]]\nnorth_m = 0\neast_m = 0\nradius_m = 1,5", 4, "radius_m", "not valid TOML")]
    public void OneFindingAtItsLine(string added, int line, string key, string message)
    {
        string good = Head + Square + Gate + Wall;
        FieldResult result = FieldReader.Parse(good + added + "\n", "test.toml");
        Assert.Null(result.Map);
        Diagnostic error = Assert.Single(result.Diagnostics);
        Assert.Equal((Severity.Error, "test.toml", key), (error.Severity, error.File, error.Key));
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
        Assert.Equal(good.Count(c => c == '\n') + line, error.Line);
    }

    [Theory]
    [InlineData("name = \"Test\"\n", "", 2, "field.name", "missing")]
    [InlineData("sea_depth_m = 10", "sea_depth_m = 0", 6, "field.sea_depth_m", "allowed is 0.5 to 200 m")]
    [InlineData("pilot_north_m = -5", "pilot_north_m = -55", 4, "field.pilot_north_m", "stands in the sea")]
    [InlineData("[field]", "[[field]]", 2, "field", "one field table only")]
    [InlineData("format = 1\n", "format = 1\ngate = []\n", 2, "gate", "[[gate]] is a table")]
    [InlineData("format = 1", "format = 0", 1, "format", "a whole number from 1 to 1000")]
    public void MistakesAtTheTop(string written, string changed, int line, string key, string message)
    {
        string text = (Head + Square).Replace(written, changed, StringComparison.Ordinal);
        Diagnostic error = FieldReader.Parse(text, "test.toml").Diagnostics.First(d => d.Severity == Severity.Error);
        Assert.Equal((line, key), (error.Line!.Value, error.Key));
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[[gates]]\nname = \"b\"", "gates", "did you mean [[gate]]?")]
    [InlineData("[[ring]]\nnorth_m = 0\neast_m = 0\nradius_m = 1\npaint = 0.2", "ring.paint", "did you mean paint_m?")]
    [InlineData("[[ring]]\nnorth_m = 0\neast_m = 0\nradius_m = 1\ncolour = 2", "ring.colour", "")]
    public void UnknownNamesWarnOnly(string added, string key, string hint)
    {
        FieldResult result = FieldReader.Parse(Head + Square + added + "\n", "test.toml");
        Assert.NotNull(result.Map);
        Diagnostic warning = Assert.Single(result.Diagnostics);
        Assert.Equal((Severity.Warning, key, hint), (warning.Severity, warning.Key, warning.Hint));
    }

    [Theory]
    [InlineData("format = 1\n", "", "does not say its format")]
    [InlineData("format = 1\n", "format = 2\n", "knows version 1")]
    public void OtherFormatsWarn(string written, string changed, string message)
    {
        FieldResult result = FieldReader.Parse((Head + Square).Replace(written, changed, StringComparison.Ordinal), "test.toml");
        Assert.NotNull(result.Map);
        Assert.Contains(message, Assert.Single(result.Diagnostics).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void TooManySolidsAreRefusedAtTheTableThatMakesThem()
    {
        string row = "[[pole]]\nnorth_m = -40\neast_m = 20\nheight_m = 4\ncount = 100\nstep_north_m = 0.8\n";
        Assert.NotNull(FieldReader.Parse(Head + Square + string.Concat(Enumerable.Repeat(row, 4)), "test.toml").Map);
        string text = Head + Square + string.Concat(Enumerable.Repeat(row, 5));
        Diagnostic error = Assert.Single(FieldReader.Parse(text, "test.toml").Diagnostics);
        Assert.Contains("allowed are 0 to 400", error.Message, StringComparison.Ordinal);
        Assert.Equal(text[..text.LastIndexOf("[[pole]]", StringComparison.Ordinal)].Count(c => c == '\n') + 1, error.Line);
    }

    [Fact]
    public void TooManyTablesAreRefused()
    {
        string text = Head + Square + string.Concat(Enumerable.Repeat("[[ring]]\nnorth_m = 0\neast_m = 0\nradius_m = 1\n", 201));
        Assert.Contains("allowed are 0 to 200", Assert.Single(FieldReader.Parse(text, "test.toml").Diagnostics).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void LandNeedsThreeCorners()
    {
        string text = Head + "[[land]]\nnorth_m = 5\neast_m = 5\n";
        Diagnostic error = Assert.Single(FieldReader.Parse(text, "test.toml").Diagnostics);
        Assert.Contains("1 corners; allowed are 3 to 200", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void MissingFieldTable() =>
        Assert.Contains("[field] is missing", Assert.Single(FieldReader.Parse("format = 1\n" + Square, "test.toml").Diagnostics).Message, StringComparison.Ordinal);

    [Fact]
    public void MissingFile()
    {
        FieldResult result = FieldReader.Read(Path.Combine(AppContext.BaseDirectory, "fields", "none.toml"));
        Assert.Null(result.Map);
        Assert.Contains("no such file", Assert.Single(result.Diagnostics).Message, StringComparison.Ordinal);
    }

    /// <summary>Edges on one line that do not touch are no crossing: a comb has several.</summary>
    [Fact]
    public void NotchedLandIsSimple()
    {
        Vec3[] comb = [new(0, 0, 0), new(0, 1, 0), new(-1, 1, 0), new(-1, 2, 0), new(0, 2, 0), new(0, 3, 0), new(-5, 3, 0), new(-5, 0, 0)];
        Assert.Null(FieldChecks.Crossing(comb));
        Assert.Equal((0, 2), FieldChecks.Crossing([new(0, 0, 0), new(4, 4, 0), new(4, 0, 0), new(0, 4, 0)]));
        Assert.Equal((1, 2), FieldChecks.Crossing([new(0, 0, 0), new(0, 4, 0), new(4, 4, 0), new(2, 4, 0), new(2, 1, 0)]));
    }
}
