using System.Text.Json;

namespace Simfeel.Tests;

/// <summary>Fields that other tools may rely on, exit codes, and one clear message for every error.</summary>
public class CommandLineTests
{
    [Fact]
    public void Weigh_gives_the_promised_fields_and_they_add_up()
    {
        JsonElement root = Json(Cli.Run("weigh", "wagtail", "--json"));
        JsonElement parts = root.GetProperty("parts");
        double mass = parts.EnumerateArray().Sum(part => part.GetProperty("mass_kg").GetDouble());
        Assert.Equal(root.GetProperty("mass_kg").GetDouble(), mass, 9);
        Assert.Equal(3, root.GetProperty("cg_m").GetArrayLength());
        JsonElement inertia = root.GetProperty("inertia_kg_m2");
        for (int row = 0; row < 3; row++)
        {
            Assert.Equal(3, inertia[row].GetArrayLength());
            // shares of all parts in each moment of inertia make a whole
            Assert.Equal(1, parts.EnumerateArray().Sum(part => part.GetProperty("inertia_share")[row].GetDouble()), 6);
            for (int column = 0; column < 3; column++)
                Assert.Equal(inertia[column][row].GetDouble(), inertia[row][column].GetDouble(), 15);
        }
        Assert.All(parts.EnumerateArray(), part => Assert.NotEqual("", part.GetProperty("name").GetString()));
    }

    [Fact]
    public void Stand_gives_the_promised_fields_and_thrust_rises()
    {
        JsonElement rows = Json(Cli.Run("stand", "wagtail", "--json", "--steps", "5")).GetProperty("rows");
        Assert.Equal(5, rows.GetArrayLength());
        string[] fields =
        [
            "throttle", "thrust_N", "torque_Nm", "rpm", "pack_voltage_V", "motor_current_A", "pack_current_A", "power_W",
            "grams_per_watt", "reserve_up_Nm", "reserve_down_Nm",
        ];
        double before = -1;
        foreach (JsonElement row in rows.EnumerateArray())
        {
            Assert.All(fields, field => Assert.True(row.GetProperty(field).ValueKind == JsonValueKind.Number, field));
            double thrust = row.GetProperty("thrust_N").GetDouble();
            Assert.True(thrust > before);
            before = thrust;
            double power = row.GetProperty("pack_voltage_V").GetDouble() * row.GetProperty("pack_current_A").GetDouble();
            Assert.Equal(power, row.GetProperty("power_W").GetDouble(), 6);
            if (thrust > 0) Assert.Equal(thrust / 9.80665e-3 / power, row.GetProperty("grams_per_watt").GetDouble(), 6);
        }
        Assert.Equal(1, rows[4].GetProperty("throttle").GetDouble());
        Assert.Equal(0, rows[4].GetProperty("reserve_up_Nm").GetDouble(), 3);
    }

    [Fact]
    public void Stand_tells_what_a_tired_pack_takes_away()
    {
        JsonElement fresh = Json(Cli.Run("stand", "sanderling", "--json", "--steps", "2", "--all", "--charge", "100", "--wear", "0"));
        JsonElement worn = Json(Cli.Run("stand", "sanderling", "--json", "--steps", "2", "--all", "--charge", "20", "--wear", "100"));
        JsonElement packs = fresh.GetProperty("tired_pack");
        Assert.Equal(packs.GetRawText(), worn.GetProperty("tired_pack").GetRawText());
        Assert.Equal(100, worn.GetProperty("wear_percent").GetDouble());
        foreach (string field in (string[])["thrust_N", "rpm", "pack_voltage_V"])
        {
            // full throttle on the stand with these packs is the same working point
            double before = packs.GetProperty("fresh").GetProperty(field).GetDouble(), after = packs.GetProperty("tired").GetProperty(field).GetDouble();
            Assert.Equal(fresh.GetProperty("rows")[1].GetProperty(field).GetDouble(), before, 9);
            Assert.Equal(worn.GetProperty("rows")[1].GetProperty(field).GetDouble(), after, 9);
            string change = field switch { "thrust_N" => "thrust", "rpm" => field, _ => "pack_voltage" };
            Assert.Equal(100 * (after - before) / before, packs.GetProperty("change_percent").GetProperty(change).GetDouble(), 6);
            Assert.True(after < before);
        }
        Assert.True(packs.GetProperty("change_percent").GetProperty("hover_reserve_up").GetDouble() < 0);
        string[] lines = Cli.Run("stand", "sanderling", "--steps", "2").Output.Trim().Split('\n');
        Assert.Single(lines, line => line.StartsWith("Tired pack (20 percent charge, worn out)", StringComparison.Ordinal));
    }

