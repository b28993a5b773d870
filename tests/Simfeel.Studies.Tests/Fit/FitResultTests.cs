using System.Text;
using Simfeel.Studies.Fit;
using Simfeel.Studies.Fit.Reading;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>What stands in the result of a fit: residuals, rows, refusals and their words, from small tables of the stand's own numbers.</summary>
public class FitResultTests
{
    private const string Thrust = "propeller.thrust_factor", Kv = "motor.kv_rpm_per_V", Inductance = "motor.inductance_uH";

    /// <summary>Rows without error leave none, and the build's own constants come back; every column is counted.</summary>
    [Fact]
    public void Rows_without_error_leave_no_residual()
    {
        StandFit fit = Fit(Stand().Csv());
        Assert.Equal([("speed", 12), ("thrust", 12), ("torque", 12), ("voltage", 12), ("current", 12)], fit.Residuals.Select(residual => (residual.Quantity, residual.Rows)));
        Assert.All(fit.Residuals, residual => Assert.InRange(residual.RmsPercent, 0, 0.05));
        Assert.All(fit.Constants, constant => Assert.Equal(1, constant.Value / constant.Before, 0.01));
        Assert.Equal(Enumerable.Range(2, 12), fit.Rows.Select(row => row.Line));
        Assert.Empty(fit.Refused);
        Assert.Equal("rpm/V", fit.Constant(Kv).Unit);
        Assert.Equal(1770, fit.Constant(Kv).Before);
        Assert.All(fit.Constants, constant => Assert.Equal(constant.Determined, constant.WhyNot.Length == 0));
        Assert.True(fit.ThrottleIsDuty);
    }

    /// <summary>Thrust read 5 % high and low by turns scatters by 5 %: measured less fitted, in percent of the fitted.</summary>
    [Fact]
    public void Residuals_are_a_columns_scatter()
    {
        SyntheticStand stand = Stand(0.003);
        for (int n = 0; n < stand.Rows.Count; n++) stand.Rows[n][1] *= n % 2 == 0 ? 1.05 : 0.95;
        StandFit fit = Fit(stand.Csv());
        Assert.Equal(5, fit.Residuals.Single(residual => residual.Quantity == "thrust").RmsPercent, 0.5);
        Assert.All(fit.Residuals.Where(residual => residual.Quantity != "thrust"), residual => Assert.InRange(residual.RmsPercent, 0, 0.6));
        Assert.Equal(1, fit.Constant(Thrust).Value / fit.Constant(Thrust).Before, 0.03);
    }

    /// <summary>One reading far from the others is refused, and on which side it lies; without it the fit is as good as before.</summary>
    [Theory]
    [InlineData(1, 1.2, "thrust", "above")]
    [InlineData(1, 0.8, "thrust", "below")]
    [InlineData(2, 0.8, "torque", "below")]
    public void A_slip_lies_above_or_below_the_others(int column, double factor, string quantity, string side)
    {
        SyntheticStand stand = Stand();
        stand.Rows[6][column] *= factor;
        StandFit fit = Fit(stand.Csv());
        RefusedRow refused = Assert.Single(fit.Refused);
        Assert.Equal(8, refused.Line);
        Assert.Matches($"^the {quantity} lies [0-9]+ standard deviations {side} what the other rows say$", refused.Reason);
        Assert.Equal(11, fit.Rows.Count);
        Assert.All(fit.Residuals, residual => Assert.Equal((11, true), (residual.Rows, residual.RmsPercent < 0.05)));
    }

    [Fact]
    public void Rows_of_one_quantity_tell_nothing()
    {
        StandFit fit = Fit(Stand().Csv() + "50,,,,,20000\n");
        RefusedRow refused = Assert.Single(fit.Refused);
        Assert.Equal((14, "holds too few quantities to tell anything"), (refused.Line, refused.Reason));
        Assert.Equal(12, fit.Rows.Count);
    }

