using Simfeel.Builds;
using Simfeel.Studies.Fit;
using Simfeel.Studies.Fit.Reading;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>Rows that no stand can have measured are refused by line and reason; the others are used.</summary>
public class ImpossibleRowTests
{
    private static readonly AssembledBuild Wagtail = SyntheticStand.Starter("wagtail");

    private const string Heading = "Throttle [%],Thrust [gf],Torque [mN m],Voltage [V],Current [A],Power [W],RPM\n";

    /// <summary>Rows as the starter build Wagtail gives them, from 10 to 100 % throttle; lines 2 to 11.</summary>
    private static readonly string[] Good =
    [
        "10,25,3.9,24.65,0.17,4.2,4140", "20,107,13.4,24.64,0.70,17.2,8164", "30,240,28.0,24.60,1.88,46.2,11940", "40,415,46.6,24.53,3.85,94.4,15444",
        "50,622,68.3,24.44,6.71,164,18671", "60,853,92.3,24.31,10.54,256,21619", "70,1099,117.7,24.16,15.25,368,24295", "80,1353,144.0,23.97,20.90,501,26700",
        "90,1607,170.3,23.75,27.44,652,28867", "100,1856,196.6,23.51,34.88,820,30773",
    ];

    [Fact]
    public void The_rows_themselves_are_fine()
    {
        StandFit fit = Fit(Heading + string.Join('\n', Good));
        Assert.Empty(fit.Refused);
        Assert.Equal(10, fit.Rows.Count);
        Assert.Equal(1, fit.Constant("propeller.thrust_factor").Value, 0.01);
        Assert.Equal(1, fit.Constant("propeller.torque_factor").Value, 0.01);
        Assert.Equal(1770, fit.Constant("motor.kv_rpm_per_V").Value, 10.0);
    }

    /// <summary>Ten tables with one impossible row each.</summary>
    [Theory]
    // at 0.0923 N m and 21619 rpm the shaft has 209 W; 1400 gf from a 5.1 inch disc need 290 W by T^1.5 / sqrt(2 rho A)
    [InlineData(5, "60,1400,92.3,24.31,10.54,256,21619", "momentum theory")]
    // 0.150 N m at 21619 rpm are 340 W
    [InlineData(5, "60,853,150,24.31,10.54,256,21619", "the shaft gives 339.6 W, more than the 256.2 W that go in")]
    [InlineData(5, "60,853,92.3,24.31,10.54,356,21619", "voltage times current is 256.2 W, but the power column says 356.0 W")]
    // 1770 rpm/V x 24.31 V = 43029 rpm without load
    [InlineData(5, "60,853,10,24.31,10.54,256,52000", "no-load speed of 43029 rpm")]
    [InlineData(5, "60,853,92.3,24.31,-10.54,256,21619", "negative current")]
    [InlineData(5, "60,853,92.3,24.31,ten,256,21619", "'ten', not a number")]
    [InlineData(5, "160,853,92.3,24.31,10.54,256,21619", "throttle of 160 %")]
    [InlineData(5, "60,853,92.3,24.31,10.54,256,0", "while the rotor stands still")]
    [InlineData(5, "60,-853,92.3,24.31,10.54,256,21619", "negative thrust")]
    [InlineData(5, "60,300,30,24.31,3.0,72.9,13000", "the rotor slows from 18671 to 13000 rpm while the throttle rises")]
    public void An_impossible_row_is_refused_with_its_line_and_reason(int index, string row, string reason)
    {
        string[] rows = [.. Good];
        rows[index] = row;
        StandFit fit = Fit(Heading + string.Join('\n', rows));
        RefusedRow refused = Assert.Single(fit.Refused);
        Assert.Equal(index + 2, refused.Line);
        Assert.Contains(reason, refused.Reason, StringComparison.Ordinal);
        Assert.Equal(9, fit.Rows.Count);
        Assert.Equal(1, fit.Constant("propeller.thrust_factor").Value, 0.01);
    }