    [Fact]
    public void Compare_gives_the_promised_fields()
    {
        JsonElement root = Json(Cli.Run("compare", "wagtail", "curlew", "--json", "--seed", "5"));
        Assert.Equal("matched", root.GetProperty("policy").GetString());
        Assert.Equal(5, root.GetProperty("seed").GetInt32());
        Assert.Equal(3, root.GetProperty("sentences").GetArrayLength());
        foreach (JsonElement metric in root.GetProperty("metrics").EnumerateArray())
        {
            Assert.NotEqual("", metric.GetProperty("drill").GetString());
            Assert.NotEqual("", metric.GetProperty("name").GetString());
            Assert.NotEqual("", metric.GetProperty("unit").GetString());
            double a = metric.GetProperty("a").GetDouble(), b = metric.GetProperty("b").GetDouble();
            Assert.Equal(200 * (b - a) / (a + b), metric.GetProperty("difference_percent").GetDouble(), 6);
            Assert.Contains(metric.GetProperty("feel").GetString(), (string[])["felt", "not felt", "perhaps", "a reading"]);
        }
    }

    [Fact]
    public void Effects_of_moving_air_can_be_left_out_and_then_need_no_seed()
    {
        JsonElement one = Json(Cli.Run("compare", "wagtail", "pipit", "--json", "--without", "wake,inflow,ground", "--seed", "1"));
        JsonElement two = Json(Cli.Run("compare", "wagtail", "pipit", "--json", "--without", "wake, inflow, ground", "--seed", "2"));
        Assert.Equal("none", one.GetProperty("effects").GetString());
        Assert.Equal(one.GetProperty("metrics").GetRawText(), two.GetProperty("metrics").GetRawText());
        JsonElement shaken = Json(Cli.Run("compare", "wagtail", "pipit", "--json", "--without", "inflow", "--seed", "2"));
        Assert.Equal("wake, ground", shaken.GetProperty("effects").GetString());
        Assert.True(Wash(shaken) > 10 * Wash(one));

        static double Wash(JsonElement root) => root.GetProperty("metrics").EnumerateArray()
            .Single(metric => metric.GetProperty("name").GetString() == "wash_rate").GetProperty("a").GetDouble();
    }

    [Fact]
    public void Both_missing_builds_are_said()
    {
        CliResult result = Cli.Run("compare", "missing1.toml", "missing2.toml");
        Assert.Equal(1, result.ExitCode);
        Assert.Contains("missing1.toml", result.Errors, StringComparison.Ordinal);
        Assert.Contains("missing2.toml", result.Errors, StringComparison.Ordinal);
        Assert.Single(Cli.Run("compare", "missing1.toml", "missing1.toml").Errors.Trim().Split('\n'));
    }

    [Fact]
    public void Bare_command_compares_the_demo_pair()
    {
        CliResult result = Cli.Run();
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("Gull Point", result.Output, StringComparison.Ordinal);
        Assert.Contains("Wagtail", result.Output, StringComparison.Ordinal);
        Assert.Contains("Curlew", result.Output, StringComparison.Ordinal);
        Assert.Equal("", result.Errors);
    }

    [Theory]
    [InlineData("weigh")]
    [InlineData("doctor")]
    public void A_verb_has_help_with_an_example(string verb)
    {
        CliResult result = Cli.Run(verb, "--help");
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("EXAMPLES", result.Output, StringComparison.Ordinal);
        Assert.Contains("--json", result.Output, StringComparison.Ordinal);
    }

