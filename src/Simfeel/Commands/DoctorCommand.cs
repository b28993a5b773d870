using System.ComponentModel;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Simfeel.Builds;
using Simfeel.Cockpit.Application;
using Simfeel.Cockpit.Platform;
using Simfeel.CommandLine.Output;
using Simfeel.Flight;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary><c>simfeel doctor</c>: what this machine has.</summary>
internal sealed class DoctorCommand : Command<DoctorCommand.Settings>
{
    internal sealed class Settings : OutputSettings
    {
        [CommandOption("--window")]
        [Description("Fly for ten seconds in a window that nobody sees and measure pictures, pacing, delays and load.")]
        public bool Window { get; init; }

        [CommandOption("--hash")]
        [Description("Fly the drills of four starter builds in every lane width and print the hashes of their states.")]
        public bool Hash { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        Dictionary<string, object?> report = settings.Hash ? DeterminismReport.Make() : Machine(settings.Window);
        if (settings.Json)
        {
            JsonOutput.Print(report);
            return ExitCode.Ok;
        }
        foreach ((string key, object? value) in report)
            Console.WriteLine($"{key.Replace('_', ' '),-28} {value}");
        return ExitCode.Ok;
    }

    private static Dictionary<string, object?> Machine(bool window)
    {
        PilotProfile profile = new();
        (int tables, long bytes) = RotorTableStore.Default?.Contents() ?? (0, 0);
        Dictionary<string, object?> report = new()
        {
            ["simfeel"] = typeof(DoctorCommand).Assembly.GetName().Version!.ToString(3),
            ["runtime"] = RuntimeInformation.FrameworkDescription,
            ["system"] = RuntimeInformation.OSDescription,
            ["architecture"] = RuntimeInformation.ProcessArchitecture.ToString(),
            ["cores"] = Environment.ProcessorCount,
            ["widest_double_lanes"] = Vector512.IsHardwareAccelerated ? 8 : Vector256.IsHardwareAccelerated ? 4 : 1,
            ["starter_builds"] = BuildLibrary.StarterNames.Count,
            ["rotor_table_cache"] = RotorTableStore.Default?.Folder ?? $"off ({RotorTableStore.Variable}=off, or no home folder)",
            ["cached_rotor_tables"] = tables,
            ["cached_rotor_tables_MB"] = Math.Round(bytes / 1e6, 1),
            ["display"] = Environment.GetEnvironmentVariable("WAYLAND_DISPLAY") ?? Environment.GetEnvironmentVariable("DISPLAY") ?? "none",
            ["window_library_sdl2"] = Loads("libSDL2-2.0.so.0"),
            ["opengl_library"] = Loads("libGL.so.1"),
            ["egl_library"] = Loads("libEGL.so.1"),
            ["fontconfig_library"] = Loads("libfontconfig.so.1"),
            ["stick_reading_s"] = profile.StickPeriod,
            ["radio_delay_s"] = profile.RadioDelay,
            ["control_loop_s"] = profile.LoopPeriod,
            ["physics_step_s"] = 1.0 / profile.StepRate,
        };
        if (window)
        {
            foreach ((string key, object value) in WindowCheckup()) report[key] = value;
        }
        return report;
    }

    private static IReadOnlyList<KeyValuePair<string, object>> WindowCheckup()
    {
        try
        {
            return Checkup.Run(new()
            {
                FieldFile = Path.Combine(AppContext.BaseDirectory, "fields", "gull-point.toml"),
                PictureFolder = Path.GetTempPath(),
            });
        }
        catch (MissingOnMachineException missing)
        {
            throw new UserError(missing.Message, ExitCode.Environment);
        }
    }

    private static string Loads(string library)
    {
        if (!NativeLibrary.TryLoad(library, out nint handle)) return "missing";
        NativeLibrary.Free(handle);
        return "found";
    }
}
