using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Input.Wizard;

namespace Simfeel.Cockpit.Tests.Input;

/// <summary>A pilot with a virtual device who does what the wizard asks, at the pace of a hand, 50 looks a second.</summary>
internal sealed class WizardPilot : IDisposable
{
    private const double Look_s = 0.02, Stroke_s = 0.4, Reading_s = 1.2;

    private readonly VirtualStick _stick;
    private readonly StickHub _hub;
    private readonly double[] _at;
    private readonly bool[] _isLive;
    private readonly int[] _noise;
    private readonly Random _random = new(20261125);

    public WizardPilot(int kind, int axes, int buttons, (int Axis, int Idle)[] live, int noise)
    {
        VirtualStick.Pump(null);
        _hub = new(_ => null, new ActionMap());
        _stick = new(kind, axes, buttons, 1);
        _at = new double[axes];
        _isLive = new bool[axes];
        _noise = new int[axes];
        Array.Fill(_noise, noise);
        foreach ((int axis, int idle) in live) (_at[axis], _isLive[axis]) = (idle, true);
        VirtualStick.Pump(_hub);
    }

    public SticksWizard Wizard { get; } = new();

    public WizardView View => Wizard.View;

    public double Seconds { get; private set; }

    public void Start(int arrangement, int touch = -1)
    {
        Assert.NotEqual(StickState.Ready, _hub.State);
        Wait(0.1);
        Press(0);
        Answer(arrangement);
        if (touch >= 0)
        {
            Stroke(touch, 20_000);
            Wait(0.1);
            Assert.StartsWith($"Axis {touch} moved", View.Help, StringComparison.Ordinal);
            Stroke(touch, 0);
        }
        WaitFor("Throttle: move");
    }

    /// <summary>An axis that trembles this much.</summary>
    public void Loosen(int axis, int noise) => _noise[axis] = noise;

    public void Answer(int choice)
    {
        Wait(Reading_s);
        Assert.NotEmpty(View.Choices);
        Wizard.Choose(choice);
        Wait(Look_s);
    }

    public void Throttle(int axis, double up, double down, double rest) => Move(axis, up, down, rest);

    public void Move(int axis, double first, double second, double rest)
    {
        Wait(Reading_s);
        Stroke(axis, first);
        Wait(0.4);
        Stroke(axis, second);
        Wait(0.3);
        Stroke(axis, rest);
        Wait(0.7);
    }

    public void Push(int axis, double to)
    {
        double from = _at[axis];
        Wait(Reading_s);
        Stroke(axis, to);
        Wait(0.5);
        Stroke(axis, from);
        Wait(0.8);
    }

    public void Together(int one, int other, double to)
    {
        (_at[one], _at[other]) = (to, to);
        Wait(0.6);
        (_at[one], _at[other]) = (0, 0);
        Wait(0.6);
    }

    public void Hold(int axis, double to)
    {
        Wait(Reading_s);
        _at[axis] = to;
        Wait(1.3);
    }

    public void Press(int button)
    {
        Wait(Reading_s);
        _stick.Button(button, down: true);
        Wait(0.2);
        _stick.Button(button, down: false);
        Wait(0.2);
    }

    public void WaitFor(string title)
    {
        for (int n = 0; n < 600 && !View.Title.Contains(title, StringComparison.Ordinal); n++) Wait(Look_s);
        Assert.Contains(title, View.Title, StringComparison.Ordinal);
    }

    public StickProfile Finish()
    {
        WaitFor("does the picture follow");
        Answer(0);
        Assert.True(View.Done);
        Assert.Equal(1, View.Progress);
        Assert.NotNull(Wizard.Result);
        Assert.Equal(Wizard.Result, _hub.Profile);
        return Wizard.Result;
    }

    public void Wait(double seconds)
    {
        for (int looks = (int)Math.Round(seconds / Look_s); looks > 0; looks--)
        {
            for (int axis = 0; axis < _at.Length; axis++)
            {
                if (_isLive[axis]) _stick.Axis(axis, _at[axis] + _random.Next(-_noise[axis], _noise[axis] + 1));
            }
            VirtualStick.Pump(_hub);
            Wizard.Update(_hub, Look_s);
            Seconds += Look_s;
        }
    }

    public void Dispose()
    {
        _stick.Dispose();
        VirtualStick.Pump(_hub);
        _hub.Dispose();
    }

    private void Stroke(int axis, double to)
    {
        double from = _at[axis];
        int looks = (int)(Stroke_s / Look_s);
        for (int n = 1; n <= looks; n++)
        {
            _at[axis] = from + ((to - from) * n / looks);
            Wait(Look_s);
        }
    }
}
