using MathNet.Numerics.LinearAlgebra;
using Simfeel.Physics;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Drills;

/// <summary>
/// The balance of steady level flight: bank and pitch, collective and three angular accelerations asked of the mixer at which forces
/// and moments vanish (six equations, six unknowns: Newton's method with differences). Loads are those of the kernel, of a craft so
/// heavy and so hard to turn that it keeps speed and attitude while rotors and inflow settle; its rotors' inertias are made small,
/// which moves no balance and makes them settle soon.
/// </summary>
internal static class LevelTrim
{
    private const int Unknowns = 6, Iterations = 12;
    private const double Step = 1 / 8000.0, Heavy = 1e9;

    /// <summary>Largest speed whose balance is sought from hover's, and steps from there on, m/s.</summary>
    private const double FirstSpeed = 15, NextSpeed = 3;

    /// <summary>Time constant of the rotors while they settle, and the time given to them and to the inflow, s.</summary>
    private const double RotorLag = 0.002, Settling = 0.03;

    /// <summary>Accelerations taken as none: m/s^2 and rad/s^2.</summary>
    private const double Force = 1e-4, Moment = 1e-2;

    /// <summary>The trim, or null where there is none within the rotors' reach.</summary>
    public static DrillStart? Of(TunedUnit unit, double speed, AirEffects effects) =>
        DrillBatch.Width == Lane8.Width ? Of<Lane8>(unit, speed, effects) : DrillBatch.Width == Lane4.Width ? Of<Lane4>(unit, speed, effects) : Of<Lane1>(unit, speed, effects);

    private static DrillStart? Of<T>(TunedUnit unit, double speed, AirEffects effects)
        where T : unmanaged, ILane<T>
    {
        Craft craft = unit.Unit.Craft;
        using CraftBatch<T> batch = new(craft.Rotors.Count);
        batch.SetEffects(effects);
        double lighter = Math.Min(1, RotorLag / unit.Hover.TimeConstant);
        batch.SetCraft(0, craft with
        {
            Mass = Heavy * craft.Mass,
            I_BBcm_B = Mat3.Diagonal(Heavy, Heavy, Heavy),
            Battery = craft.Battery with { Capacity = Heavy * craft.Battery.Capacity },
            Rotors = [.. craft.Rotors.Select(rotor => rotor with { SpinInertia = lighter * rotor.SpinInertia })],
        });
        batch.SetField(0, unit.Density, 0);

        CraftState settled = unit.Hover.State;
        settled.Charge *= Heavy;
        double[] at = [0, 0, unit.HoverShare, 0, 0, 0];
        (Vec3 equal, double room) = (unit.Allocation.EqualThrustAcceleration, unit.HoverShare - unit.IdleShare);
        for (int axis = 0; axis < 3; axis++) at[3 + axis] = -unit.HoverShare * equal[axis];
        // small beside what the mixer has to give
        double[] nudge = [1e-4, 1e-4, 1e-3 * room, .. Enumerable.Range(0, 3).Select(axis => 1e-3 * unit.IntegralLimit[axis])];
        double[][] results = new double[Unknowns + 1][];
        // from slow to fast, each balance the first guess of the next
        for (double now = Math.Min(speed, FirstSpeed); ; now = Math.Min(speed, now + NextSpeed))
        {
            if (!Balance(now)) return null;
            if (now == speed) return Start();
        }

        bool Balance(double now)
        {
            for (int n = 0; n < Iterations; n++)
            {
                if (Newton(now)) return true;
                if (!at.All(double.IsFinite)) return false;
            }
            return false;
        }

        // one step of Newton's method; true where none was needed
        bool Newton(double now)
        {
            CraftState from = settled with { v_WB = new(now, 0, 0) };
            for (int first = 0; first <= Unknowns; first += T.Width) Settle(first, Math.Min(first + T.Width, Unknowns + 1), from);
            double[] left = results[0];
            if (left.Take(3).All(a => Math.Abs(a) < Force) && left.Skip(3).All(a => Math.Abs(a) < Moment)) return true;
            Matrix<double> slopes = Matrix<double>.Build.Dense(Unknowns, Unknowns, (row, column) => (results[column + 1][row] - left[row]) / nudge[column]);
            Vector<double> change = slopes.Solve(Vector<double>.Build.Dense(left));
            for (int i = 0; i < Unknowns; i++)
            {
                // no leaps where the first guess is far off
                double most = i < 2 ? 0.3 : i == 2 ? 0.5 * room : 10 * unit.IntegralLimit[i - 3];
                at[i] -= Math.Clamp(change[i], -most, most);
            }
            return false;
        }

        void Settle(int first, int end, in CraftState from)
        {
            for (int column = first; column < end; column++)
            {
                double[] point = [.. at];
                if (column > 0) point[column - 1] += nudge[column - 1];
                CraftState state = from;
                state.q_WB = Quat.FromEuler(point[0], -point[1], 0);
                batch.SetState(column - first, state);
                PerRotor duty = Duty(unit, point);
                for (int k = 0; k < batch.RotorCount; k++) batch.SetCommand(column - first, k, duty[k]);
            }
            for (int step = 0; step < Settling / Step; step++) batch.Step(Integrator.Midpoint, Step);
            batch.Evaluate();
            for (int column = first; column < end; column++)
            {
                Sample sample = batch.GetSample(column - first);
                Vec3 a = (sample.State.q_WB.Rotate(sample.AirForce_B) / craft.Mass) + new Vec3(0, 0, unit.Gravity);
                Vec3 turning = craft.I_BBcm_B.Inverse * (Heavy * sample.AngularAcceleration_B);
                results[column] = [a.X, a.Y, a.Z, turning.X, turning.Y, turning.Z];
                if (column > 0) continue;
                settled = sample.State;
                settled.PairVoltage = craft.Battery.PairResistance * sample.PackCurrent;
            }
        }

        DrillStart? Start()
        {
            PerRotor duty = Duty(unit, at);
            double idle = unit.Map.Duty(unit.IdleShare);
            for (int k = 0; k < batch.RotorCount; k++)
            {
                if (duty[k] >= 1 || duty[k] <= idle) return null;
            }
            return new(
                settled with { p_WB = Vec3.Zero, v_WB = new(speed, 0, 0), w_WB_B = Vec3.Zero, Charge = unit.Hover.State.Charge },
                at[2], new(at[3], at[4], at[5]), duty);
        }
    }

    /// <summary>What the mixer makes of a collective and three angular accelerations, the fourth to sixth of a point.</summary>
    private static PerRotor Duty(TunedUnit unit, double[] point)
    {
        PerRotor duty = default;
        for (int k = 0; k < unit.Unit.Craft.Rotors.Count; k++)
        {
            double share = point[2];
            for (int axis = 0; axis < 3; axis++) share += unit.Allocation.Shares[k, axis] * point[3 + axis];
            duty[k] = Math.Min(1, unit.Map.Duty(Math.Clamp(share, unit.IdleShare, 1)));
        }
        return duty;
    }
}
