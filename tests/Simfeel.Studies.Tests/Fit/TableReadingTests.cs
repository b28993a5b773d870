using Simfeel.Studies.Fit;
using Simfeel.Studies.Fit.Reading;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>Tables as people keep them are read to every number, and what could mean two things is refused.</summary>
public class TableReadingTests
{
    private static readonly StandModel Wagtail = new(SyntheticStand.Starter("wagtail"));

    public static TheoryData<string> Names => [.. AwkwardTable.All.Keys];

    [Fact]
    public void There_are_a_dozen() => Assert.Equal(12, AwkwardTable.All.Count);

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_number_is_read_right(string name)
    {
        AwkwardTable awkward = AwkwardTable.All[name];
        StandTable table = StandTableReader.Parse(awkward.Bytes, "stand.csv", Wagtail);
        List<StandRow> rows = [.. table.Blocks.SelectMany(block => block.Rows)];
        Assert.Equal(awkward.Lines, rows.Select(row => row.Line));
        Assert.Empty(table.Blocks.SelectMany(block => block.Refused));
        foreach ((string quantity, Func<StandRow, double> of) in Quantities)
        {
            for (int n = 0; n < rows.Count; n++)
            {
                double read = of(rows[n]);
                if (!awkward.Expected.TryGetValue(quantity, out (double Unit, double[] Figures) expected) || double.IsNaN(expected.Figures[n]))
                    Assert.True(double.IsNaN(read), $"{quantity} in line {rows[n].Line} is {read}, and there is none");
                else
                    Assert.True(Math.Abs(read - (expected.Unit * expected.Figures[n])) <= 1e-9 * Math.Abs(read), $"{quantity} in line {rows[n].Line} is {read}, not {expected.Unit * expected.Figures[n]}");
            }
        }
    }

    /// <summary>Every column is accounted for, and what was inferred says how.</summary>
    [Fact]
    public void Readings_are_explained()
    {
        StandTable table = StandTableReader.Parse(AwkwardTable.All["Spanish with bars and without units"].Bytes, "stand.csv", Wagtail);
        string[] said = [.. Assert.Single(table.Blocks).Columns.Select(column => column.ToString())];
        Assert.Equal(7, said.Length);
        Assert.Equal("column 2 \"Acelerador\": throttle, percent (told by the size of the numbers)", said[0]);
        Assert.StartsWith("column 3 \"Empuje\": thrust, gram-force (no unit given that is known here; only so does it agree with the build, at ", said[1], StringComparison.Ordinal);
        Assert.StartsWith("column 4 \"Par motor\": torque, millinewton metre (no unit given that is known here; only so", said[2], StringComparison.Ordinal);
        Assert.Equal("column 8 \"Temperatura\": ignored", said[6]);
    }

    [Fact]
    public void Blocks_of_other_propellers_are_left_out_and_can_be_asked_for()
    {
        byte[] bytes = AwkwardTable.All["blocks for several propellers with summaries"].Bytes;
        StandTable table = StandTableReader.Parse(bytes, "stand.csv", Wagtail);
        Assert.Equal(2, Assert.Single(table.Blocks).Number);
        Assert.Contains("6 in", Assert.Single(table.Skipped), StringComparison.Ordinal);
        Assert.Equal(2, table.Blocks[0].Notes.Count(note => note.Contains("sums up", StringComparison.Ordinal)));
        StandTable other = StandTableReader.Parse(bytes, "stand.csv", Wagtail, new() { Block = 1 });
        Assert.Equal([4, 5], other.Blocks[0].Rows.Select(row => row.Line));
    }

    [Fact]
    public void A_column_can_be_told()
    {
        const string csv = "Position,Pull,Turns\n50,0.61,18671\n100,1.82,30773\n";
        StandReadingOptions options = new() { Columns = [Column("Pull=thrust:kgf"), Column("#3=rpm"), Column("Position=throttle:%")] };
        StandTable table = StandTableReader.Parse(csv, "stand.csv", Wagtail, options);
        Assert.Equal([0.61 * 9.80665, 1.82 * 9.80665], table.Blocks[0].Rows.Select(row => row.Thrust));
        Assert.Equal([0.5, 1], table.Blocks[0].Rows.Select(row => row.Throttle));
        Assert.Equal(30773 * Math.PI / 30, table.Blocks[0].Rows[1].Speed, 9);
    }

