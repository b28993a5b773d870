using Simfeel.Physics.Maths;
using Simfeel.Studies.Fit;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>What a table shows beside its constants is said in notes; tables of some rows by hand.</summary>
public class RowSelectionTests
{
    private const double None = double.NaN;

    private static readonly StandModel Wagtail = new(SyntheticStand.Starter("wagtail"));

    [Fact]
    public void Rows_that_stand_still_are_refused_and_readings_kept()
    {
        StandRow rest = Row(2, 0, None, None, 0), turns = Row(3, 500, None, None, None);
        StandBlock block = Block(rest, turns) with { Refused = [new(9, "spoilt")], Notes = ["line 8 sums up"] };
        (List<StandRow> rows, List<RefusedRow> refused, List<string> notes) = RowSelection.Run(new("t", "", [block, Block(Row(20, -900, None, None, None), Row(21, 600, None, None, None))], []), Wagtail);
        Assert.Equal([3, 21], rows.Select(row => row.Line));
        Assert.Equal([(9, "spoilt"), (2, "the rotor stands still"), (20, "negative thrust, -900 gf")], refused.Select(row => (row.Line, row.Reason)));
        Assert.Equal(["line 8 sums up"], notes);
    }

    /// <summary>Three rows or more with one voltage, current flowing: the pack's name, not a reading.</summary>
    [Theory]
    [InlineData(22.2, 22.2, 22.2, 5, true)]
    [InlineData(22.2, 22.2, 22.1, 5, false)]
    [InlineData(22.2, 22.2, None, 5, false)]
    [InlineData(22.2, 22.2, 22.2, 0, false)]
    public void One_voltage_for_all_rows_is_said(double a, double b, double c, double current, bool said)
    {
        const string words = "the voltage is 22.2 V in every row: if that is the pack's name and not a reading, KV comes out low by its sag";
        List<string> notes = Notes(Row(1, 300, a, 4, None), Row(2, 400, b, 6, None), Row(3, 600, c, current, None));
        Assert.Equal(said, notes.Contains(words));
    }

    /// <summary>Power for thrust against the model's, by the middle of the ratios of all rows above a fifth of the largest thrust.</summary>
    [Theory]
    [InlineData(1, "for the same thrust the stand takes the power that the build before would")]
    [InlineData(1.0049, "for the same thrust the stand takes the power that the build before would")]
    [InlineData(0.9949, "for the same thrust the stand takes 1 % less power than the build before would")]
    [InlineData(1.2, "for the same thrust the stand takes 20 % more power than the build before would")]
    [InlineData(0.9, "for the same thrust the stand takes 10 % less power than the build before would")]
    public void Power_for_the_same_thrust_is_compared(double share, string words)
    {
        // the fourth row is far off, the last too weak to count
        StandRow[] rows = [Taking(1, 600, share), Taking(2, 900, share), Taking(3, 1200, share * 0.97), Taking(4, 1500, 3 * share), Taking(5, 290, share * 0.96), Taking(6, 280, 0.965 * share)];
        Assert.Contains(words, Notes(rows));
        Assert.DoesNotContain(Notes(rows[0], rows[1]), note => note.StartsWith("for the same thrust", StringComparison.Ordinal));
        Assert.Contains(Notes(rows[0], rows[1], rows[3]), note => note.StartsWith("for the same thrust", StringComparison.Ordinal));

        static StandRow Taking(int line, double gf, double share)
        {
            double power = Wagtail.PowerFor(gf * TradeUnits.GramForce);
            return Row(line, gf, 20 + (0.1 * line), share * power / (20 + (0.1 * line)), None);
        }
    }

