using Simfeel.Flight.Contact;
using Simfeel.Flight.Fields;
using Simfeel.Physics;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight;

/// <summary>
/// Two craft and one pilot: one craft is flown, the other waits or flies along with the same sticks as a shadow. Swap
/// changes which one is flown, in place or from the start. Time advances in whole stick readings, and all that a pilot can
/// do is in the inputs handed in, so the same inputs give the same bits. Over a field both craft start at rest on the start
/// pad and have to be armed; without one they start in level hover, armed for good, as in drills. The two craft do not touch
/// each other. Nothing is allocated in flight.
/// </summary>
public sealed class FlightSession : IDisposable
{
    private readonly PilotProfile _profile;
    private readonly FlownCraft[] _craft;
    private readonly FieldMap? _map;
    private readonly PilotInput[] _radio;
    private long _sinceStart;

    /// <summary>A session over two tuned craft, the first one flown, both at their start.</summary>
    /// <param name="a">First craft.</param>
    /// <param name="b">Second craft.</param>
    /// <param name="profile">The pilot.</param>
    /// <param name="conditions">Effects of moving air and seed; over a field its start height counts for nothing.</param>
    /// <param name="map">The field; flat ground below a start in the air if null.</param>
    public FlightSession(TunedUnit a, TunedUnit b, PilotProfile profile, FieldConditions conditions, FieldMap? map = null)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        ArgumentNullException.ThrowIfNull(profile);
        ArgumentNullException.ThrowIfNull(conditions);
        _profile = profile;
        _map = map;
        ContactWorld? field = map is null ? null : ContactWorld.Of(map);
        _craft = [new(a, profile, conditions, field), new(b, profile, conditions, field)];
        _radio = new PilotInput[1 + (int)Math.Round(profile.RadioDelay / profile.StickPeriod)];
        Restart();
    }

    /// <summary>0 or 1: the craft that is flown.</summary>
    public int Flown { get; private set; }

    /// <summary>Whether the other craft flies along with the same sticks.</summary>
    public bool Shadow { get; private set; }

    /// <summary>Stick readings since the session began.</summary>
    public long Readings { get; private set; }

    /// <summary>Time since the last restart, s.</summary>
    public double Time => _sinceStart * _profile.StickPeriod;

    /// <summary>A craft (0 or 1).</summary>
    public TunedUnit Unit(int craft) => _craft[craft].Unit;

    /// <summary>Whether a craft (0 or 1) is in the flight: flown, or a shadow.</summary>
    public bool Flies(int craft) => craft == Flown || Shadow;

    /// <summary>State of a craft (0 or 1).</summary>
    public CraftState State(int craft) => _craft[craft].State;

    /// <summary>Everything about a craft (0 or 1), evaluated at its present state.</summary>
    public Sample Sample(int craft) => _craft[craft].Sample();

    /// <summary>How a craft (0 or 1) fares.</summary>
    public CraftCondition Condition(int craft) => _craft[craft].Condition;

    /// <summary>Rates about the body axes that the sticks or an assist commanded last of a craft (0 or 1), rad/s.</summary>
    public Vec3 CommandedRate(int craft) => _craft[craft].CommandedRate;

    /// <summary>
    /// Advances by one stick reading: switches act at once, the radio hands on the sticks of its delay ago, the craft fly on.
    /// </summary>
    public void Fly(in PilotInput input)
    {
        if (input.Has(PilotSwitches.SwapFromStart)) Flown = 1 - Flown;
        if (input.Has(PilotSwitches.Restart | PilotSwitches.SwapFromStart)) Restart();
        else if (input.Has(PilotSwitches.SwapInPlace)) SwapInPlace();
        bool shadow = input.Has(PilotSwitches.Shadow);
        // a shadow sets out beside the flown craft, not from where it was left
        if (shadow && !Shadow && Time > 0) PutBeside(1 - Flown);
        Shadow = shadow;

        int slot = (int)(Readings % _radio.Length);
        _radio[slot] = input;
        PilotInput heard = _radio[(slot + 1) % _radio.Length];
        for (int craft = 0; craft < 2; craft++)
        {
            if (Flies(craft)) _craft[craft].Fly(heard.Sticks, input);
        }
        Readings++;
        _sinceStart++;
    }

    /// <summary>Hash over the states and fortunes of both craft, for the determinism contract.</summary>
    public ulong Hash() =>
        StateHash.Mix(_craft[1].Hash(_craft[0].Hash(StateHash.Start)), Flown + (Shadow ? 2 : 0));

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (FlownCraft craft in _craft) craft.Dispose();
    }

    /// <summary>Puts both craft back to their start; the radio forgets what was on its way.</summary>
    private void Restart()
    {
        foreach (FlownCraft craft in _craft) craft.Place(StartOf(craft.Unit), armed: _map is null);
        double throttle = _map is null ? _craft[Flown].HoverStick : 0;
        Array.Fill(_radio, PilotInput.Of(new(0, 0, 0, throttle), PilotSwitches.None));
        _sinceStart = 0;
    }

    /// <summary>
    /// The other craft takes over place, velocity, attitude and rates, with its own rotors at hover speed and its own pack at the
    /// start's charge.
    /// </summary>
    private void SwapInPlace()
    {
        PutBeside(1 - Flown);
        Flown = 1 - Flown;
    }

    private void PutBeside(int craft)
    {
        FlownCraft flown = _craft[1 - craft], other = _craft[craft];
        CraftState here = flown.State;
        CraftState hover = other.Unit.Hover.State;
        CraftState state = hover with { p_WB = here.p_WB, v_WB = here.v_WB, q_WB = here.q_WB, w_WB_B = here.w_WB_B };
        if (!flown.Armed) state.RotorSpeeds = default;
        other.Place(state, flown.Armed);
    }

    private CraftState StartOf(TunedUnit unit)
    {
        if (_map is null) return unit.Hover.State;
        double height = unit.Unit.Body?.RestHeight ?? 0;
        return CraftState.AtRest(unit.Unit.Craft, _profile.StateOfCharge) with
        {
            p_WB = new(0, 0, -height),
            q_WB = Quat.FromEuler(0, 0, _map.StartHeading),
        };
    }
}
