using Simfeel.Cockpit.Bench;
using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Overlay;
using Simfeel.Cockpit.Pages;

namespace Simfeel.Cockpit.Tests.Pages;

/// <summary>Every page with invented data, and a record of what was called.</summary>
internal sealed class Samples
{
    private readonly string[] _keys = ["Space", "R", "Tab", "Left Shift", "", "Keypad Enter"];

    public List<string> Called { get; } = [];

    public StartModel Start { get; }

    public SettingsModel Settings { get; }

    public WizardView Wizard { get; } = new()
    {
        Title = "Move the right stick to the right and let go",
        Help = "Only this stick, slowly, all the way. The bar that moves most is taken.",
        Axes = [-0.2, 0.75, -1, 0.02, 0, 0.4],
        Axis = 1,
        Choices = ["It springs back to the middle", "It stays where I leave it", "I have no such stick"],
        Live = new(0.6, -0.2, 0, 0.3),
        Progress = 0.4,
    };

    public List<BenchItem> Items { get; } =
    [
        Item("frame.wheelbase_mm", "Wheelbase", "mm", 220, 150, 400, 1),
        Item("motors.stator_diameter_mm", "Stator diameter", "mm", 22, 10, 40, 0.5),
        Item("motors.mass_g", "Mass of a motor", "g", 33, 5, 120, 0.5),
        Item("propellers.diameter_in", "Propeller diameter", "in", 5.1, 2, 12, 0.1),
        Item("battery.position_z_mm", "Battery position, down", "mm", -20, -80, 80, 1),
    ];

    public Samples()
    {
        Start = new()
        {
            Builds =
            [
                new("Wagtail", "5 inch with short arms, for tight turns around the lighthouse", 0.652, 1.72e-3, 9.4),
                new("Curlew", "7 inch with long arms, for long lines over the headland", 1.087, 4.31e-3, 7.2),
                new("Sanderling", "65 mm ducted micro for the living room", 0.031, 8.2e-6, 3.1),
                new("Broken", "a file with a slip in it", 0, 0, 0, "broken.toml, line 12: wheelbase_mm is 2, allowed is 30 to 2000 mm"),
            ],
            Fields = ["Gull Point", "Open meadow"],
            SticksName = "Pocket Radio Joystick",
            SticksState = "not set up yet: choose this first",
            SticksNeedCare = true,
            Fly = Call("fly"),
            Sticks = Call("sticks"),
            Settings = Call("settings"),
            Help = Call("help"),
            Quit = Call("quit"),
            Changed = Call("changed"),
        };
        Start.Picked[1] = 1;
        Settings = new()
        {
            Views = ["Onboard", "Chase", "From the ground", "Split: both builds"],
            Changed = Call("settings changed"),
            Reset = Call("settings reset"),
        };
    }

    public static IReadOnlyList<string> Names { get; } =
        ["start", "builds", "pause", "settings", "keys", "wizard", "wizard-done", "bench", "bench-refused", "results", "nothing-found", "message"];