    public static TheoryData<string[], int, string> Mistakes => new()
    {
        { ["weigh", "no-such-build"], 1, "no-such-build" },
        { ["weigh", "no-such-file.toml"], 1, "no-such-file.toml" },
        { ["weigh", "."], 1, "." },
        { ["weigh", ""], 1, "" },
        { ["compare", "wagtail", "missing.toml"], 1, "missing.toml" },
        { ["compare", "missing.toml", "wagtail"], 1, "missing.toml" },
        { ["weigh"], 2, "BUILD" },
        { ["compare", "wagtail"], 2, "B" },
        { ["weigh", "wagtail", "--nonsense"], 2, "Unknown option '--nonsense'. Try: ./simfeel weigh --help" },
        { ["weigh", "wagtail", "-x"], 2, "Unknown option 'x'. Try: ./simfeel weigh --help" },
        { ["compare", "wagtail", "curlew", "--shet", "s.html"], 2, "Did you mean --sheet? Try: ./simfeel compare --help" },
        { ["fit", "stand.csv", "--colunm", "a=rpm"], 2, "Did you mean --column? Try: ./simfeel fit --help" },
        { ["fit", "stand.csv", "other.csv"], 2, "a word too many for fit. Try: ./simfeel fit --help" },
        { ["fit", "swing", "--period", "1"], 2, "Did you mean --period-s? Try: ./simfeel fit swing --help" },
        { ["fit"], 2, "TABLE" },
        { ["weigh", "wagtial"], 1, "Did you mean wagtail?" },
        { ["blame", "wagtail", "curlew", "--metric", "stop_tme"], 1, "Did you mean stop_time?" },
        { ["grow", "wagtail", "--by", "motor.volme"], 1, "Did you mean motor.volume?" },
        { ["sweep", "wagtail", "--vary", "motor.volme=0.8..1.2", "--metric", "stop_time"], 1, "Did you mean motor.volume?" },
        { ["lesson", "sise"], 1, "Did you mean size?" },
        { ["nonsense"], 2, "Unknown command 'nonsense'. Try: ./simfeel --help" },
        { ["comapre", "wagtail", "curlew"], 2, "Did you mean compare? Try: ./simfeel --help" },
        { ["compare", "--=3"], 2, "names no option. Try: ./simfeel compare --help" },
        { ["compare", "wagtail", "curlew", "--effort", "2"], 2, "0.25" },
        { ["compare", "wagtail", "curlew", "--effort", "fast"], 2, "0.25 to 1" },
        { ["compare", "wagtail", "curlew", "--effort", "0,5"], 2, "write a decimal point, not a comma" },
        { ["weigh", "wagtail", "--altitude", "1000 m"], 2, "-400 to 5000 m" },
        { ["sweep", "wagtail", "--vary", "motor.volume=0,8..1,6"], 2, "decimal points, not commas" },
        { ["sweep", "wagtail", "--vary", "motor.volume=0.8..1.6", "--samples", "0"], 2, "between 2 and" },
        { ["compare", "wagtail", "curlew", "--without", "wind"], 2, "inflow, wake, ground" },
        { ["compare", "wagtail", "curlew", "--height", "0"], 2, "0.05" },
        { ["stand", "wagtail", "--steps", "1.5"], 2, "whole number" },
        { ["stand", "wagtail", "--charge", "0"], 2, "5" },
        { ["stand", "wagtail", "--steps", "1"], 2, "101" },
        { ["stand", "wagtail", "--wear", "101"], 2, "0 and 100" },
        { ["stand", "wagtail", "--wear", "nan"], 2, "0 and 100" },
        { ["weigh", "wagtail", "--altitude", "90000"], 2, "5000" },
        { ["weigh", "wagtail", "--altitude", "NaN"], 2, "5000" },
        { ["weigh", "wagtail", "--altitude"], 2, "--altitude needs a value" },
        { ["validate", "--plots"], 2, "--plots needs a folder" },
        { ["validate", "--plots", ""], 2, "--plots needs a folder" },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void A_mistake_gets_one_clear_message_and_its_exit_code(string[] args, int exitCode, string names)
    {
        CliResult result = Cli.RunMistaken(args, exitCode, names);
        Assert.Single(result.Errors.Trim().Split('\n'));

        CliResult json = Cli.Run([.. args, "--json"]);
        Assert.Equal(exitCode, json.ExitCode);
        Assert.Equal("", json.Errors);
        JsonElement error = JsonDocument.Parse(json.Output).RootElement.GetProperty("error");
        Assert.Equal(exitCode, error.GetProperty("exit_code").GetInt32());
        Assert.NotEqual("", error.GetProperty("message").GetString());
    }

    [Fact]
    public void A_wrong_build_file_is_told_by_file_line_key_and_range()
    {
        using TempFolder folder = new();
        string path = folder.File("wrong.toml");
        File.WriteAllText(path, File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "builds", "wagtail.toml"))
            .Replace("wheelbase_mm = 225", "wheelbase_mm = -225", StringComparison.Ordinal));
        CliResult result = Cli.Run("weigh", path, "--json");
        Assert.Equal(1, result.ExitCode);
        JsonElement diagnostic = Assert.Single(
            JsonDocument.Parse(result.Output).RootElement.GetProperty("error").GetProperty("diagnostics").EnumerateArray());
        Assert.Equal("frame.wheelbase_mm", diagnostic.GetProperty("key").GetString());
        Assert.True(diagnostic.GetProperty("line").GetInt32() > 1);
        Assert.Contains("mm", diagnostic.GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    private static JsonElement Json(CliResult result)
    {
        Assert.Equal("", result.Errors);
        Assert.Equal(0, result.ExitCode);
        return JsonDocument.Parse(result.Output).RootElement;
    }
}
