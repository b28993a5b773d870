using Simfeel.Flight.Contact;
using Simfeel.Flight.Control;
using Simfeel.Flight.Drills;
using Simfeel.Physics;
using Simfeel.Physics.Air;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight;

/// <summary>
/// The fixed-tick loop that every front end shares: rate controller, command delay and kernel, one craft in each lane.
/// Time is the tick count over the step rate. Nothing is allocated after the constructor. Not for two threads at once.
/// </summary>
public sealed unsafe class FlightLoop<T> : IDisposable
    where T : unmanaged, ILane<T>
{
    /// <summary>Room for command delays, in physics steps: 64 ms at 4000 steps a second, over the 50 ms a build may state.</summary>
    private const int DelaySlots = 256;

    private readonly PilotProfile _profile;
    private readonly FieldConditions _field;
    private readonly ContactWorld _world;
    private readonly int[] _delay = new int[T.Width];
    private readonly CraftContact?[] _contact = new CraftContact?[T.Width];
    private readonly bool[] _stopped = new bool[T.Width];
    private readonly DrydenGusts[]? _gusts;
    private readonly (double Density, double Gravity)[] _air = new (double, double)[T.Width];

    /// <summary>Whether nothing is near any craft, no rotor is struck or stopped, and all have one delay: the usual case in a drill.</summary>
    private bool _quiet;

    private ControllerLanes<T>* _controller;
    private ControllerState<T>* _memory;
    private T* _command;
    private T* _delayed;
    private T* _margin;

    /// <summary>A loop for craft with a number of rotors, under a pilot's profile, over a field.</summary>
    /// <param name="rotorCount">Rotors of every craft.</param>
    /// <param name="profile">The pilot.</param>
    /// <param name="field">The field's conditions.</param>
    /// <param name="world">What can be touched; flat ground at the field's start height if null.</param>
    public FlightLoop(int rotorCount, PilotProfile profile, FieldConditions field, ContactWorld? world = null)
    {
        _profile = profile;
        _field = field;
        _world = world ?? ContactWorld.Flat(field.StartHeight);
        Batch = new CraftBatch<T>(rotorCount);
        _controller = LaneMemory.Allocate<ControllerLanes<T>>();
        _memory = LaneMemory.Allocate<ControllerState<T>>();
        _command = LaneMemory.Allocate<T>(4);
        _delayed = LaneMemory.Allocate<T>(DelaySlots * Craft.MaxRotors);
        _margin = LaneMemory.Allocate<T>();
        _controller->RotorCount = rotorCount;
        Batch.SetEffects(field.Effects, field.StartHeight);
        if (field.WindSpeed > 0) _gusts = new DrydenGusts[T.Width];
    }

    /// <summary>Gives the memory back when Dispose was forgotten.</summary>
    ~FlightLoop() => Free();

    /// <summary>The craft.</summary>
    public CraftBatch<T> Batch { get; }

    /// <summary>Physics steps since the start.</summary>
    public long Ticks => Batch.Steps;

    /// <summary>Time since the start, s.</summary>
    public double Time => Ticks / (double)_profile.StepRate;

    /// <summary>
    /// Puts a craft at its start into a lane, controller settled there; lane 0 first, which fills the others too. Time starts
    /// again for all lanes, so set every lane before the first tick.
    /// </summary>
    /// <exception cref="ArgumentException">The command delay is longer than the loop can hold.</exception>
    public void SetUnit(int lane, TunedUnit unit, in CraftState start) => SetUnit(lane, unit, DrillStart.Hover(unit, start));

    /// <summary><see cref="SetUnit(int, TunedUnit, in CraftState)"/> with all that the controller holds at the start.</summary>
    /// <exception cref="ArgumentException">The command delay is longer than the loop can hold.</exception>
    public void SetUnit(int lane, TunedUnit unit, in DrillStart start)
    {
        ArgumentNullException.ThrowIfNull(unit);
        Batch.SetCraft(lane, unit.Unit.Craft, unit.Unit.Name);
        Batch.SetField(lane, unit.Density, unit.Gravity);
        Batch.SetState(lane, start.State);
        int delay = (int)Math.Round(unit.Unit.CommandDelay * _profile.StepRate);
        if (delay >= DelaySlots)
            throw new ArgumentException($"A command delay of {unit.Unit.CommandDelay} s is longer than {(DelaySlots - 1) / (double)_profile.StepRate} s.");
        int end = lane == 0 ? T.Width : lane + 1;
        _quiet = false;
        for (int n = lane; n < end; n++)
        {
            _delay[n] = delay;
            _air[n] = (unit.Density, unit.Gravity);
            if (_gusts is not null) _gusts[n] = default;
            _contact[n] = unit.Unit.Body is ContactBody body ? new(body, _world) : null;
            LaneMemory.Set(_margin, n, _contact[n]?.Margin ?? 0);
            Pack(n, unit, start);
        }
        Batch.ClearSteps();
    }

    /// <summary>Puts the craft of a lane elsewhere and mends it; time goes on. Allocates nothing.</summary>
    public void Place(int lane, TunedUnit unit, in CraftState state)
    {
        ArgumentNullException.ThrowIfNull(unit);
        Batch.SetState(lane, state);
        // what is looked at before the first tick draws nothing from the pack
        for (int k = 0; k < Batch.RotorCount; k++) LaneMemory.Set(Batch.Commands + k, lane, 0);
        _contact[lane]?.Clear();
        _quiet = false;
        Pack(lane, unit, DrillStart.Hover(unit, state));
    }

    /// <summary>Lets the controller of a lane start afresh, its rotors at rest.</summary>
    public void ResetController(int lane, TunedUnit unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        Pack(lane, unit, DrillStart.Hover(unit, Batch.GetState(lane)) with { Duty = default });
    }

    /// <summary>Stops the motors of a lane, or lets the controller have them.</summary>
    public void SetMotors(int lane, bool on) => (_stopped[lane], _quiet) = (!on, false);

    /// <summary>Contact of a lane's craft; null where it touches nothing.</summary>
    public CraftContact? Contact(int lane) => _contact[lane];

    /// <summary>Sets what a lane's pilot asks for: rates about the body axes (rad/s) and collective share of full thrust.</summary>
    public void SetCommand(int lane, Vec3 rate, double collective)
    {
        LaneMemory.Set(_command, lane, rate.X);
        LaneMemory.Set(_command + 1, lane, rate.Y);
        LaneMemory.Set(_command + 2, lane, rate.Z);
        LaneMemory.Set(_command + 3, lane, collective);
    }

    /// <summary>
    /// One physics step: gusts, wakes and ground where the sticks are read, the controller where it is due, the delayed duties,
    /// the kernel.
    /// </summary>
    /// <exception cref="Physics.Guards.FlightFaultException">The step broke an invariant.</exception>
    public void Tick()
    {
        if (Ticks % _profile.StepsPerStickReading == 0)
        {
            if (_gusts is not null) Blow(_gusts);
            Batch.RefreshSurroundings(_field.Seed, Ticks / _profile.StepsPerStickReading, _profile.StickPeriod);
            Look();
        }
        int slot = (int)(Ticks % DelaySlots);
        T* now = _delayed + (slot * Craft.MaxRotors);
        if (Ticks % _profile.StepsPerLoop == 0)
        {
            RateController<T>.Run(Batch.State + StateIndex.Rate, _command, _controller, _memory, now);
        }
        else
        {
            T* before = _delayed + ((slot + DelaySlots - 1) % DelaySlots * Craft.MaxRotors);
            for (int k = 0; k < Batch.RotorCount; k++) now[k] = before[k];
        }
        if (_quiet) DeliverAlike(slot);
        else Deliver(slot);
        Batch.Step(Integrator.Midpoint, 1.0 / _profile.StepRate);
        if (!_quiet) Touch();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Batch.Dispose();
        Free();
        GC.SuppressFinalize(this);
    }

    /// <summary>Hands every lane the duties that left its controller its own delay ago.</summary>
    private void Deliver(int slot)
    {
        for (int lane = 0; lane < T.Width; lane++)
        {
            T* past = _delayed + ((slot + DelaySlots - _delay[lane]) % DelaySlots * Craft.MaxRotors);
            int struck = _contact[lane]?.StruckRotors ?? 0;
            for (int k = 0; k < Batch.RotorCount; k++)
            {
                bool still = _stopped[lane] || (struck & (1 << k)) != 0;
                LaneMemory.Set(Batch.Commands + k, lane, still ? 0 : LaneMemory.Get(past + k, lane));
            }
        }
    }

    /// <summary><see cref="Deliver"/> where one delay serves all lanes and every rotor has its motor.</summary>
    private void DeliverAlike(int slot)
    {
        T* past = _delayed + ((slot + DelaySlots - _delay[0]) % DelaySlots * Craft.MaxRotors);
        for (int k = 0; k < Batch.RotorCount; k++) Batch.Commands[k] = past[k];
    }

    /// <summary>Every lane's wind until the sticks are read again: each craft meets the same numbers at its own height and speed.</summary>
    private void Blow(DrydenGusts[] gusts)
    {
        long count = Ticks / _profile.StepsPerStickReading;
        for (int lane = 0; lane < T.Width; lane++)
        {
            Vec3 p_WB = Three(StateIndex.Position, lane);
            double height = _world.GroundAt(p_WB.X, p_WB.Y) - p_WB.Z;
            Vec3 wind_W = gusts[lane].Next(
                new(_field.WindSpeed, _field.WindFrom), height, Three(StateIndex.Velocity, lane), _field.Seed, count, _profile.StickPeriod);
            Batch.SetField(lane, _air[lane].Density, _air[lane].Gravity, wind_W);
        }
    }

    private void Look()
    {
        if (_quiet && _world.IsFlat && IsHigh()) return;
        bool quiet = true;
        for (int lane = 0; lane < T.Width; lane++)
        {
            quiet &= !_stopped[lane] && _delay[lane] == _delay[0];
            if (_contact[lane] is not CraftContact contact) continue;
            contact.Look(Three(StateIndex.Position, lane), Three(StateIndex.Velocity, lane), _profile.StickPeriod);
            if (contact.IsNear) contact.Strike(Motion(lane));
            quiet &= !contact.IsNear && contact.StruckRotors == 0;
        }
        _quiet = quiet;
    }

    /// <summary>Whether over flat ground every craft is out of reach of it until the next look, as <see cref="CraftContact.Look"/> has it.</summary>
    private bool IsHigh()
    {
        T* v = Batch.State + StateIndex.Velocity;
        T ahead = T.Of(CraftContact.SpeedMargin * _profile.StickPeriod), ground = T.Of(_world.GroundAt(0, 0));
        T speed = T.Sqrt(T.Fma(v[0], v[0], T.Fma(v[1], v[1], v[2] * v[2])));
        T lowest = T.Fma(ahead, speed, Batch.State[StateIndex.Position + 2] + *_margin);
        return T.AllEqual(T.Max(lowest, ground), ground);
    }

    /// <summary>What touches a craft changes its velocity and rate; a propeller that struck something stands still.</summary>
    private void Touch()
    {
        for (int lane = 0; lane < T.Width; lane++)
        {
            if (_contact[lane] is not CraftContact contact) continue;
            if (contact.IsNear || contact.StruckRotors != 0) Batch.StateChanged();
            for (int k = 0; contact.StruckRotors >> k != 0; k++)
            {
                if ((contact.StruckRotors & (1 << k)) != 0) LaneMemory.Set(Batch.State + StateIndex.RotorSpeed + k, lane, 0);
            }
            if (!contact.IsNear) continue;
            ContactMotion motion = Motion(lane);
            contact.Push(ref motion, 1.0 / _profile.StepRate);
            for (int axis = 0; axis < 3; axis++)
            {
                LaneMemory.Set(Batch.State + StateIndex.Velocity + axis, lane, motion.v_WB[axis]);
                LaneMemory.Set(Batch.State + StateIndex.Rate + axis, lane, motion.w_WB_B[axis]);
            }
        }
    }

    private ContactMotion Motion(int lane)
    {
        T* x = Batch.State;
        Quat q_WB = new(At(StateIndex.Attitude), At(StateIndex.Attitude + 1), At(StateIndex.Attitude + 2), At(StateIndex.Attitude + 3));
        return new(Three(StateIndex.Position, lane), Three(StateIndex.Velocity, lane), q_WB.ToMatrix(), Three(StateIndex.Rate, lane));

        double At(int index) => LaneMemory.Get(x + index, lane);
    }

    private Vec3 Three(int index, int lane)
    {
        T* x = Batch.State + index;
        return new(LaneMemory.Get(x, lane), LaneMemory.Get(x + 1, lane), LaneMemory.Get(x + 2, lane));
    }

    private void Pack(int lane, TunedUnit unit, in DrillStart start)
    {
        ControllerPacking.Pack(_controller, _memory, lane, unit, _profile, start);
        for (int k = 0; k < Batch.RotorCount; k++)
        {
            for (int slot = 0; slot < DelaySlots; slot++)
                LaneMemory.Set(_delayed + (slot * Craft.MaxRotors) + k, lane, start.Duty[k]);
        }
        SetCommand(lane, start.State.w_WB_B, start.Collective);
    }

    private void Free()
    {
        LaneMemory.Free(_controller);
        LaneMemory.Free(_memory);
        LaneMemory.Free(_command);
        LaneMemory.Free(_delayed);
        LaneMemory.Free(_margin);
        _controller = null;
        _memory = null;
        _command = null;
        _delayed = null;
        _margin = null;
    }
}
