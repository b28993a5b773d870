using System.ComponentModel;
using System.Globalization;
using Simfeel.Builds;
using Simfeel.CommandLine.Output;
using Simfeel.Flight;
using Simfeel.Flight.Tuning;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Compare;
using Simfeel.Studies.Sheet;
using Simfeel.Studies.Style;
using Simfeel.Studies.Uncertainty;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary><c>simfeel compare</c>: two builds through all drills; with a sheet, everything that can be said of them.</summary>
internal sealed class CompareCommand : Command<CompareCommand.Settings>
{
    internal sealed class Settings : TwoBuildSettings
    {
        private const int FewestDraws = 20, MostDraws = 100_000;
        private const double LowestStart_m = 0.05, HighestStart_m = 10000;

        [CommandOption("--height <METRES>")]
        [Description("Height of the start above flat ground, 0.05 to 10000 m. The ground is felt below about two rotor radii; a craft that reaches it bounces and lies there. Default 200.")]
        public double Height { get; init; } = FieldConditions.FreeHeight;

        [CommandOption("--sheet <FILE>")]
        [Description("Write the feel sheet: the whole answer on one page, with blame, uncertainty and growth. The ending says which kind: .html, .md or .json.")]
        public string? Sheet { get; init; }

        [CommandOption("--markdown")]
        [Description("Print the feel sheet as Markdown.")]
        public bool Markdown { get; init; }

        [CommandOption("--full")]
        [Description("With --json: print the whole feel sheet in place of the comparison alone.")]
        public bool Full { get; init; }

        [CommandOption("--draws <COUNT>")]
        [Description("Draws of what is not known well about the parts, for the feel sheet, 20 to 100000. Default 200.")]
        public int Draws { get; init; } = UncertaintyRun.UsualDraws;

        [CommandOption("--bands <LOW,HIGH>")]
        [Description("Up to which difference nothing is felt and from which it is, percent of the mean. Default 5,15.")]
        public string BandText { get; init; } = "5,15";

        [CommandOption("--weights <METRIC=WEIGHT,...>")]
        [Description("Weights of metrics in the style fit, 0 to 100; 0 takes a metric out. For both styles.")]
        public string WeightText { get; init; } = "";

        /// <summary>The policy.</summary>
        public TuningPolicy TuningPolicy => TuningPolicies.Parse(Policy)!.Value;

        /// <summary>The field that the options describe.</summary>
        public FieldConditions Field => new() { Seed = Seed, StartHeight = Height, Effects = Effects };

        /// <summary>The bands.</summary>
        public FeelBands Bands { get; private set; } = FeelBands.Usual;

        /// <summary>The styles with the weights asked for.</summary>
        public IReadOnlyList<FlyingStyle> Styles { get; private set; } = FlyingStyle.All;

        /// <summary>Whether more than the comparison is asked for.</summary>
        public bool WantsSheet => Sheet is not null || Markdown || Full;

        /// <summary>What the options say of the conditions.</summary>
        public StudyConditions Conditions => new(Air, new PilotProfile(), Field, Effort);

        public override ValidationResult Validate()
        {
            if (!(Height is >= LowestStart_m and <= HighestStart_m))
                return ValidationResult.Error($"--height is {Height}; it must lie between {LowestStart_m} and {HighestStart_m} m.");
            if (Draws is < FewestDraws or > MostDraws)
                return ValidationResult.Error($"--draws is {Draws}; it must lie between {FewestDraws} and {MostDraws}.");
            if (Sheet is not null && SheetFile.KindOf(Sheet) is null)
                return ValidationResult.Error($"--sheet is '{Sheet}'; the file name must end in .html, .md or .json.");
            if (Full && !Json) return ValidationResult.Error("--full goes with --json.");
            if (Markdown && Json) return ValidationResult.Error("Give --markdown or --json, not both.");
            return Numbers() ?? base.Validate();
        }

