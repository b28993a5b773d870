using System.Text;
using Simfeel.Studies.Fit;
using Simfeel.Studies.Fit.Reading;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>Units, numbers, sizes and headings as people write them, each against its definition.</summary>
public class TableWordsTests
{
    /// <summary>Handbook values: NIST Special Publication 811 (2008), appendix B, for units that are not decimal.</summary>
    [Theory]
    [InlineData(StandQuantity.Thrust, "g", 9.80665e-3)]
    [InlineData(StandQuantity.Thrust, "[kgf]", 9.80665)]
    [InlineData(StandQuantity.Thrust, "lbf", 4.448222)]
    [InlineData(StandQuantity.Thrust, "oz", 0.2780139)]
    [InlineData(StandQuantity.Thrust, "mN", 1e-3)]
    [InlineData(StandQuantity.Torque, "N·m", 1)]
    [InlineData(StandQuantity.Torque, "N-m", 1)]
    [InlineData(StandQuantity.Torque, "mN m", 1e-3)]
    [InlineData(StandQuantity.Torque, "Ncm", 1e-2)]
    [InlineData(StandQuantity.Torque, "g*cm", 9.80665e-5)]
    [InlineData(StandQuantity.Torque, "kgf.cm", 0.0980665)]
    [InlineData(StandQuantity.Torque, "lbf in", 0.1129848)]
    [InlineData(StandQuantity.Torque, "oz-in", 7.061552e-3)]
    [InlineData(StandQuantity.Speed, "min-1", 0.10471976)]
    [InlineData(StandQuantity.Speed, "kRPM", 104.71976)]
    [InlineData(StandQuantity.Speed, "Hz", 6.2831853)]
    [InlineData(StandQuantity.ElectricalSpeed, "Hz", 6.2831853)]
    [InlineData(StandQuantity.Speed, "rad/s", 1)]
    [InlineData(StandQuantity.Efficiency, "gf/W", 9.80665e-3)]
    [InlineData(StandQuantity.Voltage, "mV", 1e-3)]
    [InlineData(StandQuantity.Current, "mA", 1e-3)]
    [InlineData(StandQuantity.ElectricalPower, "(kW)", 1e3)]
    [InlineData(StandQuantity.Throttle, "%", 0.01)]
    [InlineData(StandQuantity.Throttle, "μs", 1e-3)]
    public void Units_have_their_size(StandQuantity quantity, string text, double si) =>
        Assert.Equal(1, UnitNames.Find(quantity, text)!.ToSI / si, 1e-6);

    [Fact]
    public void A_unit_alone_gives_its_quantity_away()
    {
        Assert.Equal(StandQuantity.Voltage, UnitNames.QuantityOf("[V]"));
        Assert.Equal(StandQuantity.Efficiency, UnitNames.QuantityOf("g/W"));
        Assert.Equal(StandQuantity.ElectricalSpeed, UnitNames.QuantityOf("eRPM"));
        Assert.Equal(StandQuantity.Speed, UnitNames.QuantityOf("rpm"));
        Assert.Equal(StandQuantity.Ignored, UnitNames.QuantityOf("1"));
        Assert.Equal(StandQuantity.Ignored, UnitNames.QuantityOf("bananas"));
        Assert.Null(UnitNames.Find(StandQuantity.Thrust, "V"));
        Assert.Null(UnitNames.Find(StandQuantity.Thrust, "[ ]"));
        Assert.All((string[])["(V)", "-", "°C", "g/W", "min-1"], text => Assert.True(UnitNames.IsUnit(text), text));
        Assert.All((string[])["", "[]", "bananas", "V2"], text => Assert.False(UnitNames.IsUnit(text), text));
    }

