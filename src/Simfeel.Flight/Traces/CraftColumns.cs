using Simfeel.Physics;

namespace Simfeel.Flight.Traces;

/// <summary>The columns of one craft in a trace: single precision, SI, unit at the end of the name.</summary>
public static class CraftColumns
{
    private static readonly string[] Body =
    [
        "position_north_m", "position_east_m", "position_down_m",
        "velocity_north_m_s", "velocity_east_m_s", "velocity_down_m_s",
        "attitude_w", "attitude_x", "attitude_y", "attitude_z",
        "roll_rate_rad_s", "pitch_rate_rad_s", "yaw_rate_rad_s",
        "pack_voltage_V", "pack_current_A", "pack_charge_A_s",
    ];

    private static readonly string[] Rotor =
        ["speed_rad_s", "thrust_N", "duty", "motor_current_A", "reserve_up_N_m", "reserve_down_N_m"];

    /// <summary>Number of columns of a craft with some rotors.</summary>
    public static int Count(int rotors) => Body.Length + (rotors * Rotor.Length);

    /// <summary>
    /// Names for a craft with some rotors, without the craft's letter: position, velocity and attitude in the world (north, east,
    /// down), rates about the body axes, the pack, then each rotor from <c>rotor1_</c> on.
    /// </summary>
    public static IEnumerable<string> Names(int rotors) =>
        Body.Concat(Enumerable.Range(1, rotors).SelectMany(number => Rotor.Select(name => $"rotor{number}_{name}")));

    /// <summary>Writes a sample's values in the order of the names.</summary>
    internal static void Write(in Sample sample, int rotors, Span<float> to)
    {
        int at = 0;
        for (int axis = 0; axis < 3; axis++) to[at++] = (float)sample.State.p_WB[axis];
        for (int axis = 0; axis < 3; axis++) to[at++] = (float)sample.State.v_WB[axis];
        to[at++] = (float)sample.State.q_WB.W;
        to[at++] = (float)sample.State.q_WB.X;
        to[at++] = (float)sample.State.q_WB.Y;
        to[at++] = (float)sample.State.q_WB.Z;
        for (int axis = 0; axis < 3; axis++) to[at++] = (float)sample.State.w_WB_B[axis];
        to[at++] = (float)sample.PackVoltage;
        to[at++] = (float)sample.PackCurrent;
        to[at++] = (float)sample.State.Charge;
        CraftState state = sample.State;
        for (int k = 0; k < rotors; k++)
        {
            to[at++] = (float)state.RotorSpeeds[k];
            to[at++] = (float)sample.Thrust[k];
            to[at++] = (float)sample.Duty[k];
            to[at++] = (float)sample.MotorCurrent[k];
            to[at++] = (float)sample.ReserveUp[k];
            to[at++] = (float)sample.ReserveDown[k];
        }
    }
}
