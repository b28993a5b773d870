using Simfeel.Studies.Fit;
using Simfeel.Studies.Fit.Reading;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>Which column is taken, in which unit, and how that is said; cells by hand.</summary>
public class ColumnReadingTests
{
    private static readonly StandModel Wagtail = new(SyntheticStand.Starter("wagtail"));

    /// <summary>A mean before a plain name, that before an extreme, filled before empty, with a unit before without, else the first.</summary>
    [Theory]
    [InlineData("Thrust [g];Thrust [g]", "107;108", 1)]
    [InlineData("Thrust;Thrust [g]", "107;108", 2)]
    [InlineData("Thrust [g];Mean thrust [g]", "107;108", 2)]
    [InlineData("Mean thrust;Thrust [g]", "107;108", 1)]
    [InlineData("Thrust max [g];Thrust [g]", "107;108", 2)]
    [InlineData("Thrust max [g];Thrust", "107;108", 2)]
    [InlineData("Mean thrust max [g];Thrust", "107;108", 2)]
    [InlineData("Thrust [g];Thrust [g]", ";108", 2)]
    [InlineData("Mean thrust [g];Thrust max", ";108", 2)]
    public void Of_two_columns_of_a_quantity_the_better_is_taken(string headings, string cells, int column)
    {
        StandBlock block = Read($"{headings};RPM\n{cells};8164\n{cells};8164\n");
        Assert.Equal(column, block.Columns.Single(c => c.Quantity == StandQuantity.Thrust).Column);
        ColumnReading other = block.Columns[2 - column];
        Assert.Equal((StandQuantity.Ignored, $"column {column} is used for this"), (other.Quantity, other.Because));
        Assert.Equal((106 + column) * 9.80665e-3, block.Rows[0].Thrust, 1e-12);
    }

    [Fact]
    public void The_users_word_goes_before_all()
    {
        StandBlock block = Read("Mean thrust [g];Thrust max;RPM;Bananas;Odd\n107;110;8164;1;2\n", new() { Columns = [Said("#2=thrust:g"), Said("odd=ignore")] });
        Assert.Equal(
            [
                "column 1 \"Mean thrust [g]\": ignored (column 2 is used for this)", "column 2 \"Thrust max\": thrust, gram-force (as --column says)",
                "column 3 \"RPM\": rotor speed, revolutions per minute", "column 4 \"Bananas\": ignored (no quantity that a fit knows)",
                "column 5 \"Odd\": ignored (as --column says)",
            ],
            block.Columns.Select(column => column.ToString()));
        Assert.Equal(110 * 9.80665e-3, block.Rows[0].Thrust, 1e-12);
    }

    [Fact]
    public void Rotor_speed_goes_before_electrical_speed()
    {
        StandBlock block = Read("eRPM;Thrust [g];RPM\n57148;107;8164\n");
        Assert.Equal("column 1 \"eRPM\": ignored (column 3 is used for this)", block.Columns[0].ToString());
        Assert.Equal(8164 * Math.PI / 30, block.Rows[0].Speed, 1e-9);
        // 14 magnets are 7 pairs
        StandBlock alone = Read("eRPM;Thrust [g]\n57148;107\n");
        Assert.Equal("column 1 \"eRPM\": electrical speed, revolutions per minute (divided by the pole pairs)", alone.Columns[0].ToString());
        Assert.Equal(8164 * Math.PI / 30, alone.Rows[0].Speed, 1e-9);
        Assert.Equal("column 1 \"Electrical speed\": electrical speed, revolutions per minute (no unit given, taken as usual; divided by the pole pairs)", Read("Electrical speed;Thrust [g]\n57148;107\n").Columns[0].ToString());
    }

    [Fact]
    public void Every_kind_of_column_is_named()
    {
        StandBlock block = Read("Prop;Throttle [%];Torque [Ncm];Voltage [V];Current [A];Power [W];Shaft power [W];Efficiency [g/W];Time [s]\n5x4;20;1.34;24.64;0.7;17.2;12;6.2;1\n");
        Assert.Equal(
            [
                "propeller", "throttle, percent", "torque, newton centimetre", "voltage, volt", "current, ampere", "electrical power, watt",
                "mechanical power, watt", "efficiency, gram-force per watt, a cross-check only", "ignored",
            ],
            block.Columns.Select(column => column.ToString().Split(": ")[1]));
        StandRow row = block.Rows.Single();
        Assert.Equal((0.2, 0.0134, 24.64, 0.7, 17.2, 12), (row.Throttle, row.Torque, row.Voltage, row.Current, row.ElectricalPower, row.MechanicalPower));
        Assert.Equal(6.2 * 9.80665e-3, row.Efficiency, 1e-12);
        Assert.Equal((double.NaN, double.NaN), (row.Thrust, row.Speed));
    }