    [Fact]
    public void Poles_divide_an_electrical_speed()
    {
        const string csv = "Throttle [%],Thrust [g],ERPM\n50,622,112026\n100,1856,184638\n";
        StandTable table = StandTableReader.Parse(csv, "stand.csv", Wagtail, new() { Poles = 12 });
        Assert.Equal(18671 * Math.PI / 30, table.Blocks[0].Rows[0].Speed, 6);
    }

    [Theory]
    [InlineData("Throttle,Thrust\n50,622\n60,853\n70,1099\n", "no unit", "--column \"Thrust=thrust:g\"")]
    [InlineData("Throttle [%],Thrust [stones],RPM\n50,0.0979,18671\n100,0.292,30773\n", "no unit", "--column")]
    [InlineData("Throttle [%];Thrust [kg];RPM\n50;1,234;18671\n100;1,855;30773\n", "Nothing in the table tells", "--decimal")]
    [InlineData("Throttle [%];Voltage [V];RPM\n50;24,5;18671\n100;23.51;30773\n", "two ways", "one decimal mark")]
    [InlineData("Throttle [%],Voltage [V],RPM\n50,24,5,18671\n100,23,51,30773\n", "4 cells below 3 names", "semicolons or tabs")]
    [InlineData("50,622,18671\n60,853,21619\n", "no heading", "row of names")]
    [InlineData("Bananas,Turns\n622,18671\n853,21619\n", "No column is known", "--column")]
    [InlineData("Throttle [%],Thrust [g],RPM\n", "no row of numbers", "stand table")]
    [InlineData("   \n\n", "empty", "")]
    [InlineData("Throttle [%],Voltage [parsec],RPM\n50,24,18671\n60,24,21619\n", "no unit of Voltage", "--column")]
    [InlineData("Throttle,Thrust [g],RPM\n50,622,18671\n600,853,21619\n", "neither a share", "--column")]
    [InlineData("7x4 propeller\nThrottle [%],Thrust [g],RPM\n50,622,18671\n60,853,21619\n", "No block is about", "--block")]
    public void What_could_mean_two_things_is_refused(string csv, string message, string hint)
    {
        FitException error = Assert.Throws<FitException>(() => StandTableReader.Parse(csv, "stand.csv", Wagtail));
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
        Assert.Contains(hint, error.Message, StringComparison.Ordinal);
        Assert.StartsWith("stand.csv", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_decimal_mark_can_be_told()
    {
        const string csv = "Throttle [%];Thrust [kg];RPM\n50;1,234;18671\n100;1,855;30773\n";
        StandTable table = StandTableReader.Parse(csv, "stand.csv", Wagtail, new() { DecimalMark = ',' });
        Assert.Equal(1.234 * 9.80665, table.Blocks[0].Rows[0].Thrust, 9);
    }

    /// <summary>Whatever bytes come, there is a table or one clear refusal.</summary>
    [Fact]
    public void Broken_files_never_break_the_reader()
    {
        Random random = new(4);
        byte[][] seeds = [.. AwkwardTable.All.Values.Select(table => table.Bytes)];
        for (int n = 0; n < 600; n++)
        {
            byte[] bytes = [.. seeds[n % seeds.Length]];
            for (int k = 0; k < 1 + (n % 12); k++)
            {
                int at = random.Next(bytes.Length);
                if (random.Next(2) == 0) bytes[at] = (byte)random.Next(256);
                else bytes = [.. bytes[..at], .. bytes[Math.Min(bytes.Length, at + random.Next(6))..]];
                if (bytes.Length == 0) break;
            }
            try
            {
                StandTable table = StandTableReader.Parse(bytes, "stand.csv", Wagtail);
                foreach (StandBlock block in table.Blocks) RowChecks.Run(block.Rows, Wagtail);
            }
            catch (FitException error)
            {
                Assert.StartsWith("stand.csv", error.Message, StringComparison.Ordinal);
            }
        }
    }

    private static readonly (string, Func<StandRow, double>)[] Quantities =
    [
        ("throttle", row => row.Throttle), ("thrust", row => row.Thrust), ("torque", row => row.Torque), ("voltage", row => row.Voltage),
        ("current", row => row.Current), ("power", row => row.ElectricalPower), ("speed", row => row.Speed), ("efficiency", row => row.Efficiency),
    ];

    private static ColumnOverride Column(string text)
    {
        ColumnOverride? column = ColumnOverride.Parse(text, out string fault);
        Assert.True(column is not null, fault);
        return column;
    }
}
