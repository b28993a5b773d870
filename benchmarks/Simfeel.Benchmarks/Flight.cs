using Simfeel.Flight;
using Simfeel.Flight.Control;
using Simfeel.Flight.Drills;
using Simfeel.Physics.Guards;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Rotors;

namespace Simfeel.Benchmarks;

/// <summary>A manoeuvre that can be flown by the C# kernel and by its C++ twin, for any lane type.</summary>
internal interface IFlight : IDisposable
{
    /// <summary>Craft side by side.</summary>
    int Width { get; }

    /// <summary>Flies the whole manoeuvre with the C# kernel.</summary>
    void Fly(Integrator integrator);

    /// <summary>Polynomials stand for the rotors in what the C# kernel flies with the midpoint rule, or their tables.</summary>
    bool Fitted { get; set; }

    /// <summary>The C# kernel looks after every step whether its invariants hold, as every flight does.</summary>
    bool Guarded { get; set; }

    /// <summary>Flies the whole manoeuvre with the twin.</summary>
    void FlyTwin(Integrator integrator);

    /// <summary>Flies the manoeuvre's sticks through the rate controller, which runs at every step; C#, midpoint rule.</summary>
    void FlyControlled();

    /// <summary>Flies that once and looks whether the craft followed the sticks.</summary>
    /// <exception cref="InvalidOperationException">One did not.</exception>
    string CheckControlled();

    /// <summary>True where the twin was built for this width, with the same memory layout.</summary>
    bool HasTwin { get; }

    /// <summary>Flies both and compares the states at the end.</summary>
    /// <exception cref="InvalidOperationException">They differ by more than rounding.</exception>
    string Compare(Integrator integrator);
}

