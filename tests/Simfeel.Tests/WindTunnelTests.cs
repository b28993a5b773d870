using System.Globalization;
using System.Text.Json;
using Simfeel.Builds;
using Simfeel.Physics.Air;
using Simfeel.Physics.Rotors;

namespace Simfeel.Tests;

/// <summary><c>stand --propeller</c>: the numbers are the solver's own, and both coefficient systems agree.</summary>
public class WindTunnelTests
{
    private static readonly string Da4002 = SourceTree.FullPath("assets/validation/da4002.toml");

    [Fact]
    public void Rows_are_the_solution_and_the_coefficient_systems_agree()
    {
        JsonElement root = Json("stand", "--propeller", Da4002, "--rpm", "4031,6045", "--axial", "-3..9", "--edgewise", "0..4", "--points", "3", "--altitude", "500");
        RotorGeometry geometry = BuildReader.ReadPropeller(Da4002).Propeller!.Blades.Geometry();
        AirState air = StandardAtmosphere.At(500);
        BladeElementSolver solver = new(geometry, air);
        double radius = geometry.Radius, diameter = 2 * radius, area = Math.PI * radius * radius, rho = air.Density;
        List<(double, double, double)> states = [];
        foreach (JsonElement row in root.GetProperty("rows").EnumerateArray())
        {
            double rpm = Of("rpm"), axial = Of("axial_m_s"), edgewise = Of("edgewise_m_s"), w = rpm * Math.PI / 30, n = rpm / 60;
            states.Add((Math.Round(rpm, 6), axial, edgewise));
            RotorSolution direct = solver.Solve(w, axial, edgewise);
            double pressure = rho * area * ((w * radius * w * radius) + (axial * axial) + (edgewise * edgewise));
            Near(direct.Coefficients.Thrust * pressure, Of("thrust_N"));
            Near(direct.Coefficients.Torque * pressure * radius, Of("torque_Nm"));
            Near(direct.Coefficients.InPlane * edgewise * Math.Sqrt(pressure * rho * area), Of("in_plane_N"));
            Near(direct.InducedVelocity, Of("induced_velocity_m_s"));

            Near(Of("thrust_N") / (rho * n * n * Math.Pow(diameter, 4)), Of("ct_propeller"));
            Near(Of("power_W") / (rho * Math.Pow(n, 3) * Math.Pow(diameter, 5)), Of("cp_propeller"));
            Near(Of("torque_Nm") * w, Of("power_W"));
            Near(axial / (n * diameter), Of("advance_ratio"));
            Near(4 * Of("ct_propeller") / Math.Pow(Math.PI, 3), Of("ct_rotor"));
            Near(4 * Of("cp_propeller") / Math.Pow(Math.PI, 4), Of("cq_rotor"));
            if (axial >= 0 && Of("power_W") > 0) Near(Of("advance_ratio") * Of("ct_propeller") / Of("cp_propeller"), Of("efficiency"));
            else Assert.Equal(JsonValueKind.Null, row.GetProperty("efficiency").ValueKind);
            Assert.Equal(JsonValueKind.Null, row.GetProperty("figure_of_merit").ValueKind);

            double section = Math.Sqrt((0.75 * w * radius * 0.75 * w * radius) + (axial * axial) + (edgewise * edgewise / 2));
            Near(section * 0.1804 * radius / air.KinematicViscosity, Of("reynolds_75"));
            Near(Math.Sqrt(Math.Pow((w * radius) + edgewise, 2) + (axial * axial)) / air.SoundSpeed, Of("tip_mach"));

            double Of(string field) => row.GetProperty(field).GetDouble();
        }
        Assert.Equal(
            from rpm in (double[])[4031, 6045] from axial in (double[])[-3, 3, 9] from edgewise in (double[])[0, 2, 4] select (rpm, axial, edgewise),
            states);
        // 4031 rpm at three quarters of the radius: below the lowest Reynolds number of the section's file, 20000
        Assert.Single(root.GetProperty("cautions").EnumerateArray(), c => c.GetString()!.Contains("20000", StringComparison.Ordinal));
    }

    /// <summary>FM = sqrt(2/pi) CT^1.5 / CP in the propeller's coefficients; the largest possible is 1.</summary>
    [Fact]
    public void A_starter_hovers_with_its_figure_of_merit()
    {
        JsonElement row = Assert.Single(Json("stand", "--propeller", "wagtail", "--rpm", "12000").GetProperty("rows").EnumerateArray());
        double ct = row.GetProperty("ct_propeller").GetDouble(), cp = row.GetProperty("cp_propeller").GetDouble();
        double merit = row.GetProperty("figure_of_merit").GetDouble();
        Near(Math.Sqrt(2 / Math.PI) * Math.Pow(ct, 1.5) / cp, merit);
        Assert.InRange(merit, 0.4, 0.8);
        Assert.Equal(0, row.GetProperty("efficiency").GetDouble());
    }

