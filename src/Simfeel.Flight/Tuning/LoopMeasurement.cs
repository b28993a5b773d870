using System.Numerics;
using Simfeel.Flight.Control;
using Simfeel.Flight.Drills;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Tuning;

/// <summary>The open loop of one axis at one frequency, as measured.</summary>
/// <param name="Frequency">rad/s.</param>
/// <param name="Loop">Loop gain: from the rate error round the craft to the rate heard.</param>
public readonly record struct LoopPoint(double Frequency, Complex Loop);

/// <summary>
/// Open-loop frequency response measured on the flight itself, with the whole non-linear craft and the sampled controller: the craft
/// hovers, the command of one axis swings by a small sine, and the rate answers with T(z) at the same frequency. The controller's own
/// filters are known exactly, so from T = G C_r / (1 + G C_y F) follow the craft's answer G = T / (C_r - T C_y F) and the open loop
/// G C_y F, with C_r the controller's answer to its command, C_y to the rate heard and F the gyro's filter. Feed-forward is left out.
/// </summary>
public sealed class LoopMeasurement
{
    /// <summary>Time that the swing settles before it is measured, and for which it is measured, s.</summary>
    private const double Settling = 0.4, Measuring = 1.0;

    private readonly TunedUnit _unit;
    private readonly PilotProfile _profile;
    private readonly int _axis;
    private readonly double _amplitude;

    private LoopMeasurement(TunedUnit unit, PilotProfile profile, int axis, double amplitude)
    {
        _profile = profile;
        (_axis, _amplitude) = (axis, amplitude);
        _unit = unit with { Roll = Silent(unit.Roll), Pitch = Silent(unit.Pitch), Yaw = Silent(unit.Yaw) };

        static AxisTuning Silent(AxisTuning tuning) => tuning with { Gains = tuning.Gains with { FeedForward = 0 } };
    }

    /// <summary>The points, by rising frequency.</summary>
    public required IReadOnlyList<LoopPoint> Points { get; init; }

    /// <summary>Whether a rotor stood at its least or full duty at any time: then the numbers tell of that limit, too.</summary>
    public required bool Saturated { get; init; }

    /// <summary>Frequency at which the loop gain last falls through 1, rad/s; NaN where it does not among the points.</summary>
    public double Crossover => Crossing().Frequency;

    /// <summary>Phase margin at the crossover, rad.</summary>
    public double PhaseMargin => Crossing().Phase + Math.PI;

    /// <summary>Inverse of the loop gain where its phase falls through -180 degrees; NaN where it does not among the points.</summary>
    public double GainMargin
    {
        get
        {
            double[] phases = Phases();
            for (int n = 1; n < Points.Count; n++)
            {
                if (phases[n - 1] <= -Math.PI || phases[n] > -Math.PI) continue;
                double share = (phases[n - 1] + Math.PI) / (phases[n - 1] - phases[n]);
                return Math.Exp(-((1 - share) * LogGain(n - 1)) - (share * LogGain(n)));
            }
            return double.NaN;
        }
    }

    /// <summary>Measures one axis of a craft at hover.</summary>
    /// <param name="unit">The craft with its gains.</param>
    /// <param name="profile">The pilot that it is tuned for.</param>
    /// <param name="axis">0 roll, 1 pitch, 2 yaw.</param>
    /// <param name="from">Lowest frequency, rad/s.</param>
    /// <param name="to">Highest frequency, rad/s; at most a quarter of the loop rate.</param>
    /// <param name="points">Number of frequencies, in equal ratios as far as whole periods allow.</param>
    /// <param name="amplitude">Amplitude of the command, rad/s.</param>
    public static LoopMeasurement Of(
        TunedUnit unit, PilotProfile profile, int axis, double from, double to, int points, double amplitude = 2 * Math.PI / 180)
    {
        ArgumentNullException.ThrowIfNull(unit);
        ArgumentNullException.ThrowIfNull(profile);
        LoopMeasurement how = new(unit, profile, axis, amplitude) { Points = [], Saturated = false };
        double resolution = 2 * Math.PI / Measuring;
        // whole periods in the time measured, so that the sums see no edge
        double[] frequencies =
        [
            .. Enumerable.Range(0, points)
                .Select(n => resolution * Math.Round(from * Math.Pow(to / from, n / (points - 1.0)) / resolution))
                .Distinct(),
        ];
        (LoopPoint Point, bool Saturated)[] all =
        [
            .. frequencies.Chunk(DrillBatch.Width).SelectMany(chunk => DrillBatch.Width switch
            {
                8 => how.Fly<Lane8>(chunk),
                4 => how.Fly<Lane4>(chunk),
                _ => how.Fly<Lane1>(chunk),
            }),
        ];
        return new(unit, profile, axis, amplitude) { Points = [.. all.Select(one => one.Point)], Saturated = all.Any(one => one.Saturated) };
    }

