using System.Text.Json;
using Simfeel.CommandLine;
using Simfeel.CommandLine.Output;
using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Physics.Air;
using Simfeel.Physics.Guards;

namespace Simfeel.Tests;

/// <summary>What the command line does with a flight that was stopped, and with the step that it left.</summary>
public class FaultCommandTests
{
    [Fact]
    public void The_step_is_kept_with_an_exit_code_of_its_own_and_doctor_flies_it_again()
    {
        using TempFolder folder = new();
        Assert.Equal(ExitCode.Fault, FaultReport.Write(Fault(), json: false, folder.Path));
        string file = Assert.Single(Directory.GetFiles(folder.Path));
        CliResult again = Cli.Run("doctor", "--repro", file, "--json");
        Assert.Equal((ExitCode.Ok, ""), (again.ExitCode, again.Errors));
        JsonElement root = JsonDocument.Parse(again.Output).RootElement;
        Assert.Equal(("BodyAir", "FiniteState", 0L, true), (
            root.GetProperty("stage_now").GetString(), root.GetProperty("broken_now").GetString(), root.GetProperty("step").GetInt64(),
            root.GetProperty("same").GetBoolean()));
    }

    [Fact]
    public void What_is_no_such_step_has_one_clear_error()
    {
        string file = Path.Combine(AppContext.BaseDirectory, "builds", "wagtail.toml");
        CliResult result = Cli.Run("doctor", "--repro", file);
        Assert.Equal(ExitCode.BadInput, result.ExitCode);
        Assert.StartsWith($"simfeel: {file}: ", result.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", result.Errors, StringComparison.Ordinal);
    }

    private static FlightFaultException Fault()
    {
        PilotProfile profile = new();
        TunedUnit unit = FlyableBuild.Read(Path.Combine(AppContext.BaseDirectory, "builds", "wagtail.toml"), StandardAtmosphere.At(0), profile).Build!.Unit;
        TunedUnit spoilt = unit with { Unit = unit.Unit with { Craft = unit.Unit.Craft with { DragArea = new(0.01, 0.01, double.NaN) } } };
        return Assert.Throws<FlightFaultException>(() => DrillRunner.Fly(DrillCatalogue.Stop, spoilt, profile));
    }
}
