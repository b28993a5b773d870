using Simfeel.Studies.Fit;
using Simfeel.Studies.Fit.Reading;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>Where a heading ends and its rows begin, told from small tables by eye.</summary>
public class BlockFindingTests
{
    [Fact]
    public void A_heading_and_its_rows_are_a_block()
    {
        RawBlock block = Single("Throttle;Thrust", "10;20", "", ";", "30;40");
        Assert.Equal(("", 1), (block.Title, block.HeadingLine));
        Assert.Equal(["Throttle", "Thrust"], block.Heading.Select(cell => cell.Name));
        Assert.Equal([1, 2], block.Heading.Select(cell => cell.Column));
        Assert.Equal([2, 5], block.Rows.Select(row => row.Line));
        Assert.Empty(block.Refused);
        Assert.Empty(block.Notes);
    }

    /// <summary>Comments are passed over, but for one that names two quantities at least: a heading behind a mark.</summary>
    [Fact]
    public void A_comment_may_be_a_heading()
    {
        RawBlock marked = Single("# made at home", "# Throttle;Thrust", "10;20", "# it shook", "! Thrust;apples", "30;40");
        Assert.Equal(["Throttle", "Thrust"], marked.Heading.Select(cell => cell.Name));
        Assert.Equal("", marked.Title);
        Assert.Equal([3, 6], marked.Rows.Select(row => row.Line));
        Assert.Equal(["Throttle", "#Thrust"], Single("//Throttle;#Thrust;Volts", "10;20;3").Heading.Take(2).Select(cell => cell.Name));
        RawBlock one = Single("# Thrust;apples", "Throttle;Pull", "10;20");
        Assert.Equal(2, one.HeadingLine);
        Assert.Equal(["Throttle", "Pull"], one.Heading.Select(cell => cell.Label));
    }

    /// <summary>Above the heading a row is one of numbers where more than half of its cells are, two at least.</summary>
    [Fact]
    public void Words_with_a_number_or_two_are_a_title()
    {
        RawBlock block = Single("Motor;22;7;of today", "5", "Throttle;Thrust;RPM", "10;20;n/a", "30;40;50");
        Assert.Equal("Motor, 22, 7, of today / 5", block.Title);
        Assert.Equal(3, block.HeadingLine);
        Assert.Equal([4, 5], block.Rows.Select(row => row.Line));
        Assert.Throws<FitException>(() => Find("10;20;word", "Throttle;Thrust", "10;20"));
    }

    /// <summary>Below the heading half of the cells may be spoilt; what has fewer numbers is refused with its line.</summary>
    [Fact]
    public void A_row_of_few_numbers_is_refused()
    {
        RawBlock block = Single("Throttle;Thrust;RPM;Volts", "10;20;30;4", "50;twenty;thirty;5", "60;n/a;-;", "70;twenty;thirty;forty", "80;ninety;thirty;", "90;20;30;4");
        Assert.Equal([2, 3, 4, 7], block.Rows.Select(row => row.Line));
        Assert.Equal([5, 6], block.Refused.Select(row => row.Line));
        Assert.Equal("holds too few numbers: 70, twenty, thirty, forty", block.Refused[0].Reason);
        Assert.Equal("holds too few numbers: 80, ninety, thirty", block.Refused[1].Reason);
    }

    /// <summary>A line of one cell between rows of numbers is the title of more rows under the same names; other words are passed over.</summary>
    [Fact]
    public void A_title_between_rows_begins_a_block()
    {
        IReadOnlyList<RawBlock> blocks = Find("Throttle;Thrust", "10;20", "it;shook", "6x4", "second try", "30;40", "50;60");
        Assert.Equal(2, blocks.Count);
        Assert.Equal(["", "6x4 / second try"], blocks.Select(block => block.Title));
        Assert.Equal([1, 1], blocks.Select(block => block.HeadingLine));
        Assert.Same(blocks[0].Heading, blocks[1].Heading);
        Assert.Equal([6, 7], blocks[1].Rows.Select(row => row.Line));
        Assert.Empty(blocks[0].Refused);
        Assert.Equal(2, Single("Throttle;Thrust", "10;20", "it;shook", "30;40").Rows.Count);
        // names that nobody knows are a heading at the top only
        Assert.Equal(2, Single("apples;pears", "10;20", "plums;figs", "30;40").Rows.Count);
        // below a title a row is one of numbers by the rule above the heading
        RawBlock after = Find("Throttle;Thrust;RPM", "10;20;30", "6x4", "40;fifty", "60;70;80")[1];
        Assert.Equal([5], after.Rows.Select(row => row.Line));
    }

