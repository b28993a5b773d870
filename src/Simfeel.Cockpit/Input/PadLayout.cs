using System.Globalization;

namespace Simfeel.Cockpit.Input;

/// <summary>
/// Where the sticks and buttons of a known gamepad are among the raw axes, buttons and hats: SDL's own mapping text, such
/// as <c>leftx:a0,righty:a4~,dpup:h0.1,a:b0</c>.
/// </summary>
public sealed class PadLayout
{
    private static readonly int Buttons = Enum.GetValues<PadButton>().Length;
    private static readonly string[] Sticks = ["leftx", "lefty", "rightx", "righty"];

    private readonly StickSwitch?[] _buttons = new StickSwitch?[Buttons];
    private readonly Dictionary<string, (int Axis, bool Inverted)> _axes = new(StringComparer.Ordinal);

    private PadLayout()
    {
    }

    /// <summary>Takes a mapping text apart; null where it does not name two sticks.</summary>
    public static PadLayout? Parse(string mapping)
    {
        PadLayout layout = new();
        // guid, name, then the fields
        foreach (string field in (mapping ?? "").Split(',').Skip(2))
        {
            int colon = field.IndexOf(':', StringComparison.Ordinal);
            if (colon > 0) layout.Add(field[..colon], field[(colon + 1)..]);
        }
        return Sticks.All(layout._axes.ContainsKey) ? layout : null;
    }

    /// <summary>A bit for each button that is down, by the number of its <see cref="PadButton"/>.</summary>
    public uint Pressed(StickDevice device)
    {
        uint pressed = 0;
        for (int n = 0; n < _buttons.Length; n++)
        {
            if (_buttons[n] is StickSwitch one && one.IsOn(device)) pressed |= 1u << n;
        }
        return pressed;
    }

    /// <summary>
    /// A pad as it is usually flown: left stick throttle and yaw, right stick pitch and roll (mode 2), the middle of the
    /// throttle stick being hover. The deadband of 8 % is common practice for gamepads; the wizard measures it.
    /// </summary>
    public StickProfile Profile(StickDevice device)
    {
        ArgumentNullException.ThrowIfNull(device);
        return new()
        {
            Guid = device.Guid,
            Name = device.Name,
            AxisCount = device.Axes.Length,
            Roll = Axis("rightx", 1),
            Pitch = Axis("righty", 1),
            Yaw = Axis("leftx", 1),
            // down is positive in SDL
            Throttle = Axis("lefty", -1),
            ThrottleMode = ThrottleMode.CentreHover,
        };
    }

    private StickAxis Axis(string name, int sign)
    {
        (int axis, bool inverted) = _axes[name];
        return new() { Axis = axis, Inverted = inverted != sign < 0, Deadband = (int)(0.08 * short.MaxValue) };
    }

    private void Add(string name, string where)
    {
        bool inverted = where.EndsWith('~');
        string place = where.TrimEnd('~');
        char half = place.Length > 0 && place[0] is '+' or '-' ? place[0] : ' ';
        if (half != ' ') place = place[1..];
        if (place.Length < 2) return;
        string number = place[1..];
        if (place[0] == 'a' && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out int axis))
        {
            if (half == ' ') _axes[name] = (axis, inverted);
            else SetButton(name, new(half == '+' ? StickSwitchKind.AxisAbove : StickSwitchKind.AxisBelow, axis));
        }
        else if (place[0] == 'b' && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out int button))
        {
            SetButton(name, new(StickSwitchKind.Button, button));
        }
        else if (place[0] == 'h' && number.Split('.') is [string hat, string bit]
            && int.TryParse(hat, NumberStyles.None, CultureInfo.InvariantCulture, out int which)
            && int.TryParse(bit, NumberStyles.None, CultureInfo.InvariantCulture, out int direction))
        {
            SetButton(name, new(StickSwitchKind.Hat, which, direction));
        }
    }

    private void SetButton(string name, StickSwitch one)
    {
        if (Enum.TryParse(name, ignoreCase: true, out PadButton button) && !char.IsDigit(name[0])) _buttons[(int)button] = one;
    }
}
