using Simfeel.Flight;

namespace Simfeel.Benchmarks.Soak;

/// <summary>
/// A seeded pilot without plan: holds sticks somewhere for a while, moves on, flips switches, swaps, crashes, waits a little and
/// starts again. The same seed gives the same inputs to the same session.
/// </summary>
internal sealed class ErraticPilot(int seed)
{
    /// <summary>Farther from the pad the pilot gives up and starts again, m.</summary>
    private const double Farthest = 400;

    private readonly Random _random = new(seed);
    private Sticks _wanted, _now;
    private PilotSwitches _held = PilotSwitches.Armed;
    private double _until, _crashedFor;
    private bool _wasCrashed;

    /// <summary>Crashes of the flown craft.</summary>
    public int Crashes { get; private set; }

    /// <summary>Restarts, with or without a change of craft.</summary>
    public int Restarts { get; private set; }

    /// <summary>Changes of the flown craft.</summary>
    public int Swaps { get; private set; }

    /// <summary>What the pilot does at the next reading.</summary>
    public PilotInput Next(FlightSession session, double period)
    {
        PilotSwitches pressed = Presses(session, period);
        double hover = session.Unit(session.Flown).Throttle.HoverStick;
        // a craft arms at a low throttle only
        if (session.Time < 0.2 || pressed != PilotSwitches.None) (_until, _wanted) = (session.Time, new(0, 0, 0, 0));
        else if (session.Time >= _until) Choose(session.Time, hover);
        double most = period / 0.1;
        _now = new(
            Toward(_now.Roll, _wanted.Roll, most), Toward(_now.Pitch, _wanted.Pitch, most), Toward(_now.Yaw, _wanted.Yaw, most),
            Toward(_now.Throttle, _wanted.Throttle, most));
        return PilotInput.Of(_now, _held | pressed);
    }

    private PilotSwitches Presses(FlightSession session, double period)
    {
        bool crashed = session.Condition(session.Flown).Crashed;
        if (crashed && !_wasCrashed) Crashes++;
        _wasCrashed = crashed;
        _crashedFor = crashed ? _crashedFor + period : 0;
        bool gone = session.State(session.Flown).p_WB.Length > Farthest;
        // a pack lasts some minutes; then a fresh one
        if (_crashedFor > 1.5 || gone || session.Time > 240)
        {
            (_crashedFor, _now) = (0, default);
            Restarts++;
            if (_random.Next(2) == 0) return PilotSwitches.Restart;
            Swaps++;
            return PilotSwitches.SwapFromStart;
        }
        // in place about once in two minutes
        if (_random.NextDouble() > period / 120) return PilotSwitches.None;
        Swaps++;
        return PilotSwitches.SwapInPlace;
    }

    private void Choose(double time, double hover)
    {
        _until = time + 0.1 + (1.5 * _random.NextDouble());
        bool calm = _random.Next(3) > 0;
        double reach = calm ? 0.25 : 1, push = _random.Next(8) == 0 ? 1 : _random.NextDouble();
        _wanted = new(reach * Deflection(), reach * Deflection(), 0.6 * reach * Deflection(), calm ? hover + (0.25 * (push - 0.4)) : push);
        _held = PilotSwitches.Armed;
        if (_random.Next(10) < 7) _held |= PilotSwitches.Level;
        if (_random.Next(10) < 3) _held |= PilotSwitches.Climb;
        if (_random.Next(10) < 2) _held |= PilotSwitches.Shadow;
    }

    private double Deflection() => (2 * _random.NextDouble()) - 1;

    private static double Toward(double from, double to, double most) => from + Math.Clamp(to - from, -most, most);
}
