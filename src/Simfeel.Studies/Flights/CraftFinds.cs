using Simfeel.Flight;
using Simfeel.Physics;
using Simfeel.Physics.Air;
using Simfeel.Physics.Maths;

namespace Simfeel.Studies.Flights;

/// <summary>What was found in the flights of one craft. Keeps extremes only, so a flight of any length costs nothing.</summary>
internal sealed class CraftFinds
{
    /// <summary>Share of the torque in use below which a torque reserve counts as none.</summary>
    public const double NoReserve = 1e-3;

    /// <summary>Downward; what an accelerometer does not feel.</summary>
    private static readonly Vec3 Gravity = new(0, 0, StandardAtmosphere.StandardGravity);

    /// <summary>Whether it flew at all.</summary>
    public bool Flew { get; private set; }

    /// <summary>Largest rates about the body axes either way, rad/s.</summary>
    public Vec3 Rate { get; private set; }

    /// <summary>Largest roll acceleration either way, rad/s^2.</summary>
    public double RollAcceleration { get; private set; }

    /// <summary>Fastest speed in the world, m/s.</summary>
    public double Speed { get; private set; }

    /// <summary>Largest force on the craft but for its weight, over its mass, m/s^2.</summary>
    public double Load { get; private set; }

    /// <summary>Lowest voltage at the pack's terminals, V.</summary>
    public double PackVoltage { get; private set; } = double.PositiveInfinity;

    /// <summary>Least torque reserve up of any rotor, N m.</summary>
    public double ReserveUp { get; private set; } = double.PositiveInfinity;

    /// <summary>Time during which some motor had no torque reserve up, s.</summary>
    public double SaturatedTime { get; private set; }

    /// <summary>Stops of the roll.</summary>
    public StopFind RollStop { get; } = new();

    /// <summary>Stops of the pitch.</summary>
    public StopFind PitchStop { get; } = new();

    /// <summary>Punches.</summary>
    public PunchFind Punch { get; } = new();

    /// <summary>Drops.</summary>
    public DropFind Drop { get; } = new();

    /// <summary>The sharper stop of roll and pitch; null where there was none.</summary>
    public StopFind? SharpestStop =>
        RollStop.Time is double roll && (PitchStop.Time is not double pitch || roll <= pitch) ? RollStop
        : PitchStop.Time is null ? null
        : PitchStop;

    /// <summary>Takes the next stick reading, see <see cref="FlightFinds.Take"/>.</summary>
    public void Take(in Sample sample, in Sticks sticks, in CraftCondition condition, double period, PilotSwitches switches)
    {
        bool flies = condition is { Armed: true, Crashed: false, Touching: false, StruckRotors: 0 };
        if (!flies)
        {
            Interrupt();
            return;
        }
        Flew = true;
        TakeExtremes(sample);
        if (Saturated(sample)) SaturatedTime += period;
        Vec3 p_WB = sample.State.p_WB, v_WB = sample.State.v_WB, w_WB_B = sample.State.w_WB_B;
        if ((switches & PilotSwitches.Level) != 0)
        {
            RollStop.Interrupt();
            PitchStop.Interrupt();
        }
        else
        {
            RollStop.Take(w_WB_B.X, sticks.Roll, period);
            PitchStop.Take(w_WB_B.Y, sticks.Pitch, period);
        }
        if ((switches & PilotSwitches.Climb) != 0)
        {
            Punch.Interrupt();
            Drop.Interrupt();
        }
        else
        {
            Punch.Take(p_WB, v_WB, sticks.Throttle, period);
            Drop.Take(p_WB, v_WB, sticks.Throttle, period);
        }
    }

    /// <summary>The next reading does not follow on the last one.</summary>
    public void Interrupt()
    {
        RollStop.Interrupt();
        PitchStop.Interrupt();
        Punch.Interrupt();
        Drop.Interrupt();
    }

    private void TakeExtremes(in Sample sample)
    {
        Vec3 w = sample.State.w_WB_B;
        Rate = new(Math.Max(Rate.X, Math.Abs(w.X)), Math.Max(Rate.Y, Math.Abs(w.Y)), Math.Max(Rate.Z, Math.Abs(w.Z)));
        RollAcceleration = Math.Max(RollAcceleration, Math.Abs(sample.AngularAcceleration_B.X));
        Speed = Math.Max(Speed, sample.State.v_WB.Length);
        Load = Math.Max(Load, (sample.a_WB - Gravity).Length);
        PackVoltage = Math.Min(PackVoltage, sample.PackVoltage);
        for (int k = 0; k < Craft.MaxRotors; k++)
            if (Turns(sample, k)) ReserveUp = Math.Min(ReserveUp, Math.Max(0, sample.ReserveUp[k]));
    }

    private static bool Saturated(in Sample sample)
    {
        for (int k = 0; k < Craft.MaxRotors; k++)
        {
            double used = Math.Abs(sample.MotorTorque[k]);
            if (Turns(sample, k) && sample.ReserveUp[k] <= NoReserve * used) return true;
        }
        return false;
    }

    /// <summary>A sample has room for more rotors than a craft; those that are not there stand still.</summary>
    private static bool Turns(in Sample sample, int rotor) => sample.State.RotorSpeeds[rotor] != 0;
}
