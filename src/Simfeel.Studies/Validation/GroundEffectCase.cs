using Simfeel.Physics.Rotors;
using Simfeel.Studies.Plots;

namespace Simfeel.Studies.Validation;

/// <summary>
/// Cheeseman and Bennett, ARC R&amp;M 3021 (1955): formula from memory, values worked out apart from this project.
/// </summary>
public sealed class GroundEffectCase : ValidationCase
{
    /// <summary>Height over radius and thrust over that without ground, no speed.</summary>
    private static readonly (double Height, double Ratio)[] Hover =
        [(0.5, 1.333333), (0.75, 1.125), (1, 1.066667), (1.5, 1.028571), (2, 1.015873), (3, 1.006993)];

    /// <inheritdoc/>
    public override string Name => "ground-effect";

    /// <inheritdoc/>
    public override string Title => "Thrust near the ground";

    /// <inheritdoc/>
    public override string Source =>
        "Cheeseman and Bennett, The Effect of the Ground on a Helicopter Rotor in Forward Flight, ARC R&M 3021 (1955) (formula from memory, values worked out apart from this project)";

    /// <inheritdoc/>
    public override string ShortSource => "ARC R&M 3021";

    /// <inheritdoc/>
    public override string Note => "Theory against theory, for one rotor alone. Below half a radius the form does not hold and is kept at its value there.";

    /// <inheritdoc/>
    public override CaseResult Run()
    {
        double[] heights = [.. Enumerable.Range(0, 200).Select(i => 0.5 + (0.05 * i))];
        Chart chart = new(
            Title, new("height over rotor radius", 0, 4), new("thrust over thrust far from the ground", 0.98, 1.4),
            [
                ChartSeries.Points("no speed, worked out apart", 0, Hover),
                ChartSeries.Curve("no speed", 1, 0, 4, 400, z => GroundEffect.ThrustRatio(z, 0)),
                ChartSeries.Curve("speed = induced velocity", 2, 0, 4, 400, z => GroundEffect.ThrustRatio(z, 1)),
                ChartSeries.Curve("speed = 2 x induced velocity", 3, 0, 4, 400, z => GroundEffect.ThrustRatio(z, 2)),
            ],
            LegendPlace.UpperRight);
        return new(new(Title, 1, 380, [chart with { Title = "One rotor at equal power" }]),
        [
            // Published to six decimals.
            ValidationCheck.Differences("thrust ratio without speed", 1e-6, Hover.Select(p => new PublishedPair(p.Ratio, GroundEffect.ThrustRatio(p.Height, 0)))),
            new(
                "falls with height", CheckRule.NeverAbove, false, 0, BoundBasis.SetBefore,
                [.. heights.Skip(1).Zip(heights, (high, low) => new PublishedPair(GroundEffect.ThrustRatio(low, 0), GroundEffect.ThrustRatio(high, 0)))]),
            ValidationCheck.Differences("is 1 at 100 radii", 1e-5, [new(1, GroundEffect.ThrustRatio(100, 0)), new(1, GroundEffect.ThrustRatio(100, 1))]),
        ]);
    }
}