    [Theory]
    [InlineData("1.234,5", ',', true)]
    [InlineData("1,234.5", '.', true)]
    [InlineData("0.5", '.', false)]
    [InlineData("0,5", ',', false)]
    [InlineData("1.234.567", ',', true)]
    [InlineData("1,234,567", '.', true)]
    [InlineData("1.234|0,5", ',', true)]
    [InlineData("1,234|0.5", '.', true)]
    [InlineData("1.234", '.', false)]
    [InlineData("12|thrust", '.', false)]
    public void Marks_are_found_from_all_cells(string cells, char mark, bool grouped) =>
        Assert.Equal(new NumberMarks(mark, grouped), NumberText.Detect([new(1, cells.Split('|'))], "table"));

    [Theory]
    [InlineData("1,234")]
    [InlineData("0.5|0,5")]
    [InlineData("0,5|1,234,567")]
    [InlineData("0.5|1.234.567")]
    public void Marks_that_contradict_each_other_are_refused(string cells) =>
        Assert.Throws<FitException>(() => NumberText.Detect([new(1, cells.Split('|'))], "table"));

    [Theory]
    [InlineData("1.234,5", ',', true, 1234.5, "")]
    [InlineData("12,5 kg", ',', false, 12.5, "kg")]
    [InlineData("1 234.5", '.', false, 1234.5, "")]
    [InlineData("1'234.5", '.', false, 1234.5, "")]
    [InlineData("\u22123.5", '.', false, -3.5, "")]
    [InlineData("1e3", '.', false, 1000, "")]
    [InlineData(".5", '.', false, 0.5, "")]
    [InlineData("12 34", '.', false, double.NaN, "")]
    [InlineData("1,234", '.', false, double.NaN, "")]
    [InlineData("12,34", '.', true, double.NaN, "")]
    [InlineData("1e400", '.', false, double.NaN, "")]
    [InlineData("thrust", '.', false, double.NaN, "")]
    public void Cells_are_numbers_or_none(string cell, char mark, bool grouped, double value, string unit)
    {
        Assert.Equal((value, unit), NumberText.Parse(cell, new(mark, grouped)));
        Assert.Equal(!double.IsNaN(value), NumberText.LooksNumeric(cell) && !double.IsNaN(NumberText.Parse(cell, new(mark, grouped)).Value));
    }

    [Fact]
    public void Decimals_are_counted_behind_the_mark()
    {
        Assert.Equal((3, 0, 1, 0), (Count("12.345"), Count("12"), Count("0.5 kg"), Count("kg")));
        Assert.Equal(2, NumberText.Decimals("1.234,56", new(',', true)));

        static int Count(string cell) => NumberText.Decimals(cell, new('.', false));
    }

    [Theory]
    [InlineData("5.1x4.3x3", 5.1)]
    [InlineData("HQ 5,1 x 4", 5.1)]
    [InlineData("7\" prop", 7.0)]
    [InlineData("8 inch", 8.0)]
    [InlineData("25x10", null)]
    [InlineData("0.5x1", null)]
    [InlineData("propeller", null)]
    public void Sizes_are_read_out_of_names(string text, double? diameter) => Assert.Equal(diameter, PropellerNames.DiameterIn(text));

    [Theory]
    [InlineData("5x4", 5.1, true)]
    [InlineData("6x4", 5.1, false)]
    [InlineData("10x5", 10.5, true)]
    [InlineData("10x5", 11, false)]
    [InlineData("any", 5, true)]
    public void A_size_fits_within_its_rounding(string text, double diameter, bool fits) => Assert.Equal(fits, PropellerNames.Fits(text, diameter));

    [Theory]
    [InlineData("", "Thrust, g", "", StandQuantity.Thrust, 9.80665e-3)]
    [InlineData("", "Drehzahl/krpm", "", StandQuantity.Speed, 104.71976)]
    [InlineData("", "Torque", "N·m", StandQuantity.Torque, 1)]
    [InlineData("Thrust [N]", "mean", "", StandQuantity.Thrust, 1)]
    [InlineData("", "Thrust kg", "", StandQuantity.Thrust, 9.80665)]
    [InlineData("", "V", "", StandQuantity.Voltage, 1)]
    public void Headings_name_quantity_and_unit(string upper, string name, string unit, StandQuantity quantity, double si)
    {
        HeadingCell cell = new(1, upper, name, unit);
        Assert.Equal((quantity, true), cell.Find());
        Assert.Equal(1, cell.UnitOf(quantity)!.ToSI / si, 1e-6);
        Assert.Equal("", cell.UnknownUnit(quantity));
    }

