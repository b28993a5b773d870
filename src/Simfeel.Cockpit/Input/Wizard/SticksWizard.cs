namespace Simfeel.Cockpit.Input.Wizard;

/// <summary>
/// Finds out how an unknown device is flown, by a few moves and answers: which axis each control is, which way it goes, how
/// far, where it rests and how much it trembles there, what its throttle is like, and what arms. Under a minute for a
/// pilot who follows. Not for use in flight: it allocates.
/// </summary>
public sealed class SticksWizard
{
    private const int NeededAxes = 4;

    private static readonly StickControl[] Order = [StickControl.Throttle, StickControl.Yaw, StickControl.Pitch, StickControl.Roll];

    private Step _step = Step.Device;
    private StickDevice? _device;
    private WizardFindings? _known;
    private StickArrangement _arrangement;
    private RestMeter? _rest;
    private MoveWatcher? _move;
    private ArmWatcher? _arm;
    private StickControl _control;
    private int? _answer;

    private enum Step
    {
        Device,
        Arrangement,
        Rest,
        Move,
        ThrottleKind,
        Arm,
        Check,
        Done,
    }

    /// <summary>What the page shows; the same object all the time.</summary>
    public WizardView View { get; } = new();

    /// <summary>What was found; null before the end.</summary>
    public StickProfile? Result { get; private set; }

    /// <summary>A button that is pressed now is an answer to the question, and not a choice on the page.</summary>
    public bool HearsButtons => _step == Step.Arm;

    /// <summary>Chooses one of the answers of the view; others are let pass.</summary>
    public void Choose(int answer)
    {
        if (answer >= 0 && answer < View.Choices.Count) _answer = answer;
    }

    /// <summary>Looks at the device and goes on; once a frame, after the hub has had the events.</summary>
    /// <param name="hub">The devices.</param>
    /// <param name="seconds">Time since the last call, s.</param>
    public void Update(StickHub hub, double seconds)
    {
        ArgumentNullException.ThrowIfNull(hub);
        if (_device is not null && _step != Step.Done && !hub.Devices.Contains(_device))
        {
            // another plugging-in is another device, whose axes are not believed before it reports
            _device = null;
            Begin(Step.Device);
        }
        int? answer = _answer;
        _answer = null;
        switch (_step)
        {
            case Step.Device:
                FindDevice(hub, answer);
                break;
            case Step.Arrangement when answer is int chosen:
                _arrangement = (StickArrangement)chosen;
                Begin(Step.Rest);
                break;
            case Step.Rest:
                _rest!.Look(_device!.Axes, seconds);
                if (_rest.IsDone) Measure(Order[0]);
                break;
            case Step.Move:
                _move!.Look(_device!.Axes, seconds);
                if (_move.State == MoveState.Done) TakeMove();
                break;
            case Step.ThrottleKind:
                if (_move!.SpringsBackLate(_device!.Axes, seconds)) TakeMove();
                else if (answer is int kind) TakeThrottleKind(kind);
                break;
            case Step.Arm:
                LookForArm(answer, seconds);
                break;
            case Step.Check when answer is int check:
                TakeCheck(check, hub);
                break;
        }
        Show(hub);
    }

    private void FindDevice(StickHub hub, int? answer)
    {
        StickDevice[] all = [.. hub.Devices.Where(device => device.HasReported)];
        // with one there is nothing to choose
        StickDevice? chosen = answer is int n && n < all.Length ? all[n] : all.Length == 1 && hub.Devices.Count == 1 ? all[0] : null;
        if (chosen is null || chosen.Axes.Length < NeededAxes) return;
        _device = chosen;
        hub.Choose(chosen);
        Begin(Step.Arrangement);
    }

    private void TakeMove()
    {
        _known!.Set(_control, _move!, _rest!);
        if (_control != StickControl.Throttle)
        {
            Next();
            return;
        }
        _known.ThrottleMode = _move!.IsCentring && !_move.IsOneSided ? ThrottleMode.CentreHover : ThrottleMode.Normal;
        _step = Step.ThrottleKind;
    }

    private void TakeThrottleKind(int kind)
    {
        if (!IsCentringThrottle && kind == WizardTexts.OneSided.Length - 1)
        {
            Measure(StickControl.Throttle);
            return;
        }
        _known!.ThrottleMode = (IsCentringThrottle, kind) switch
        {
            (true, 0) => ThrottleMode.CentreHover,
            (true, 1) => ThrottleMode.Incremental,
            (false, 1) => ThrottleMode.Trigger,
            _ => ThrottleMode.Normal,
        };
        Next();
    }

    private void LookForArm(int? answer, double seconds)
    {
        _arm!.Look(seconds);
        if (answer is not null) _known!.SetArm(null, follows: false);
        else if (_arm.IsDone) _known!.SetArm(_arm.Found, _arm.IsSwitch);
        else return;
        Begin(Step.Check);
    }

