using Simfeel.Cockpit.Platform;
using Simfeel.Flight;

namespace Simfeel.Cockpit.Input;

/// <summary>How it stands with the sticks.</summary>
public enum StickState
{
    /// <summary>No device.</summary>
    None,

    /// <summary>A device is plugged in but has not reported yet: move a stick or press a button.</summary>
    Waiting,

    /// <summary>The device reports.</summary>
    Ready,

    /// <summary>The device that was flown with is gone; its sticks stand where they were.</summary>
    Lost,
}

/// <summary>
/// All stick devices and the one that is flown with: the one chosen, else the first that reports. Takes the events of
/// the window's thread and is used on that thread only. Reading and handling never allocate, but for a device's coming.
/// </summary>
public sealed class StickHub : IDisposable
{
    private const double ThrottleNearness = 0.05;

    private readonly List<StickDevice> _devices = [];
    private readonly Func<StickDevice, StickProfile?> _profileOf;
    private readonly StickActions _actions;
    private Sticks _last;
    private double _held;
    private string _lostGuid = "", _lostName = "";

    /// <summary>Opens what is plugged in.</summary>
    /// <param name="profileOf">Finds the profile of a device; null where the wizard has to.</param>
    /// <param name="actions">What keys and pad buttons do.</param>
    public StickHub(Func<StickDevice, StickProfile?> profileOf, ActionMap actions)
    {
        _profileOf = profileOf;
        _actions = new(actions);
        OpenNew();
    }

    /// <summary>Identity (<see cref="StickDevice.Guid"/>) of the device to fly with if it is there, the one chosen last; null for the first that reports.</summary>
    public string? Preferred { get; private set; }

    /// <summary>All that are plugged in.</summary>
    public IReadOnlyList<StickDevice> Devices => _devices;

    /// <summary>The one that is flown with; null while none reported.</summary>
    public StickDevice? Active { get; private set; }

    /// <summary>How the active device is flown; null where the wizard has to find out.</summary>
    public StickProfile? Profile { get; private set; }

    /// <summary>Throttle at which the flown craft hovers, 0 to 1; for sticks that spring back.</summary>
    public double HoverStick { get; set; } = 0.5;

    /// <summary>How it stands.</summary>
    public StickState State =>
        Active is not null ? Active.HasReported ? StickState.Ready : StickState.Waiting
        : _lostGuid.Length > 0 ? StickState.Lost
        : _devices.Count > 0 ? StickState.Waiting
        : StickState.None;

    /// <summary>
    /// Where a switch for arming stands; null where the device has none that stays. On counts only after it was seen off,
    /// so that nothing arms by plugging in.
    /// </summary>
    public bool? ArmSwitch => _actions.ArmSwitch;

    /// <summary>Takes an event; others than those of devices are let pass.</summary>
    public void Handle(in WindowEvent happened)
    {
        switch (happened.Kind)
        {
            case WindowEventKind.DeviceAdded:
                OpenNew();
                break;
            case WindowEventKind.DeviceRemoved:
                Remove(happened.Device);
                break;
            case WindowEventKind.Axis or WindowEventKind.ButtonDown or WindowEventKind.ButtonUp or WindowEventKind.Hat:
                if (Find(happened.Device) is not StickDevice device) break;
                bool isFirst = !device.HasReported;
                device.Take(happened);
                if (!device.HasReported) break;
                if (isFirst && MayFly(device)) Use(device);
                if (device == Active) _actions.Look(device, isFirst);
                break;
        }
    }

    /// <summary>Lets time pass; once a frame, for a stick that moves a held throttle.</summary>
    public void Advance(double seconds)
    {
        if (State == StickState.Ready && Profile is { ThrottleMode: ThrottleMode.Incremental } profile)
            _held = Math.Clamp(_held + (profile.Throttle.FromCentre(Active!.Axes[profile.Throttle.Axis]) * seconds), 0, 1);
    }

    /// <summary>
    /// Reads the sticks. False, with the sticks where they last stood, while no device reports or its profile is missing:
    /// then the flight has to be held, for an unplugged throttle stands nowhere.
    /// </summary>
    public bool TryRead(out Sticks sticks)
    {
        bool isReady = State == StickState.Ready && Profile is not null;
        if (isReady) _last = Profile!.Read(Active!.Axes, HoverStick, _held);
        sticks = _last;
        return isReady;
    }

    /// <summary>
    /// Whether the throttle stands near where it was, within a twentieth of its travel: before that a held flight does not
    /// go on. A held throttle is taken over as it was.
    /// </summary>
    public bool ThrottleMatches(Sticks before)
    {
        if (Profile?.ThrottleMode == ThrottleMode.Incremental && State == StickState.Ready) _held = before.Throttle;
        return TryRead(out Sticks now) && Math.Abs(now.Throttle - before.Throttle) <= ThrottleNearness;
    }

    /// <summary>The next action that a button of the active device asked for.</summary>
    public bool TryTakeAction(out PilotAction action) => _actions.TryTake(out action);

    /// <summary>Flies with this device from now on.</summary>
    public void Choose(StickDevice device)
    {
        ArgumentNullException.ThrowIfNull(device);
        Preferred = device.Guid;
        Use(device);
    }

    /// <summary>Flies the active device by another profile, such as the wizard's.</summary>
    public void UseProfile(StickProfile profile)
    {
        Profile = profile;
        _actions.Begin(Active, profile);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (StickDevice device in _devices) device.Close();
        _devices.Clear();
        Active = null;
    }

    private void Use(StickDevice device)
    {
        // the same device again keeps its profile: it may be one that could not be stored
        bool isSame = Profile is not null && Profile.Fits(device);
        Active = device;
        _lostGuid = _lostName = "";
        if (!isSame)
        {
            Profile = _profileOf(device);
            _held = 0;
        }
        _actions.Begin(device, Profile);
    }

    /// <summary>Whether a device that just reported first becomes the active one.</summary>
    private bool MayFly(StickDevice device)
    {
        if (Active is not null) return false;
        // in flight only the same device takes over by itself; another one has to be chosen
        if (_lostGuid.Length > 0) return device.Guid == _lostGuid && device.Name == _lostName;
        return Preferred is null || device.Guid == Preferred || !IsPlugged(Preferred);
    }

    private bool IsPlugged(string guid)
    {
        foreach (StickDevice device in _devices)
        {
            if (device.Guid == guid) return true;
        }
        return false;
    }

    private StickDevice? Find(int instance)
    {
        foreach (StickDevice device in _devices)
        {
            if (device.Instance == instance) return device;
        }
        return null;
    }

    private void OpenNew()
    {
        // indices of events are stale when several devices come and go, so all are looked at
        for (int index = 0; index < Sdl.SDL_NumJoysticks(); index++)
        {
            if (Find(Sdl.SDL_JoystickGetDeviceInstanceID(index)) is null && StickDevice.Open(index) is StickDevice device) _devices.Add(device);
        }
    }

    private void Remove(int instance)
    {
        if (Find(instance) is not StickDevice device) return;
        device.Close();
        _devices.Remove(device);
        if (device != Active) return;
        Active = null;
        (_lostGuid, _lostName) = (device.Guid, device.Name);
        _actions.Begin(null, null);
    }
}
