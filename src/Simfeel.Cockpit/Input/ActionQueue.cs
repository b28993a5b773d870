namespace Simfeel.Cockpit.Input;

/// <summary>Actions that wait for the next frame, in the order in which they were pressed. Nothing is allocated in flight.</summary>
internal sealed class ActionQueue
{
    /// <summary>More than anybody presses within a frame; what comes beyond is lost.</summary>
    private const int Room = 32;

    private readonly PilotAction[] _waiting = new PilotAction[Room];
    private int _first, _count;

    /// <summary>Adds an action behind the others.</summary>
    public void Add(PilotAction action)
    {
        if (_count < Room) _waiting[(_first + _count++) % Room] = action;
    }

    /// <summary>The next action; false when there is none.</summary>
    public bool TryTake(out PilotAction action)
    {
        action = _waiting[_first];
        if (_count == 0) return false;
        _first = (_first + 1) % Room;
        _count--;
        return true;
    }

    /// <summary>Forgets all that wait.</summary>
    public void Clear() => _count = 0;
}