        private ValidationResult? Numbers()
        {
            string[] ends = BandText.Split(',');
            if (ends.Length != 2 || !Number(ends[0], out double low) || !Number(ends[1], out double high) || !(low >= 0 && high >= low && high <= 200))
                return ValidationResult.Error($"--bands is '{BandText}'; write two percentages such as 5,15, the first not above the second, 0 to 200.");
            Bands = new(low, high);
            List<KeyValuePair<string, double>> weights = [];
            foreach (string part in WeightText.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
            {
                string[] sides = part.Split('=');
                if (sides.Length != 2 || !Number(sides[1], out double weight))
                    return ValidationResult.Error($"--weights has '{part}'; write a metric and its weight such as stop_time=3.");
                weights.Add(new(sides[0].Trim(), weight));
            }
            try
            {
                Styles = [.. FlyingStyle.All.Select(style => style.With(weights))];
                return null;
            }
            catch (ArgumentException error)
            {
                return ValidationResult.Error(error.Message);
            }

            static bool Number(string text, out double value) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value);
        }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.WantsSheet) return WriteSheet(settings, cancellationToken);
        Comparison comparison = Compare(settings);
        if (settings.Json) ComparisonOutput.PrintJson(comparison);
        else ComparisonOutput.PrintTable(comparison);
        return ExitCode.Ok;
    }

    /// <summary>Loads, tunes and flies the two builds; says what they weigh at once, for people.</summary>
    internal static Comparison Compare(Settings settings)
    {
        (AssembledBuild a, AssembledBuild b) = BuildLibrary.LoadBoth(settings.A, settings.B, settings.Air);
        if (!settings.Json) ComparisonOutput.PrintMasses(a, b);
        return Flying(() =>
        {
            StudyConditions conditions = settings.Conditions.Under(settings.TuningPolicy, a.Build);
            TunedUnit?[] units = new TunedUnit?[2];
            string[] refusals = new string[2];
            Parallel.For(0, 2, n => units[n] = conditions.Tune((n == 0 ? a : b).Build, out refusals[n]));
            UserError?[] errors = [.. refusals.Select((refusal, n) => refusal.Length == 0 ? null : new UserError($"{(n == 0 ? settings.A : settings.B)}: {refusal}"))];
            if (UserError.Of(errors) is UserError both) throw both;
            return Comparison.Run(units[0]!, units[1]!, conditions.Profile, settings.Effort, settings.Field, settings.Bands);
        });
    }

    private static int WriteSheet(Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Sheet is not null) SheetFile.CheckFolder(settings.Sheet);
        (AssembledBuild a, AssembledBuild b) = BuildLibrary.LoadBoth(settings.A, settings.B, settings.Air);
        if (!settings.Json && !settings.Markdown) ComparisonOutput.PrintMasses(a, b);
        FeelSheet sheet = Flying(() => WorkProgress.Run("Working", progress => new FeelStudy
        {
            Version = CommandLineApp.Version,
            Conditions = settings.Conditions,
            Policy = settings.TuningPolicy,
            Draws = settings.Draws,
            Bands = settings.Bands,
            Styles = settings.Styles,
            Progress = progress is null ? null : progress.Report,
        }.Run(a, b, (Fingerprint(a), Fingerprint(b)), cancellationToken)));
        if (settings.Sheet is not null) SheetFile.Write(settings.Sheet, sheet);
        if (settings.Markdown) Console.Out.Write(FeelSheetMarkdown.Write(sheet));
        else if (settings.Json && settings.Full) JsonOutput.Print(FeelSheetJson.Of(sheet));
        else if (settings.Json) ComparisonOutput.PrintJson(sheet.Comparison);
        else ComparisonOutput.PrintTable(sheet.Comparison);
        if (settings.Sheet is not null && !settings.Json && !settings.Markdown) Console.WriteLine($"The feel sheet stands in {settings.Sheet}.");
        return ExitCode.Ok;

        static string Fingerprint(AssembledBuild build) => FlyableBuild.Sha256Of(build.Build.Source!.Text);
    }

    /// <summary>What a build lacks for flying is the user's to mend.</summary>
    private static T Flying<T>(Func<T> work)
    {
        try
        {
            return work();
        }
        catch (InvalidOperationException error)
        {
            throw new UserError(error.Message);
        }
    }
}