    private void TakeCheck(int check, StickHub hub)
    {
        if (check == WizardTexts.Checks.Length - 1)
        {
            Begin(Step.Arrangement);
        }
        else if (check == 0)
        {
            Result = _known!.Profile();
            hub.UseProfile(Result);
            _step = Step.Done;
        }
        else
        {
            _known!.Reverse(check switch { 1 => StickControl.Roll, 2 => StickControl.Pitch, 3 => StickControl.Yaw, _ => StickControl.Throttle });
        }
    }

    private bool IsCentringThrottle => _known!.ThrottleMode is ThrottleMode.CentreHover or ThrottleMode.Incremental;

    private void Next()
    {
        int at = Array.IndexOf(Order, _control) + 1;
        if (at < Order.Length) Measure(Order[at]);
        else Begin(Step.Arm);
    }

    private void Measure(StickControl control)
    {
        // a step back forgets this control and those after it
        for (int n = Array.IndexOf(Order, control); n < Order.Length; n++) _known!.Forget(Order[n]);
        _control = control;
        _move = new(_rest!, _device!.Axes, _known!.Names(), control == StickControl.Throttle);
        _step = Step.Move;
    }

    private void Begin(Step step)
    {
        _step = step;
        if (step is Step.Device or Step.Arrangement) (_known, _rest, _move) = (null, null, null);
        if (step == Step.Rest) (_known, _rest) = (new(_device!), new(_device!.Axes.Length));
        if (step == Step.Arm) _arm = new(_device!, _rest!, _known!.Names());
    }

    private void Show(StickHub hub)
    {
        View.Done = _step == Step.Done;
        View.Axis = _step == Step.Move ? _move!.Axis : -1;
        View.Live = _known?.Live(hub.HoverStick) ?? default;
        View.Progress = ProgressNow();
        int axes = _device?.Axes.Length ?? 0;
        if (View.Axes.Length != axes) View.Axes = new double[axes];
        for (int n = 0; n < axes; n++) View.Axes[n] = Math.Max(_device!.Axes[n] / (double)short.MaxValue, -1);
        (View.Title, View.Help, View.Choices) = _step switch
        {
            Step.Device => DeviceTexts(hub),
            Step.Arrangement => ("How are your sticks arranged?", "Answer as you fly. What each axis of the device is will be found out by moving it.", WizardTexts.Arrangements),
            Step.Rest => ("Hands off", RestHelp(), []),
            Step.Move => (
                _move!.State == MoveState.First ? WizardTexts.First(_arrangement, _control) : WizardTexts.Second(_arrangement, _control),
                _move.Trouble.Length > 0 ? _move.Trouble : WizardTexts.Help(_control),
                []),
            Step.ThrottleKind when IsCentringThrottle => ("The throttle springs back to its middle. How shall it fly?", "With the middle as hover, let go of it and the craft about holds its height.", WizardTexts.Centring),
            Step.ThrottleKind => ("Does the throttle stay where you leave it?", "Let go of it and see.", WizardTexts.OneSided),
            Step.Arm when _arm!.Found is StickSwitch found => ("Leave it so for a moment", $"That is {found}.", []),
            Step.Arm => ("Press the button or flip the switch that shall arm", "Armed, the rotors turn. Flip a switch the way that shall mean armed.", ["None: arm with the key"]),
            Step.Check => ("Move the sticks: does the picture follow?", "Try each one to both ends.", WizardTexts.Checks),
            _ => ("Ready to fly", $"\"{_device!.Name}\" is known from now on.", (IReadOnlyList<string>)[]),
        };
    }

    private static (string, string, IReadOnlyList<string>) DeviceTexts(StickHub hub)
    {
        StickDevice[] all = [.. hub.Devices.Where(device => device.HasReported)];
        if (hub.Devices.Count == 0) return ("Plug in your sticks", "A gamepad or a transmitter that is a USB joystick. Take the propellers off before you connect a craft's transmitter while the craft has its battery in.", []);
        if (all.Length == 0) return ("Move a stick", $"\"{hub.Devices[0].Name}\" is there but has not sent anything yet.", []);
        if (all.Length == 1 && hub.Devices.Count == 1)
            return ("This device has too few axes", $"\"{all[0].Name}\" has {all[0].Axes.Length}; four are needed. Plug in another one, or fly with the keyboard.", []);
        return ("Which device?", "Move a stick of it if it is not listed.", [.. all.Select(device => $"{device.Name} ({device.Axes.Length} axes)")]);
    }

    private string RestHelp() => _rest!.Mover < 0
        ? "Put the throttle all the way down if it stays where it is, let go of everything and wait."
        : _rest.IsRestless(_rest.Mover)
            ? $"Axis {_rest.Mover} moves by itself and is left out. Hands off for a moment more."
            : $"Axis {_rest.Mover} moved. Let go of everything and wait.";

    private double ProgressNow() => _step switch
    {
        Step.Device => 0,
        Step.Arrangement => 0.05,
        Step.Rest => 0.1 + (0.15 * _rest!.Progress),
        Step.Move => 0.25 + (0.15 * Array.IndexOf(Order, _control)) + (_move!.State == MoveState.Second ? 0.07 : 0),
        Step.ThrottleKind => 0.37,
        Step.Arm => 0.85,
        Step.Check => 0.95,
        _ => 1,
    };
}
