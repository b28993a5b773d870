using System.ComponentModel;
using Simfeel.Builds.Writing;
using Simfeel.CommandLine.Output;
using Simfeel.Studies.Plots;
using Simfeel.Studies.Validation;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary><c>simfeel validate</c>: the rotor model beside published measurements.</summary>
internal sealed class ValidateCommand : Command<ValidateCommand.Settings>
{
    internal sealed class Settings : OutputSettings
    {
        [CommandOption("--plots <FOLDER>")]
        [Description("Also write one picture (PNG) for each case into this folder, which is made if it is not there.")]
        public string? Plots { get; init; }

        public override ValidationResult Validate() => Plots is "" or NoValue
            ? ValidationResult.Error("--plots needs a folder.")
            : ValidationResult.Success();
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Plots is string folder) Prepare(folder);
        (ValidationCase Case, CaseResult Result)[] runs =
            [.. ValidationCatalogue.All.AsParallel().AsOrdered().WithCancellation(cancellationToken).Select(known => (known, known.Run()))];
        List<string> pictures = settings.Plots is null ? [] : [.. runs.Select(run => Draw(settings.Plots, run.Case, run.Result))];
        if (settings.Json) PrintJson(runs, pictures);
        else PrintTable(runs, pictures, settings.Plots);
        return ExitCode.Ok;
    }

    /// <summary>What could stop the pictures is found before anything is computed.</summary>
    private static void Prepare(string folder)
    {
        try
        {
            PlotFonts.Register();
            Directory.CreateDirectory(folder);
        }
        catch (PlotFontException error)
        {
            throw new UserError(error.Message, ExitCode.Environment);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new UserError($"The folder '{folder}' of --plots cannot be made: {error.Message}");
        }
    }

    private static string Draw(string folder, ValidationCase known, CaseResult result)
    {
        string path = Path.Combine(folder, known.Name + ".png");
        try
        {
            byte[] picture = ChartPicture.Png(result.Sheet);
            WholeFile.Write(path, file => file.Write(picture), lasting: false);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UserError($"The picture '{path}' cannot be written: {error.Message}", ExitCode.Environment);
        }
        return path;
    }

    private static void PrintJson((ValidationCase Case, CaseResult Result)[] runs, List<string> pictures) =>
        JsonOutput.Print(new()
        {
            ["inside"] = runs.All(run => run.Result.Checks.All(check => check.Inside)),
            ["cases"] = runs.Select((run, i) => new Dictionary<string, object?>
            {
                ["name"] = run.Case.Name,
                ["title"] = run.Case.Title,
                ["source"] = run.Case.Source,
                ["note"] = run.Case.Note,
                ["picture"] = pictures.Count > 0 ? pictures[i] : null,
                ["checks"] = run.Result.Checks.Select(check => new Dictionary<string, object?>
                {
                    ["what"] = check.What,
                    ["rule"] = Word(check.Rule),
                    ["points"] = check.Points.Count,
                    ["relative"] = check.Relative,
                    ["mean_error"] = check.MeanError,
                    ["rms_error"] = check.RootMeanSquareError,
                    ["worst_error"] = check.WorstError,
                    ["bound"] = check.Bound,
                    ["bound_set_before_first_run"] = check.Basis == BoundBasis.SetBefore,
                    ["inside"] = check.Inside,
                }).ToList(),
            }).ToList(),
        });

    private static void PrintTable((ValidationCase Case, CaseResult Result)[] runs, List<string> pictures, string? folder)
    {
        int checks = runs.Sum(run => run.Result.Checks.Count), inside = runs.Sum(run => run.Result.Checks.Count(check => check.Inside));
        Console.WriteLine($"The rotor model beside published numbers: {runs.Length} cases, {inside} of {checks} checks inside their bounds.");
        Console.WriteLine();
        Table table = Tables.New("case (source) and what is compared", "points", "mean error", "worst error", "bound", "inside?");
        table.Columns[4].Alignment = Justify.Left;
        foreach ((ValidationCase known, CaseResult result) in runs)
        {
            table.AddRow(Markup.Escape($"{known.Name} ({known.ShortSource})"));
            foreach (ValidationCheck check in result.Checks)
            {
                table.AddRow(
                    Markup.Escape("  " + check.What), $"{check.Points.Count}", Error(check, check.MeanError), Error(check, check.WorstError),
                    Bound(check), check.Inside ? "yes" : "NO");
            }
        }
        Tables.Print(table);
        Console.WriteLine("Errors in % are shares of the published value, the others differences: model less published.");
        Console.WriteLine("* Bound set after the first run, a little beyond what it found: it shows changes and promises nothing.");
        foreach ((ValidationCase known, _) in runs)
        {
            Console.WriteLine();
            Console.WriteLine($"{known.Name}: {known.Source}.");
            Console.WriteLine($"  {known.Note}");
        }
        if (pictures.Count == 0) return;
        Console.WriteLine();
        Console.WriteLine($"{pictures.Count} pictures in {folder}: {string.Join(", ", pictures.Select(Path.GetFileName))}");
    }

    private static string Error(ValidationCheck check, double error) =>
        check.Relative && check.Bound >= 1e-3 ? (100 * error).ToString("+0.0;-0.0;0.0") + " %" : Plain(error);

    private static string Bound(ValidationCheck check)
    {
        string amount = check.Relative && check.Bound >= 1e-3 ? $"{100 * check.Bound:F0} %" : Plain(check.Bound);
        string words = check.Rule switch
        {
            CheckRule.RootMeanSquareWithin => $"rms {amount} (is {Error(check, check.RootMeanSquareError)})",
            CheckRule.MeanWithin => $"mean {amount}",
            CheckRule.NeverAbove => "never above",
            CheckRule.NeverBelow => "never below",
            _ => amount,
        };
        return words + (check.Basis == BoundBasis.FromRun ? " *" : "");
    }

    private static string Plain(double value) => value == 0 ? "0" : Math.Abs(value) < 1e-3 ? value.ToString("0.0E+0") : value.ToString("0.000");

    private static string Word(CheckRule rule) => rule switch
    {
        CheckRule.RootMeanSquareWithin => "rms_within",
        CheckRule.MeanWithin => "mean_within",
        CheckRule.NeverAbove => "never_above",
        CheckRule.NeverBelow => "never_below",
        _ => "worst_within",
    };
}
