using Simfeel.Cockpit.Platform;
using Simfeel.Flight;

namespace Simfeel.Cockpit.Input;

/// <summary>
/// Sticks from held keys: W and S climb, A and D yaw, the arrows pitch and roll. A key knows only all or nothing, so the
/// deflection grows and falls at a rate, and a released throttle goes back to hover: it is flown with self-levelling and
/// with a throttle that commands climb (<see cref="PilotSwitches.Level"/>, <see cref="PilotSwitches.Climb"/>).
/// </summary>
public sealed class KeyboardSticks
{
    // common practice: a third of a second to the end gives time to tap small steps; letting go acts faster
    private const double ToEnd_s = 0.35, ToCentre_s = 0.12;

    private readonly bool[] _down = new bool[Keys.Count];
    private double _roll, _pitch, _yaw, _climb;

    /// <summary>The keys that fly: W, S, A, D, up, down, left, right, as scancodes.</summary>
    public static IReadOnlyList<int> Keys { get; } =
        [Scancode.W, Scancode.S, Scancode.A, Scancode.D, Scancode.Up, Scancode.Down, Scancode.Left, Scancode.Right];

    /// <summary>Throttle at which the flown craft hovers, 0 to 1; where the throttle returns to.</summary>
    public double HoverStick { get; set; } = 0.5;

    /// <summary>Where the sticks stand.</summary>
    public Sticks Sticks => new(_roll, _pitch, _yaw, StickProfile.AboutHover(_climb, HoverStick));

    /// <summary>Takes an event; all keys come up when the keyboard goes to another window.</summary>
    /// <returns>The event was a flying key's.</returns>
    public bool Handle(in WindowEvent happened)
    {
        if (happened.Kind == WindowEventKind.FocusLost) Array.Clear(_down);
        if (happened.Kind is not (WindowEventKind.KeyDown or WindowEventKind.KeyUp)) return false;
        for (int n = 0; n < _down.Length; n++)
        {
            if (Keys[n] != happened.Code) continue;
            _down[n] = happened.Kind == WindowEventKind.KeyDown;
            return true;
        }
        return false;
    }

    /// <summary>Lets time pass.</summary>
    public void Advance(double seconds)
    {
        _climb = Moved(_climb, Wanted(0, 1), seconds);
        _yaw = Moved(_yaw, Wanted(3, 2), seconds);
        // the up arrow pushes the stick away from the pilot: nose down
        _pitch = Moved(_pitch, Wanted(5, 4), seconds);
        _roll = Moved(_roll, Wanted(7, 6), seconds);
    }

    /// <summary>Sticks back to rest, keys up; at a restart.</summary>
    public void Release()
    {
        Array.Clear(_down);
        _roll = _pitch = _yaw = _climb = 0;
    }

    private double Wanted(int plus, int minus) => (_down[plus] ? 1 : 0) - (_down[minus] ? 1 : 0);

    private static double Moved(double now, double wanted, double seconds)
    {
        // towards the centre fast, beyond it at the pace of a deflection; a reversal crosses the centre in one step at most
        if (now != 0 && wanted != Math.Sign(now))
        {
            double back = seconds / ToCentre_s;
            if (Math.Abs(now) > back) return now - (Math.Sign(now) * back);
            seconds -= Math.Abs(now) * ToCentre_s;
            now = 0;
        }
        return Math.Clamp(now + (wanted * seconds / ToEnd_s), -1, 1);
    }
}
