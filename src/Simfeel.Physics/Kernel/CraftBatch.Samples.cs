using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Kernel;

/// <content>What is read out: a sample of one lane, or rows of all lanes for a log.</content>
public sealed unsafe partial class CraftBatch<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Reads the state of a lane.</summary>
    public CraftState GetState(int lane)
    {
        CheckLane(lane);
        CraftState state;
        T* x = _state, attitude = x + StateIndex.Attitude;
        state.p_WB = Vector(x + StateIndex.Position, lane);
        state.v_WB = Vector(x + StateIndex.Velocity, lane);
        state.q_WB = new(
            LaneMemory.Get(attitude, lane), LaneMemory.Get(attitude + 1, lane), LaneMemory.Get(attitude + 2, lane), LaneMemory.Get(attitude + 3, lane));
        state.w_WB_B = Vector(x + StateIndex.Rate, lane);
        state.Charge = LaneMemory.Get(x + StateIndex.Charge, lane);
        state.PairVoltage = LaneMemory.Get(x + StateIndex.PairVoltage, lane);
        Rotors(x + StateIndex.RotorSpeed, 1, lane, out state.RotorSpeeds);
        Rotors(x + StateIndex.Inflow(RotorCount), 1, lane, out state.InducedVelocities);
        return state;
    }

    /// <summary>Room for a recorded row: some numbers of the first craft each, and what the last whole vector writes beyond them.</summary>
    public static int RoomFor(int numbers, int craft) => (numbers * craft) + T.Width - craft;

    /// <summary>Writes states and duties of the first craft side by side, <see cref="RowIndex"/>; needs no <see cref="Evaluate"/>.</summary>
    /// <param name="craft">How many, 1 to the width.</param>
    /// <param name="row">Receives them; <see cref="RoomFor"/> them.</param>
    /// <exception cref="ArgumentException">There is no room.</exception>
    public void RecordStates(int craft, Span<double> row)
    {
        CheckLane(craft - 1);
        if (row.Length < RoomFor(RowIndex.States(RotorCount), craft)) throw new ArgumentException("The row is too short.", nameof(row));
        fixed (double* first = row)
        {
            double* to = first;
            Put(_state, RowIndex.Duty(RotorCount), 1, craft, ref to);
            Put(_command, RotorCount, 1, craft, ref to);
        }
    }

    /// <summary>Works out all loads at the present state, for <see cref="GetSample"/>; moves nothing.</summary>
    public void Evaluate()
    {
        _scratch[StateIndex.Charge] = T.Of(0);
        Kernel<T>.Derivative(_state, _command, _constants, _field, _load + 1, _scratch);
        Reserves<T>.Evaluate(_state, _constants, _load + 1, _reserve, _reserve + Craft.MaxRotors);
        Kernel<T>.RotorForce(_constants, _field, _load + 1, _rotorForce);
    }

    /// <summary>What <see cref="Evaluate"/> found for a lane; call it first at the same state.</summary>
    public Sample GetSample(int lane)
    {
        if (_craft[lane] is null) throw new InvalidOperationException("No craft is set.");
        LoadLanes<T>* load = _load + 1;
        Sample sample;
        sample.State = GetState(lane);
        sample.a_WB = Vector(_scratch + StateIndex.Velocity, lane);
        sample.AngularAcceleration_B = Vector(_scratch + StateIndex.Rate, lane);
        sample.AirVelocity_B = Vector(&load->AirX, lane);
        sample.AirForce_B = Vector(&load->ForceX, lane);
        sample.RotorForce_B = Vector(_rotorForce, lane);
        sample.PackVoltage = LaneMemory.Get(&load->PackVoltage, lane);
        sample.PackCurrent = LaneMemory.Get(&load->PackCurrent, lane);
        RotorLoad<T>* rotors = (RotorLoad<T>*)&load->Rotors;
        int stride = sizeof(RotorLoad<T>) / sizeof(T);
        Rotors(_command, 1, lane, out sample.Duty);
        Rotors(&rotors->Thrust, stride, lane, out sample.Thrust);
        Rotors((T*)&_field->ThrustFactor, 1, lane, out sample.ThrustFactor);
        Rotors(&rotors->AirTorque, stride, lane, out sample.AirTorque);
        Rotors(&rotors->MotorTorque, stride, lane, out sample.MotorTorque);
        Rotors(&rotors->Current, stride, lane, out sample.MotorCurrent);
        Rotors(_reserve, 1, lane, out sample.ReserveUp);
        Rotors(_reserve + Craft.MaxRotors, 1, lane, out sample.ReserveDown);
        return sample;
    }

    /// <summary>Writes what <see cref="Evaluate"/> found for the first craft, <see cref="RowIndex"/>; call it first at the same state.</summary>
    /// <param name="craft">How many, 1 to the width.</param>
    /// <param name="row">Receives it; <see cref="RoomFor"/> it.</param>
    /// <exception cref="ArgumentException">There is no room.</exception>
    public void RecordLoads(int craft, Span<double> row)
    {
        CheckLane(craft - 1);
        if (row.Length < RoomFor(RowIndex.Loads(RotorCount), craft)) throw new ArgumentException("The row is too short.", nameof(row));
        LoadLanes<T>* load = _load + 1;
        RotorLoad<T>* rotors = (RotorLoad<T>*)&load->Rotors;
        int stride = sizeof(RotorLoad<T>) / sizeof(T);
        fixed (double* first = row)
        {
            double* to = first;
            Put(_scratch + StateIndex.Velocity, 3, 1, craft, ref to);
            Put(_scratch + StateIndex.Rate, 3, 1, craft, ref to);
            Put(&load->AirX, 3, 1, craft, ref to);
            Put(&load->ForceX, 3, 1, craft, ref to);
            Put(_rotorForce, 3, 1, craft, ref to);
            Put(&load->PackVoltage, 1, 1, craft, ref to);
            Put(&load->PackCurrent, 1, 1, craft, ref to);
            Put(&rotors->Thrust, RotorCount, stride, craft, ref to);
            Put((T*)&_field->ThrustFactor, RotorCount, 1, craft, ref to);
            Put(&rotors->AirTorque, RotorCount, stride, craft, ref to);
            Put(&rotors->MotorTorque, RotorCount, stride, craft, ref to);
            Put(&rotors->Current, RotorCount, stride, craft, ref to);
            Put(_reserve, RotorCount, 1, craft, ref to);
            Put(_reserve + Craft.MaxRotors, RotorCount, 1, craft, ref to);
        }
    }

    /// <summary>Numbers some lanes apart, of the first craft each: a whole vector, whose end the next one overwrites.</summary>
    private static void Put(T* numbers, int count, int stride, int craft, ref double* to)
    {
        for (int n = 0; n < count; n++, to += craft) T.Store(numbers[n * stride], to);
    }

    private static Vec3 Vector(T* first, int lane) =>
        new(LaneMemory.Get(first, lane), LaneMemory.Get(first + 1, lane), LaneMemory.Get(first + 2, lane));

    /// <summary>A number of each rotor, some lanes apart; 0 where there is no rotor.</summary>
    private void Rotors(T* first, int stride, int lane, out PerRotor values)
    {
        values = default;
        for (int k = 0; k < RotorCount; k++) values[k] = LaneMemory.Get(first + (k * stride), lane);
    }
}
