using Simfeel.Cockpit.Application.Blind;
using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Input.Wizard;
using Simfeel.Cockpit.Marks;
using Simfeel.Cockpit.Overlay;
using Simfeel.Cockpit.Pages;
using Simfeel.Cockpit.Pages.Blind;
using Simfeel.Cockpit.Pages.Flights;
using Simfeel.Cockpit.Pages.Lessons;
using Simfeel.Cockpit.Pages.Parts;
using Simfeel.Cockpit.Pages.Settings;
using Simfeel.Cockpit.Pages.Start;
using Simfeel.Cockpit.Pages.Wizard;
using Simfeel.Cockpit.Parts;

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

    public List<PartBenchItem> Items { get; } =
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
            Lessons = Call("lessons"),
            Blind = Call("blind"),
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
        ["start", "builds", "pause", "settings", "keys", "wizard", "wizard-done", "bench", "bench-refused", "results", "nothing-found", "message",
            "lessons", "lesson-question", "lesson-flying", "lesson-shown", "lesson-words",
            "blind-setup", "blind-vote", "blind-early", "blind-result", "marks", "marks-none", "mark"];

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
            Marks = Call("marks"),
            Sticks = Call("sticks"),
            Settings = Call("settings"),
            Keys = Call("keys"),
            EndFlight = Call("end"),
            AfterFlight = "back to the start page",
        }),
        "settings" => new SettingsPage(Settings),
        "keys" => new KeysPage(Keys()),
        "wizard" => new WizardPage(WizardModel()),
        "wizard-done" => DoneWizard(),
        "bench" => new PartBenchPage(Bench(false)),
        "bench-refused" => new PartBenchPage(Bench(true)),
        "results" => new ResultsPage(Results(true)),
        "nothing-found" => new ResultsPage(Results(false)),
        "message" => new MessagePage(new()
        {
            Title = "The sticks are gone",
            Text = "Pocket Radio Joystick was unplugged. The flight waits with time held. Plug it in again, or fly on with the keyboard, which is not fit for feel.",
            Choices = [new("Wait for the sticks", Call("wait")), new("Keyboard", Call("keyboard")), new("End this flight", Call("end"))],
        }),
        "blind-setup" => new BlindSetupPage(new() { Begin = how => Called.Add($"begin {how.Test} {how.Trials} {how.Controls} {how.Late}") }),
        "blind-vote" => new BlindVotePage(Vote(true)),
        "blind-early" => new BlindVotePage(Vote(false)),
        "blind-result" => new BlindResultPage(new()
        {
            Builds = ["Wagtail", "Curlew, picture 80 ms later"],
            Sentence = "9 of 12 right; guessing gives that or better in 0.4 % of tries: you can tell them apart.",
            Controls = "Controls, one build in every flight: 1 of 3 right; luck does as well in 70 % of tries, as it should.",
            Trials = [new(1, false, "ABA", "2", true), new(2, true, "BBB", "3", false), new(3, false, "BAA", "2", false)],
            File = "Votes are in ~/simfeel/votes.csv; ./simfeel votes reads them.",
        }),
        "lessons" => new LessonListPage(LessonSamples.List(this)),
        "lesson-question" => new LessonQuestionPage(LessonSamples.Question(this)),
        "lesson-flying" => new LessonShowPage(LessonSamples.Show(this, LessonSamples.Numbers, flown: false)),
        "lesson-shown" => new LessonShowPage(LessonSamples.Show(this, LessonSamples.Numbers, flown: true)),
        "lesson-words" => new LessonShowPage(LessonSamples.Show(this, LessonSamples.Words, flown: true)),
        "marks" => new MarksPage(Marks((12.34, "starts to roll"), (12.9, "lets go"), (75.5, "in its own wake, which shakes it twice before it falls out of it"), (1234.567, ""))),
        "marks-none" => new MarksPage(Marks()),
        "mark" => new MarkPage(Marks((12.34, "it says \"look\", and then rolls back by far more than the other build does at the same stick")), 0),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, null),
    };

    public MarksModel Marks(params (double Time, string Note)[] some)
    {
        TimeMarks marks = new();
        foreach ((double time, string note) in some) marks.TryAdd(new(time, note), out _);
        return new()
        {
            Marks = () => marks,
            Where = "Kept in ~/flights/on-a-windy-day/flight.marks.toml.",
            HoldsAtMarks = () => false,
            SetHoldsAtMarks = on => Called.Add($"hold {on}"),
            Set = Call("set"),
            SetNote = (k, note) => Called.Add($"note {k} {note}"),
            Delete = k => Called.Add($"delete {k}"),
            Jump = k => Called.Add($"jump {k}"),
        };
    }

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
            (build.EmptyVoltage, build.FullVoltage) = (13.2, 16.8);
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
        (readout.Replaying, readout.GridHeight, readout.OverGrid) = (true, 12.4, -3.25);
        (readout.Timeline.Shown, readout.Timeline.Position, readout.Timeline.Length) = (true, 31.4, 83.2);
        (readout.Timeline.Marks, readout.Timeline.Caption) = (new Samples().Marks((12.3, ""), (30.2, "starts to roll"), (80, "")).Marks(), "starts to roll");
        readout.Axes.Shown = true;
        for (int axis = 0; axis < 3; axis++) readout.Axes.Put(axis, 0.4f + (0.1f * axis), 0.3f + (0.2f * axis), inSight: true);
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

    private static PartBenchItem Item(string key, string label, string unit, double value, double low, double high, double step) =>
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

    private PartBenchModel Bench(bool refused) => new()
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

    private BlindVoteModel Vote(bool ready) => new()
    {
        State = "Trial 3 of 15, flight 2 of 3.",
        Question = "Which flight was the odd one out?",
        Choices = ["1", "2", "3"],
        Flights = 3,
        Here = 2,
        WhyNot = ready ? "" : BlindAirtime.WhyNot([8.2, 1.04, 0]),
        Vote = choice => Called.Add($"vote {choice}"),
        FlyAgain = flight => Called.Add($"again {flight}"),
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