    private (LoopPoint Point, bool Saturated)[] Fly<T>(double[] frequencies)
        where T : unmanaged, ILane<T>
    {
        using FlightLoop<T> loop = new(_unit.Unit.Craft.Rotors.Count, _profile, new FieldConditions());
        for (int lane = 0; lane < frequencies.Length; lane++) loop.SetUnit(lane, _unit, _unit.Hover.State);
        int runs = (int)Math.Round((Settling + Measuring) / _profile.LoopPeriod), first = (int)Math.Round(Settling / _profile.LoopPeriod);
        Complex[] asked = new Complex[frequencies.Length], answered = new Complex[frequencies.Length];
        bool[] saturated = new bool[frequencies.Length];
        for (int run = 0; run < runs; run++)
        {
            double time = run * _profile.LoopPeriod;
            for (int lane = 0; lane < frequencies.Length; lane++)
            {
                double command = _amplitude * Math.Sin(frequencies[lane] * time), rate = loop.Batch.GetState(lane).w_WB_B[_axis];
                if (run >= first)
                {
                    Complex turn = Complex.Exp(new Complex(0, -frequencies[lane] * time));
                    asked[lane] += command * turn;
                    answered[lane] += rate * turn;
                }
                loop.SetCommand(lane, new Vec3(_axis == 0 ? command : 0, _axis == 1 ? command : 0, _axis == 2 ? command : 0), _unit.HoverShare);
            }
            for (int step = 0; step < _profile.StepsPerLoop; step++) loop.Tick();
            for (int lane = 0; lane < frequencies.Length; lane++) saturated[lane] |= AtLimit(loop.Batch, lane);
        }
        return
        [
            .. frequencies.Select((w, lane) => (new LoopPoint(w, OpenLoop(w, answered[lane] / asked[lane])), saturated[lane])),
        ];
    }

    private unsafe bool AtLimit<T>(CraftBatch<T> batch, int lane)
        where T : unmanaged, ILane<T>
    {
        double least = _unit.Map.Duty(_unit.IdleShare) * 1.0001;
        for (int k = 0; k < batch.RotorCount; k++)
        {
            double duty = LaneMemory.Get(batch.Commands + k, lane);
            if (duty <= least || duty >= 1) return true;
        }
        return false;
    }

    private Complex OpenLoop(double w, Complex closed)
    {
        RateLoop loop = new(default, _unit.Unit.GyroLowPass_Hz, _profile);
        AxisGains gains = _unit.Gains[_axis];
        Complex heard = loop.Controller(w, gains) * loop.Gyro(w), commanded = loop.Controller(w, gains with { Derivative = 0 });
        return heard * closed / (commanded - (heard * closed));
    }

    private (double Frequency, double Phase) Crossing()
    {
        double[] phases = Phases();
        for (int n = Points.Count - 1; n > 0; n--)
        {
            double above = LogGain(n - 1), below = LogGain(n);
            if (above < 0 || below >= 0) continue;
            double share = above / (above - below);
            double w = Points[n - 1].Frequency * Math.Pow(Points[n].Frequency / Points[n - 1].Frequency, share);
            return (w, ((1 - share) * phases[n - 1]) + (share * phases[n]));
        }
        return (double.NaN, double.NaN);
    }

    private double LogGain(int n) => Math.Log(Points[n].Loop.Magnitude);

    /// <summary>Phases without jumps, the first in (-2 pi, 0].</summary>
    private double[] Phases()
    {
        double[] phases = [.. Points.Select(point => point.Loop.Phase)];
        if (phases[0] > 0) phases[0] -= 2 * Math.PI;
        for (int n = 1; n < phases.Length; n++) phases[n] = phases[n - 1] + Math.IEEERemainder(phases[n] - phases[n - 1], 2 * Math.PI);
        return phases;
    }
}
