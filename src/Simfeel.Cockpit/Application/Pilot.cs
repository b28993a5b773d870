using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Platform;
using Simfeel.Flight;

namespace Simfeel.Cockpit.Application;

/// <summary>
/// Whoever holds the sticks: the device that reports, or the keyboard where there is none. Turns events into sticks and
/// actions. Nothing is allocated in flight.
/// </summary>
internal sealed class Pilot(StickHub hub, ActionMap actions) : IDisposable
{
    private readonly ActionQueue _pressed = new();

    /// <summary>The stick devices.</summary>
    public StickHub Hub => hub;

    /// <summary>The keyboard's sticks.</summary>
    public KeyboardSticks Keyboard { get; } = new();

    /// <summary>Whether the keyboard flies. Decided on the ground: in flight a device that goes is asked for, not replaced.</summary>
    public bool OnKeyboard { get; private set; } = true;

    /// <summary>The device that was flown with is gone, or has not reported since it came back.</summary>
    public bool IsLost => !OnKeyboard && hub.State != StickState.Ready;

    /// <summary>Takes the device where one is ready and set up, else the keyboard.</summary>
    public void Choose() => OnKeyboard = hub.State != StickState.Ready || hub.Profile is null;

    /// <summary>Takes the keyboard.</summary>
    public void TakeKeyboard() => OnKeyboard = true;

    /// <summary>Takes an event in flight.</summary>
    public void Handle(in WindowEvent happened)
    {
        if (Keyboard.Handle(happened) && OnKeyboard) return;
        if (actions.TryKey(happened, out PilotAction action)) _pressed.Add(action);
    }

    /// <summary>The next action; false when there is none.</summary>
    public bool TryTake(out PilotAction action) => _pressed.TryTake(out action) || hub.TryTakeAction(out action);

    /// <summary>Lets time pass; once a frame.</summary>
    public void Advance(double seconds, double hoverStick)
    {
        hub.HoverStick = hoverStick;
        Keyboard.HoverStick = hoverStick;
        hub.Advance(seconds);
        Keyboard.Advance(seconds);
    }

    /// <summary>Where the sticks stand; where they last stood while the device is gone.</summary>
    public Sticks Sticks
    {
        get
        {
            if (OnKeyboard) return Keyboard.Sticks;
            hub.TryRead(out Sticks sticks);
            return sticks;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => hub.Dispose();
}
