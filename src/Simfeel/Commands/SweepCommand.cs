using System.ComponentModel;
using System.Globalization;
using Simfeel.Builds;
using Simfeel.CommandLine.Output;
using Simfeel.Flight;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Sweep;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary><c>simfeel sweep</c>: many variants of a build through the drills.</summary>
internal sealed class SweepCommand : Command<SweepCommand.Settings>
{
    private const int UsualPoints = 5;

    internal sealed class Settings : StudySettings
    {
        [CommandArgument(0, "<BUILD>")]
        [Description("A build file, or the name of a starter build such as wagtail.")]
        public string Build { get; init; } = "";

        [CommandOption("--vary <PART=FROM..TO>")]
        [Description("What to vary, several times: a part by a factor of its own size (motor.volume=0.6..1.8) or a number of the build file in its unit (battery.x_mm=-20..20); /N behind it for N grid points. Shapes of propellers take at most 25 values.")]
        public string[] Vary { get; init; } = [];

        [CommandOption("--points <COUNT>")]
        [Description("Grid points of each part that does not say its own, 2 to 1000. Default 5.")]
        public int Points { get; init; } = UsualPoints;

        [CommandOption("--samples <COUNT>")]
        [Description("A Latin hypercube of this many builds in place of a grid, 2 to 1000000; --seed chooses which.")]
        public int? Samples { get; init; }

        [CommandOption("--metric <NAMES>")]
        [Description("Metrics to measure, separated by commas, named as in compare --json. Default stop_time,climb_in_1_s,hover_endurance.")]
        public string Metric { get; init; } = "stop_time,climb_in_1_s,hover_endurance";

        [CommandOption("--pareto <NAMES>")]
        [Description("Those of the metrics that span the Pareto front. Default: all that have a better way.")]
        public string? Pareto { get; init; }

        [CommandOption("--out <FILES>")]
        [Description("Where the results go, separated by commas: .parquet, .csv or both. Without it the front is printed and nothing is kept.")]
        public string? Out { get; init; }

        [CommandOption("--shard <I/N>")]
        [Description("Do the I-th of N shares only and leave it beside the first file of --out, for sweep-merge.")]
        public string? Shard { get; init; }

        [CommandOption("--fresh")]
        [Description("Throw away what an earlier, unfinished run of these files left.")]
        public bool Fresh { get; init; }

        /// <summary>The axes; they know nothing of the build yet.</summary>
        public IReadOnlyList<SweepAxis> Axes { get; private set; } = [];

        /// <summary>The files of <see cref="Out"/>.</summary>
        public IReadOnlyList<string> Files { get; private set; } = [];

        /// <summary>Which share to do, from 1, and of how many.</summary>
        public (int Number, int Of) Share { get; private set; } = (1, 1);

        public override ValidationResult Validate()
        {
            if (Vary.Length == 0) return ValidationResult.Error("Give at least one --vary PART=FROM..TO.");
            if (Points is < 2 or > 1000) return ValidationResult.Error($"--points is {Points}; it must lie between 2 and 1000.");
            if (Samples is < 2 or > SweepPlan.MostRows) return ValidationResult.Error($"--samples is {Samples}; it must lie between 2 and {SweepPlan.MostRows}.");
            List<SweepAxis> axes = [];
            foreach (string text in Vary)
            {
                if (Axis(text) is not SweepAxis axis) return ValidationResult.Error($"--vary is '{text}'; write PART=FROM..TO such as motor.volume=0.6..1.8, or PART=FROM..TO/N{(text.Contains(',') ? ", with decimal points, not commas" : "")}.");
                if (axes.Any(other => other.Name == axis.Name)) return ValidationResult.Error($"--vary names {axis.Name} twice.");
                axes.Add(axis);
            }
            Axes = axes;
            if (Out is not null)
            {
                Files = Out.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
                if (Files.Count == 0 || Files.Any(file => SweepFiles.KindOf(file) is null))
                    return ValidationResult.Error($"--out is '{Out}'; file names end in .parquet or .csv.");
            }
            if (Shard is not null)
            {
                string[] sides = Shard.Split('/');
                if (sides.Length != 2 || !int.TryParse(sides[0], out int number) || !int.TryParse(sides[1], out int of) || number < 1 || number > of || of > 10_000)
                    return ValidationResult.Error($"--shard is '{Shard}'; write I/N such as 2/8, I from 1 to N, N at most 10000.");
                if (Files.Count == 0) return ValidationResult.Error("--shard needs --out.");
                Share = (number, of);
            }
            return base.Validate();
        }

