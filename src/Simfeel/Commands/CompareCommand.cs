using System.ComponentModel;
using Simfeel.CommandLine.Output;
using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Studies.Compare;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary><c>simfeel compare</c>: two builds through all drills.</summary>
internal sealed class CompareCommand : Command<CompareCommand.Settings>
{
    internal sealed class Settings : FieldSettings
    {
        [CommandOption("--effort <SHARE>")]
        [Description("Share of full stick in every drill, 0.25 to 1. Default 1.")]
        public double Effort { get; init; } = 1;

        public override ValidationResult Validate() =>
            Effort is >= DrillRunner.LeastEffort and <= DrillRunner.LargestEffort
                ? base.Validate()
                : ValidationResult.Error($"--effort is {Effort}; it must lie between {DrillRunner.LeastEffort} and {DrillRunner.LargestEffort}.");
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        Comparison comparison = Compare(settings);
        if (settings.Json) ComparisonOutput.PrintJson(comparison);
        else ComparisonOutput.PrintTable(comparison);
        return ExitCode.Ok;
    }

    /// <summary>Loads, tunes and flies the two builds.</summary>
    internal static Comparison Compare(Settings settings)
    {
        PilotProfile profile = new();
        string[] names = [settings.A, settings.B];
        TunedUnit?[] units = new TunedUnit?[2];
        UserError?[] errors = new UserError?[2];
        Parallel.For(0, 2, n =>
        {
            try
            {
                units[n] = Tuned(names[n]);
            }
            catch (UserError error)
            {
                // the other file may be wrong, too: both are said
                errors[n] = error;
            }
        });
        if (UserError.Of(errors) is UserError both) throw both;
        return Comparison.Run(units[0]!, units[1]!, profile, settings.Effort, settings.Field);

        TunedUnit Tuned(string name)
        {
            try
            {
                return TunedUnit.Matched(FlightUnit.Of(BuildLibrary.Load(name, settings.Air)), settings.Air, profile);
            }
            catch (Exception error) when (error is InvalidOperationException or ArgumentException)
            {
                throw new UserError($"{name}: {error.Message}");
            }
        }
    }
}
