using System.ComponentModel;
using Simfeel.Builds;
using Simfeel.Builds.Writing;
using Simfeel.CommandLine.Output;
using Simfeel.Studies.Fit;
using Simfeel.Studies.Fit.Reading;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary><c>simfeel fit</c>: a thrust table into propeller and motor constants.</summary>
internal sealed class FitStandCommand : Command<FitStandCommand.Settings>
{
    internal sealed class Settings : MeasuredSettings
    {
        [CommandArgument(0, "<TABLE>")]
        [Description("The thrust table: text with comma, semicolon or tab between the cells.")]
        public string Table { get; init; } = "";

        [CommandOption("--column <NAME=QUANTITY:UNIT>")]
        [Description("Says what a column is, such as \"Pull=thrust:gf\", \"#3=rpm\" or \"Notes=ignore\". May be given several times.")]
        public string[] Columns { get; init; } = [];

        [CommandOption("--block <NUMBER>")]
        [Description("Use this block of the file only, counted from 1. Default: all that fit the build's propeller.")]
        public int? Block { get; init; }

        [CommandOption("--poles <COUNT>")]
        [Description("Magnets of the motor, for columns of electrical rpm. Default: the build's.")]
        public int? Poles { get; init; }

        [CommandOption("--decimal <MARK>")]
        [Description("Decimal mark of the table, comma or point, where the table does not tell.")]
        public string? Decimal { get; init; }

        public override ValidationResult Validate()
        {
            foreach (string column in Columns)
            {
                if (ColumnOverride.Parse(column, out string fault) is null) return ValidationResult.Error($"--column: {fault}");
            }
            if (Poles is int poles && (poles is < 2 or > 60 || poles % 2 != 0)) return ValidationResult.Error($"--poles is {Poles}; it must be an even number from 2 to 60.");
            if (Decimal is not (null or "comma" or "point")) return ValidationResult.Error($"--decimal is '{Decimal}'; it must be comma or point.");
            return base.Validate();
        }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        string? path = settings.NoWrite ? null : MeasuredCopy.Place(settings.Build, settings.Out, settings.Force);
        AssembledBuild build = BuildLibrary.Load(settings.Build, settings.Air);
        StandFit fit;
        try
        {
            StandTable table = StandTableReader.Read(settings.Table, new StandModel(build), new StandReadingOptions
            {
                Columns = [.. settings.Columns.Select(column => ColumnOverride.Parse(column, out _)!)],
                Block = settings.Block,
                Poles = settings.Poles,
                DecimalMark = settings.Decimal switch { "comma" => ',', "point" => '.', _ => null },
            });
            fit = StandFitter.Fit(build, table);
        }
        catch (FitException error)
        {
            throw new UserError(error.Diagnostics);
        }
        IEnumerable<MeasuredNumber> numbers = fit.Constants.Where(c => c.Determined).Select(c => new MeasuredNumber(c.Key, c.Low, c.Value, c.High));
        UserError? misplaced = path is null ? null : MeasuredCopy.Write(settings.Build, build, path, settings.Force, numbers);
        if (misplaced is not null) path = null;
        if (settings.Json) FitOutput.PrintJson(fit, path);
        else FitOutput.PrintTable(fit, path);
        if (misplaced is not null) throw misplaced;
        return ExitCode.Ok;
    }
}