        private SweepAxis? Axis(string text)
        {
            string[] sides = text.Split('=');
            string[] range = sides.Length == 2 ? sides[1].Split('/') : [];
            string[] ends = range.Length is 1 or 2 ? range[0].Split("..") : [];
            int points = Points;
            bool ok = ends.Length == 2
                & double.TryParse(ends.ElementAtOrDefault(0), NumberStyles.Float, CultureInfo.InvariantCulture, out double from)
                & double.TryParse(ends.ElementAtOrDefault(1), NumberStyles.Float, CultureInfo.InvariantCulture, out double to)
                && (range.Length == 1 || (int.TryParse(range[1], out points) && points is >= 2 and <= 1000));
            return ok ? new(sides[0].Trim(), from, to, points) : null;
        }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        Build build = BuildLibrary.Load(settings.Build, settings.Air).Build;
        StudyConditions conditions = settings.ConditionsOf(build);
        SweepPlan plan = Plan(settings, build, conditions);
        // without files nothing is kept, not even until the end
        string? path = settings.Files.Count == 0 ? null : SweepFiles.JournalOf(settings.Files[0], settings.Shard is null ? null : settings.Share);
        foreach (string file in settings.Files) SweepFiles.CheckFolder(file);
        using (SweepJournal journal = path is null ? SweepJournal.InMemory(plan.ToLine()) : SweepFiles.Opened(() => SweepJournal.Open(path, plan.ToLine(), settings.Fresh), path))
        {
            if (journal.Done.Count > 0) Console.Error.WriteLine($"Going on with {path}: {journal.Done.Count} blocks of {SweepPlan.BlockRows} builds are done.");
            bool whole = Work(plan, build, conditions, journal, settings, cancellationToken);
            if (!whole)
            {
                Console.Error.WriteLine(path is not null
                    ? $"Stopped. {journal.Done.Count} of {plan.Blocks} blocks are kept in {path}; the same command goes on from there."
                    : "Stopped. Nothing is kept without --out.");
                return ExitCode.Ok;
            }
            if (settings.Shard is not null)
            {
                Console.WriteLine($"Share {settings.Shard} is done: {path}");
                return ExitCode.Ok;
            }
            SweepTable table = SweepTable.Of([journal]);
            foreach (string file in settings.Files) SweepFiles.Write(file, table, $" Everything is flown and kept in {path}; the same command goes on from there.");
            // still held, so that it is no other sweep's by now
            if (path is not null) File.Delete(path);
            if (settings.Json) SweepOutput.PrintJson(table);
            else SweepOutput.Print(table, settings.Files);
        }
        return ExitCode.Ok;
    }

    private static bool Work(
        SweepPlan plan, Build build, StudyConditions conditions, SweepJournal journal, Settings settings, CancellationToken cancellation)
    {
        try
        {
            return WorkProgress.Run("Flying the sweep", progress =>
            {
                SweepRun.Run(plan, build, conditions, journal, settings.Share, progress, cancellation);
                return true;
            });
        }
        catch (OperationCanceledException)
        {
            return false;
        }
        catch (IOException error)
        {
            throw new UserError($"The sweep stopped after {journal.Done.Count} of {plan.Blocks} blocks; they are kept, and the same command goes on from there. {error.Message}", ExitCode.Environment);
        }
    }

    private static SweepPlan Plan(Settings settings, Build build, StudyConditions conditions)
    {
        foreach (SweepAxis axis in settings.Axes)
        {
            if (axis.Fault(build) is string fault) throw new UserError("--vary: " + fault);
        }
        IReadOnlyList<Metric> metrics = StudySettings.MetricsOf(settings.Metric);
        IReadOnlyList<Metric> front = settings.Pareto is null
            ? [.. metrics.Where(metric => MetricSense.Of(metric) != Sense.Neither)]
            : StudySettings.MetricsOf(settings.Pareto);
        foreach (Metric metric in front)
        {
            if (!metrics.Contains(metric)) throw new UserError($"--pareto names {metric.Name}, which --metric does not measure.");
            if (MetricSense.Of(metric) == Sense.Neither) throw new UserError($"--pareto names {metric.Name}; neither more nor less of it is better.");
        }
        BuildSource source = build.Source!;
        SweepPlan plan = new()
        {
            Version = CommandLineApp.Version,
            Build = build.Name,
            Fingerprint = FlyableBuild.Sha256Of(source.Text + "\0" + source.PolarText),
            Conditions = $"{conditions.Air} {conditions.Profile} {conditions.Field} effort {conditions.Effort:R} {conditions.Policy}",
            Axes = settings.Axes,
            Samples = settings.Samples ?? 0,
            Seed = settings.Seed,
            Metrics = [.. metrics.Select(metric => metric.Name)],
            Front = [.. front.Select(metric => metric.Name)],
        };
        return plan.Rows <= SweepPlan.MostRows
            ? plan
            : throw new UserError($"This grid has more than {SweepPlan.MostRows} builds; take fewer --points, or --samples.");
    }
}