    /// <summary>A column that is wrong throughout is an error, with its first row: here thrust in gram-force called ounces.</summary>
    [Theory]
    [InlineData("Thrust [gf]", "Thrust [ozf]", "momentum theory")]
    [InlineData("Torque [mN m]", "Torque [N cm]", "the shaft gives")]
    [InlineData("Current [A]", "Current [mA]", "voltage times current")]
    [InlineData("RPM", "krpm", "no-load speed")]
    [InlineData("RPM", "eRPM", "momentum theory")]
    public void A_column_that_cannot_be_true_is_an_error(string from, string to, string reason)
    {
        FitException error = Assert.Throws<FitException>(() => Fit((Heading + string.Join('\n', Good)).Replace(from, to, StringComparison.Ordinal)));
        Diagnostic diagnostic = Assert.Single(error.Diagnostics);
        // near idle a wrong speed is told less easily from a wrong thrust
        Assert.Equal(to == "eRPM" ? 4 : 2, diagnostic.Line);
        Assert.Contains("rows cannot be true", diagnostic.Message, StringComparison.Ordinal);
        Assert.Contains(reason, diagnostic.Message, StringComparison.Ordinal);
    }

    /// <summary>Without torque nothing is impossible about a speed of a seventh, but the build's propeller does not lift so there.</summary>
    [Fact]
    public void A_speed_misread_is_told_by_the_thrust()
    {
        string csv = string.Join('\n', (Heading + string.Join('\n', Good)).Split('\n').Select(line => string.Join(',', line.Split(',').Where((_, n) => n != 2))));
        FitException error = Assert.Throws<FitException>(() => Fit(csv.Replace("RPM", "eRPM", StringComparison.Ordinal)));
        Assert.Contains("gf at 1706 rpm, where the build's propeller lifts about", error.Message, StringComparison.Ordinal);
        Assert.Contains("--poles", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Too_few_rows_are_an_error_that_lists_why()
    {
        string[] rows = [.. Good.Take(5)];
        rows[2] = "30,-240,28.0,24.60,1.88,46.2,11940";
        FitException error = Assert.Throws<FitException>(() => Fit(Heading + string.Join('\n', rows)));
        Assert.Equal(2, error.Diagnostics.Count);
        Assert.Equal(4, error.Diagnostics[0].Line);
        Assert.Contains("needs 5 rows", error.Diagnostics[1].Message, StringComparison.Ordinal);
    }

    /// <summary>Another motor and propeller than the build's is no fit but a mix-up.</summary>
    [Fact]
    public void Constants_that_no_build_may_have_are_an_error()
    {
        string[] rows = [.. Good.Select(row => string.Join(',', row.Split(',').Select((cell, n) => n == 1 ? $"{double.Parse(cell) * 0.4:F0}" : cell)))];
        FitException error = Assert.Throws<FitException>(() => Fit(Heading + string.Join('\n', rows)));
        Assert.Contains("propeller.thrust_factor", error.Message, StringComparison.Ordinal);
        Assert.Contains("0.5 to 1.5", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_efficiency_column_is_checked_against_thrust_and_power()
    {
        string[] rows = [.. Good.Select(row => row + $",{GramsPerWatt(row) * 2:F2}")];
        StandFit fit = Fit(Heading.TrimEnd() + ",Efficiency [g/W]\n" + string.Join('\n', rows));
        Assert.Contains(fit.Notes, note => note.Contains("is 200 % of thrust over power", StringComparison.Ordinal));

        static double GramsPerWatt(string row) => double.Parse(row.Split(',')[1]) / double.Parse(row.Split(',')[3]) / double.Parse(row.Split(',')[4]);
    }

    private static StandFit Fit(string csv) => StandFitter.Fit(Wagtail, StandTableReader.Parse(csv, "stand.csv", new StandModel(Wagtail)));
}
