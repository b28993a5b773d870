using Simfeel.Studies.Fit;
using Simfeel.Studies.Fit.Reading;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>Marks between cells and in numbers, headings and their units, words for a column: each rule from both sides, cells by hand.</summary>
public class TableMarkTests
{
    /// <summary>A mark counts where at least half of the lines with numbers have two filled cells by it; a comma is asked last.</summary>
    [Theory]
    [InlineData(';', "a;b", "1;2", "3 and 4")]
    [InlineData(Dialect.Gap, "a;b", "1;2", "3 and 4", "5 and 6")]
    [InlineData(',', "1;", "2;", "3,4", "5,6")]
    [InlineData('\t', "1\t2;3", "4\t5;6")]
    [InlineData(';', "1|2;3", "4|5;6")]
    [InlineData('|', "1|2,3", "4|5,6")]
    [InlineData(',', "# 1;2", "# 3;4", "# 5;6", "7,8")]
    [InlineData(Dialect.Gap, "words;only", "and;more")]
    [InlineData(';', "sep=;", "1,2", "3,4")]
    [InlineData(',', "sep=", "1,2", "3,4")]
    [InlineData(',', "sep=;;", "1,2", "3,4")]
    [InlineData(';', "SEP=; ", "1,2")]
    [InlineData(',', "12345", "1,2", "3,4")]
    public void The_mark_between_cells(char mark, params string[] lines) => Assert.Equal(mark, Dialect.Detect(lines));

    [Fact]
    public void Quotes_hold_marks_and_line_ends()
    {
        Assert.Equal(["a;b", "c"], Cut("\"a;b\";c"));
        Assert.Equal(["5\"", "6"], Cut("5\";6"));
        Assert.Equal(["say \"x\"", "c"], Cut("\"say \"\"x\"\"\";c"));
        Assert.Equal(["\"", "c"], Cut("\"\"\"\";c"));
        Assert.Equal(["a", "b"], Cut("  \"a\" ;\u00a0b\u00a0"));
        Assert.Equal(["", ""], Cut(";"));
        Assert.Equal(["a b", "c"], Cut("a b   c", Dialect.Gap));
        // seven lines of one cell are as many as a quote may span
        string[] seven = ["\"1", "2", "3", "4", "5", "6", "7\";x", "8;9"];
        IReadOnlyList<CellRow> rows = Dialect.Cut(seven, ';', "table");
        Assert.Equal([1, 8], rows.Select(row => row.Line));
        Assert.Equal(["1 2 3 4 5 6 7", "x"], rows[0].Cells);
        string[] eight = ["\"1", "2", "3", "4", "5", "6", "7", "8\";x", "9;9"];
        Assert.Equal(9, Dialect.Cut(eight, ';', "table").Count);
        // an open quote in the last line
        Assert.Equal(["1"], Dialect.Cut(["a;b", "\"1"], ';', "table")[1].Cells);

        static IReadOnlyList<string> Cut(string line, char mark = ';') => Assert.Single(Dialect.Cut([line], mark, "table")).Cells;
    }

    [Fact]
    public void A_row_beyond_its_cells_is_empty()
    {
        CellRow row = new(1, ["a", "", "b"]);
        Assert.Equal(("a", "", "b", ""), (row[0], row[1], row[2], row[3]));
        Assert.Equal((2, false), (row.Filled, row.IsBlank));
        Assert.True(new CellRow(1, ["", ""]).IsBlank);
    }

    [Theory]
    [InlineData("# x", true)]
    [InlineData("  // x", true)]
    [InlineData("\"! x", true)]
    [InlineData("\ufeff# x", true)]
    [InlineData("/ x", false)]
    [InlineData("x # y", false)]
    public void Lines_of_comment(string line, bool comment) => Assert.Equal(comment, NumberText.IsComment(line));

    /// <summary>The first cell that shows each mark is the one that a contradiction names.</summary>
    [Theory]
    [InlineData("0.5|0.6|0,7|0,8", "two ways: '0.5' in line 1 and '0,7' here", 3)]
    [InlineData("1,234.5|2,345.6|1.234.567|2.234.567", "two ways: '1,234.5' in line 1 and '1.234.567' here", 3)]
    [InlineData("1,5|2,5|1,234,567|2,234,567", "decimal mark in '1,5' (line 1) and groups thousands in '1,234,567'", 3)]
    [InlineData("1.234,5|2.345,6|1,234.5|2,234.5", "two ways: '1,234.5' in line 3 and '1.234,5' here", 1)]
    [InlineData("12|1,234|2,345", "Is '1,234' 1.234 or 1234? Nothing in the table tells.", 2)]
    public void Contradictions_name_their_first_cells(string cells, string message, int line)
    {
        FitException error = Assert.Throws<FitException>(() => NumberText.Detect(Rows(cells), "table"));
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
        Assert.Equal(line, error.Diagnostics[0].Line);
    }

    [Theory]
    [InlineData("0,234", ',', false)]
    [InlineData("0.234", '.', false)]
    [InlineData("1.234|0.5", '.', false)]
    [InlineData("1.234|2,5", ',', true)]
    [InlineData(".5", '.', false)]
    [InlineData(",5", ',', false)]
    [InlineData("1,234.5", '.', true)]
    [InlineData("-1,234|0.5", '.', true)]
    public void A_mark_with_other_than_three_digits_is_a_decimal_mark(string cells, char mark, bool grouped) =>
        Assert.Equal(new NumberMarks(mark, grouped), NumberText.Detect(Rows(cells), "table"));