/// <summary>
/// Half a second at 8 kHz from a hover: throttle swings, roll, pitch and yaw reversals, so that rotor speeds, rates,
/// currents at their limits and cells of the rotor table keep changing, in each lane in its own way.
/// </summary>
internal sealed unsafe class Flight<T> : IFlight
    where T : unmanaged, ILane<T>
{
    private const int Rotors = 4;
    private const double Step = 1 / 8000.0;

    private readonly Twin? _twin;
    private readonly RotorTable _table;
    private readonly CraftLanes<T>* _craft = LaneMemory.Allocate<CraftLanes<T>>();
    private readonly FieldLanes<T>* _field = LaneMemory.Allocate<FieldLanes<T>>();
    private readonly LoadLanes<T>* _load = LaneMemory.Allocate<LoadLanes<T>>();
    private readonly GuardLanes<T>* _guard = LaneMemory.Allocate<GuardLanes<T>>();
    private readonly T* _start = LaneMemory.Allocate<T>(2 * StateIndex.Stride);
    private readonly T* _state = LaneMemory.Allocate<T>(2 * StateIndex.Stride);
    private readonly T* _scratch = LaneMemory.Allocate<T>(3 * StateIndex.Stride);
    private readonly RotorFitLanes<T>* _fits = LaneMemory.Allocate<RotorFitLanes<T>>(Rotors);
    private readonly T* _commands = LaneMemory.Allocate<T>(Manoeuvre.Holds * Rotors);
    private readonly T* _sticks = LaneMemory.Allocate<T>(Manoeuvre.Holds * 4);
    private readonly ControllerLanes<T>* _controller = LaneMemory.Allocate<ControllerLanes<T>>();
    private readonly ControllerState<T>* _settled = LaneMemory.Allocate<ControllerState<T>>(2);

    public Flight(RotorTable table, Twin? twin)
    {
        _table = table;
        _twin = twin;
        _craft->RotorCount = Rotors;
        _controller->RotorCount = Rotors;
        for (int lane = 0; lane < T.Width; lane++)
        {
            TunedUnit unit = Specimen.Tuned(lane, table);
            CraftPacking.Pack(_craft, lane, unit.Unit.Craft);
            CraftPacking.PackGuard(_guard, lane, unit.Unit.Craft);
            ControllerPacking.Pack(_controller, _settled, lane, unit, Specimen.Pilot, DrillStart.Hover(unit));
            for (int hold = 0; hold < Manoeuvre.Holds; hold++)
            {
                for (int axis = 0; axis < 4; axis++)
                    LaneMemory.Set(_sticks + (hold * 4) + axis, lane, Manoeuvre.Stick(hold, axis, lane));
            }
            LaneMemory.Set(&_field->Density, lane, 1.225);
            LaneMemory.Set(&_field->Gravity, lane, 9.80665);
            LaneMemory.Set(&_field->WindX, lane, 2 + (0.1 * lane));
            for (int k = 0; k < Rotors; k++) LaneMemory.Set((T*)&_field->ThrustFactor + k, lane, 1);
            LaneMemory.Set(_start + StateIndex.Velocity, lane, lane - 3);
            LaneMemory.Set(_start + StateIndex.Attitude, lane, 1);
            LaneMemory.Set(_start + StateIndex.Rate, lane, 0.2 * lane);
            LaneMemory.Set(_start + StateIndex.Charge, lane, 4000 - (40 * lane));
            for (int k = 0; k < Rotors; k++)
            {
                LaneMemory.Set(_start + StateIndex.RotorSpeed + k, lane, 1300);
                for (int hold = 0; hold < Manoeuvre.Holds; hold++)
                    LaneMemory.Set(_commands + (hold * Rotors) + k, lane, Manoeuvre.Duty(hold, k, lane));
            }
        }
        Kernel<T>.Derivative(_start, _commands, _craft, _field, _load, _start + StateIndex.Stride);
    }

    /// <inheritdoc/>
    public int Width => T.Width;

    /// <inheritdoc/>
    public bool Fitted { get; set; }

    /// <inheritdoc/>
    public bool Guarded { get; set; }

    /// <inheritdoc/>
    public bool HasTwin => _twin is not null
        && _twin.SizeOf(T.Width, Twin.Block.Lane) == sizeof(T)
        && _twin.SizeOf(T.Width, Twin.Block.Craft) == sizeof(CraftLanes<T>)
        && _twin.SizeOf(T.Width, Twin.Block.Field) == sizeof(FieldLanes<T>)
        && _twin.SizeOf(T.Width, Twin.Block.Load) == sizeof(LoadLanes<T>);

    /// <inheritdoc/>
    public void Fly(Integrator integrator)
    {
        Reset();
        T* x = _state, dx = _state + StateIndex.Stride;
        for (int hold = 0; hold < Manoeuvre.Holds; hold++)
        {
            T* command = _commands + (hold * Rotors);
            if (integrator == Integrator.Midpoint)
            {
                Fit(hold);
                for (int n = 0; n < Manoeuvre.StepsPerHold; n++)
                {
                    Kernel<T>.MidpointStep(x, dx, x, dx, command, _craft, _field, _load, _scratch, Step);
                    if (Guarded) Look(x);
                }
            }
            else
            {
                for (int n = 0; n < Manoeuvre.StepsPerHold; n++)
                {
                    Kernel<T>.RungeKuttaStep(x, x, command, _craft, _field, _load, _scratch, Step);
                    if (Guarded) Look(x);
                }
            }
        }
    }

    /// <inheritdoc/>
    public void FlyControlled()
    {
        Reset();
        ControllerState<T>* memory = _settled + 1;
        *memory = *_settled;
        T* x = _state, dx = _state + StateIndex.Stride, duty = _scratch + StateIndex.Stride;
        for (int hold = 0; hold < Manoeuvre.Holds; hold++)
        {
            T* sticks = _sticks + (hold * 4);
            Fit(hold);
            for (int n = 0; n < Manoeuvre.StepsPerHold; n++)
            {
                RateController<T>.Run(x + StateIndex.Rate, sticks, _controller, memory, duty);
                Kernel<T>.MidpointStep(x, dx, x, dx, duty, _craft, _field, _load, _scratch, Step);
            }
        }
    }

    /// <inheritdoc/>
    public string CheckControlled()
    {
        // rad/s; the sticks move by up to 250 rad/s^2, and the loops lag them by some hundredths of a second
        const double allowed = 6;
        FlyControlled();
        double worst = 0;
        for (int lane = 0; lane < T.Width; lane++)
        {
            for (int axis = 0; axis < 3; axis++)
            {
                double wanted = LaneMemory.Get(_sticks + ((Manoeuvre.Holds - 1) * 4) + axis, lane);
                double error = Math.Abs(LaneMemory.Get(_state + StateIndex.Rate + axis, lane) - wanted);
                // written so that not a number fails too
                if (!(error <= allowed))
                    throw new InvalidOperationException($"{typeof(T).Name}: craft {lane} is {error:g3} rad/s off its sticks; allowed is {allowed}.");
                worst = Math.Max(worst, error);
            }
        }
        return $"to {worst:g2} rad/s";
    }

    /// <inheritdoc/>
    public void FlyTwin(Integrator integrator)
    {
        Reset();
        Twin.Blocks blocks = new()
        {
            X = _state,
            Dx = _state + StateIndex.Stride,
            Craft = _craft,
            Field = _field,
            Load = _load,
            Scratch = _scratch,
        };
        for (int hold = 0; hold < Manoeuvre.Holds; hold++)
        {
            blocks.Command = _commands + (hold * Rotors);
            _twin!.Step(integrator, T.Width, &blocks, Step, Manoeuvre.StepsPerHold);
        }
    }

    /// <inheritdoc/>
    public string Compare(Integrator integrator)
    {
        const int used = StateIndex.RotorSpeed + Rotors;
        Fly(integrator);
        double[] ours = Snapshot();
        FlyTwin(integrator);
        double[] theirs = Snapshot();
        if (ours.AsSpan().SequenceEqual(theirs) && ours.All(double.IsFinite)) return "bit for bit";

        double worst = 0;
        for (int i = 0; i < ours.Length; i++)
            worst = Math.Max(worst, Math.Abs(ours[i] - theirs[i]) / Math.Max(1, Math.Abs(ours[i])));
        double tolerance = T.IsSingle ? 1e-4 : 1e-9;
        if (!(worst <= tolerance))
            throw new InvalidOperationException($"{typeof(T).Name} and its twin differ by {worst:g3} after the manoeuvre; allowed is {tolerance:g3}.");
        return $"to {worst:g2}";

        double[] Snapshot() =>
            [.. Enumerable.Range(0, used * T.Width).Select(n => LaneMemory.Get(_state + (n / T.Width), n % T.Width))];
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        LaneMemory.Free(_craft);
        LaneMemory.Free(_field);
        LaneMemory.Free(_load);
        LaneMemory.Free(_guard);
        LaneMemory.Free(_start);
        LaneMemory.Free(_state);
        LaneMemory.Free(_scratch);
        LaneMemory.Free(_commands);
        LaneMemory.Free(_fits);
        LaneMemory.Free(_sticks);
        LaneMemory.Free(_controller);
        LaneMemory.Free(_settled);
        GC.KeepAlive(_table);
    }

    private void Look(T* x)
    {
        if (!Kernel<T>.IsSound(x, _craft, _field, _guard, Step)) throw new InvalidOperationException("A timed flight broke an invariant.");
    }

    /// <summary>The polynomials hold for two stretches of held commands, 4 ms.</summary>
    private void Fit(int hold)
    {
        if (!Fitted || hold % 2 != 0) return;
        Kernel<T>.FitRotors(
            _state, _state + StateIndex.Stride, Step * Manoeuvre.StepsPerHold, _craft, _field, _load, _scratch, _fits);
        _craft->Fits = _fits;
    }

    private void Reset()
    {
        _craft->Fits = null;
        _guard->Energy = T.Of(double.PositiveInfinity);
        for (int n = 0; n < 2 * StateIndex.Stride; n++) _state[n] = _start[n];
    }
}