    /// <summary>A throttle without a unit: up to 1 a share, up to 110 percent, between 800 and 2300 a pulse; shares under a percent sign are shares.</summary>
    [Theory]
    [InlineData("Throttle", "0.5", "1", 0.5, "0 to 1 (told by the size of the numbers)")]
    [InlineData("Throttle", "0.5", "1.001", 0.5, "0 to 1 (told by the size of the numbers)")]
    [InlineData("Throttle", "0.5", "1.002", 0.005, "percent (told by the size of the numbers)")]
    [InlineData("Throttle", "50", "110", 0.5, "percent (told by the size of the numbers)")]
    [InlineData("Throttle", "1500", "2299", 0.5, "pulse width, 1000 to 2000 us (told by the size of the numbers)")]
    [InlineData("Throttle [%]", "0.5", "1", 0.5, "0 to 1 (the numbers do not exceed 1, so they are no percent)")]
    [InlineData("Throttle [%]", "0.5", "1.001", 0.5, "0 to 1 (the numbers do not exceed 1, so they are no percent)")]
    [InlineData("Throttle [%]", "0.5", "1.1", 0.005, "percent")]
    [InlineData("Throttle [%]", "0.5 %", "1 %", 0.005, "percent")]
    [InlineData("Throttle", "0.5 %", "1 %", 0.005, "percent (the unit stands in the cells)")]
    [InlineData("Throttle [us]", "1250", "2000", 0.25, "pulse width, 1000 to 2000 us")]
    [InlineData("Throttle [ms]", "1.25", "2.0", 0.25, "pulse width, 1 to 2 ms")]
    public void Throttle_is_read_by_unit_or_size(string heading, string first, string second, double throttle, string reading)
    {
        StandBlock block = Read($"{heading};Thrust [g];RPM\n{first};107;8164\n{second};1856;30773\n");
        Assert.Equal($"column 1 \"{heading}\": throttle, {reading}", block.Columns[0].ToString());
        Assert.Equal(throttle, block.Rows[0].Throttle, 1e-12);
    }

    [Theory]
    [InlineData("111")]
    [InlineData("800")]
    [InlineData("2300")]
    public void A_throttle_of_another_size_is_refused(string most)
    {
        FitException error = Assert.Throws<FitException>(() => Read($"Throttle;Thrust [g];RPM\n50;107;8164\n{most};1856;30773\n"));
        Assert.Contains($"A throttle up to {most} is neither a share, percent nor a pulse width.", error.Message, StringComparison.Ordinal);
    }

