using System.ComponentModel;
using Simfeel.Cockpit.Platform;
using Simfeel.CommandLine.Output;
using Simfeel.Studies.Blind;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary><c>simfeel votes</c>: votes of blind flights against chance, and the feel bands that follow from them.</summary>
internal sealed class VotesCommand : Command<VotesCommand.Settings>
{
    internal sealed class Settings : OutputSettings
    {
        [CommandArgument(0, "[FILE.csv]")]
        [Description("A vote log. Default votes.csv in the folder where pictures and traces go.")]
        public string? File { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        string path = settings.File ?? Path.Combine(UserFolder.Output, VoteLog.UsualName);
        VoteLogContent log;
        try
        {
            log = VoteLog.Read(path);
        }
        catch (VoteLogException error)
        {
            throw new UserError(error.Diagnostics);
        }
        IReadOnlyList<VoteTally> tallies = VoteTally.Of(log.Rows);
        BandCalibration calibration = BandCalibration.Of(tallies);
        if (settings.Json) VotesOutput.PrintJson(path, log, tallies, calibration);
        else VotesOutput.Print(path, log, tallies, calibration);
        return ExitCode.Ok;
    }
}
