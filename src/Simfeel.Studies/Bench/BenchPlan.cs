using Simfeel.Builds;
using Simfeel.Physics.Air;
using Simfeel.Physics.Maths;
using Simfeel.Studies.Bench.Measuring;
using Simfeel.Studies.Fit;

namespace Simfeel.Studies.Bench;

/// <summary>What an error of a reading does to an inertia.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="Error">How far off it may be, with its unit.</param>
/// <param name="Percent">What that does to the inertia, percent of it.</param>
public sealed record ReadingCost(string Reading, string Error, double Percent);

/// <summary>A swing test that suits a build.</summary>
/// <param name="Axis">The axis that hangs vertically.</param>
/// <param name="Spacing">Distance between the wires, m.</param>
/// <param name="Length">Free length of the wires, m.</param>
/// <param name="Period">Time of one swing of <see cref="BenchPlan.SwingAngle"/> that the model expects, s.</param>
/// <param name="Costs">What errors of the readings cost, the same readings in the same order for every axis.</param>
public sealed record SwingPlan(BenchAxis Axis, double Spacing, double Length, double Period, IReadOnlyList<ReadingCost> Costs);

/// <summary>How to measure a build: wires whose swings can be timed well, and where to support it.</summary>
public sealed record BenchPlan
{
    /// <summary>Swings in one timing.</summary>
    public const int Swings = 20;

    /// <summary>Timings of each axis.</summary>
    public const int Runs = 3;

    /// <summary>Largest angle of a swing, rad.</summary>
    public const double SwingAngle = 10 * Math.PI / 180;

    private const double Degree = Math.PI / 180;

    /// <summary>
    /// Least spacing over radius of gyration. At 2 the craft sways as slowly as it turns, 2 pi sqrt(L / g), and one motion feeds
    /// the other; at 2.5 a turn takes four fifths of that.
    /// </summary>
    private const double LeastSpacing = 2.5;

    /// <summary>The build.</summary>
    public required AssembledBuild Build { get; init; }

    /// <summary>Roll, pitch and yaw.</summary>
    public required IReadOnlyList<SwingPlan> Tests { get; init; }

    /// <summary>Where the two supports of the balance test may stand, m ahead and behind (or right and left) of the middle.</summary>
    public required double Support { get; init; }

    /// <summary>The plan for a build.</summary>
    public static BenchPlan Of(AssembledBuild build)
    {
        ArgumentNullException.ThrowIfNull(build);
        return new()
        {
            Build = build,
            Tests = [.. BenchAxes.All.Select(axis => Test(build, axis))],
            Support = Math.Max(0.01, Math.Round(0.25 * build.Build.Frame.Wheelbase, 2)),
        };
    }

    private static SwingPlan Test(AssembledBuild build, BenchAxis axis)
    {
        double mass = build.Craft.Mass, inertia = axis.Moment(build.Craft.I_BBcm_B);
        double spacing = Up(LeastSpacing * Math.Sqrt(inertia / mass), 0.01);
        double length = Math.Max(1, Up(4 * spacing, 0.5));
        double period = SwingTest.ExactPeriod(inertia, mass, spacing, length, SwingAngle, StandardAtmosphere.StandardGravity);
        return new(axis, spacing, length, period, Costs(build, axis, spacing, length, period));

        static double Up(double value, double step) => Math.Round(Math.Ceiling((value / step) - 1e-9) * step, 6);
    }

    private static ReadingCost[] Costs(AssembledBuild build, BenchAxis axis, double spacing, double length, double period)
    {
        double mass = build.Craft.Mass, scale = KitchenScale.Sigma(mass), timing = 0.2 / Swings / Math.Sqrt(Runs);
        SwingTest test = new()
        {
            Mass = new(mass, 0),
            Spacing = new(spacing, 0),
            Length = new(length, 0),
            Period = new(period, 0),
            Swing = new(SwingAngle, 0),
        };
        return
        [
            new("mass", $"{1e3 * scale:G2} g", Cost(test with { Mass = new(mass, scale) })),
            new("spacing of the wires", "0.5 mm", Cost(test with { Spacing = new(spacing, 5e-4) })),
            new("length of the wires", "1 mm", Cost(test with { Length = new(length, 1e-3) })),
            new($"time of {Swings} swings, {Runs} timings", "0.2 s each", Cost(test with { Period = new(period, timing) })),
            new("angle of the swing", "3 deg", Cost(test with { Swing = new(SwingAngle, 3 * Degree) })),
            new("axis out of plumb", "3 deg", 100 * Tilted(build.Craft.I_BBcm_B, axis, 3 * Degree)),
            // wires at distances a and b = d - a from the balance point: I = m g a b T^2 / (4 pi^2 L), and a b = d^2 / 4 - e^2
            new("balance point off the middle of the wires", "3 mm", 100 * 4 * 9e-6 / (spacing * spacing)),
        ];

        static double Cost(SwingTest test)
        {
            WithSigma inertia = test.Inertia();
            return 100 * inertia.Sigma / inertia.Value;
        }
    }

    /// <summary>Largest change of the moment about an axis that leans by an angle, whichever way, relative to the moment.</summary>
    private static double Tilted(Mat3 tensor, BenchAxis axis, double angle)
    {
        double upright = axis.Moment(tensor), most = 0;
        int n = (int)axis;
        for (int degree = 0; degree < 360; degree += 5)
        {
            double[] u = new double[3];
            u[n] = Math.Cos(angle);
            u[(n + 1) % 3] = Math.Sin(angle) * Math.Cos(degree * Degree);
            u[(n + 2) % 3] = Math.Sin(angle) * Math.Sin(degree * Degree);
            Vec3 line = new(u[0], u[1], u[2]);
            most = Math.Max(most, Math.Abs(Vec3.Dot(line, tensor * line) - upright));
        }
        return most / upright;
    }
}
