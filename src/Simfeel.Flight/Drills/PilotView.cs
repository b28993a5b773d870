using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Drills;

/// <summary>What a scripted pilot goes by when the sticks are read. It moves on with the flight: valid during the call only.</summary>
public sealed class PilotView
{
    private readonly double _period;
    private double _rateX, _rateY, _rateZ, _turnedX, _turnedY, _turnedZ;

    /// <summary>A view of a craft at the start of a drill.</summary>
    /// <param name="period">Time from row to row, s.</param>
    public PilotView(double period) => _period = period;

    /// <summary>Since the start of the drill, s.</summary>
    public double Time { get; private set; }

    /// <summary>The craft at this instant.</summary>
    public LogRow Sample { get; private set; }

    /// <summary>Angles turned about the body axes since the start, rad: trapezoids over the rates.</summary>
    public Vec3 Turned => new(_turnedX, _turnedY, _turnedZ);

    /// <summary>Moves on to the next instant.</summary>
    /// <param name="time">Since the start of the drill, s.</param>
    /// <param name="sample">The craft then.</param>
    public void Move(double time, LogRow sample)
    {
        (Time, Sample) = (time, sample);
        // number by number: a vector copied as a whole would have to wait until its parts have left for the memory
        Vec3 rate = sample.State.w_WB_B;
        double half = time > 0 ? _period / 2 : 0;
        _turnedX += half * (_rateX + rate.X);
        _turnedY += half * (_rateY + rate.Y);
        _turnedZ += half * (_rateZ + rate.Z);
        (_rateX, _rateY, _rateZ) = (rate.X, rate.Y, rate.Z);
    }
}
