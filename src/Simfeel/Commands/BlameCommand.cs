using System.ComponentModel;
using Simfeel.Builds;
using Simfeel.CommandLine.Output;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Blame;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary><c>simfeel blame</c>: which parts are to blame for a difference.</summary>
internal sealed class BlameCommand : Command<BlameCommand.Settings>
{
    internal sealed class Settings : TwoBuildSettings
    {
        [CommandOption("--metric <NAMES>")]
        [Description("Metrics to share out, separated by commas, named as in compare --json. Default stop_time.")]
        public string Metric { get; init; } = "stop_time";

        [CommandOption("--order")]
        [Description("Show beside each share what the group does when it is changed first (alone) and when it is changed last.")]
        public bool Order { get; init; }

        public override ValidationResult Validate() =>
            Metric.Trim(',', ' ').Length > 0 ? base.Validate() : ValidationResult.Error("--metric needs the name of a metric.");
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        IReadOnlyList<Studies.Metrics.Metric> metrics = StudySettings.MetricsOf(settings.Metric);
        (AssembledBuild a, AssembledBuild b) = BuildLibrary.LoadBoth(settings.A, settings.B, settings.Air);
        StudyConditions conditions = settings.ConditionsOf(a.Build);
        IReadOnlyList<BlameLedger> ledgers = WorkProgress.Run(
            "Flying every hybrid", progress => BlameStudy.Run(a.Build, b.Build, metrics, conditions, progress, cancellationToken));
        if (settings.Json) BlameOutput.PrintJson(a, b, ledgers, conditions);
        else BlameOutput.Print(a, b, ledgers, conditions, settings.Order);
        return ExitCode.Ok;
    }
}
