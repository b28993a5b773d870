using Simfeel.Physics;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight;

/// <summary>
/// Two craft and one pilot: one craft is flown, the other waits or flies along with the same sticks as a shadow. Swap
/// changes which one is flown, in place or from the start. Time advances in whole stick readings, so what happens depends
/// on the sticks handed in and on nothing else: the same sticks give the same bits.
/// </summary>
public sealed class FlightSession : IDisposable
{
    private readonly PilotProfile _profile;
    private readonly TunedUnit[] _units;
    private readonly FlightLoop<Lane1>[] _loops;
    private readonly ThrottleCurve[] _throttles;
    private readonly Sticks[] _radio;
    private long _readings;

    /// <summary>A session over two tuned craft, the first one flown, both at their start.</summary>
    public FlightSession(TunedUnit a, TunedUnit b, PilotProfile profile, FieldConditions field)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        ArgumentNullException.ThrowIfNull(profile);
        ArgumentNullException.ThrowIfNull(field);
        _profile = profile;
        _units = [a, b];
        _loops = [.. _units.Select(unit => new FlightLoop<Lane1>(unit.Unit.Craft.Rotors.Count, profile, field))];
        _throttles = [.. _units.Select(unit => unit.Throttle)];
        _radio = new Sticks[1 + (int)Math.Round(profile.RadioDelay / profile.StickPeriod)];
        Restart();
    }

    /// <summary>0 or 1: the craft that is flown.</summary>
    public int Flown { get; private set; }

    /// <summary>
    /// Whether the other craft flies along with the same sticks; it hovers elsewhere on the throttle stick, so it climbs or
    /// sinks beside the flown one. Switched on in flight, it sets out from where it stands.
    /// </summary>
    public bool Shadow { get; set; }

    /// <summary>Time since the last restart, s.</summary>
    public double Time => _readings * _profile.StickPeriod;

    /// <summary>A craft (0 or 1).</summary>
    public TunedUnit Unit(int craft) => _units[craft];

    /// <summary>Everything about a craft (0 or 1), evaluated at its present state.</summary>
    public Sample Sample(int craft)
    {
        _loops[craft].Batch.Evaluate();
        return _loops[craft].Batch.GetSample(0);
    }

    /// <summary>Puts both craft back to their start: level hover, sticks centred, throttle at hover.</summary>
    public void Restart()
    {
        for (int craft = 0; craft < 2; craft++) _loops[craft].SetUnit(0, _units[craft], _units[craft].Hover.State);
        Array.Fill(_radio, new Sticks(0, 0, 0, _throttles[Flown].HoverStick));
        _readings = 0;
    }

    /// <summary>Flies the other craft, both back at the start.</summary>
    public void SwapFromStart()
    {
        Flown = 1 - Flown;
        Restart();
    }

    /// <summary>
    /// Flies the other craft from where this one is: it takes over place, velocity, attitude and rates, with its own
    /// rotors at hover speed and its own pack at the start's charge.
    /// </summary>
    public void SwapInPlace()
    {
        CraftState here = _loops[Flown].Batch.GetState(0);
        Flown = 1 - Flown;
        CraftState start = _units[Flown].Hover.State with
        {
            p_WB = here.p_WB,
            v_WB = here.v_WB,
            q_WB = here.q_WB,
            w_WB_B = here.w_WB_B,
        };
        _loops[Flown].SetUnit(0, _units[Flown], start);
    }

    /// <summary>Advances by one stick reading: the radio hands on the sticks of its delay ago, the craft fly on.</summary>
    public void Fly(Sticks sticks)
    {
        int slot = (int)(_readings % _radio.Length);
        _radio[slot] = sticks;
        Sticks heard = _radio[(slot + 1) % _radio.Length];
        Advance(Flown, heard);
        if (Shadow) Advance(1 - Flown, heard);
        _readings++;
    }

    /// <summary>Hash over the states of both craft, for the determinism contract.</summary>
    public ulong Hash() => _loops[1].Batch.Hash(0, _loops[0].Batch.Hash(0));

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (FlightLoop<Lane1> loop in _loops) loop.Dispose();
    }

    private void Advance(int craft, Sticks heard)
    {
        Vec3 rate = _profile.RateFor(heard);
        _loops[craft].SetCommand(0, rate, _throttles[craft].Share(heard.Throttle));
        for (int step = 0; step < _profile.StepsPerStickReading; step++) _loops[craft].Tick();
    }
}
