using Simfeel.Physics.Rotors;
using Simfeel.Studies.Plots;

namespace Simfeel.Studies.Validation;

/// <summary>
/// Blade elements with momentum theory where they have a closed solution: an untwisted rotor with linear lift and small
/// angles, without tip loss. Its inflow is lambda(r) = (sigma a / 16) (sqrt(1 + 32 theta r / (sigma a)) - 1) (Johnson, Helicopter
/// Theory, 1980; from memory); the integrals were worked out apart from this project.
/// </summary>
public sealed class ClosedFormBladeCase : ValidationCase
{
    private const double TinyRoot = 1e-9;
    private const double PitchDeg = 8;
    private const int Finest = 2000;

    private static readonly int[] Annuli = [25, 50, 100, 200, 400, 800];

    /// <summary>Solidity, lift slope, CT, induced CP at 8 degrees.</summary>
    private static readonly (string Name, double Solidity, double Slope, double Thrust, double Power)[] Rotors =
    [
        ("solidity 0.1, slope 5.75", 0.1, 5.75, 0.005872000641985, 0.000344689021102),
        ("solidity 0.0424, slope 5.75", 0.0424, 5.75, 0.003281509768733, 0.000142622610009),
        ("solidity 0.1, slope 2 pi", 0.1, 2 * Math.PI, 0.006197247745077, 0.000374139737872),
    ];

    /// <inheritdoc/>
    public override string Name => "closed-form-blade";

    /// <inheritdoc/>
    public override string Title => "Untwisted rotor in hover: error against the closed solution";

    /// <inheritdoc/>
    public override string Source => "Johnson, Helicopter Theory, 1980 (closed form from memory, integrals worked out apart from this project)";

    /// <inheritdoc/>
    public override string ShortSource => "Johnson 1980";

    /// <inheritdoc/>
    public override string Note => "Theory against theory: the error must fall with the square of the number of annuli, down to the 1e-6 that is left by the least in-plane flow the solver knows (1e-4 of the tip speed). Tables for flight use 16 annuli that narrow toward the tip.";

    /// <inheritdoc/>
    public override CaseResult Run()
    {
        double[][] thrust = [.. Rotors.Select(r => Annuli.Select(n => Math.Abs((Solve(r.Solidity, r.Slope, n).CT / r.Thrust) - 1)).ToArray())];
        double[][] power = [.. Rotors.Select(r => Annuli.Select(n => Math.Abs((Solve(r.Solidity, r.Slope, n).CP / r.Power) - 1)).ToArray())];
        Loads[] finest = [.. Rotors.Select(r => Solve(r.Solidity, r.Slope, Finest))];
        return new(new(Title, 2, 380,
        [
            Chart("Thrust", "error of CT, share of CT", thrust, LegendPlace.LowerLeft),
            Chart("Induced power", "error of CP, share of CP", power, LegendPlace.None),
        ]),
        [
            ValidationCheck.Shares("CT with 2000 annuli", 1e-6, Rotors.Select((r, i) => new PublishedPair(r.Thrust, finest[i].CT))),
            ValidationCheck.Shares("induced CP with 2000 annuli", 1e-6, Rotors.Select((r, i) => new PublishedPair(r.Power, finest[i].CP))),
            ValidationCheck.Differences("order of convergence of CT up to 200 annuli", 0.2, thrust.SelectMany(errors => Orders(errors[..4]))),
        ]);
    }

    private static IEnumerable<PublishedPair> Orders(double[] errors) =>
        errors.Zip(errors.Skip(1), (coarse, fine) => new PublishedPair(2, Math.Log2(coarse / fine)));

    private static Chart Chart(string title, string label, double[][] errors, LegendPlace legend) => new(
        title,
        new("number of annuli", 20, 1000) { Logarithmic = true },
        new(label) { Logarithmic = true },
        [
            .. Rotors.Select((r, i) => ChartSeries.Points(r.Name, i + 1, Annuli.Select((n, k) => ((double)n, errors[i][k])))),
            ChartSeries.Line("second order", 0, new[] { 25.0, 800 }.Select(n => (n, errors[0][0] * 625 / (n * n)))),
        ],
        legend);

    private static Loads Solve(double solidity, double slope, int annuli) => RotorRun.Rotor(
        RotorRun.Untwisted(2, 4, solidity * Math.PI / 4, PitchDeg, TinyRoot, new LinearPolar(slope, 0, 0)),
        1000,
        options: new() { Annuli = annuli, Azimuths = 4, EqualAnnuli = true, TipLoss = false, Swirl = false, SmallAngles = true });
}