    /// <summary>The unit of the cells counts where the heading has none, and for its own cell in any case.</summary>
    [Fact]
    public void A_unit_may_stand_in_the_cells()
    {
        StandBlock block = Read("Voltage;Current [A];RPM;Thrust\n24640 mV;700 mA;8164;107 g\n24.5 V;0.7;8170;0.108 kg\n24530;0.7 x;8180;109\n");
        Assert.Equal("column 1 \"Voltage\": voltage, millivolt (the unit stands in the cells)", block.Columns[0].ToString());
        Assert.Equal("column 2 \"Current [A]\": current, ampere", block.Columns[1].ToString());
        Assert.Equal([24.64, 24.5, 24.53], block.Rows.Select(row => row.Voltage), (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal([0.7, 0.7, 0.7], block.Rows.Select(row => row.Current), (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal([107, 108, 109], block.Rows.Select(row => row.Thrust / 9.80665e-3), (a, b) => Math.Abs(a - b) < 1e-9);
    }

    /// <summary>The finest writing of a column is its step: a tenth of a gram-force here, whole turns a minute there.</summary>
    [Fact]
    public void The_finest_writing_of_a_column_is_its_step()
    {
        StandBlock block = Read("Throttle [%];Thrust [g];Voltage [V];RPM\n20;107;24.64;8164\n40;415.2;24.5;15444\n");
        Assert.Equal([1, 0.1, 0.01, 1], block.Columns.Select(column => column.Step), (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal(0.1 * 9.80665e-3, block.StepOf(StandQuantity.Thrust), 1e-12);
        Assert.Equal(0.01, block.StepOf(StandQuantity.Voltage), 1e-12);
        Assert.Equal(Math.PI / 30, block.StepOf(StandQuantity.Speed), 1e-12);
        Assert.Equal(0, block.StepOf(StandQuantity.Torque));
    }

    /// <summary>A supply voltage written once holds down to the next; other quantities and half-filled columns do not.</summary>
    [Fact]
    public void A_voltage_written_once_is_carried_down()
    {
        StandBlock block = Read("Throttle [%];Voltage [V];Current [A];RPM\n10;;1;4000\n20;24.6;;8164\n30;-;3;12000\n40;;4;15000\n50;24.1;5;18000\n60;;;20000\n70;;;22000\n");
        Assert.Equal([double.NaN, 24.6, 24.6, 24.6, 24.1, 24.1, 24.1], block.Rows.Select(row => row.Voltage));
        Assert.Equal([1, double.NaN, 3, 4, 5, double.NaN, double.NaN], block.Rows.Select(row => row.Current));
        Assert.Equal("column 2 \"Voltage [V]\": voltage, volt (blanks take the value above)", block.Columns[1].ToString());
        StandBlock half = Read("Throttle [%];Voltage [V];RPM\n10;24.6;4000\n20;;8164\n");
        Assert.Equal([24.6, double.NaN], half.Rows.Select(row => row.Voltage));
        Assert.Equal("", half.Columns[1].Because);
        StandBlock empty = Read("Throttle [%];Voltage [V];RPM\n10;;4000\n20;;8164\n");
        Assert.All(empty.Rows, row => Assert.True(double.IsNaN(row.Voltage)));
        Assert.Equal("", empty.Columns[1].Because);
    }

    [Fact]
    public void A_cell_that_is_no_number_costs_its_row()
    {
        StandBlock block = Read("Throttle [%];Thrust [g];Voltage [V];RPM\n10;107;24.6;8164\n20;many;few;9000\n30;n/a;24.5;10000\n");
        RefusedRow refused = Assert.Single(block.Refused);
        Assert.Equal((3, "\"Thrust [g]\" is 'many', not a number"), (refused.Line, refused.Reason));
        Assert.Equal([2, 4], block.Rows.Select(row => row.Line));
        Assert.True(double.IsNaN(block.Rows[1].Thrust));
    }

    /// <summary>Rows of other propellers are left out and counted, and kept where the block was asked for; the name holds for blanks below.</summary>
    [Fact]
    public void Rows_of_other_propellers_are_left_out()
    {
        const string text = "Prop;Throttle [%];Thrust [g];RPM\n7x4;50;900;13100\n;100;2900;21500\n5.1x4.3;20;107;8164\n;40;415;15444\nno prop;60;0;40000\n";
        StandBlock block = Read(text);
        Assert.Equal([4, 5, 6], block.Rows.Select(row => row.Line));
        Assert.Equal([false, false, true], block.Rows.Select(row => row.NoPropeller));
        Assert.Equal(["2 rows of other propellers than the build's 5.1 in left out"], block.Notes);
        Assert.Equal(5, Read(text, new() { Block = 1 }).Rows.Count);
        Assert.Empty(Read(text, new() { Block = 1 }).Notes);
        Assert.Equal(["1 row of other propellers than the build's 5.1 in left out"], Read("Prop;Throttle [%];RPM\n7x4;50;13100\n5x4;20;8164\n").Notes);
    }

    [Fact]
    public void A_title_may_say_that_there_was_no_propeller()
    {
        Assert.All(Read("no load\nThrottle [%];Voltage [V];RPM\n50;24;20000\n100;24;40000\n").Rows, row => Assert.True(row.NoPropeller));
        Assert.All(Read("with load\nThrottle [%];Voltage [V];RPM\n50;24;20000\n100;24;40000\n").Rows, row => Assert.False(row.NoPropeller));
    }

    private static ColumnOverride Said(string text) => ColumnOverride.Parse(text, out _)!;

    private static StandBlock Read(string text, StandReadingOptions? options = null) => Assert.Single(StandTableReader.Parse(text, "stand.csv", Wagtail, options).Blocks);
}
