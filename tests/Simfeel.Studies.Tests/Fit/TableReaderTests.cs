using System.Globalization;
using Simfeel.Physics.Maths;
using Simfeel.Studies.Fit;
using Simfeel.Studies.Fit.Reading;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>How a whole table was read is said: marks, blocks, and units that only the build's model tells.</summary>
public class TableReaderTests
{
    private static readonly StandModel Wagtail = new(SyntheticStand.Starter("wagtail"));

    [Theory]
    [InlineData("Throttle [%];Thrust [g];RPM\n50;622,5;18671\n", "cells divided by semicolon, decimal comma")]
    [InlineData("Throttle [%]\tThrust [g]\tRPM\n50\t622.5\t18671\n", "cells divided by tab, decimal point")]
    [InlineData("Throttle [%]|Thrust [g]|RPM\n50|622,5|18.671\n", "cells divided by bar, decimal comma, '.' between thousands")]
    [InlineData("Throttle [%],Thrust [g],RPM\n50,622.5,\"18,671\"\n", "cells divided by comma, decimal point, ',' between thousands")]
    [InlineData("Throttle [%]  Thrust [g]  RPM\n50  622  18671\n", "cells divided by two blanks or more, decimal point")]
    public void Marks_are_told(string text, string writing)
    {
        StandTable table = StandTableReader.Parse(text, "my.csv", Wagtail);
        Assert.Equal((writing, "my.csv"), (table.Writing, table.Source));
        Assert.Empty(table.Skipped);
        Assert.Equal(18671 * Math.PI / 30, table.Blocks[0].Rows[0].Speed, 1e-9);
    }

    [Fact]
    public void Line_ends_of_all_systems_count_lines()
    {
        foreach (string end in (string[])["\n", "\r\n", "\r"])
            Assert.Equal([2, 3], StandTableReader.Parse($"Throttle [%];RPM{end}50;18671{end}60;21619{end}", "my.csv", Wagtail).Blocks[0].Rows.Select(row => row.Line));
    }

    private const string Three = "7x4\nThrottle [%];RPM\n50;13100\n5.1x4.3\nThrottle [%];RPM\n50;18671\nThrottle [%];RPM\n60;21619\n";

    [Fact]
    public void Blocks_of_other_sizes_are_left_out_with_their_reason()
    {
        StandTable table = StandTableReader.Parse(Three, "my.csv", Wagtail);
        Assert.Equal([2, 3], table.Blocks.Select(block => block.Number));
        Assert.Equal([5, 7], table.Blocks.Select(block => block.HeadingLine));
        Assert.Equal(["5.1x4.3", ""], table.Blocks.Select(block => block.Title));
        Assert.Equal(["block 1 (line 2, \"7x4\") is left out: it is about a propeller of 7 in, the build has 5.1 in"], table.Skipped);
    }

