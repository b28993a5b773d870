using Simfeel.Flight;

namespace Simfeel.Cockpit.Overlay;

/// <summary>
/// All that the overlay shows of a flight. A plain object: the application fills it every frame, the overlay reads it a few
/// times a second. Filling and drawing allocate nothing.
/// </summary>
public sealed class FlightReadout
{
    /// <summary>Builds A and B.</summary>
    public BuildReadout[] Builds { get; } = [new(), new()];

    /// <summary>The one that is flown: 0 for A, 1 for B.</summary>
    public int Flown { get; set; }

    /// <summary>Time of the simulation, s; goes back to 0 at a restart.</summary>
    public double Time { get; set; }

    /// <summary>Full length of the bars of torque reserve, N m, for both builds alike; above 0.</summary>
    public double ReserveScale { get; set; } = 0.2;

    /// <summary>Sticks as they are flown.</summary>
    public Sticks Sticks { get; set; }

    /// <summary>Whether speeds are shown in km/h; m/s else.</summary>
    public bool SpeedInKilometresPerHour { get; set; } = true;

    /// <summary>Whether bars have their numbers beside them, and delays are shown.</summary>
    public bool ShowNumbers { get; set; }

    /// <summary>Whether the side panel of graphs is open.</summary>
    public bool ShowGraphs { get; set; }

    /// <summary>Whether the rotors may turn.</summary>
    public bool Armed { get; set; }

    /// <summary>Whether the flown craft has crashed.</summary>
    public bool Crashed { get; set; }

    /// <summary>Whether the other craft flies along.</summary>
    public bool Shadow { get; set; }

    /// <summary>Whether time is held.</summary>
    public bool Paused { get; set; }

    /// <summary>Speed of time, 0.1 to 1.</summary>
    public double TimeFactor { get; set; } = 1;

    /// <summary>Whether the flight is recorded.</summary>
    public bool Recording { get; set; }

    /// <summary>Whether a recording is replayed.</summary>
    public bool Replaying { get; set; }

    /// <summary>Whether nobody shall know which craft is flown: one plate with speed and height alone.</summary>
    public bool Blind { get; set; }

    /// <summary>Whether the stick device is gone.</summary>
    public bool NoStick { get; set; }

    /// <summary>Whether the keyboard flies.</summary>
    public bool Keyboard { get; set; }

    /// <summary>Whether the craft levels itself.</summary>
    public bool Level { get; set; }

    /// <summary>Delay of the radio link, the same for both builds, s.</summary>
    public double RadioDelay { get; set; }

    /// <summary>Delay of the video that was added on purpose, s.</summary>
    public double VideoDelay { get; set; }

    /// <summary>Measured delay from a stick's event to the picture that shows it, s; not a number where none was measured.</summary>
    public double PictureDelay { get; set; } = double.NaN;

    /// <summary>Time bar of a replay.</summary>
    public TimelineReadout Timeline { get; } = new();

    /// <summary>Height of the level grid over the ground, m; not a number while there is none.</summary>
    public double GridHeight { get; set; } = double.NaN;

    /// <summary>How far the flown craft is above the level grid, m; below it negative.</summary>
    public double OverGrid { get; set; }

    /// <summary>Names of the body axes where the mass view has them on the screen.</summary>
    public AxisLabels Axes { get; } = new();

    /// <summary>Key that arms, for texts.</summary>
    public string ArmKey { get; set; } = "";

    /// <summary>Key that restarts, for texts.</summary>
    public string RestartKey { get; set; } = "";

    /// <summary>Key that holds and releases time, for texts.</summary>
    public string PauseKey { get; set; } = "";

    /// <summary>Line that was last said to the pilot; empty for none.</summary>
    public string Notice { get; private set; } = "";

    /// <summary>When it was said, s, on the clock that <see cref="FlightOverlay"/> is drawn by.</summary>
    public double NoticeTime { get; private set; }

    /// <summary>Says a line to the pilot, which fades after some seconds.</summary>
    /// <param name="text">One sentence or two.</param>
    /// <param name="time">Now, s, on the clock that <see cref="FlightOverlay"/> is drawn by.</param>
    public void Notify(string text, double time) => (Notice, NoticeTime) = (text, time);
}