    /// <summary>A column of thrust over power against thrust, voltage and current: the middle of three ratios or more.</summary>
    [Theory]
    [InlineData(1, 1, 1, "column \"g/W\" agrees with thrust over power to 0.0 %")]
    [InlineData(1.02, 0.5, 1.03, "column \"g/W\" agrees with thrust over power to 2.0 %")]
    [InlineData(0.98, 0.97, 1.2, "column \"g/W\" agrees with thrust over power to 2.0 %")]
    [InlineData(1.031, 1.5, 1, "column \"g/W\" is 103 % of thrust over power: check the units of thrust, voltage and current")]
    [InlineData(0.2, 0.3, 0.1, "column \"g/W\" is 20 % of thrust over power: check the units of thrust, voltage and current")]
    public void Efficiency_is_checked_against_thrust_over_power(double a, double b, double c, string words)
    {
        StandRow[] rows = [With(1, a), With(2, b), With(3, c), With(4, None), With(5, 0)];
        ColumnReading[] columns = [new(1, "gf", StandQuantity.Thrust, "", 1, ""), new(2, "g/W", StandQuantity.Efficiency, "", 1, "")];
        Assert.Contains(words, RowSelection.Run(new("t", "", [Block(rows) with { Columns = columns }], []), Wagtail).Notes);
        Assert.DoesNotContain(RowSelection.Run(new("t", "", [Block(rows[0], rows[1], rows[3]) with { Columns = columns }], []), Wagtail).Notes, note => note.StartsWith("column", StringComparison.Ordinal));

        static StandRow With(int line, double share) => Row(line, 500, 20 + line, 6, None) with { Efficiency = share * 500 * TradeUnits.GramForce / (6 * (20 + line)) };
    }

    /// <summary>Three in a thousand of the largest thrust, 3 gf of 1000, are a scale to be tared.</summary>
    [Theory]
    [InlineData(2, 3.9, "")]
    [InlineData(2, 4.1, "at rest the stand reads 3.0 gf of thrust: tare it; the offset is not taken off")]
    [InlineData(-2, -5, "at rest the stand reads -3.5 gf of thrust: tare it; the offset is not taken off")]
    [InlineData(4, -4, "")]
    public void A_scale_that_shows_thrust_at_rest_is_said(double first, double second, string words)
    {
        StandRow[] rows = [Row(1, first, None, None, 0), Row(2, second, None, None, 0), Row(3, None, None, None, 0), Row(4, 1000, None, None, None), Row(5, 700, None, None, None)];
        Assert.Equal(words.Length > 0 ? [words] : [], Notes(rows));
        Assert.Empty(Notes(Row(1, 900, None, None, None), Row(2, 1000, None, None, None)));
    }

    [Fact]
    public void Rows_without_a_propeller_are_counted()
    {
        StandRow bare = Row(1, 0, 20, 1, 30_000) with { NoPropeller = true };
        Assert.Contains("1 row is read as the motor without a propeller: what it takes is losses", Notes(bare, Row(2, 900, None, None, None)));
        Assert.Contains("2 rows are read as the motor without a propeller: what it takes is losses", Notes(bare, bare with { Line = 2 }, Row(3, 900, None, None, None)));
        Assert.Empty(Notes(Row(3, 900, None, None, None)));
    }

    /// <summary>More than half of the rows, three at least, that cannot be true are one column read wrong, not slips.</summary>
    [Theory]
    [InlineData(3, 2, true)]
    [InlineData(3, 3, false)]
    [InlineData(2, 0, false)]
    [InlineData(3, 0, true)]
    [InlineData(4, 3, true)]
    public void Most_rows_wrong_are_a_column_wrong(int wrong, int right, bool refused)
    {
        StandRow[] rows = [.. Enumerable.Range(1, right).Select(n => Row(n, 500 + n, None, None, None)), .. Enumerable.Range(right + 1, wrong).Select(n => Row(n, None, -2, None, None))];
        if (!refused)
        {
            Assert.Equal(wrong, RowSelection.Run(new("t", "", [Block(rows)], []), Wagtail).Refused.Count);
            return;
        }
        FitException error = Assert.Throws<FitException>(() => RowSelection.Run(new("t", "", [Block(rows)], []), Wagtail));
        Assert.Equal(right + 1, error.Diagnostics[0].Line);
        Assert.Contains($"{wrong} of {wrong + right} rows cannot be true; the first: voltage of -2 V", error.Message, StringComparison.Ordinal);
    }

    private static List<string> Notes(params StandRow[] rows) => RowSelection.Run(new("t", "", [Block(rows)], []), Wagtail).Notes;

    private static StandBlock Block(params StandRow[] rows) => new(1, "", 1, [], rows, [], []);

    /// <summary>Gram-force, V, A, rpm.</summary>
    private static StandRow Row(int line, double gf, double volts, double amps, double rpm) => new()
    {
        Line = line,
        Thrust = gf * TradeUnits.GramForce,
        Voltage = volts,
        Current = amps,
        Speed = rpm / TradeUnits.RpmPerRadian,
    };
}