    public Page Page(string name) => name switch
    {
        "start" => new StartPage(Start),
        "builds" => new BuildListPage(1, Start, k => Called.Add($"picked {k}")),
        "pause" => new PausePage(new()
        {
            State = "You fly Wagtail (A) over Gull Point.",
            Resume = Call("resume"),
            Restart = Call("restart"),
            Swap = Call("swap"),
            Bench = Call("bench"),
            Results = Call("results"),
            Sticks = Call("sticks"),
            Settings = Call("settings"),
            Keys = Call("keys"),
            EndFlight = Call("end"),
        }),
        "settings" => new SettingsPage(Settings),
        "keys" => new KeysPage(Keys()),
        "wizard" => new WizardPage(WizardModel()),
        "wizard-done" => DoneWizard(),
        "bench" => new BenchPage(Bench(false)),
        "bench-refused" => new BenchPage(Bench(true)),
        "results" => new ResultsPage(Results(true)),
        "nothing-found" => new ResultsPage(Results(false)),
        "message" => new MessagePage(new()
        {
            Title = "The sticks are gone",
            Text = "Pocket Radio Joystick was unplugged. The flight waits with time held. Plug it in again, or fly on with the keyboard, which is not fit for feel.",
            Choices = [new("Wait for the sticks", Call("wait")), new("Keyboard", Call("keyboard")), new("End this flight", Call("end"))],
        }),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, null),
    };

    public KeysModel Keys() => new()
    {
        Lines =
        [
            .. Enum.GetValues<PilotAction>().Select((action, k) => new KeyLine
            {
                Name = PilotActionWords.Of(action),
                Key = () => _keys[k % _keys.Length],
                Pad = () => k % 4 == 3 ? "" : $"button {k + 1}",
                Clash = () => k == 2 ? "Tab is also on: Shadow craft." : "",
                SetKey = code => Called.Add($"{action} key {code}"),
                SetPad = code => Called.Add($"{action} pad {code}"),
            }),
        ],
        FlyingKeys = "Keyboard flight: W and S climb and sink, A and D turn, arrows tilt. It is slower than thumbs and not fit for feel.",
        Reset = Call("keys reset"),
    };

    public static FlightReadout Readout(bool busy = false)
    {
        FlightReadout readout = new()
        {
            Armed = true,
            Sticks = new(0.3, -0.5, 0.05, 0.45),
            ReserveScale = 0.25,
            ArmKey = "Space",
            RestartKey = "R",
            PauseKey = "P",
            RadioDelay = 0.004,
        };
        (readout.Builds[0].Name, readout.Builds[1].Name) = ("Wagtail", "Curlew");
        for (int b = 0; b < 2; b++)
        {
            BuildReadout build = readout.Builds[b];
            (build.Speed, build.Height, build.PackVoltage, build.PackCurrent) = (24.3 - 3 * b, 12.4 + b, 15.2 - 0.3 * b, 48);
            (build.LoadFactor, build.Flying) = (1.6, b == 0 || busy);
            for (int k = 0; k < 4; k++)
            {
                build.ReserveUp[k] = 0.14 + 0.02 * k - 0.05 * b;
                build.ReserveDown[k] = 0.08 + 0.01 * k;
                build.RotorSpeed[k] = 1500 + 60 * k;
            }
        }
        if (!busy) return readout;
        (readout.Paused, readout.Recording, readout.Keyboard, readout.Level, readout.Shadow) = (true, true, true, true, true);
        (readout.Crashed, readout.ShowGraphs, readout.ShowNumbers, readout.TimeFactor) = (true, true, true, 0.25);
        (readout.PictureDelay, readout.VideoDelay, readout.Builds[0].StruckRotors) = (0.021, 0.04, 4);
        readout.Notify("wagtail.toml changed. R flies it.", 0);
        return readout;
    }

    /// <summary>Four seconds of invented flight into the graphs.</summary>
    public static void Fly(FlightReadout readout, FlightOverlay overlay, double from = 0, double until = 4.5)
    {
        for (double t = from; t < until; t += 1 / 60.0) Step(readout, overlay, t);
    }

    public static void Step(FlightReadout readout, FlightOverlay overlay, double t)
    {
        readout.Time = t;
        foreach (BuildReadout build in readout.Builds)
        {
            for (int k = 0; k < 3; k++)
            {
                build.RateCommands[k] = Math.Sin(2 * t + k) > 0.3 ? 6 : 0;
                build.Rates[k] = 5.5 * Math.Sin(2 * t + k - 0.2);
            }
            for (int k = 0; k < 4; k++) build.RotorSpeed[k] = 1500 + 400 * Math.Sin(3 * t + k);
            build.PackVoltage = 15 + Math.Cos(t);
            build.PackCurrent = 50 + 30 * Math.Sin(t);
            build.LoadFactor = 1 + 2 * Math.Sin(t);
            build.Speed = 20 + 10 * Math.Sin(t);
            build.Height = 15 + 10 * Math.Sin(0.7 * t);
        }
        readout.Sticks = new(Math.Sin(t), Math.Cos(t), 0, 0.5);
        overlay.Graphs.Record(readout);
    }

    private static BenchItem Item(string key, string label, string unit, double value, double low, double high, double step) =>
        new() { Key = key, Label = label, Unit = unit, Original = value, Value = value, Low = low, High = high, Step = step };

    private Action Call(string what) => () => Called.Add(what);

    private WizardModel WizardModel() => new()
    {
        Device = () => "Pocket Radio Joystick",
        View = () => Wizard,
        Choose = k => Called.Add($"choice {k}"),
        Store = Call("store"),
        Again = Call("again"),
        Cancel = Call("cancel"),
    };

    private WizardPage DoneWizard()
    {
        (Wizard.Title, Wizard.Help) = ("All set", "Move the sticks and look whether the picture follows. Then store.");
        (Wizard.Choices, Wizard.Done, Wizard.Progress, Wizard.Axis) = ([], true, 1, -1);
        return new(WizardModel());
    }

    private BenchModel Bench(bool refused) => new()
    {
        Build = () => "Wagtail",
        Items = () => Items,
        Differences = () => refused ? [] :
        [
            new("Mass", "g", 652, 668.5), new("Roll inertia", "g m²", 1.72, 2.11), new("Pitch inertia", "g m²", 1.9, 1.9),
            new("Thrust / weight", "", 9.41, 9.18), new("Hover stick", "%", 31.2, 31.9),
        ],
        State = () => refused
            ? "propellers.diameter_in 9 strikes its neighbour: 229 mm across, 156 mm between the motors."
            : "The next restart flies the change.",
        Working = () => false,
        Refused = () => refused,
        Changed = item => Called.Add($"{item.Key} {FormattableString.Invariant($"{item.Value}")}"),
        Reset = Call("bench reset"),
        Fly = Call("bench fly"),
        OtherBuild = Call("other build"),
    };

    private static ResultsModel Results(bool some) => new()
    {
        Builds = ["Wagtail", "Curlew"],
        Rows = !some ? [] :
        [
            new("fastest roll", "deg/s", 812, 640, "Highest roll rate that was held for a tenth of a second."),
            new("sharpest stop", "ms", 58, 92.4, "From leaving the stick at full rate until the rate stays under a tenth of it."),
            new("bounce after it", "deg", 2.1, 4.8, "How far it rolled back after that stop."),
            new("biggest drop", "m", 12.5, null, "Height lost between closing the throttle and opening it again."),
            new("hardest pull", "g", null, null, "Greatest load factor over a tenth of a second."),
            new("top speed", "km/h", 142, 142, "Over the ground."),
        ],
        Footnote = "Both builds had a radio delay of 4 ms and no added video delay.",
    };
}
