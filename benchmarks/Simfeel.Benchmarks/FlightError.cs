using Simfeel.Physics;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Maths;

namespace Simfeel.Benchmarks;

/// <summary>How far one path of a <see cref="HeldManoeuvre"/> lies from another at most, over the ends of all stretches.</summary>
/// <param name="Attitude">Angle between the attitudes, deg.</param>
/// <param name="Position">Distance, mm.</param>
/// <param name="RotorSpeed">Difference in speed of the worst rotor, rad/s.</param>
internal readonly record struct FlightError(double Attitude, double Position, double RotorSpeed)
{
    /// <summary>Compares two paths of the same craft; infinite where one of them is no number.</summary>
    public static FlightError Between(ReadOnlySpan<CraftState> a, ReadOnlySpan<CraftState> b)
    {
        FlightError worst = default;
        for (int n = 0; n < a.Length; n++)
        {
            double speed = 0;
            for (int k = 0; k < HeldManoeuvre.Rotors; k++)
                speed = Math.Max(speed, Math.Abs(a[n].RotorSpeeds[k] - b[n].RotorSpeeds[k]));
            FlightError now = new(Angle(a[n].q_WB, b[n].q_WB), 1000 * (a[n].p_WB - b[n].p_WB).Length, speed);
            if (!double.IsFinite(now.Attitude + now.Position + now.RotorSpeed))
                return new(double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity);
            worst = new(Math.Max(worst.Attitude, now.Attitude), Math.Max(worst.Position, now.Position), Math.Max(worst.RotorSpeed, now.RotorSpeed));
        }
        return worst;
    }

    /// <summary>A state from its numbers in the order of <see cref="StateIndex"/>.</summary>
    public static CraftState StateOf(ReadOnlySpan<double> x)
    {
        CraftState state = new()
        {
            p_WB = new(x[StateIndex.Position], x[StateIndex.Position + 1], x[StateIndex.Position + 2]),
            v_WB = new(x[StateIndex.Velocity], x[StateIndex.Velocity + 1], x[StateIndex.Velocity + 2]),
            q_WB = new(x[StateIndex.Attitude], x[StateIndex.Attitude + 1], x[StateIndex.Attitude + 2], x[StateIndex.Attitude + 3]),
            w_WB_B = new(x[StateIndex.Rate], x[StateIndex.Rate + 1], x[StateIndex.Rate + 2]),
            Charge = x[StateIndex.Charge],
            PairVoltage = x[StateIndex.PairVoltage],
        };
        for (int k = 0; k < HeldManoeuvre.Rotors; k++) state.RotorSpeeds[k] = x[StateIndex.RotorSpeed + k];
        return state;
    }

    /// <summary>Angle of the rotation between two attitudes, deg; by the sine, which small angles do not round away.</summary>
    private static double Angle(Quat a, Quat b)
    {
        Vec3 va = new(a.X, a.Y, a.Z), vb = new(b.X, b.Y, b.Z);
        Vec3 across = (a.W * vb) - (b.W * va) - Vec3.Cross(va, vb);
        double along = (a.W * b.W) + Vec3.Dot(va, vb);
        return 2 * Math.Atan2(across.Length, Math.Abs(along)) * 180 / Math.PI;
    }
}
