using MathNet.Numerics.Integration;
using Simfeel.Physics.Air;

namespace Simfeel.Studies.Fit;

/// <summary>A measured number with its standard deviation.</summary>
/// <param name="Value">The number.</param>
/// <param name="Sigma">Its standard deviation, in the same unit.</param>
public readonly record struct WithSigma(double Value, double Sigma);

/// <summary>
/// A bifilar swing test: the craft hangs on two equal, parallel wires, its balance point midway between them, and swings
/// about the vertical axis. For small swings I = m g d^2 T^2 / (16 pi^2 L) (textbook; for optimised tests see Jardin and
/// Mueller, AIAA 2007-6822); here the exact period of the given swing is used, lift of the craft included.
/// </summary>
public sealed record SwingTest
{
    private const int Order = 32;

    /// <summary>Mass of the craft, kg, without the rig.</summary>
    public required WithSigma Mass { get; init; }

    /// <summary>Distance d between the wires, m.</summary>
    public required WithSigma Spacing { get; init; }

    /// <summary>Free length L of the wires, m.</summary>
    public required WithSigma Length { get; init; }

    /// <summary>Time of one full swing, there and back, s.</summary>
    public required WithSigma Period { get; init; }

    /// <summary>Largest angle of the swing from rest, rad; below a right angle. Zero for small swings.</summary>
    public WithSigma Swing { get; init; }

    /// <summary>Mass of a frame or cradle that swung along, kg.</summary>
    public WithSigma RigMass { get; init; }

    /// <summary>Inertia of that frame about the same axis, kg m^2.</summary>
    public WithSigma RigInertia { get; init; }

    /// <summary>Acceleration of gravity, m/s^2.</summary>
    public double Gravity { get; init; } = StandardAtmosphere.StandardGravity;

    /// <summary>Moment of inertia of the craft about the vertical axis through its balance point, kg m^2, and its standard deviation.</summary>
    /// <exception cref="FitException">The numbers cannot be those of a swing test.</exception>
    public WithSigma Inertia()
    {
        double value = Evaluate(0, 0);
        if (!(value > 0))
            throw new FitException("swing test", null, "The frame's inertia is not smaller than that of frame and craft together.", "swing the frame alone and subtract that");
        WithSigma[] inputs = Inputs();
        double variance = 0;
        for (int n = 0; n < inputs.Length; n++)
        {
            if (inputs[n].Sigma <= 0) continue;
            // the swing angle acts with its square: a step of the standard deviation itself keeps that
            double step = inputs[n].Sigma;
            double slope = (Evaluate(n, step) - Evaluate(n, -step)) / 2;
            variance += slope * slope;
        }
        return new(value, Math.Sqrt(variance));
    }

    /// <summary>Share of each input in the variance of the result, by name, largest first.</summary>
    public IReadOnlyList<(string Name, double Share)> Shares()
    {
        WithSigma[] inputs = Inputs();
        string[] names = ["mass", "spacing", "length", "period", "swing angle", "rig mass", "rig inertia"];
        double[] parts = [.. inputs.Select((input, n) => input.Sigma > 0 ? Math.Pow((Evaluate(n, input.Sigma) - Evaluate(n, -input.Sigma)) / 2, 2) : 0)];
        double sum = parts.Sum();
        return [.. names.Select((name, n) => (name, sum > 0 ? parts[n] / sum : 0)).Where(pair => pair.Item2 > 0).OrderByDescending(pair => pair.Item2)];
    }

    /// <summary>
    /// Exact period (s) of a body on two wires: energy I t'^2 / 2 + m h'^2 / 2 - m g h is kept, with h = sqrt(L^2 - d^2 sin^2(t/2))
    /// the depth below the hooks at angle t. Gauss-Legendre over the phase p with sin(t/2) = sin(swing/2) sin p.
    /// </summary>
    /// <param name="inertia">kg m^2.</param>
    /// <param name="mass">kg.</param>
    /// <param name="spacing">m.</param>
    /// <param name="length">m.</param>
    /// <param name="swing">rad.</param>
    /// <param name="gravity">m/s^2.</param>
    public static double ExactPeriod(double inertia, double mass, double spacing, double length, double swing, double gravity)
    {
        double most = Math.Sin(swing / 2);
        double turn = Depth(most);
        return 4 * GaussLegendreRule.Integrate(Integrand, 0, Math.PI / 2, Order);

        double Depth(double sine) => Math.Sqrt((length * length) - (spacing * spacing * sine * sine));

        double Integrand(double phase)
        {
            double sine = most * Math.Sin(phase), cosine = Math.Sqrt(1 - (sine * sine));
            double depth = Depth(sine);
            double rise = spacing * spacing * sine * cosine / (2 * depth);
            return 2 / cosine * Math.Sqrt((inertia + (mass * rise * rise)) * (depth + turn) / (2 * mass * gravity * spacing * spacing));
        }
    }

    private WithSigma[] Inputs() => [Mass, Spacing, Length, Period, Swing, RigMass, RigInertia];

    /// <summary>The inertia with one input moved.</summary>
    private double Evaluate(int input, double step)
    {
        double[] v = [.. Inputs().Select(i => i.Value)];
        v[input] += step;
        double mass = v[0] + v[5], spacing = v[1], length = v[2], period = v[3];
        double small = mass * Gravity * spacing * spacing * period * period / (16 * Math.PI * Math.PI * length);
        double low = 0.2 * small, high = 2 * small;
        for (int n = 0; n < 60 && v[4] != 0; n++)
        {
            double middle = (low + high) / 2;
            if (ExactPeriod(middle, mass, spacing, length, Math.Abs(v[4]), Gravity) > period) high = middle;
            else low = middle;
        }
        return (v[4] == 0 ? small : (low + high) / 2) - v[6];
    }
}
