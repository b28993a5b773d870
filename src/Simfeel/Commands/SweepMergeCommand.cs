using System.ComponentModel;
using Simfeel.CommandLine.Output;
using Simfeel.Studies.Sweep;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary><c>simfeel sweep-merge</c>: shares of a sweep into one result.</summary>
internal sealed class SweepMergeCommand : Command<SweepMergeCommand.Settings>
{
    internal sealed class Settings : OutputSettings
    {
        [CommandArgument(0, "<OUT>")]
        [Description("Where the result goes: a file that ends in .parquet or .csv.")]
        public string Out { get; init; } = "";

        [CommandArgument(1, "<SHARES>")]
        [Description("The files that sweep --shard left.")]
        public string[] Shares { get; init; } = [];

        public override ValidationResult Validate() =>
            SweepFiles.KindOf(Out) is null ? ValidationResult.Error($"'{Out}' must end in .parquet or .csv.") : base.Validate();
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        SweepFiles.CheckFolder(settings.Out);
        List<SweepJournal> journals = [];
        try
        {
            foreach (string share in settings.Shares)
            {
                if (!File.Exists(share)) throw new UserError($"sweep-merge: there is no file '{share}'.");
                journals.Add(SweepFiles.Opened(() => SweepJournal.Read(share), share));
            }
            SweepTable table = SweepFiles.Opened(() => SweepTable.Of(journals), settings.Out);
            SweepFiles.Write(settings.Out, table);
            if (settings.Json) SweepOutput.PrintJson(table);
            else SweepOutput.Print(table, [settings.Out]);
            return ExitCode.Ok;
        }
        finally
        {
            foreach (SweepJournal journal in journals) journal.Dispose();
        }
    }
}
