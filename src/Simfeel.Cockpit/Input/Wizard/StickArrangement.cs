namespace Simfeel.Cockpit.Input;

/// <summary>Which stick does what: modes 1 to 4 of the trade, or one joystick.</summary>
internal enum StickArrangement
{
    Mode2,
    Mode1,
    Mode3,
    Mode4,
    Joystick,
}
