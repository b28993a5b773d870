using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tuning;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Blame;
using Simfeel.Studies.Compare;
using Simfeel.Studies.Growth;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Style;
using Simfeel.Studies.Uncertainty;

namespace Simfeel.Studies.Sheet;

/// <summary>What a feel sheet is asked for.</summary>
public sealed record FeelStudy
{
    /// <summary>Version of the program.</summary>
    public required string Version { get; init; }

    /// <summary>What is the same for both builds; its tuning rule is that of <see cref="Policy"/>.</summary>
    public required StudyConditions Conditions { get; init; }

    /// <summary>The tuning policy. Beside it stands same-gains, or matched where that is asked for.</summary>
    public TuningPolicy Policy { get; init; } = TuningPolicy.Matched;

    /// <summary>
    /// Draws of what is not known well. Drills over the ground and sweeps are left out of them: they would take longer than all others
    /// together.
    /// </summary>
    public int Draws { get; init; } = UncertaintyRun.UsualDraws;

    /// <summary>Metrics whose difference is shared out.</summary>
    public int BlamedMetrics { get; init; } = 5;

    /// <summary>Metrics of which to find out what input matters most.</summary>
    public int TornadoMetrics { get; init; } = 3;

    /// <summary>What counts as felt.</summary>
    public FeelBands Bands { get; init; } = FeelBands.Usual;

    /// <summary>Styles of flying.</summary>
    public IReadOnlyList<FlyingStyle> Styles { get; init; } = FlyingStyle.All;

    /// <summary>Told what is being done and the share of it that is done.</summary>
    public Action<string, double>? Progress { get; init; }

    /// <summary>Does all of it.</summary>
    /// <exception cref="InvalidOperationException">A build cannot hover or be tuned.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public FeelSheet Run(AssembledBuild a, AssembledBuild b, (string A, string B) fingerprints, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        TuningPolicy other = Policy == TuningPolicy.SameGains ? TuningPolicy.Matched : TuningPolicy.SameGains;
        StudyConditions conditions = Conditions.Under(Policy, a.Build);
        Comparison[] both = Compare(a.Build, b.Build, conditions, Conditions.Under(other, a.Build));
        Comparison comparison = both[0], beside = both[1];
        MetricPair[] telling = [.. TellingSentences.Ranked(comparison)];
        Metric[] metrics = [.. comparison.Metrics.Select(pair => pair.Metric).Where(metric => DrillCatalogue.Scripted.Contains(metric.Drill))];
        UncertaintyStudy uncertainty = UncertaintyRun.Run(
            a.Build, b.Build, metrics, conditions, Draws, [.. telling.Take(TornadoMetrics).Select(pair => pair.Metric)],
            Stage("Drawing what is not known well"), cancellation);
        IReadOnlyList<BlameLedger> blame = BlameStudy.Run(
            a.Build, b.Build, [.. Blamed(telling, uncertainty).Take(BlamedMetrics).Select(pair => pair.Metric)], conditions,
            Stage("Flying every hybrid"), cancellation);
        return new()
        {
            Version = Version,
            A = a,
            B = b,
            Fingerprints = fingerprints,
            Comparison = comparison,
            OtherPolicy = beside,
            Uncertainty = uncertainty,
            Blame = blame,
            Growth = [.. Curves(a.Build, b.Build, telling, blame, conditions, cancellation)],
            Styles = [.. Styles.Select(style => StyleReading.Of(style, comparison, uncertainty))],
            NotModelled = Sheet.NotModelled.Sentences,
        };
    }

    private Comparison[] Compare(Build a, Build b, params StudyConditions[] policies)
    {
        (TunedUnit A, TunedUnit B)[] pairs = [.. policies.Select(conditions => (Tuned(a, conditions), Tuned(b, conditions)))];
        return ComparisonRun.Run(pairs, Conditions.Profile, Conditions.Effort, Conditions.Field, Bands);

        static TunedUnit Tuned(Build build, StudyConditions conditions) =>
            conditions.Tune(build, out string refusal) ?? throw new InvalidOperationException($"{build.Name}: {refusal}");
    }

    /// <summary>What is decided comes first: there is no blame to share out for a difference that may be none.</summary>
    private static IEnumerable<MetricPair> Blamed(IEnumerable<MetricPair> telling, UncertaintyStudy uncertainty) =>
        telling.OrderBy(pair => uncertainty.Of(pair.Metric.Name)?.Undecided == true);

    /// <summary>
    /// The build that is worse in the most telling metric, grown by its motors and by the part that is most to blame, with what it would
    /// take to be like the other.
    /// </summary>
    private IEnumerable<GrowthCurve> Curves(
        Build a, Build b, IEnumerable<MetricPair> telling, IReadOnlyList<BlameLedger> blame, StudyConditions conditions, CancellationToken cancellation)
    {
        MetricPair pair = telling.FirstOrDefault(one => MetricSense.Of(one.Metric) != Sense.Neither);
        if (pair.Metric is null) yield break;
        bool worseB = pair.B > pair.A == (MetricSense.Of(pair.Metric) == Sense.Less);
        (Build worse, Build better, double target) = worseB ? (b, a, pair.A) : (a, b, pair.B);
        BuildKnob? guilty = blame.FirstOrDefault(ledger => ledger.Metric == pair.Metric)?.Ranked.Select(share => GrowthKnobs.Of(share.Group)).FirstOrDefault(knob => knob is not null);
        foreach (BuildKnob knob in new[] { BuildKnobs.MotorVolume, guilty }.OfType<BuildKnob>().Distinct())
        {
            GrowthCurve curve = GrowthStudy.Run(
                worse, knob, [pair.Metric], conditions, null, GrowthKnobs.Points(knob), Stage("Growing one part"), cancellation)[0];
            GrowthMatch match = GrowthMatch.Solve(worse, knob, curve, better.Name, target, conditions);
            yield return curve with { Sentences = [.. curve.Sentences, match.Sentence] };
        }
    }

    private StageProgress? Stage(string what) => Progress is null ? null : new(what, Progress);

    private sealed class StageProgress(string what, Action<string, double> tell) : IProgress<double>
    {
        public void Report(double value) => tell(what, value);
    }
}
