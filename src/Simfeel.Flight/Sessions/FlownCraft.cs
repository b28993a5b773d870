using Simfeel.Flight.Contact;
using Simfeel.Flight.Control;
using Simfeel.Physics;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight;

/// <summary>One craft of a session: its loop, whether it is armed, and how it fares.</summary>
internal sealed class FlownCraft : IDisposable
{
    /// <summary>
    /// Fastest approach of a touching part that a craft survives, m/s: about a fall from 0.8 m (common practice: such
    /// falls do no harm).
    /// </summary>
    private const double SafeImpact = 4;

    /// <summary>Above the hover stick by this much, a craft still arms.</summary>
    private const double ThrottleRoom = 0.02;

    /// <summary>A craft lies where it tilts by more than 60 degrees (cosine) and stays slower than this, m/s, for a time, s.</summary>
    private const double LyingTilt = 0.5, LyingSpeed = 0.2, LyingTime = 1;

    private readonly PilotProfile _profile;
    private readonly FlightLoop<Lane1> _loop;
    private readonly ThrottleCurve _throttle;
    private readonly bool _onField;
    private double _lying;

    /// <summary>A craft; on a field it starts on the ground, else in the air.</summary>
    public FlownCraft(TunedUnit unit, PilotProfile profile, FieldConditions conditions, ContactWorld? field)
    {
        Unit = unit;
        _profile = profile;
        _throttle = unit.Throttle;
        _onField = field is not null;
        _loop = new(unit.Unit.Craft.Rotors.Count, profile, field is null ? conditions : conditions with { StartHeight = 0 }, field);
        _loop.SetUnit(0, unit, unit.Hover.State);
    }

    /// <summary>The craft.</summary>
    public TunedUnit Unit { get; }

    /// <summary>Throttle stick at which it hovers, 0 to 1.</summary>
    public double HoverStick => _throttle.HoverStick;

    /// <summary>Its rotors may turn.</summary>
    public bool Armed { get; private set; }

    /// <summary>It crashed.</summary>
    public bool Crashed { get; private set; }

    /// <summary>Rates about the body axes that were commanded last, rad/s.</summary>
    public Vec3 CommandedRate { get; private set; }

    /// <summary>Its state.</summary>
    public CraftState State => _loop.Batch.GetState(0);

    /// <summary>How it fares.</summary>
    public CraftCondition Condition
    {
        get
        {
            CraftContact? contact = _loop.Contact(0);
            return contact is null
                ? new(Armed, Crashed, 0, false, 0)
                : new(Armed, Crashed, contact.StruckRotors, contact.Touching, contact.ImpactSpeed);
        }
    }

    /// <summary>Everything about it, evaluated at its present state.</summary>
    public Sample Sample()
    {
        _loop.Batch.Evaluate();
        return _loop.Batch.GetSample(0);
    }

    /// <summary>Mends it and puts it somewhere.</summary>
    public void Place(in CraftState state, bool armed)
    {
        _loop.Place(0, Unit, state);
        Crashed = false;
        _lying = 0;
        CommandedRate = default;
        Armed = armed;
        _loop.SetMotors(0, armed);
    }

    /// <summary>Flies one stick reading with the sticks that the radio hands on; the switches act at once.</summary>
    public void Fly(Sticks heard, in PilotInput input)
    {
        PilotSwitches switches = input.Switches;
        if (_onField) Arm(Math.Max(heard.Throttle, input.Sticks.Throttle), input.Has(PilotSwitches.Armed));
        CraftState state = State;
        Vec3 rate = (switches & PilotSwitches.Level) != 0
            ? SelfLevelling.Rate(state, heard, Unit, _profile)
            : _profile.RateFor(heard);
        double collective = (switches & PilotSwitches.Climb) != 0
            ? SelfLevelling.Collective(state, heard, Unit, _throttle.HoverStick, _loop.Contact(0)?.Touching ?? false)
            : _throttle.Share(heard.Throttle);
        CommandedRate = rate;
        _loop.SetCommand(0, rate, collective);
        for (int step = 0; step < _profile.StepsPerStickReading; step++) _loop.Tick();
        if (_loop.Contact(0) is CraftContact contact) Judge(contact);
    }

    /// <summary>Mixes the bits of its state and fortunes into a running hash.</summary>
    public ulong Hash(ulong seed)
    {
        ulong hash = _loop.Batch.Hash(0, seed);
        long fortunes = ((_loop.Contact(0)?.StruckRotors ?? 0) << 2) | (Armed ? 1 : 0) | (Crashed ? 2 : 0);
        return Physics.Kernel.StateHash.Mix(hash, fortunes);
    }

    /// <inheritdoc/>
    public void Dispose() => _loop.Dispose();

    private void Arm(double throttle, bool wanted)
    {
        bool armed = wanted && !Crashed && (Armed || throttle <= _throttle.HoverStick + ThrottleRoom);
        if (armed == Armed) return;
        Armed = armed;
        if (armed) _loop.ResetController(0, Unit);
        _loop.SetMotors(0, armed);
    }

    private void Judge(CraftContact contact)
    {
        if (Crashed) return;
        CraftState state = State;
        bool lies = contact.Touching && state.q_WB.ToMatrix().M22 < LyingTilt && state.v_WB.Length < LyingSpeed;
        _lying = lies ? _lying + _profile.StickPeriod : 0;
        int struck = System.Numerics.BitOperations.PopCount((uint)contact.StruckRotors);
        if (contact.ImpactSpeed <= SafeImpact && struck < 2 && !contact.Wet && _lying < LyingTime) return;
        Crashed = true;
        Armed = false;
        _loop.SetMotors(0, false);
    }
}
