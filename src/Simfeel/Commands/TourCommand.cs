using System.ComponentModel;
using Simfeel.Cockpit.Application;
using Simfeel.Cockpit.Application.Offscreen;
using Simfeel.Cockpit.Platform;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary><c>simfeel tour</c>: the pictures of the README, drawn by the program itself.</summary>
internal sealed class TourCommand : Command<TourCommand.Settings>
{
    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<FOLDER>")]
        [Description("Folder for the pictures.")]
        public string Folder { get; init; } = "";
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        CockpitOptions options = new()
        {
            FieldFile = Path.Combine(AppContext.BaseDirectory, "fields", "gull-point.toml"),
            PictureFolder = settings.Folder,
        };
        try
        {
            foreach (string file in CockpitTour.Draw(options, settings.Folder)) Console.WriteLine(file);
            return ExitCode.Ok;
        }
        catch (MissingOnMachineException missing)
        {
            throw new UserError(missing.Message, ExitCode.Environment);
        }
        catch (IOException error)
        {
            throw new UserError(error.Message, ExitCode.Environment);
        }
    }
}
