using Simfeel.Cockpit.Input.Wizard;

namespace Simfeel.Cockpit.Input;

/// <summary>
/// Waits for a button, hat or switch to be used, and sees whether it stays (a switch) or comes back (a button).
/// </summary>
/// <param name="device">The device.</param>
/// <param name="rest">The untouched device.</param>
/// <param name="names">For each axis the control that has it already; null for a free one.</param>
internal sealed class ArmWatcher(StickDevice device, RestMeter rest, StickControl?[] names)
{
    // a switch on an axis goes from one end to another or to the middle
    private const int Flip = 12_000;

    /// <summary>What comes back sooner than this is a button, s.</summary>
    private const double Press_s = 1;

    private readonly short[] _axes = device.Axes.ToArray();
    private readonly bool[] _buttons = device.Buttons.ToArray();
    private readonly byte[] _hats = device.Hats.ToArray();
    private double _seconds;

    /// <summary>What was used; null while nothing was.</summary>
    public StickSwitch? Found { get; private set; }

    /// <summary>It stays on.</summary>
    public bool IsSwitch { get; private set; }

    /// <summary>It is known what it is like.</summary>
    public bool IsDone { get; private set; }

    /// <summary>Takes a look.</summary>
    public void Look(double seconds)
    {
        if (Found is not StickSwitch one)
        {
            Found = Search();
            return;
        }
        _seconds += seconds;
        bool isOn = one.IsOn(device);
        IsSwitch = isOn && _seconds >= Press_s;
        IsDone = !isOn || IsSwitch;
    }

    private StickSwitch? Search()
    {
        for (int n = 0; n < _buttons.Length; n++)
        {
            // one that is down at the start can be used once it came up
            bool pressed = device.Buttons[n] && !_buttons[n];
            _buttons[n] = device.Buttons[n];
            if (pressed) return new(StickSwitchKind.Button, n);
        }
        for (int n = 0; n < _hats.Length; n++)
        {
            int pressed = device.Hats[n] & ~_hats[n];
            _hats[n] = device.Hats[n];
            if (pressed != 0) return new(StickSwitchKind.Hat, n, pressed & -pressed);
        }
        for (int n = 0; n < _axes.Length; n++)
        {
            int now = device.Axes[n];
            if (names[n] is not null || rest.IsRestless(n) || Math.Abs(now - _axes[n]) < Flip) continue;
            if (now > StickSwitch.Threshold) return new(StickSwitchKind.AxisAbove, n);
            if (now < -StickSwitch.Threshold) return new(StickSwitchKind.AxisBelow, n);
        }
        return null;
    }
}
