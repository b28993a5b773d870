using Simfeel.Cockpit.Graphics.Aircraft;
using Simfeel.Flight;
using Simfeel.Flight.Traces;
using Simfeel.Physics;
using Simfeel.Studies.Flights;

namespace Simfeel.Cockpit.Stage;

/// <summary>
/// A flight as a window shows it: hands the session one input at every stick reading that is due, keeps what frames and
/// results need, and records. Knows no graphics and no wall clock, so tests drive it as they like. The same inputs give
/// the same bits whatever the frames were. Nothing is allocated in flight.
/// </summary>
public sealed class FlightStage : IDisposable
{
    private const PilotSwitches Jumps = PilotSwitches.Restart | PilotSwitches.SwapFromStart | PilotSwitches.SwapInPlace;

    private readonly FlightSession _session;
    private readonly PilotProfile _profile;
    private readonly FlightClock _clock;
    private readonly PoseHistory[] _history = [new(), new()];
    private readonly int[][] _spins;
    private PilotSwitches _held;
    private PilotSwitches _pulses;

    /// <summary>A stage over a session, which it then owns.</summary>
    /// <param name="session">The session.</param>
    /// <param name="profile">The profile it flies with.</param>
    public FlightStage(FlightSession session, PilotProfile profile)
    {
        _session = session;
        _profile = profile;
        _clock = new(profile.StickPeriod);
        _spins = [Spins(session.Unit(0)), Spins(session.Unit(1))];
        Present = session.Sample(session.Flown);
        Remember();
    }

    /// <summary>The session.</summary>
    public FlightSession Session => _session;

    /// <summary>What was found in the flights so far.</summary>
    public FlightFinds Finds { get; } = new();

    /// <summary>Receives every input and its outcome; null while nothing is recorded.</summary>
    public TraceRecorder? Recorder { get; set; }

    /// <summary>Receives every input; null while nobody keeps them.</summary>
    public List<PilotInput>? Inputs { get; set; }

    /// <summary>Inputs that are flown instead of the sticks; null in a live flight.</summary>
    public IInputTape? Tape { get; set; }

    /// <summary>The flown craft at the last reading.</summary>
    public Sample Present { get; private set; }

    /// <summary>Hardest approach of a contact since it was last set to 0, m/s.</summary>
    public double Impact { get; set; }

    /// <summary>The input flown last.</summary>
    public PilotInput Last { get; private set; }

    /// <summary>Speed of time, 0.1 to 1.</summary>
    public double Speed => _clock.Speed;

    /// <summary>Time is held.</summary>
    public bool Paused
    {
        get => _clock.Paused;
        set => _clock.Paused = value;
    }

    /// <summary>Number of readings since the session began at which time is held by itself; never where it is passed already.</summary>
    public long HoldAt { get; set; } = long.MaxValue;

    /// <summary>Whether a switch is held on.</summary>
    public bool IsOn(PilotSwitches one) => (_held & one) != 0;

    /// <summary>Holds switches on or off.</summary>
    public void Hold(PilotSwitches switches, bool on) => _held = on ? _held | switches : _held & ~switches;

    /// <summary>Presses switches for the next reading only: restart and swaps.</summary>
    public void Press(PilotSwitches pulses) => _pulses |= pulses;

    /// <summary>Next slower speed of time.</summary>
    public void Slower() => _clock.Slower();

    /// <summary>Next faster speed of time.</summary>
    public void Faster() => _clock.Faster();

    /// <summary>Flies all readings that some wall time (s) brings; returns how many.</summary>
    public int Advance(double seconds, in Sticks sticks)
    {
        int due = _clock.Due(seconds);
        for (int n = 0; n < due; n++)
        {
            Fly(sticks);
            if (_session.Readings != HoldAt) continue;
            Paused = true;
            return n + 1;
        }
        return due;
    }

    /// <summary>Flies a tape on as fast as the machine can, up to a number of readings since the session began.</summary>
    /// <param name="reading">Where to.</param>
    /// <param name="most">Most readings of this call.</param>
    /// <returns>Whether it is there.</returns>
    public bool Wind(long reading, int most)
    {
        for (int n = 0; n < most && _session.Readings < reading; n++)
        {
            long before = _session.Readings;
            Fly(default);
            if (_session.Readings == before) return true;
        }
        return _session.Readings >= reading;
    }

    /// <summary>Flies one reading while time is held.</summary>
    public void SingleStep(in Sticks sticks) => Fly(sticks);

    /// <summary>Fills in place, attitude and rotors of a craft as they were some time ago (s).</summary>
    public void Pose(int craft, double delay, ref CraftPose pose) =>
        _history[craft].Read((delay / _profile.StickPeriod) + 1 - _clock.Fraction, ref pose);

    /// <inheritdoc/>
    public void Dispose() => _session.Dispose();

    private void Fly(in Sticks sticks)
    {
        PilotInput input;
        if (Tape is not null)
        {
            if (!Tape.TryNext(out input))
            {
                Paused = true;
                return;
            }
        }
        else
        {
            input = PilotInput.Of(sticks, _held | _pulses);
        }
        _pulses = PilotSwitches.None;
        Last = input;
        if ((input.Switches & Jumps) != 0) Interrupt();
        _session.Fly(input);
        Recorder?.Add(input, _session);
        Inputs?.Add(input);
        int flown = _session.Flown;
        Present = _session.Sample(flown);
        CraftCondition condition = _session.Condition(flown);
        Finds.Take(flown, Present, input.Sticks, condition, _profile.StickPeriod, input.Switches);
        if (condition.ImpactSpeed > Impact) Impact = condition.ImpactSpeed;
        Remember();
    }

    private void Interrupt()
    {
        Finds.Interrupt(0);
        Finds.Interrupt(1);
    }

    private static int[] Spins(TunedUnit unit) => [.. unit.Unit.Craft.Rotors.Select(rotor => rotor.Spin)];

    private void Remember()
    {
        for (int craft = 0; craft < 2; craft++)
        {
            CraftCondition condition = _session.Condition(craft);
            CraftState state = _session.State(craft);
            _history[craft].Add(state, _spins[craft], condition.StruckRotors, _profile.StickPeriod);
        }
    }
}