    [Fact]
    public void What_a_heading_does_not_say_is_told()
    {
        Assert.Equal((StandQuantity.Ignored, false), new HeadingCell(1, "", "Bananas", "").Find());
        Assert.Equal((StandQuantity.Ignored, true), new HeadingCell(1, "", "Temperature", "C").Find());
        Assert.Equal("stones", new HeadingCell(1, "", "Thrust [stones]", "").UnknownUnit(StandQuantity.Thrust));
        // per shaft power says nothing of the battery
        Assert.Equal((StandQuantity.Ignored, true), new HeadingCell(1, "", "Mechanical efficiency", "g/W").Find());
        Assert.Equal("Thrust max g", new HeadingCell(1, "Thrust", "max", "g").Label);
        Assert.True(QuantityNames.IsMean("Avg. thrust") && QuantityNames.IsExtreme("Thrust max") && !QuantityNames.IsMean("Thrust"));
        Assert.True(QuantityNames.IsSummary("Mean") && !QuantityNames.IsSummary("50") && QuantityNames.IsNoLoad("without propeller"));
    }

    [Fact]
    public void Cells_are_cut_where_the_mark_stands()
    {
        Assert.Equal(';', Dialect.Detect(["sep=;", "a,b", "1,2"]));
        Assert.Equal(',', Dialect.Detect(["a,b", "1,2"]));
        Assert.Equal(';', Dialect.Detect(["a;b", "1,5;2,5"]));
        Assert.Equal('\t', Dialect.Detect(["a\tb", "1,5\t2,5"]));
        Assert.Equal(Dialect.Gap, Dialect.Detect(["a  b", "1  2"]));
        // a heading on two lines within its quotes
        IReadOnlyList<CellRow> rows = Dialect.Cut(["\"Thrust", "[g]\";RPM;\"say \"\"x\"\"\"", "1;2"], ';', "table");
        Assert.Equal(["Thrust [g]", "RPM", "say \"x\""], rows[0].Cells);
        Assert.Equal((1, 3), (rows[0].Line, rows[1].Line));
        // a quote that never closes takes nothing along
        string[] open = ["\"oops;1", .. Enumerable.Range(0, 9).Select(n => $"{n};2")];
        Assert.Equal(open.Length, Dialect.Cut(open, ';', "table").Count);
        Assert.Equal(["1", "2"], Dialect.Cut(["sep=;", "1;2"], ';', "table").Single().Cells);
        Assert.Throws<FitException>(() => Dialect.Cut([new string('x', 1001)], ';', "table"));
        Assert.Equal(1000, Dialect.Cut([new string('x', 1000)], ';', "table")[0].Cells[0].Length);
    }

    [Fact]
    public void Text_is_read_in_the_encodings_of_spreadsheets()
    {
        const string text = "Schub, größer";
        foreach (Encoding encoding in new[] { Encoding.Unicode, Encoding.BigEndianUnicode, Encoding.UTF8 })
            Assert.Equal(text, TableText.Decode([.. encoding.GetPreamble(), .. encoding.GetBytes(text)], "table"));
        Assert.Equal(text, TableText.Decode(new UTF8Encoding(false).GetBytes(text), "table"));
        Assert.Equal(text, TableText.Decode(Encoding.Latin1.GetBytes(text), "table"));
        Assert.Contains("binary", Assert.Throws<FitException>(() => TableText.Decode([65, 0, 66], "table")).Message, StringComparison.Ordinal);
        Assert.Contains("folder", Assert.Throws<FitException>(() => TableText.ReadFile(AppContext.BaseDirectory)).Message, StringComparison.Ordinal);
        Assert.Contains("no such file", Assert.Throws<FitException>(() => TableText.ReadFile(Path.Combine(AppContext.BaseDirectory, "none.csv"))).Message, StringComparison.Ordinal);
    }
}
