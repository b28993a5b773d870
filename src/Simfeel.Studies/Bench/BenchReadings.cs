using Simfeel.Physics.Air;
using Simfeel.Studies.Fit;

namespace Simfeel.Studies.Bench;

/// <summary>What was read off scales, rulers and watches for one craft. Each part may be missing. SI units and radians.</summary>
public sealed record BenchReadings
{
    /// <summary>The file that they come from.</summary>
    public required string Source { get; init; }

    /// <summary>Name of the build that was measured; empty where the file does not say.</summary>
    public string BuildName { get; init; } = "";

    /// <summary>Acceleration of gravity, m/s^2.</summary>
    public double Gravity { get; init; } = StandardAtmosphere.StandardGravity;

    /// <summary>Mass ready to fly, kg; null where it was not weighed.</summary>
    public WithSigma? Mass { get; init; }

    /// <summary>How the swings were timed.</summary>
    public TimingReadings Timing { get; init; } = new(20, 0.2, 0.05);

    /// <summary>Swing tests by the axis that hung vertically.</summary>
    public IReadOnlyDictionary<BenchAxis, SwingReadings> Swings { get; init; } = new Dictionary<BenchAxis, SwingReadings>();

    /// <summary>Balance tests by the coordinate that they tell.</summary>
    public IReadOnlyDictionary<BenchAxis, BalanceReadings> Balances { get; init; } = new Dictionary<BenchAxis, BalanceReadings>();
}

/// <summary>How swings were timed.</summary>
/// <param name="Swings">Swings in one timing.</param>
/// <param name="RunSigma">Standard error of one timing, s.</param>
/// <param name="SharedSigma">Standard error that all timings share, s.</param>
public readonly record struct TimingReadings(int Swings, double RunSigma, double SharedSigma);

/// <summary>One bifilar swing test.</summary>
/// <param name="Spacing">Distance between the wires, m.</param>
/// <param name="Length">Free length of the wires, m.</param>
/// <param name="Times">Times of all counted swings, s, one for each timing.</param>
/// <param name="Swing">Largest angle from rest, rad.</param>
/// <param name="StickMass">Mass of a thin stick that swung along about its middle, kg.</param>
/// <param name="StickLength">Length of that stick, m.</param>
/// <param name="Line">Line of the file in which its table starts.</param>
public sealed record SwingReadings(
    WithSigma Spacing, WithSigma Length, IReadOnlyList<double> Times, WithSigma Swing, double StickMass, double StickLength, int Line);

/// <summary>One balance test; coordinates from the build's origin in body axes, m.</summary>
/// <param name="Line">Line of the file in which its table starts.</param>
public abstract record BalanceReadings(int Line);

/// <summary>The craft balanced on an edge.</summary>
/// <param name="Places">Where the edge stood, m, one for each try.</param>
/// <param name="PlaceSigma">Standard error that all tries share, m.</param>
/// <param name="Line">Line of the file in which its table starts.</param>
public sealed record EdgeReadings(IReadOnlyList<double> Places, double PlaceSigma, int Line) : BalanceReadings(Line);

/// <summary>The craft lay level on two supports, each on a scale.</summary>
/// <param name="First">What the front or right scale showed, kg.</param>
/// <param name="Second">What the rear or left scale showed, kg.</param>
/// <param name="FirstAt">Where the front or right support stood, m.</param>
/// <param name="SecondAt">Where the rear or left support stood, m.</param>
/// <param name="Line">Line of the file in which its table starts.</param>
public sealed record ScaleReadings(WithSigma First, WithSigma Second, WithSigma FirstAt, WithSigma SecondAt, int Line) : BalanceReadings(Line);

/// <summary>The craft hung from one hook in its middle plane, nose or tail up; with the known x this tells z.</summary>
/// <param name="HookX">Hook, forward, m.</param>
/// <param name="HookZ">Hook, down, m.</param>
/// <param name="Angle">From the arms' plane to the plumb line, rad; positive where the line passes above the arms.</param>
/// <param name="Line">Line of the file in which its table starts.</param>
public sealed record HookReadings(WithSigma HookX, WithSigma HookZ, WithSigma Angle, int Line) : BalanceReadings(Line);
