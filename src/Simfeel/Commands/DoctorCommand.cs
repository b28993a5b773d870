using System.ComponentModel;
using Simfeel.Cockpit.Application.Offscreen;
using Simfeel.Cockpit.Platform;
using Simfeel.CommandLine.Output;
using Spectre.Console;
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
        [Description("Prove the determinism contract: fly every drill with four starter builds in every lane width, on one and two threads and in another order, replay a session, print the hashes and say whether they are the reference's.")]
        public bool Hash { get; init; }

        [CommandOption("--repro <FILE>")]
        [Description("Fly the step of a stopped flight again, from the file that the stop left: which stage broke it?")]
        public string? Repro { get; init; }

        [CommandOption("--brief")]
        [Description("With --hash: one craft at a time on one thread only, for processors without vectors.")]
        public bool Brief { get; init; }

        [CommandOption("--bits <FILE>")]
        [Description("Write the bits of all that into a text file, to be compared with that of another machine by diff or --bits-against.")]
        public string? Bits { get; init; }

        [CommandOption("--bits-against <FILE>")]
        [Description("Compare this machine's bits with such a file, or with the word reference, and say where they part first.")]
        public string? BitsAgainst { get; init; }

        public override ValidationResult Validate()
        {
            if (Bits is NoValue or "") return ValidationResult.Error("--bits needs a file.");
            if (BitsAgainst is NoValue or "") return ValidationResult.Error("--bits-against needs a file, or the word reference.");
            if (Repro is NoValue or "") return ValidationResult.Error("--repro needs a file.");
            if (Brief && !Hash) return ValidationResult.Error("--brief goes with --hash.");
            return ((bool[])[Window, Hash, Bits is not null, BitsAgainst is not null, Repro is not null]).Count(one => one) > 1
                ? ValidationResult.Error("--window, --hash, --bits, --bits-against and --repro are asked for one at a time.")
                : base.Validate();
        }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Hash) return DeterminismOutput.PrintHashes(settings.Json, settings.Brief);
        if (settings.Bits is string bits) return DeterminismOutput.WriteBits(bits, settings.Json);
        if (settings.BitsAgainst is string other) return DeterminismOutput.CompareBits(other, settings.Json);
        Dictionary<string, object?> report = settings.Repro is string file ? FaultReport.Repeat(file) : Machine(settings.Window);
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
        Dictionary<string, object?> report = MachineReport.Make();
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
}
