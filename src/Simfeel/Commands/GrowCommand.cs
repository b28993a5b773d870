using System.ComponentModel;
using System.Globalization;
using Simfeel.Builds;
using Simfeel.Builds.Reading;
using Simfeel.CommandLine.Output;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Growth;
using Simfeel.Studies.Metrics;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary><c>simfeel grow</c>: where the cure stops working.</summary>
internal sealed class GrowCommand : Command<GrowCommand.Settings>
{
    private const double SmallestFactor = 0.05, LargestFactor = 20;
    private const int FewestPoints = 3, MostPoints = 1000;

    internal sealed class Settings : StudySettings
    {
        [CommandArgument(0, "<BUILD>")]
        [Description("A build file, or the name of a starter build such as wagtail.")]
        public string Build { get; init; } = "";

        [CommandOption("--by <PART>")]
        [Description("What grows: motor.volume, motor.kv, arm.length, propeller.diameter, propeller.pitch, battery.mass, or any number of the build file such as motor.mass_g. Default motor.volume.")]
        public string By { get; init; } = "motor.volume";

        [CommandOption("--metric <NAMES>")]
        [Description("Metrics to follow, separated by commas, named as in compare --json. Default stop_time.")]
        public string Metric { get; init; } = "stop_time";

        [CommandOption("--range <FROM..TO>")]
        [Description("Smallest and largest factor of the part's own size, 0.05 to 20. Default by part: 0.4..2.6 for motor.volume.")]
        public string? Range { get; init; }

        [CommandOption("--points <COUNT>")]
        [Description("Points of the curve, 3 to 1000. Default 23.")]
        public int Points { get; init; } = GrowthStudy.UsualPoints;

        [CommandOption("--like <OTHER>")]
        [Description("Another build: find the size at which the first metric is like that build's, or the closest and what stands in the way.")]
        public string? Like { get; init; }

        /// <summary>The factors of <see cref="Range"/>; null where it is not given.</summary>
        public (double From, double To)? Factors { get; private set; }

        public override ValidationResult Validate()
        {
            if (Points is < FewestPoints or > MostPoints)
                return ValidationResult.Error($"--points is {Points}; it must lie between {FewestPoints} and {MostPoints}.");
            if (Metric.Trim(',', ' ').Length == 0) return ValidationResult.Error("--metric needs the name of a metric.");
            if (Range is null) return base.Validate();
            string[] ends = Range.Split("..");
            if (ends.Length != 2 || !Number(ends[0], out double from) || !Number(ends[1], out double to)
                || !(from >= SmallestFactor && to <= LargestFactor && from < to))
            {
                return ValidationResult.Error($"--range is '{Range}'; write two rising factors such as 0.4..2.6, {SmallestFactor} to {LargestFactor}.");
            }
            Factors = (from, to);
            return base.Validate();

            static bool Number(string text, out double value) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value);
        }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        IReadOnlyList<Metric> metrics = StudySettings.MetricsOf(settings.Metric);
        BuildKnob knob = BuildKnobs.Find(settings.By)
            ?? throw new UserError($"Nothing called '{settings.By}' can grow.{NearestName.Choices(settings.By, "Parts", [.. BuildKnobs.All.Select(known => known.Name)])}, or a number of the build file such as motor.mass_g.");
        Build build = BuildLibrary.Load(settings.Build, settings.Air).Build;
        StudyConditions conditions = settings.ConditionsOf(build);
        try
        {
            double size = knob.Size(build);
            if (!(size > 0)) throw new UserError($"{build.Name}'s {knob.Name} is {size:G4} {knob.Unit}; only what is above 0 can grow by a factor.");
        }
        catch (InvalidOperationException error)
        {
            throw new UserError(error.Message);
        }
        Build? other = settings.Like is null ? null : BuildLibrary.Load(settings.Like, settings.Air).Build;
        IReadOnlyList<GrowthCurve> curves = WorkProgress.Run(
            "Flying every size",
            progress => GrowthStudy.Run(build, knob, metrics, conditions, settings.Factors, settings.Points, progress, cancellationToken));
        GrowthMatch? match = other is null ? null : Match(build, knob, curves[0], other, conditions);
        if (settings.Json) GrowthOutput.PrintJson(knob, curves, match, conditions);
        else GrowthOutput.Print(knob, curves, match, conditions);
        return ExitCode.Ok;
    }

    private static GrowthMatch Match(Build build, BuildKnob knob, GrowthCurve curve, Build other, StudyConditions conditions)
    {
        Flight.TunedUnit unit = conditions.Tune(other, out string refusal) ?? throw new UserError($"{other.Name}: {refusal}");
        double target = MetricFlights.Read([unit], [curve.Metric], conditions)[0][0];
        return GrowthMatch.Solve(build, knob, curve, other.Name, target, conditions);
    }
}
