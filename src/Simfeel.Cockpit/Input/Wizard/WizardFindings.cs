using System.Collections.Immutable;
using Simfeel.Cockpit.Input.Wizard;
using Simfeel.Flight;

namespace Simfeel.Cockpit.Input;

/// <summary>What the wizard knows so far of a device.</summary>
internal sealed class WizardFindings(StickDevice device)
{
    private static readonly int Controls = Enum.GetValues<StickControl>().Length;

    private readonly StickAxis?[] _axes = new StickAxis?[Controls];
    private StickSwitch? _arm;
    private bool _armFollows;

    /// <summary>What the throttle control is like.</summary>
    public ThrottleMode ThrottleMode { get; set; }

    /// <summary>For each axis of the device the control that has it; null for a free one.</summary>
    public StickControl?[] Names()
    {
        var names = new StickControl?[device.Axes.Length];
        for (int n = 0; n < Controls; n++)
        {
            if (_axes[n] is StickAxis axis) names[axis.Axis] = (StickControl)n;
        }
        return names;
    }

    /// <summary>Takes over what a move has shown.</summary>
    public void Set(StickControl control, MoveWatcher move, RestMeter rest)
    {
        int noise = rest.Noise(move.Axis);
        bool centred = control != StickControl.Throttle || move.IsCentring;
        // a stick seldom comes back to the very place: the middle of both rests, and a deadband that covers them
        int before = move.Start;
        int centre = centred ? (before + move.End) / 2 : before;
        int scatter = centred ? Math.Abs(before - move.End) / 2 : 0;
        // the last hundredth is left to noise, so that both ends are reached every time
        int margin = noise + ((move.High - move.Low) / 100);
        int low = Math.Min(move.Low + margin, centre), high = Math.Max(move.High - margin, centre);
        _axes[(int)control] = new()
        {
            Axis = move.Axis,
            Low = low,
            High = high,
            Centre = Math.Clamp(centre, low, high),
            Inverted = move.IsInverted,
            Deadband = Math.Min((int)Math.Ceiling(1.25 * noise) + scatter + 64, (high - low) / 8),
        };
        // an end where it rests is above its noise already
        if (!centred) _axes[(int)control] = Throttle(_axes[(int)control]!, move, margin);
    }

    /// <summary>Forgets a control.</summary>
    public void Forget(StickControl control) => _axes[(int)control] = null;

    /// <summary>Forgets or sets what arms.</summary>
    public void SetArm(StickSwitch? arm, bool follows) => (_arm, _armFollows) = (arm, follows);

    /// <summary>Turns a control round.</summary>
    public void Reverse(StickControl control)
    {
        if (_axes[(int)control] is StickAxis axis) _axes[(int)control] = axis with { Inverted = !axis.Inverted };
    }

    /// <summary>The profile; all four controls have to be known.</summary>
    public StickProfile Profile() => new()
    {
        Guid = device.Guid,
        Name = device.Name,
        AxisCount = device.Axes.Length,
        Roll = _axes[(int)StickControl.Roll]!,
        Pitch = _axes[(int)StickControl.Pitch]!,
        Yaw = _axes[(int)StickControl.Yaw]!,
        Throttle = _axes[(int)StickControl.Throttle]!,
        ThrottleMode = ThrottleMode,
        Switches = _arm is StickSwitch arm
            ? ImmutableDictionary<PilotAction, StickSwitch>.Empty.Add(PilotAction.Arm, arm)
            : ImmutableDictionary<PilotAction, StickSwitch>.Empty,
        ArmFollowsSwitch = _arm is not null && _armFollows,
    };

    /// <summary>Sticks by what is known; a control that is not stands at rest.</summary>
    public Sticks Live(double hoverStick)
    {
        double throttle = _axes[(int)StickControl.Throttle] is not StickAxis axis ? 0
            : ThrottleMode is ThrottleMode.Normal or ThrottleMode.Trigger ? axis.FromEnd(device.Axes[axis.Axis])
            : StickProfile.AboutHover(axis.FromCentre(device.Axes[axis.Axis]), hoverStick);
        return new(Centred(StickControl.Roll), Centred(StickControl.Pitch), Centred(StickControl.Yaw), throttle);

        double Centred(StickControl control) => _axes[(int)control] is StickAxis one ? one.FromCentre(device.Axes[one.Axis]) : 0;
    }

    /// <summary>Of a throttle that rests at an end, both ends count with a margin and the rest is the lower end.</summary>
    private static StickAxis Throttle(StickAxis axis, MoveWatcher move, int margin)
    {
        int low = move.Low + margin, high = move.High - margin;
        return axis with { Low = low, High = high, Centre = axis.Inverted ? high : low };
    }
}
