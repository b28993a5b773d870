namespace Simfeel.Cockpit.Input;

/// <summary>Turns what the buttons of one device do into actions, each press once. Nothing is allocated in flight.</summary>
internal sealed class StickActions(ActionMap map)
{
    private static readonly PilotAction[] All = Enum.GetValues<PilotAction>();

    private readonly ActionQueue _waiting = new();
    private readonly StickSwitch?[] _switches = new StickSwitch?[All.Length];
    private uint _padWas, _switchesWere;
    private bool _armFollows, _armSeenOff, _armOn;

    /// <summary>Where a switch for arming stands; null where there is none that stays.</summary>
    public bool? ArmSwitch => _armFollows ? _armOn : null;

    /// <summary>Looks at another device, or at none.</summary>
    public void Begin(StickDevice? device, StickProfile? profile)
    {
        for (int n = 0; n < All.Length; n++)
            _switches[n] = profile is not null && profile.Switches.TryGetValue(All[n], out StickSwitch one) ? one : null;
        _armFollows = profile is { ArmFollowsSwitch: true } && _switches[(int)PilotAction.Arm] is not null;
        _armSeenOff = _armOn = false;
        _waiting.Clear();
        if (device is not null) Look(device, isFirst: true);
    }

    /// <summary>Looks at the device after an event.</summary>
    /// <param name="device">The device.</param>
    /// <param name="isFirst">What is down at its first report was not pressed now.</param>
    public void Look(StickDevice device, bool isFirst)
    {
        uint switches = 0;
        for (int n = 0; n < All.Length; n++)
        {
            if (_switches[n] is StickSwitch one && one.IsOn(device)) switches |= 1u << n;
        }
        uint pad = device.Pad?.Pressed(device) ?? 0;
        if (_armFollows)
        {
            bool isOn = (switches & (1u << (int)PilotAction.Arm)) != 0;
            _armSeenOff |= !isOn;
            _armOn = isOn && _armSeenOff;
        }
        if (!isFirst)
        {
            Add(switches & ~_switchesWere);
            AddPad(pad & ~_padWas, (pad & (1u << (int)PadButton.LeftShoulder)) != 0);
        }
        (_switchesWere, _padWas) = (switches, pad);
    }

    /// <summary>The next action; false when there is none.</summary>
    public bool TryTake(out PilotAction action) => _waiting.TryTake(out action);

    private void Add(uint pressed)
    {
        for (int n = 0; n < All.Length; n++)
        {
            if ((pressed & (1u << n)) != 0 && !(_armFollows && All[n] == PilotAction.Arm)) _waiting.Add(All[n]);
        }
    }

    private void AddPad(uint pressed, bool shift)
    {
        for (int n = 0; pressed >> n != 0; n++)
        {
            if ((pressed & (1u << n)) != 0 && map.TryPad((PadButton)n, shift, out PilotAction action)) _waiting.Add(action);
        }
    }
}
