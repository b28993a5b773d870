using Simfeel.Flight.Pilots;
using Simfeel.Physics;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Drills;

/// <summary>One row of a log; its numbers are those of a <see cref="Sample"/>, each read where it stands. Loads that were not recorded are 0.</summary>
/// <param name="log">The log.</param>
/// <param name="row">Which row.</param>
public readonly struct LogRow(LogRows log, int row)
{
    /// <summary>The state that all else belongs to.</summary>
    public RowState State => new(log, row);

    /// <summary><see cref="Sample.a_WB"/>.</summary>
    public Vec3 a_WB => Vector(RowIndex.Acceleration);

    /// <summary><see cref="Sample.AngularAcceleration_B"/>.</summary>
    public Vec3 AngularAcceleration_B => Vector(RowIndex.AngularAcceleration);

    /// <summary><see cref="Sample.AirVelocity_B"/>.</summary>
    public Vec3 AirVelocity_B => Vector(RowIndex.AirVelocity);

    /// <summary><see cref="Sample.AirForce_B"/>.</summary>
    public Vec3 AirForce_B => Vector(RowIndex.AirForce);

    /// <summary><see cref="Sample.RotorForce_B"/>.</summary>
    public Vec3 RotorForce_B => Vector(RowIndex.RotorForce);

    /// <summary><see cref="Sample.PackVoltage"/>.</summary>
    public double PackVoltage => log.Load(row, RowIndex.PackVoltage);

    /// <summary><see cref="Sample.PackCurrent"/>.</summary>
    public double PackCurrent => log.Load(row, RowIndex.PackCurrent);

    /// <summary><see cref="Sample.Duty"/>.</summary>
    public PerRotor Duty => log.StateRotors(row, RowIndex.Duty(log.RotorCount));

    /// <summary><see cref="Sample.Thrust"/>.</summary>
    public PerRotor Thrust => Rotors(RotorNumber.Thrust);

    /// <summary><see cref="Sample.ThrustFactor"/>.</summary>
    public PerRotor ThrustFactor => Rotors(RotorNumber.ThrustFactor);

    /// <summary><see cref="Sample.AirTorque"/>.</summary>
    public PerRotor AirTorque => Rotors(RotorNumber.AirTorque);

    /// <summary><see cref="Sample.MotorTorque"/>.</summary>
    public PerRotor MotorTorque => Rotors(RotorNumber.MotorTorque);

    /// <summary><see cref="Sample.MotorCurrent"/>.</summary>
    public PerRotor MotorCurrent => Rotors(RotorNumber.MotorCurrent);

    /// <summary><see cref="Sample.ReserveUp"/>.</summary>
    public PerRotor ReserveUp => Rotors(RotorNumber.ReserveUp);

    /// <summary><see cref="Sample.ReserveDown"/>.</summary>
    public PerRotor ReserveDown => Rotors(RotorNumber.ReserveDown);

    /// <summary>What a pilot sees of the craft.</summary>
    public Sight Sight => new(State.p_WB, State.v_WB, State.q_WB, a_WB);

    /// <summary>A copy of the whole row.</summary>
    public static implicit operator Sample(LogRow row) => row.ToSample();

    /// <summary>A copy of the whole row.</summary>
    public Sample ToSample() => new()
    {
        State = State,
        a_WB = a_WB,
        AngularAcceleration_B = AngularAcceleration_B,
        AirVelocity_B = AirVelocity_B,
        AirForce_B = AirForce_B,
        RotorForce_B = RotorForce_B,
        PackVoltage = PackVoltage,
        PackCurrent = PackCurrent,
        Duty = Duty,
        Thrust = Thrust,
        ThrustFactor = ThrustFactor,
        AirTorque = AirTorque,
        MotorTorque = MotorTorque,
        MotorCurrent = MotorCurrent,
        ReserveUp = ReserveUp,
        ReserveDown = ReserveDown,
    };

    /// <summary>Writes a sample's loads in the order of <see cref="RowIndex"/>.</summary>
    internal static void Write(in Sample sample, int rotorCount, Span<double> loads)
    {
        ReadOnlySpan<Vec3> vectors = [sample.a_WB, sample.AngularAcceleration_B, sample.AirVelocity_B, sample.AirForce_B, sample.RotorForce_B];
        for (int n = 0; n < vectors.Length; n++)
        {
            for (int axis = 0; axis < 3; axis++) loads[(3 * n) + axis] = vectors[n][axis];
        }
        loads[RowIndex.PackVoltage] = sample.PackVoltage;
        loads[RowIndex.PackCurrent] = sample.PackCurrent;
        ReadOnlySpan<PerRotor> rotors =
        [
            sample.Thrust, sample.ThrustFactor, sample.AirTorque, sample.MotorTorque, sample.MotorCurrent, sample.ReserveUp, sample.ReserveDown,
        ];
        for (int n = 0; n < rotors.Length; n++)
        {
            for (int k = 0; k < rotorCount; k++) loads[RowIndex.PerRotor + (n * rotorCount) + k] = rotors[n][k];
        }
    }

    private Vec3 Vector(int first) => new(log.Load(row, first), log.Load(row, first + 1), log.Load(row, first + 2));

    private PerRotor Rotors(RotorNumber number) => log.LoadRotors(row, RowIndex.PerRotor + ((int)number * log.RotorCount));
}

/// <summary>The state of a row; its numbers are those of a <see cref="CraftState"/>, each read where it stands.</summary>
/// <param name="log">The log.</param>
/// <param name="row">Which row.</param>
public readonly struct RowState(LogRows log, int row)
{
    /// <summary><see cref="CraftState.p_WB"/>.</summary>
    public Vec3 p_WB => Vector(StateIndex.Position);

    /// <summary><see cref="CraftState.v_WB"/>.</summary>
    public Vec3 v_WB => Vector(StateIndex.Velocity);

    /// <summary><see cref="CraftState.q_WB"/>.</summary>
    public Quat q_WB => new(
        log.State(row, StateIndex.Attitude),
        log.State(row, StateIndex.Attitude + 1),
        log.State(row, StateIndex.Attitude + 2),
        log.State(row, StateIndex.Attitude + 3));

    /// <summary><see cref="CraftState.w_WB_B"/>.</summary>
    public Vec3 w_WB_B => Vector(StateIndex.Rate);

    /// <summary><see cref="CraftState.Charge"/>.</summary>
    public double Charge => log.State(row, StateIndex.Charge);

    /// <summary><see cref="CraftState.PairVoltage"/>.</summary>
    public double PairVoltage => log.State(row, StateIndex.PairVoltage);

    /// <summary><see cref="CraftState.RotorSpeeds"/>.</summary>
    public PerRotor RotorSpeeds => log.StateRotors(row, StateIndex.RotorSpeed);

    /// <summary><see cref="CraftState.InducedVelocities"/>.</summary>
    public PerRotor InducedVelocities => log.StateRotors(row, StateIndex.Inflow(log.RotorCount));

    /// <summary>A copy of the whole state.</summary>
    public static implicit operator CraftState(RowState state) => state.ToCraftState();

    /// <summary>A copy of the whole state.</summary>
    public CraftState ToCraftState() => new()
    {
        p_WB = p_WB,
        v_WB = v_WB,
        q_WB = q_WB,
        w_WB_B = w_WB_B,
        Charge = Charge,
        PairVoltage = PairVoltage,
        RotorSpeeds = RotorSpeeds,
        InducedVelocities = InducedVelocities,
    };

    private Vec3 Vector(int first) => new(log.State(row, first), log.State(row, first + 1), log.State(row, first + 2));
}
