using System.ComponentModel;
using Simfeel.Builds;
using Simfeel.Builds.Reading;
using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tuning;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Metrics;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary>Options of verbs that fly drills with builds.</summary>
internal class StudySettings : SiteSettings
{
    [CommandOption("--effort <SHARE>")]
    [Description("Share of full stick in every drill, 0.25 to 1. Default 1.")]
    public double Effort { get; init; } = 1;

    [CommandOption("--policy <POLICY>")]
    [Description("How gains are chosen: matched (each build its best at equal margins), same-gains (all the first build's numbers), limit (each the best stop), bare (no controller). Default matched.")]
    public string Policy { get; init; } = "matched";

    /// <summary>What the options say of the conditions, in free air.</summary>
    /// <param name="reference">The build whose gains same-gains keeps.</param>
    /// <exception cref="UserError">That build cannot hover or be tuned.</exception>
    public StudyConditions ConditionsOf(Build reference)
    {
        try
        {
            return new StudyConditions(Air, new PilotProfile(), new FieldConditions { Seed = Seed, Effects = Effects }, Effort)
                .Under(TuningPolicies.Parse(Policy)!.Value, reference);
        }
        catch (InvalidOperationException error)
        {
            throw new UserError(error.Message);
        }
    }

    public override ValidationResult Validate()
    {
        if (!(Effort is >= DrillRunner.LeastEffort and <= DrillRunner.LargestEffort))
            return ValidationResult.Error($"--effort is {Effort}; it must lie between {DrillRunner.LeastEffort} and {DrillRunner.LargestEffort}.");
        return TuningPolicies.Parse(Policy) is null
            ? ValidationResult.Error($"--policy is '{Policy}'; policies are {string.Join(", ", TuningPolicies.Words)}.")
            : base.Validate();
    }

    /// <summary>The metrics of names separated by commas.</summary>
    /// <exception cref="UserError">A name is unknown.</exception>
    internal static IReadOnlyList<Metric> MetricsOf(string names) =>
        [.. names.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(name =>
            MetricCatalogue.All.FirstOrDefault(metric => metric.Name == name)
            ?? throw new UserError($"There is no metric '{name}'.{NearestName.Choices(name, "Metrics", [.. MetricCatalogue.All.Select(metric => metric.Name)])}."))];
}