    [Fact]
    public void A_block_can_be_asked_for()
    {
        StandTable table = StandTableReader.Parse(Three, "my.csv", Wagtail, new() { Block = 2 });
        Assert.Equal(2, Assert.Single(table.Blocks).Number);
        Assert.Equal(["block 1 (line 2, \"7x4\") is left out: --block 2", "block 3 (line 7) is left out: --block 2"], table.Skipped);
        Assert.Equal(1, Assert.Single(StandTableReader.Parse(Three, "my.csv", Wagtail, new() { Block = 1 }).Blocks).Number);
        Assert.Equal(3, Assert.Single(StandTableReader.Parse(Three, "my.csv", Wagtail, new() { Block = 3 }).Blocks).Number);
        foreach (int none in (int[])[0, 4])
        {
            FitException error = Assert.Throws<FitException>(() => StandTableReader.Parse(Three, "my.csv", Wagtail, new() { Block = none }));
            Assert.Contains($"There is no block {none}; the file has 3.", error.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_column_that_no_block_has_cannot_be_told()
    {
        FitException error = Assert.Throws<FitException>(() => StandTableReader.Parse("Throttle [%];;RPM\n50;1;18671\n", "my.csv", Wagtail, new() { Columns = [Said("#3=rpm"), Said("Pull=thrust:g")] }));
        Assert.Contains("There is no column 'Pull'; columns are 'Throttle [%]', 'RPM'.", error.Message, StringComparison.Ordinal);
        // one block of several is enough
        const string two = "Throttle [%];RPM\n50;18671\nThrottle [%];Pull\n50;622\n";
        StandTable table = StandTableReader.Parse(two, "my.csv", Wagtail, new() { Columns = [Said("pull=thrust:g")] });
        Assert.Equal(622 * TradeUnits.GramForce, table.Blocks[1].Rows[0].Thrust, 1e-12);
    }

    /// <summary>Commas that cut numbers show as cells beyond the names, in half of the rows at least.</summary>
    [Theory]
    [InlineData("50,24,5\n60,24\n", true)]
    [InlineData("50,24\n60,24,5\n", true)]
    [InlineData("50,24,5\n60,24\n70,24\n", false)]
    [InlineData("50,24,said he\n60,24,said she\n", false)]
    public void Commas_as_decimal_marks_among_commas_are_refused(string rows, bool refused)
    {
        string text = "Throttle [%],Voltage [V]\n" + rows;
        if (!refused)
        {
            Assert.Equal(24, StandTableReader.Parse(text, "my.csv", Wagtail).Blocks[0].Rows[0].Voltage);
            return;
        }
        FitException error = Assert.Throws<FitException>(() => StandTableReader.Parse(text, "my.csv", Wagtail));
        Assert.Equal(rows.StartsWith("50,24,5", StringComparison.Ordinal) ? 2 : 3, error.Diagnostics[0].Line);
        Assert.Contains("This row has 3 cells below 2 names", error.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// Readings that are a share of the model's, in a unit that is not said: from 0.62 to 1.6 of the model that unit is told, beyond none is.
    /// </summary>
    [Theory]
    [InlineData(0.63, "63 %")]
    [InlineData(1, "100 %")]
    [InlineData(1.59, "159 %")]
    [InlineData(0.61, "")]
    [InlineData(1.61, "")]
    public void A_unit_is_told_by_the_model_within_a_factor(double share, string percent)
    {
        foreach ((bool throttled, string unit, double si) in ((bool, string, double)[])[(false, "gram-force", TradeUnits.GramForce), (false, "newton", 1), (true, "gram-force", TradeUnits.GramForce)])
        {
            string text = Table(share, si, throttled);
            if (percent.Length == 0)
            {
                FitException error = Assert.Throws<FitException>(() => StandTableReader.Parse(text, "my.csv", Wagtail));
                Assert.Contains("The heading gives no unit that is known, and in no unit do the numbers agree with the build.", error.Message, StringComparison.Ordinal);
                Assert.Contains("say the unit with --column \"Pull=thrust:g\"; units are g, kg, n, mn, lb, oz", error.Message, StringComparison.Ordinal);
                continue;
            }
            StandBlock block = StandTableReader.Parse(text, "my.csv", Wagtail).Blocks[0];
            ColumnReading column = block.Columns.Single(c => c.Quantity == StandQuantity.Thrust);
            Assert.Equal($"column 1 \"Pull\": thrust, {unit} (no unit given that is known here; only so does it agree with the build, at {percent} of the model)", column.ToString());
            Assert.Equal(share * Wagtail.Air(2500).Thrust, block.Rows[0].Thrust, 1e-4);
        }
    }

    /// <summary>Offsets of the scale mislead near zero: only the stronger half of the rows is asked, whatever their order.</summary>
    [Fact]
    public void Weak_rows_do_not_tell_a_unit()
    {
        string[] lines = [.. new[] { 300, 2800, 400, 3000, 500 }.Select(speed => Line(speed, (Wagtail.Air(speed).Thrust / TradeUnits.GramForce) + (speed < 2000 ? 80 : 0)))];
        StandBlock block = StandTableReader.Parse("Pull;RPM\n" + string.Join('\n', lines), "my.csv", Wagtail).Blocks[0];
        Assert.Equal("gram-force", block.Columns[0].Unit);
        Assert.EndsWith("at 100 % of the model", block.Columns[0].Because, StringComparison.Ordinal);
    }

    /// <summary>Two units that both agree, 1.13 times apart, tell nothing; without speed and throttle nothing does.</summary>
    [Fact]
    public void Two_units_or_no_model_tell_nothing()
    {
        const double kilogramCentimetre = 0.0980665;
        string text = "Torque;RPM\n" + string.Join('\n', new[] { 2000, 2500, 3000 }.Select(speed => Line(speed, Wagtail.Air(speed).Torque / kilogramCentimetre)));
        FitException error = Assert.Throws<FitException>(() => StandTableReader.Parse(text, "my.csv", Wagtail));
        Assert.Contains("kilogram-force centimetre and pound-force inch would both agree with the build", error.Message, StringComparison.Ordinal);
        foreach (string blind in (string[])["Thrust;Voltage [V]\n622;24\n", "Thrust;Throttle [%];Voltage [V]\n622;20;24\n", "Thrust;RPM\n622;0\n", "no load\nThrust;RPM\n622;18671\n", "Thrust;RPM\n0;18671\n"])
        {
            FitException none = Assert.Throws<FitException>(() => StandTableReader.Parse(blind, "my.csv", Wagtail));
            Assert.Contains("The heading gives no unit, and without rotor speed or throttle nothing tells it.", none.Message, StringComparison.Ordinal);
        }
    }

    private static string Table(double share, double si, bool throttled)
    {
        string text = throttled ? "Pull;Throttle [%];Voltage [V]\n" : "Pull;RPM\n";
        foreach (double speed in (double[])[2500, 2800, 3000])
        {
            double pull = share * Wagtail.Air(speed).Thrust / si, volts = Wagtail.BridgeVoltage(Wagtail.CurrentFor(Wagtail.Air(speed).Torque, speed), speed) / 0.8;
            text += throttled ? string.Create(CultureInfo.InvariantCulture, $"{pull:F7};80;{volts:F7}\n") : Line(speed, pull) + "\n";
        }
        return text;
    }

    private static string Line(double speed, double reading) => string.Create(CultureInfo.InvariantCulture, $"{reading:F7};{speed * TradeUnits.RpmPerRadian:F7}");

    private static ColumnOverride Said(string text) => ColumnOverride.Parse(text, out _)!;
}
