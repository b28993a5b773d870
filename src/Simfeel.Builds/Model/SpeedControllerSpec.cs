namespace Simfeel.Builds;

/// <summary>One channel of the speed controller.</summary>
public sealed record SpeedControllerSpec
{
    /// <summary>Largest motor current while driving, A; 0.5 to 500; estimated from the stator volume.</summary>
    public required double CurrentLimit { get; init; }

    /// <summary>Largest motor current while braking, A; 0 where the motor coasts; default as <see cref="CurrentLimit"/>.</summary>
    public required double BrakeCurrentLimit { get; init; }

    /// <summary>Resistance in the current's way, ohm; 0.0001 to 0.2; estimated from the current limit.</summary>
    public required double Resistance { get; init; }

    /// <summary>From command to changed voltage, s; 0 to 0.05, default 0.001.</summary>
    public required double CommandDelay { get; init; }

    /// <summary>Smallest duty in flight over full duty; 0 to 0.25, default 0.055.</summary>
    public required double IdleDuty { get; init; }
}
