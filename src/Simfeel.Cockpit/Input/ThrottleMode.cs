namespace Simfeel.Cockpit.Input;

/// <summary>What a throttle control of a device is like.</summary>
public enum ThrottleMode
{
    /// <summary>A stick or slider that stays where it is left: its travel is the throttle's.</summary>
    Normal,

    /// <summary>A stick that springs back: its middle is the hover stick position of the craft.</summary>
    CentreHover,

    /// <summary>A trigger that springs back to its lower end: its travel is the throttle's.</summary>
    Trigger,

    /// <summary>A stick that springs back: it moves a throttle that is held, full travel in a second.</summary>
    Incremental,
}