    [Fact]
    public void Factors_of_a_build_count_and_are_said()
    {
        using TempFolder folder = new();
        string path = folder.File("propeller.toml");
        const string plain = "format = 1\n[propeller]\ndiameter_in = 5\npitch_in = 4\nblades = 3\n";
        File.WriteAllText(path, plain);
        JsonElement before = Json("stand", "--propeller", path, "--rpm", "15000", "--edgewise", "8").GetProperty("rows")[0];
        File.WriteAllText(path, plain + "thrust_factor = 1.1\ntorque_factor = 0.9\n");
        JsonElement root = Json("stand", "--propeller", path, "--rpm", "15000", "--edgewise", "8"), after = root.GetProperty("rows")[0];
        Near(1.1, Ratio("thrust_N"));
        Near(0.9, Ratio("torque_Nm"));
        Near(0.9, Ratio("in_plane_N"));
        Assert.Contains("1.1", Assert.Single(root.GetProperty("cautions").EnumerateArray()).GetString(), StringComparison.Ordinal);

        double Ratio(string field) => after.GetProperty(field).GetDouble() / before.GetProperty(field).GetDouble();
    }

    [Fact]
    public void Fast_tips_are_cautioned()
    {
        CliResult result = Cli.Run("stand", "--propeller", "wagtail", "--rpm", "45000");
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("Caution: in 1 of 1 rows the advancing tip passes Mach 0.85", result.Output, StringComparison.Ordinal);
        Assert.Contains("!M", result.Output, StringComparison.Ordinal);
    }

    /// <summary>Weak between 0.5 and 2 v_h of descent, README on NACA TN-2474, with v_h = sqrt(T / (2 rho A)) of the hover at the same rpm.</summary>
    [Fact]
    public void Descent_through_the_own_wake_is_marked()
    {
        JsonElement hover = Json("stand", "--propeller", Da4002, "--rpm", "6045").GetProperty("rows")[0];
        Assert.False(hover.GetProperty("weak_descent").GetBoolean());
        double induced = Math.Sqrt(hover.GetProperty("thrust_N").GetDouble() / (2 * StandardAtmosphere.At(0).Density * Math.PI * 0.0635 * 0.0635));
        Assert.Equal([false, true, true, true, false, false], new[] { 0.45, 0.55, 1.2, 1.95, 2.05, -1 }.Select(ratio => Weak(ratio, 0)));
        // common practice: in-plane flow of more than v_h sweeps the wake away
        Assert.Equal([true, false], new[] { 0.9, 1.1 }.Select(ratio => Weak(1.2, ratio)));

        CliResult table = Cli.Run("stand", "--propeller", Da4002, "--rpm", "6045", "--axial", "-12..0", "--points", "4");
        // v_h is 3.5 m/s, so that of -12, -8, -4 and 0 m/s only -4 is weak
        Assert.Contains("Caution: in 1 of 4 rows the propeller sinks through its own wake", table.Output, StringComparison.Ordinal);
        Assert.Contains("marks", table.Output, StringComparison.Ordinal);
        Assert.EndsWith("!D", Assert.Single(table.Output.Split('\n'), line => line.Contains(" -4.00 ", StringComparison.Ordinal)).TrimEnd(), StringComparison.Ordinal);

        bool Weak(double descent, double edgewise) =>
            Json("stand", "--propeller", Da4002, "--rpm", "6045", "--axial", Text(-descent), "--edgewise", Text(edgewise)).GetProperty("rows")[0].GetProperty("weak_descent").GetBoolean();

        string Text(double ratio) => (ratio * induced).ToString("R", CultureInfo.InvariantCulture);
    }

    /// <summary>The headline and the table say the same.</summary>
    [Theory]
    [InlineData("0..10", "0", "7.5 m/s (J 0.59).")]
    [InlineData("0..8", "0..5", "8.0 m/s axial and 5.0 m/s edgewise flow (J 0.63), and still rising at the end of the axial range.")]
    [InlineData("8..10", "0", "8.0 m/s (J 0.63), and still rising towards the start of the axial range.")]
    public void The_headline_is_the_best_row(string axial, string edgewise, string words)
    {
        string[] args = ["stand", "--propeller", Da4002, "--rpm", "6045", "--axial", axial, "--edgewise", edgewise, "--points", "5"];
        string output = Cli.Run(args).Output;
        Assert.Contains(words, output, StringComparison.Ordinal);
        double best = Json(args).GetProperty("rows").EnumerateArray().Max(row => row.GetProperty("efficiency").GetDouble());
        Assert.Contains($"the best efficiency of these rows is {best.ToString("F2", CultureInfo.InvariantCulture)} at 6045 rpm", output, StringComparison.Ordinal);
    }