/// <summary>What is asked of the craft: duties straight to the speed controllers, or sticks of a pilot.</summary>
internal static class Manoeuvre
{
    /// <summary>Stretches of held commands.</summary>
    public const int Holds = 256;

    /// <summary>Steps in a stretch.</summary>
    public const int StepsPerHold = 16;

    /// <summary>Steps in all.</summary>
    public const int Steps = Holds * StepsPerHold;

    /// <summary>Duty of a rotor: a swinging throttle with reversing roll, pitch and yaw on top.</summary>
    public static double Duty(int hold, int rotor, int lane)
    {
        double t = (hold / (double)Holds) + (0.003 * lane);
        double throttle = 0.42 + (0.35 * Math.Sin(2 * Math.PI * 2 * t));
        double roll = 0.10 * Math.Sin(2 * Math.PI * 5 * t), pitch = 0.08 * Math.Cos(2 * Math.PI * 7 * t);
        double yaw = 0.05 * Math.Sin(2 * Math.PI * 3 * t);
        double front = rotor < 2 ? 1 : -1, right = rotor is 0 or 3 ? 1 : -1, spin = rotor % 2 == 0 ? 1 : -1;
        return Math.Clamp(throttle - (right * roll) + (front * pitch) + (spin * yaw), 0, 1);
    }

    /// <summary>
    /// Sticks: rates about x, y, z in rad/s and the collective share of full thrust, all swinging, each lane a little later
    /// than the one before.
    /// </summary>
    public static double Stick(int hold, int axis, int lane)
    {
        double t = (hold / (double)Holds) + (0.003 * lane);
        return axis switch
        {
            0 => 8 * Math.Sin(2 * Math.PI * 2.5 * t),
            1 => 6 * Math.Cos(2 * Math.PI * 2 * t),
            2 => 4 * Math.Sin(2 * Math.PI * 1.5 * t),
            _ => 0.30 + (0.22 * Math.Sin(2 * Math.PI * 2 * t)),
        };
    }
}