    [Fact]
    public void A_second_heading_begins_a_block_with_its_own_names()
    {
        IReadOnlyList<RawBlock> blocks = Find("5x4", "Throttle;Thrust", "10;20", "", "6x4", "RPM;Volts", "30;40");
        Assert.Equal(["5x4", "6x4"], blocks.Select(block => block.Title));
        Assert.Equal([2, 6], blocks.Select(block => block.HeadingLine));
        Assert.Equal(["RPM", "Volts"], blocks[1].Heading.Select(cell => cell.Name));
        Assert.Equal([7], blocks[1].Rows.Select(row => row.Line));
    }

    [Fact]
    public void Sums_and_means_are_left_out_and_said()
    {
        RawBlock block = Single("Throttle;Thrust;RPM", "10;20;30", ";Total;50;60", "Average;1;2", "40;50;60");
        Assert.Equal([2, 5], block.Rows.Select(row => row.Line));
        Assert.Equal(["line 3 \"Total\" sums up other rows and is left out", "line 4 \"Average\" sums up other rows and is left out"], block.Notes);
        // a block of nothing but sums is none
        Assert.Equal("5x4", Single("5x4", "Throttle;Thrust;RPM", "10;20;30", "summary", "Average;1;2").Title);
    }

    /// <summary>More than half units make a row of units; then the names stand above it.</summary>
    [Fact]
    public void A_row_of_units_stands_below_the_names()
    {
        RawBlock block = Single("Throttle;Thrust;remark", "%;gf;;V", "10;20;;3");
        Assert.Equal(["%", "gf", "", "V"], block.Heading.Select(cell => cell.Unit));
        Assert.Equal(["Throttle", "Thrust", "remark", ""], block.Heading.Select(cell => cell.Name));
        Assert.Equal((1, ""), (block.HeadingLine, block.Title));
        Assert.All(block.Heading, cell => Assert.Equal("", cell.Upper));
        // one of two is no more than half: these are names of their own
        RawBlock half = Single("Throttle;Thrust", "%;mean", "10;20");
        Assert.Equal(["", ""], half.Heading.Select(cell => cell.Unit));
        Assert.Equal(["%", "mean"], half.Heading.Select(cell => cell.Name));
        Assert.Equal(["Throttle", "Thrust"], half.Heading.Select(cell => cell.Upper));
    }

    /// <summary>A title that spans columns stands above each of them that has a name, a unit or a title of its own.</summary>
    [Fact]
    public void A_merged_title_spans_the_columns_to_its_right()
    {
        RawBlock block = Single("bench;;;;", ";Electrical;;Air;", "Throttle;Volts;Amps;Thrust;;RPM;Torque", "1;2;3;4;;5;6");
        Assert.Equal(["", "Electrical", "Electrical", "Air", "", "Air", "Air"], block.Heading.Select(cell => cell.Upper));
        Assert.Equal(("bench / Electrical, Air", 3), (block.Title, block.HeadingLine));
        // one word in the first column is no title of columns, one farther right is
        Assert.All(Single("bench;;", "Throttle;Volts;Amps", "1;2;3").Heading, cell => Assert.Equal("", cell.Upper));
        Assert.Equal(["", "Air", "Air"], Single(";Air;", "Throttle;Volts;Amps", "1;2;3").Heading.Select(cell => cell.Upper));
        // a title above an empty column still names it
        RawBlock open = Single("Throttle;Thrust;Volts", "mean;;max", "1;2;3");
        Assert.Equal(["Throttle", "Thrust", "Volts"], open.Heading.Select(cell => cell.Upper));
        Assert.Equal(["mean", "", "max"], open.Heading.Select(cell => cell.Name));
        Assert.Equal(["Throttle mean", "Thrust", "Volts max"], open.Heading.Select(cell => cell.Label));
    }

    /// <summary>Of several lines above the numbers the one with most known names is the heading.</summary>
    [Fact]
    public void The_line_that_names_most_is_the_heading()
    {
        RawBlock block = Single("Prop;today", "Throttle;Thrust;RPM", "1;2;3");
        Assert.Equal(["Throttle", "Thrust", "RPM"], block.Heading.Select(cell => cell.Name));
        Assert.Equal(["Prop", "today", "today"], block.Heading.Select(cell => cell.Upper));
        // a cell of sixty letters is prose, not a name
        string prose = "thrust " + new string('x', 60);
        Assert.Equal("Throttle", Single($"{prose};{prose};{prose}", "Throttle;Thrust", "1;2").Heading[0].Name);
    }

    private static RawBlock Single(params string[] lines) => Assert.Single(Find(lines));

    private static IReadOnlyList<RawBlock> Find(params string[] lines) =>
        BlockFinder.Find([.. lines.Select((line, n) => new CellRow(n + 1, [.. line.Split(';').Select(cell => cell.Trim())]))], "table");
}
