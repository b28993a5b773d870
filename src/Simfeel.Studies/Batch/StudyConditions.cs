using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tuning;
using Simfeel.Physics.Air;

namespace Simfeel.Studies.Batch;

/// <summary>What is the same for every craft of a study.</summary>
/// <param name="Air">The air.</param>
/// <param name="Profile">The pilot.</param>
/// <param name="Field">The field.</param>
/// <param name="Effort">Stick effort, 0.25 to 1.</param>
/// <param name="Rule">How gains are chosen; <see cref="TuningRule.Matched"/> if null.</param>
public sealed record StudyConditions(
    AirState Air, PilotProfile Profile, FieldConditions Field, double Effort = 1, TuningRule? Rule = null)
{
    /// <summary>How exactly many craft are flown.</summary>
    public Precision Precision { get; init; }

    /// <summary>Name of the tuning policy.</summary>
    public string Policy => TuningPolicies.Word((Rule ?? TuningRule.Matched).Policy);

    /// <summary>The same conditions under a policy that keeps a build's gains where it keeps any.</summary>
    /// <param name="policy">The policy.</param>
    /// <param name="reference">The build whose matched gains same-gains keeps.</param>
    /// <exception cref="InvalidOperationException">The reference cannot hover or be tuned.</exception>
    public StudyConditions Under(TuningPolicy policy, Build reference) => this with
    {
        Rule = policy != TuningPolicy.SameGains
            ? new(policy)
            : new(policy, (this with { Rule = null }).Tune(reference, out string refusal) ?? throw new InvalidOperationException($"{reference.Name}: {refusal}")),
    };

    /// <summary>A build put together and tuned under these conditions.</summary>
    /// <param name="build">The build, or a hybrid, or a grown one.</param>
    /// <param name="refusal">Why it cannot fly; empty where it can.</param>
    /// <returns>The tuned craft, or null.</returns>
    public TunedUnit? Tune(Build build, out string refusal)
    {
        try
        {
            refusal = "";
            return TunedUnit.Tuned(FlightUnit.Of(BuildAssembler.Assemble(build, Air)), Air, Profile, Rule ?? TuningRule.Matched);
        }
        catch (Exception error) when (error is InvalidOperationException or ArgumentException)
        {
            refusal = error.Message;
            return null;
        }
    }

    /// <summary>Many builds put together and tuned on all cores; null where one cannot fly or is null itself.</summary>
    /// <param name="builds">The builds.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public TunedUnit?[] TuneAll(IReadOnlyList<Build?> builds, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(builds);
        TunedUnit?[] units = new TunedUnit?[builds.Count];
        Parallel.For(0, builds.Count, new ParallelOptions { CancellationToken = cancellation }, n =>
            units[n] = builds[n] is Build build ? Tune(build, out _) : null);
        return units;
    }
}
