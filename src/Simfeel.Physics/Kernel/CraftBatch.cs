using Simfeel.Physics.Guards;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Kernel;

/// <summary>
/// As many craft as the lane type is wide, stepped together: their constants, field, commands and state in aligned memory
/// of their own. All have the same number of rotors. Lanes that are not set fly a copy of lane 0. Nothing is allocated
/// after the constructor. Not safe for use from two threads at once.
/// </summary>
public sealed unsafe partial class CraftBatch<T> : IDisposable
    where T : unmanaged, ILane<T>
{
    private readonly Craft?[] _craft = new Craft?[T.Width];
    private readonly string[] _names = new string[T.Width];
    private AirEffects _effects;
    private CraftLanes<T>* _constants;
    private FieldLanes<T>* _field;
    private LoadLanes<T>* _load;
    private T* _state;
    private T* _derivative;
    private T* _nextState;
    private T* _nextDerivative;
    private GuardLanes<T>* _guard;
    private T* _scratch;
    private T* _command;
    private T* _reserve;
    private T* _rotorForce;
    private SurroundingsLanes<T>* _around;
    private RotorFitLanes<T>* _fits;
    private int _hold;
    private int _held;
    private bool _primed;

    /// <summary>Whether the guard knows the energy of the present state.</summary>
    private bool _weighed;

    /// <summary>Room for craft of a number of rotors, 1 to <see cref="Craft.MaxRotors"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number of rotors is out of range.</exception>
    public CraftBatch(int rotorCount)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rotorCount, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(rotorCount, Craft.MaxRotors);
        RotorCount = rotorCount;
        _constants = LaneMemory.Allocate<CraftLanes<T>>();
        _field = LaneMemory.Allocate<FieldLanes<T>>();
        _load = LaneMemory.Allocate<LoadLanes<T>>(2);
        _state = LaneMemory.Allocate<T>(StateIndex.Stride);
        _derivative = LaneMemory.Allocate<T>(StateIndex.Stride);
        _nextState = LaneMemory.Allocate<T>(StateIndex.Stride);
        _nextDerivative = LaneMemory.Allocate<T>(StateIndex.Stride);
        _guard = LaneMemory.Allocate<GuardLanes<T>>();
        _scratch = LaneMemory.Allocate<T>(3 * StateIndex.Stride);
        _command = LaneMemory.Allocate<T>(Craft.MaxRotors);
        _reserve = LaneMemory.Allocate<T>(2 * Craft.MaxRotors);
        _rotorForce = LaneMemory.Allocate<T>(3);
        _around = LaneMemory.Allocate<SurroundingsLanes<T>>();
        _fits = LaneMemory.Allocate<RotorFitLanes<T>>(Craft.MaxRotors);
        _constants->RotorCount = rotorCount;
        SetEffects(AirEffects.None);
    }

    /// <summary>Gives the memory back when Dispose was forgotten.</summary>
    ~CraftBatch() => Free();

    /// <summary>Rotors of every craft.</summary>
    public int RotorCount { get; }

    /// <summary>Duties of the speed controllers, one number of lanes for each rotor, 0 to 1. For controllers written over lanes.</summary>
    public T* Commands => _command;

    /// <summary>
    /// The state block, <see cref="StateIndex"/>, for controllers written over lanes; elsewhere after the next step. Change it through
    /// <see cref="SetState"/>, or call <see cref="StateChanged"/> afterwards.
    /// </summary>
    public T* State => _state;

    /// <summary>Steps so far, since <see cref="ClearSteps"/>.</summary>
    public long Steps { get; private set; }

    /// <summary>Lets the count of steps begin anew.</summary>
    public void ClearSteps() => Steps = 0;

    /// <summary>Says that <see cref="State"/> was changed from outside, as by contact, so that its energy is looked at anew.</summary>
    public void StateChanged() => _weighed = false;

    /// <summary>Sets the craft of a lane; lane 0 first, which fills the others too.</summary>
    /// <param name="lane">The lane.</param>
    /// <param name="craft">The craft.</param>
    /// <param name="name">Name of its build, for whatever has to be said of it.</param>
    /// <exception cref="ArgumentException">The craft has another number of rotors, or an impossible constant.</exception>
    public void SetCraft(int lane, Craft craft, string name = "")
    {
        ArgumentNullException.ThrowIfNull(craft);
        CheckLane(lane);
        if (craft.Rotors.Count != RotorCount)
            throw new ArgumentException($"The craft has {craft.Rotors.Count} rotors; this batch flies {RotorCount}.", nameof(craft));
        for (int n = lane; n < EndOf(lane); n++)
        {
            CraftPacking.Pack(_constants, n, craft);
            CraftPacking.PackSurroundings(_around, n, craft);
            CraftPacking.PackGuard(_guard, n, craft);
            (_craft[n], _names[n]) = (craft, name);
        }
        _primed = _weighed = false;
    }

    /// <summary>Sets air and gravity of a lane: density kg/m^3, gravity m/s^2, wind in the world, m/s; lane 0 fills all.</summary>
    public void SetField(int lane, double density, double gravity, Vec3 wind_W = default)
    {
        CheckLane(lane);
        for (int n = lane; n < EndOf(lane); n++)
        {
            LaneMemory.Set(&_field->Density, n, density);
            LaneMemory.Set(&_field->Gravity, n, gravity);
            LaneMemory.Set(&_field->WindX, n, wind_W.X);
            LaneMemory.Set(&_field->WindY, n, wind_W.Y);
            LaneMemory.Set(&_field->WindZ, n, wind_W.Z);
        }
        _held = 0;
        _weighed = false;
    }

    /// <summary>
    /// Which effects of moving air act on all lanes, and where flat ground lies. Sets all lanes back to free air. Before this
    /// is called there are none. What wakes and ground do changes with <see cref="RefreshSurroundings"/> only.
    /// </summary>
    /// <param name="effects">The effects.</param>
    /// <param name="ground">Height of flat ground in the world, along +z (down), m.</param>
    public void SetEffects(AirEffects effects, double ground = double.PositiveInfinity)
    {
        _effects = effects;
        _constants->DynamicInflow = (effects & AirEffects.DynamicInflow) != 0 ? 1 : 0;
        _around->Ground = T.Of(ground);
        ClearAir();
    }

    /// <summary>What the rotors of all lanes fly by from here on; their tables before this is called.</summary>
    /// <param name="model">The model.</param>
    /// <param name="hold">
    /// Steps for which polynomials hold, 16 unless said otherwise, 4 ms at 4000 steps a second; without effect on tables. Their error
    /// grows with its square.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">The hold is shorter than a step.</exception>
    public void SetRotorModel(RotorModel model, int hold = 16)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(hold, 1);
        (_hold, _held) = (model == RotorModel.Polynomials ? hold : 0, 0);
    }

    /// <summary>
    /// Works out what wakes and ground do to each rotor's thrust from here on. Call it at equal intervals, of at most a few
    /// milliseconds; the result depends on the states, the seed and the count only.
    /// </summary>
    /// <param name="seed">Seed of the wakes' noise.</param>
    /// <param name="count">Which call this is; counts the draws of noise.</param>
    /// <param name="interval">Time between calls, s.</param>
    public void RefreshSurroundings(int seed, long count, double interval)
    {
        if ((_effects & (AirEffects.Wake | AirEffects.Ground)) == 0) return;
        Kernel<T>.Flow(_state, _constants, _field, _load + 1, _scratch);
        Surroundings<T>.Refresh(_state, _constants, _field, _load + 1, _around, _effects, new(seed, count, interval));
    }

    /// <summary>Sets the state of a lane; lane 0 fills all. Its wakes begin anew.</summary>
    public void SetState(int lane, in CraftState state)
    {
        CheckLane(lane);
        Span<double> block = stackalloc double[StateIndex.Stride];
        StateBlock.Write(state, RotorCount, block);
        for (int n = lane; n < EndOf(lane); n++)
        {
            for (int i = 0; i < StateIndex.Stride; i++)
            {
                LaneMemory.Set(_state + i, n, block[i]);
                // what is not integrated has to stand in both blocks
                LaneMemory.Set(_nextState + i, n, block[i]);
            }
            CraftPacking.ClearSurroundings(_around, _field, n);
        }
        _primed = _weighed = false;
    }

    /// <summary>Sets one speed controller's duty, 0 to 1; lane 0 fills all.</summary>
    public void SetCommand(int lane, int rotor, double duty)
    {
        CheckLane(lane);
        for (int n = lane; n < EndOf(lane); n++) LaneMemory.Set(_command + rotor, n, duty);
    }

    /// <summary>Moves every lane by one step (s), with the commands held, and looks whether all invariants hold (<see cref="Guard"/>).</summary>
    /// <exception cref="FlightFaultException">They do not; the state stays where it was before the step.</exception>
    public void Step(Integrator integrator, double step)
    {
        if (!_weighed) Weigh(integrator, step);
        bool primed = _primed, fits = false;
        if (integrator == Integrator.RungeKutta)
        {
            Kernel<T>.RungeKuttaStep(_state, _nextState, _command, _constants, _field, _load, _scratch, step);
            _primed = false;
        }
        else
        {
            if (!_primed)
            {
                _derivative[StateIndex.Charge] = T.Of(0);
                Kernel<T>.Derivative(_state, _command, _constants, _field, _load, _derivative);
                (_primed, _held) = (true, 0);
            }
            if (_hold > 0)
            {
                fits = _held == 0;
                if (fits) FitRotors(step);
                _held = (_held + 1) % _hold;
                _constants->Fits = _fits;
            }
            Kernel<T>.MidpointStep(
                _state, _derivative, _nextState, _nextDerivative, _command, _constants, _field, _load, _scratch, step);
            _constants->Fits = null;
        }
        if (!Kernel<T>.IsSound(_nextState, _constants, _field, _guard, step)) throw Fault(integrator, step, primed, fits);
        T* before = _state, slope = _derivative;
        _state = _nextState;
        _nextState = before;
        _derivative = _nextDerivative;
        _nextDerivative = slope;
        Steps++;
    }

    /// <summary>Mixes the bits of a lane's state, rotors included, into a running 64-bit FNV-1a hash.</summary>
    public ulong Hash(int lane, ulong seed = StateHash.Start)
    {
        int used = StateIndex.Used(RotorCount, (_effects & AirEffects.DynamicInflow) != 0);
        for (int i = 0; i < used; i++) seed = StateHash.Mix(seed, LaneMemory.Get(_state + i, lane));
        return seed;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Free();
        GC.SuppressFinalize(this);
    }

    private static int EndOf(int lane) => lane == 0 ? T.Width : lane + 1;

    private static void CheckLane(int lane)
    {
        if ((uint)lane >= (uint)T.Width)
            throw new ArgumentOutOfRangeException(nameof(lane), lane, $"This batch has lanes 0 to {T.Width - 1}.");
    }

    /// <summary>Looks at a state that came from outside, whose energy may be any.</summary>
    private void Weigh(Integrator integrator, double step)
    {
        _guard->Energy = T.Of(double.PositiveInfinity);
        if (!Kernel<T>.IsSound(_state, _constants, _field, _guard, step)) throw Fault(integrator, step, primed: false, fits: false);
        _weighed = true;
    }

    /// <summary>Time to the middle of that for which polynomials hold, s.</summary>
    private double FitAhead(double step) => 0.5 * step * _hold;

    private void FitRotors(double step) =>
        Kernel<T>.FitRotors(_state, _derivative, FitAhead(step), _constants, _field, _load, _scratch, _fits);

    private void ClearAir()
    {
        for (int lane = 0; lane < T.Width; lane++) CraftPacking.ClearSurroundings(_around, _field, lane);
        _primed = false;
    }

    private void Free()
    {
        LaneMemory.Free(_constants);
        LaneMemory.Free(_field);
        LaneMemory.Free(_load);
        LaneMemory.Free(_state);
        LaneMemory.Free(_derivative);
        LaneMemory.Free(_nextState);
        LaneMemory.Free(_nextDerivative);
        LaneMemory.Free(_guard);
        LaneMemory.Free(_scratch);
        LaneMemory.Free(_command);
        LaneMemory.Free(_reserve);
        LaneMemory.Free(_rotorForce);
        LaneMemory.Free(_around);
        LaneMemory.Free(_fits);
        _constants = null;
        _field = null;
        _load = null;
        _state = null;
        _derivative = null;
        _nextState = null;
        _nextDerivative = null;
        _guard = null;
        _scratch = null;
        _command = null;
        _reserve = null;
        _rotorForce = null;
        _around = null;
        _fits = null;
    }
}
