using System.Collections.Immutable;
using Simfeel.Flight;

namespace Simfeel.Cockpit.Input;

/// <summary>How the axes and buttons of one device are flown. Found by the wizard, or by the layout of a known gamepad.</summary>
public sealed record StickProfile
{
    /// <summary>Identity of the device's kind, 32 hexadecimal digits, as SDL gives it.</summary>
    public required string Guid { get; init; }

    /// <summary>Name that the device gives itself.</summary>
    public required string Name { get; init; }

    /// <summary>How many axes the device has.</summary>
    public required int AxisCount { get; init; }

    /// <summary>Roll; right is positive.</summary>
    public required StickAxis Roll { get; init; }

    /// <summary>Pitch; nose up, the stick towards the pilot, is positive.</summary>
    public required StickAxis Pitch { get; init; }

    /// <summary>Yaw; right is positive.</summary>
    public required StickAxis Yaw { get; init; }

    /// <summary>Throttle; up is positive.</summary>
    public required StickAxis Throttle { get; init; }

    /// <summary>What the throttle control is like.</summary>
    public ThrottleMode ThrottleMode { get; init; }

    /// <summary>Buttons and switches with an action.</summary>
    public ImmutableDictionary<PilotAction, StickSwitch> Switches { get; init; } = ImmutableDictionary<PilotAction, StickSwitch>.Empty;

    /// <summary>
    /// The control of <see cref="PilotAction.Arm"/> is a switch that stays: the rotors may turn while it is on. Otherwise
    /// each press of it arms or disarms.
    /// </summary>
    public bool ArmFollowsSwitch { get; init; }

    /// <summary>Whether the profile is this device's.</summary>
    public bool Fits(StickDevice device)
    {
        ArgumentNullException.ThrowIfNull(device);
        return device.Guid == Guid && device.Name == Name && device.Axes.Length == AxisCount;
    }

    /// <summary>Where the sticks stand.</summary>
    /// <param name="axes">Raw numbers of all axes of the device.</param>
    /// <param name="hoverStick">Throttle at which the craft hovers, 0 to 1.</param>
    /// <param name="heldThrottle">The held throttle of <see cref="ThrottleMode.Incremental"/>, 0 to 1.</param>
    public Sticks Read(ReadOnlySpan<short> axes, double hoverStick, double heldThrottle)
    {
        int raw = axes[Throttle.Axis];
        double throttle = ThrottleMode switch
        {
            ThrottleMode.CentreHover => AboutHover(Throttle.FromCentre(raw), hoverStick),
            ThrottleMode.Incremental => heldThrottle,
            _ => Throttle.FromEnd(raw),
        };
        return new(Roll.FromCentre(axes[Roll.Axis]), Pitch.FromCentre(axes[Pitch.Axis]), Yaw.FromCentre(axes[Yaw.Axis]), throttle);
    }

    /// <summary>Throttle (0 to 1) of a stick whose middle is hover, from its deflection (-1 to 1): each half has the way that is left on its side.</summary>
    internal static double AboutHover(double deflection, double hoverStick) =>
        hoverStick + (deflection * (deflection < 0 ? hoverStick : 1 - hoverStick));
}