    /// <summary>A flat propeller sinks fast enough to be driven; a steep one never is.</summary>
    [Fact]
    public void Descent_says_the_range_of_thrust_and_where_the_torque_turns()
    {
        using TempFolder folder = new();
        string path = folder.File("propeller.toml");
        File.WriteAllText(path, "format = 1\n[propeller]\ndiameter_in = 12\npitch_in = 1.5\nblades = 2\n");
        string[] args = ["stand", "--propeller", path, "--rpm", "4000", "--axial", "-30..-1", "--points", "7"];
        JsonElement[] rows = [.. Json(args).GetProperty("rows").EnumerateArray()];
        string output = Cli.Run(args).Output;
        Assert.Contains($"its thrust lies between {rows.Min(row => Value(row, "thrust_N")):F2} N", output, StringComparison.Ordinal);
        Assert.Contains($"{rows.Max(row => Value(row, "thrust_N")):F2} N", output, StringComparison.Ordinal);
        int[] turns = [.. Enumerable.Range(0, rows.Length - 1).Where(n => Value(rows[n], "torque_Nm") < 0 != Value(rows[n + 1], "torque_Nm") < 0)];
        Assert.Equal(2, turns.Length);
        Assert.Contains(
            "its torque changes sign " + string.Join(" and ", turns.Select(n => $"between {Value(rows[n], "axial_m_s"):F1} and {Value(rows[n + 1], "axial_m_s"):F1} m/s")) + ";",
            output,
            StringComparison.Ordinal);
        Assert.Contains("Its torque is positive in all these rows", Cli.Run("stand", "--propeller", "wagtail", "--rpm", "9000", "--axial", "-30..-1", "--points", "3").Output, StringComparison.Ordinal);

        static double Value(JsonElement row, string field) => row.GetProperty(field).GetDouble();
    }

    [Fact]
    public void Warnings_of_the_file_are_kept()
    {
        using TempFolder folder = new();
        string path = folder.File("propeller.toml");
        File.WriteAllText(path, "format = 1\n[propeller]\ndiameter_in = 5\npitch_in = 4\nblades = 3\nbaldes = 2\n");
        CliResult result = Cli.Run("stand", "--propeller", path, "--rpm", "15000");
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("did you mean blades?", result.Errors, StringComparison.Ordinal);
    }

    public static TheoryData<string[], int, string> Mistakes => new()
    {
        { ["stand"], 2, "BUILD" },
        { ["stand", "--propeller", "wagtail"], 2, "--rpm is missing" },
        { ["stand", "--propeller", "wagtail", "--axial", "0..9"], 2, "--rpm is missing" },
        { ["stand", "--propeller", "wagtail", "--rpm", "fast"], 2, "between 10 and 300000 rpm" },
        { ["stand", "--propeller", "wagtail", "--rpm", "5"], 2, "between 10 and 300000 rpm" },
        { ["stand", "--propeller", "wagtail", "--rpm", "9000,"], 2, "between 10 and 300000 rpm" },
        { ["stand", "--propeller", "wagtail", "--rpm", "1,2,3,4,5,6,7,8,9,1,2,3,4,5,6,7,8,9,1,2,3"], 2, "1 to 20 numbers" },
        { ["stand", "--propeller", "wagtail", "--rpm", "9000", "--axial", "5..0"], 2, "rising range FROM..TO between -100 and 150 m/s" },
        { ["stand", "--propeller", "wagtail", "--rpm", "9000", "--axial", "0-5"], 2, "rising range FROM..TO" },
        { ["stand", "--propeller", "wagtail", "--rpm", "9000", "--axial", "nan"], 2, "rising range FROM..TO" },
        { ["stand", "--propeller", "wagtail", "--rpm", "9000", "--edgewise", "-5..5"], 2, "between 0 and 150 m/s" },
        { ["stand", "--propeller", "wagtail", "--rpm", "9000", "--edgewise", "0..500"], 2, "between 0 and 150 m/s" },
        { ["stand", "--propeller", "wagtail", "--rpm", "9000", "--points", "1"], 2, "between 2 and 101" },
        { ["stand", "--propeller", "wagtail", "--rpm", "9000,9001", "--axial", "0..9", "--edgewise", "0..9", "--points", "101"], 2, "20402 rows" },
        { ["stand", "--propeller", "wagtail", "--rpm", "9000", "--all"], 2, "--all" },
        { ["stand", "--propeller", "wagtail", "--rpm", "9000", "--charge", "50"], 2, "--charge" },
        { ["stand", "wagtail", "--propeller", "wagtail", "--rpm", "9000"], 2, "not both" },
        { ["stand", "wagtail", "--rpm", "9000"], 2, "--propeller" },
        { ["stand", "--propeller", "no-such", "--rpm", "9000"], 1, "no-such" },
        { ["stand", "--propeller", "no-such.toml", "--rpm", "9000"], 1, "no-such.toml" },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void A_mistake_gets_one_clear_message(string[] args, int exitCode, string names)
    {
        CliResult result = Cli.Run(args);
        Assert.Equal(exitCode, result.ExitCode);
        Assert.Equal("", result.Output);
        Assert.Contains(names, result.Errors, StringComparison.Ordinal);
        Assert.Single(result.Errors.Trim().Split('\n'));
    }

    private static void Near(double expected, double actual) => Assert.InRange(Math.Abs(actual - expected), 0, (1e-9 * Math.Abs(expected)) + 1e-12);

    private static JsonElement Json(params string[] args)
    {
        CliResult result = Cli.Run([.. args, "--json"]);
        Assert.Equal("", result.Errors);
        Assert.Equal(0, result.ExitCode);
        return JsonDocument.Parse(result.Output).RootElement;
    }
}