    /// <summary>Five rows are enough, four are not: then all reasons stand by line, twenty at most, and what to do.</summary>
    [Fact]
    public void A_fit_needs_five_rows()
    {
        string[] lines = Stand().Csv().Trim().Split('\n');
        Assert.Equal(5, Fit(string.Join('\n', [lines[0], .. lines[8..13]])).Rows.Count);
        FitException four = Assert.Throws<FitException>(() => Fit(string.Join('\n', [lines[0], .. lines[9..13]])));
        Assert.Equal("A fit needs 5 rows at least, and only 4 of the rows can be used.", Assert.Single(four.Diagnostics).Message);
        Assert.Equal("check how the columns were read, or say it with --column", four.Diagnostics[0].Hint);
        string rest = string.Concat(Enumerable.Repeat("0,0,0,25,0,0\n", 25));
        FitException none = Assert.Throws<FitException>(() => Fit(lines[0] + "\n" + rest));
        Assert.Equal(21, none.Diagnostics.Count);
        Assert.Equal(Enumerable.Range(2, 20), none.Diagnostics.Take(20).Select(diagnostic => diagnostic.Line!.Value));
        Assert.All(none.Diagnostics.Take(20), diagnostic => Assert.Equal("the rotor stands still", diagnostic.Message));
        Assert.Equal("A fit needs 5 rows at least, and no row can be used.", none.Diagnostics[20].Message);
        FitException other = Assert.Throws<FitException>(() => Fit("7x4\n" + lines[0] + "\n" + rest + "5x4\n" + string.Join('\n', lines[9..13])));
        Assert.StartsWith("block 1 (line 2, \"7x4\") is left out: it is about a propeller of 7 in", other.Diagnostics[^1].Hint, StringComparison.Ordinal);
    }

    /// <summary>What a table does not tell stays the build's, and says why.</summary>
    [Fact]
    public void What_is_not_told_stays_the_builds()
    {
        string csv = string.Join('\n', Stand().Csv().Trim().Split('\n').Select(line => string.Join(',', line.Split(',').Where((_, n) => n is not (3 or 4)))));
        StandFit fit = Fit(csv);
        Assert.Equal([true, true, false, false, false, false], fit.Constants.Select(constant => constant.Determined));
        Assert.Equal(["", "", "no voltage", "no voltage and current", "no voltage and current", "no voltage"], fit.Constants.Select(constant => constant.WhyNot));
        Assert.All(fit.Constants.Skip(2), constant => Assert.Equal(constant.Before, constant.Value));
        Assert.Equal(fit.Before.Values.Single(value => value.Key == Inductance).Typical, fit.Constant(Inductance).Value);
        // without the table a constant is as uncertain as before
        Assert.Equal(0.6, fit.Constant(Inductance).RelativeSigma, 0.01);
        Assert.Equal("without a voltage the throttle tells nothing of the motor", fit.Throttle);
    }

    [Fact]
    public void Notes_of_the_table_are_the_fits()
    {
        StandFit fit = Fit(Stand().Csv() + "Average,1,1,1,1,1\n");
        Assert.Contains("line 14 \"Average\" sums up other rows and is left out", fit.Notes);
        Assert.Contains("for the same thrust the stand takes the power that the build before would", fit.Notes);
    }

    /// <summary>Sixteen mebibytes are a table, a byte more is none; a file that another program keeps to itself is said.</summary>
    [Fact]
    public void Files_have_a_size()
    {
        using TempFolder temp = new();
        string path = temp.File("large.csv");
        byte[] bytes = Encoding.ASCII.GetBytes("x;y\n1;2\n");
        using (FileStream file = File.Create(path))
        {
            file.Write(bytes);
            file.SetLength(16 * 1024 * 1024);
        }
        Assert.Contains("binary", Assert.Throws<FitException>(() => TableText.ReadFile(path)).Message, StringComparison.Ordinal);
        using (FileStream file = File.OpenWrite(path)) file.SetLength((16 * 1024 * 1024) + 1);
        Assert.Contains("The file has more than 16 MiB.", Assert.Throws<FitException>(() => TableText.ReadFile(path)).Message, StringComparison.Ordinal);
        File.WriteAllBytes(path, bytes);
        Assert.Equal("x;y\n1;2\n", TableText.ReadFile(path));
    }

    private static SyntheticStand Stand(double noise = 0) => new SyntheticStand("wagtail", 1, new Dictionary<string, double>()).Sweep(12, 0.2, noise: noise);

    private static StandFit Fit(string csv) => StandFitter.Fit(SyntheticStand.Starter("wagtail"), StandTableReader.Parse(csv, "stand.csv", new StandModel(SyntheticStand.Starter("wagtail"))));
}
