namespace Simfeel.Cockpit.Input.Wizard;

/// <summary>The four sticks.</summary>
internal enum StickControl
{
    Throttle,
    Yaw,
    Pitch,
    Roll,
}
