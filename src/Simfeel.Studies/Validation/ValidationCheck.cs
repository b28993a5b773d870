namespace Simfeel.Studies.Validation;

/// <summary>A published value and the model's for the same state.</summary>
public readonly record struct PublishedPair(double Published, double Model);

/// <summary>What a check asks of its points.</summary>
public enum CheckRule
{
    /// <summary>No error is larger than the bound.</summary>
    WorstWithin,

    /// <summary>The root mean square of the errors is not larger than the bound.</summary>
    RootMeanSquareWithin,

    /// <summary>The mean error is not larger than the bound.</summary>
    MeanWithin,

    /// <summary>The model is never above what it is compared with, by more than the bound.</summary>
    NeverAbove,

    /// <summary>The model is never below what it is compared with, by more than the bound.</summary>
    NeverBelow,
}

/// <summary>Where a bound comes from.</summary>
public enum BoundBasis
{
    /// <summary>Chosen before this model ran, from the data or from a calculation of the same kind made elsewhere.</summary>
    SetBefore,

    /// <summary>Chosen after the first run, a little beyond what it found: it shows changes and promises nothing.</summary>
    FromRun,
}

/// <summary>One number that says how far the model is from published values, and the bound it must keep.</summary>
/// <param name="What">What is compared.</param>
/// <param name="Rule">What is asked.</param>
/// <param name="Relative">Whether errors are shares of the published value instead of differences.</param>
/// <param name="Bound">Bound on the error, not negative, in the unit of the error.</param>
/// <param name="Basis">Where the bound comes from.</param>
/// <param name="Points">Published values and the model's, at least one.</param>
public sealed record ValidationCheck(
    string What, CheckRule Rule, bool Relative, double Bound, BoundBasis Basis, IReadOnlyList<PublishedPair> Points)
{
    /// <summary>Mean of the errors, with sign.</summary>
    public double MeanError => Points.Average(Error);

    /// <summary>Root mean square of the errors.</summary>
    public double RootMeanSquareError => Math.Sqrt(Points.Average(point => Error(point) * Error(point)));

    /// <summary>The error that comes closest to the bound or goes furthest beyond it, with sign.</summary>
    public double WorstError => Rule switch
    {
        CheckRule.NeverAbove => Points.Max(Error),
        CheckRule.NeverBelow => Points.Min(Error),
        _ => Points.Select(Error).MaxBy(Math.Abs),
    };

    /// <summary>Whether the bound is kept. An error that is not a number breaks it.</summary>
    public bool Inside => Rule switch
    {
        CheckRule.RootMeanSquareWithin => RootMeanSquareError <= Bound,
        CheckRule.MeanWithin => Math.Abs(MeanError) <= Bound,
        CheckRule.NeverAbove => Points.All(point => Error(point) <= Bound),
        CheckRule.NeverBelow => Points.All(point => Error(point) >= -Bound),
        _ => Points.All(point => Math.Abs(Error(point)) <= Bound),
    };

    /// <summary>Error of one point: a share of the published value, or the difference.</summary>
    public double Error(PublishedPair point) =>
        Relative ? (point.Model / point.Published) - 1 : point.Model - point.Published;

    /// <summary>Errors as shares of the published values, none beyond the bound.</summary>
    public static ValidationCheck Shares(string what, double bound, IEnumerable<PublishedPair> points, BoundBasis basis = BoundBasis.SetBefore) =>
        new(what, CheckRule.WorstWithin, true, bound, basis, [.. points]);

    /// <summary>Differences, none beyond the bound.</summary>
    public static ValidationCheck Differences(string what, double bound, IEnumerable<PublishedPair> points, BoundBasis basis = BoundBasis.SetBefore) =>
        new(what, CheckRule.WorstWithin, false, bound, basis, [.. points]);
}
