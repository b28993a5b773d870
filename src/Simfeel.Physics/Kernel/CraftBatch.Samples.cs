using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Kernel;

/// <content>What is read out of a lane. Written into place: a sample is large, and a drill takes thousands.</content>
public sealed unsafe partial class CraftBatch<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Reads the state of a lane.</summary>
    public CraftState GetState(int lane)
    {
        GetState(lane, out CraftState state);
        return state;
    }

    /// <summary><see cref="GetState(int)"/> into a place.</summary>
    public void GetState(int lane, out CraftState state)
    {
        CheckLane(lane);
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
    }

    /// <summary>State and duties of a lane into a sample, whose other fields keep what they held; needs no <see cref="Evaluate"/>.</summary>
    public void GetStateAndDuty(int lane, ref Sample sample)
    {
        GetState(lane, out sample.State);
        Rotors(_command, 1, lane, out sample.Duty);
    }

    /// <summary>Works out all loads at the present state, for <see cref="GetSample(int)"/>; moves nothing.</summary>
    public void Evaluate()
    {
        _scratch[StateIndex.Charge] = T.Of(0);
        Kernel<T>.Derivative(_state, _command, _constants, _field, _load + 1, _scratch);
        Reserves<T>.Evaluate(_state, _constants, _load + 1, _reserve, _reserve + Craft.MaxRotors);
    }

    /// <summary>What <see cref="Evaluate"/> found for a lane; call it first at the same state.</summary>
    public Sample GetSample(int lane)
    {
        GetSample(lane, out Sample sample);
        return sample;
    }

    /// <summary><see cref="GetSample(int)"/> into a place.</summary>
    public void GetSample(int lane, out Sample sample)
    {
        if (_craft[lane] is null) throw new InvalidOperationException("No craft is set.");
        LoadLanes<T>* load = _load + 1;
        GetState(lane, out sample.State);
        sample.a_WB = Vector(_scratch + StateIndex.Velocity, lane);
        sample.AngularAcceleration_B = Vector(_scratch + StateIndex.Rate, lane);
        sample.AirVelocity_B = Vector(&load->AirX, lane);
        sample.AirForce_B = Vector(&load->ForceX, lane);
        sample.RotorForce_B = sample.AirForce_B - BodyDrag(lane, sample.AirVelocity_B);
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
    }

    private static Vec3 Vector(T* first, int lane) =>
        new(LaneMemory.Get(first, lane), LaneMemory.Get(first + 1, lane), LaneMemory.Get(first + 2, lane));

    /// <summary>A number of each rotor, some lanes apart; 0 where there is no rotor.</summary>
    private void Rotors(T* first, int stride, int lane, out PerRotor values)
    {
        values = default;
        for (int k = 0; k < RotorCount; k++) values[k] = LaneMemory.Get(first + (k * stride), lane);
    }

    /// <summary>Force of the air on the body without its rotors, as <see cref="Kernel{T}"/> has it.</summary>
    private Vec3 BodyDrag(int lane, Vec3 v)
    {
        Vec3 area = _craft[lane]!.DragArea;
        return -0.5 * LaneMemory.Get(&_field->Density, lane) * v.Length * new Vec3(area.X * v.X, area.Y * v.Y, area.Z * v.Z);
    }
}