    [Theory]
    [InlineData("", "Thrust, g", "Thrust", "g")]
    [InlineData("", "Thrust/g", "Thrust", "g")]
    [InlineData("", "Torque oz in", "Torque", "ozin")]
    [InlineData("", "Thrust_g", "Thrust", "g")]
    [InlineData("", "Thrust (x) [g]", "Thrust", "g")]
    [InlineData("Thrust, g", "mean", "Thrust", "g")]
    [InlineData("", "/g", "Thrust", "g")]
    [InlineData("", ",g", "Thrust", "g")]
    [InlineData("", "Thrust", "Thrust", "")]
    [InlineData("", "g", "Thrust", "g")]
    public void Headings_give_their_unit_in_many_ways(string upper, string name, string quantity, string unit)
    {
        StandQuantity of = Enum.Parse<StandQuantity>(quantity);
        Assert.Equal(UnitNames.Find(of, unit)?.Words, new HeadingCell(1, upper, name, "").UnitOf(of)?.Words);
    }

    [Fact]
    public void Headings_name_their_quantity_by_themselves_then_with_title_then_by_unit()
    {
        Assert.Equal((StandQuantity.Thrust, true), Found("Torque", "Thrust", "V"));
        Assert.Equal((StandQuantity.Torque, true), Found("Torque", "mean", "V"));
        Assert.Equal((StandQuantity.Voltage, true), Found("", "mean", "V"));
        Assert.Equal((StandQuantity.Thrust, true), Found("", "mean (thrust)", ""));
        Assert.Equal((StandQuantity.Ignored, false), Found("", "mean", ""));
        Assert.Equal((StandQuantity.Efficiency, true), Found("", "Efficiency", "g/W"));
        // shares of power and what counts shaft power say nothing of the battery's
        Assert.Equal((StandQuantity.Ignored, true), Found("", "Efficiency", "%"));
        Assert.Equal((StandQuantity.Ignored, true), Found("", "Efficiency mech.", "g/W"));
        Assert.Equal("pounds of feathers", new HeadingCell(1, "", "Thrust", "[pounds of feathers]").UnknownUnit(StandQuantity.Thrust));
        Assert.Equal("", new HeadingCell(1, "", "Thrust [g]", "").UnknownUnit(StandQuantity.Thrust));

        static (StandQuantity, bool) Found(string upper, string name, string unit) => new HeadingCell(1, upper, name, unit).Find();
    }

    [Theory]
    [InlineData("Motor efficiency", StandQuantity.Efficiency)]
    [InlineData("E-RPM", StandQuantity.ElectricalSpeed)]
    [InlineData("Mech. Leistung", StandQuantity.MechanicalPower)]
    [InlineData("Puissance_électrique", StandQuantity.ElectricalPower)]
    [InlineData("ESC current", StandQuantity.Current)]
    [InlineData("ESC signal", StandQuantity.Throttle)]
    [InlineData("Poussée", StandQuantity.Thrust)]
    [InlineData("Drehmoment", StandQuantity.Torque)]
    [InlineData("Tensión", StandQuantity.Voltage)]
    [InlineData("Drehzahl", StandQuantity.Speed)]
    [InlineData("Hélice", StandQuantity.Propeller)]
    [InlineData("motor temp", StandQuantity.Ignored)]
    public void Words_of_four_languages(string heading, StandQuantity quantity) => Assert.Equal((quantity, true), QuantityNames.Find(heading));

    [Theory]
    [InlineData("Thrust=thrust:gf", "Thrust", StandQuantity.Thrust, "gf")]
    [InlineData(" a=b = rpm", "a=b", StandQuantity.Speed, "")]
    [InlineData("#3=Mechanical-Power:kW", "#3", StandQuantity.MechanicalPower, "kW")]
    [InlineData("x=ignore", "x", StandQuantity.Ignored, "")]
    [InlineData("x=thrust:", "x", StandQuantity.Thrust, "")]
    public void A_column_is_told_by_name_quantity_and_unit(string text, string name, StandQuantity quantity, string unit)
    {
        Assert.Equal(new ColumnOverride(name, quantity, unit), ColumnOverride.Parse(text, out string fault));
        Assert.Equal("", fault);
    }

    [Theory]
    [InlineData("Thrust", "'Thrust' is no column; write Name=quantity:unit, such as \"Thrust=thrust:gf\" or #3=rpm.")]
    [InlineData("=thrust", "'=thrust' is no column; write Name=quantity:unit, such as \"Thrust=thrust:gf\" or #3=rpm.")]
    [InlineData("x=bananas", "'bananas' is no quantity; quantities are throttle, thrust, torque, voltage, current, power, mechanical-power, rpm, erpm, efficiency, propeller, ignore.")]
    [InlineData("x=voltage:A", "'A' is no unit of voltage; units are v, mv.")]
    public void What_tells_no_column_says_why(string text, string fault)
    {
        Assert.Null(ColumnOverride.Parse(text, out string said));
        Assert.Equal(fault, said);
    }

    [Fact]
    public void A_column_is_meant_by_its_number_or_any_of_its_names()
    {
        HeadingCell cell = new(3, "Air", "Thrust [g]", "");
        Assert.All((string[])["#3", "thrust [g]", "Air Thrust [g]", "Thrust"], name => Assert.True(Said(name).IsAbout(cell), name));
        Assert.All((string[])["#2", "#", "# 3", "Air", "Thrust g"], name => Assert.False(Said(name).IsAbout(cell), name));

        static ColumnOverride Said(string name) => new(name, StandQuantity.Thrust, "");
    }

    private static IEnumerable<CellRow> Rows(string cells) => cells.Split('|').Select((cell, n) => new CellRow(n + 1, [cell]));
}
