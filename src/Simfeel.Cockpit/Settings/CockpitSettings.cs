using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Graphics;
using Simfeel.Cockpit.Graphics.Views;

namespace Simfeel.Cockpit.Settings;

/// <summary>What a pilot sets for the window. The same for both builds: delay and field of view fake a heavier craft.</summary>
public sealed class CockpitSettings
{
    /// <summary>First build: a file or the name of a starter build.</summary>
    public string BuildA { get; set; } = "wagtail";

    /// <summary>Second build.</summary>
    public string BuildB { get; set; } = "curlew";

    /// <summary>How much the picture costs.</summary>
    public Quality Quality { get; set; } = Quality.Low;

    /// <summary>Size of text, 0.75 to 2.</summary>
    public double TextScale { get; set; } = 1;

    /// <summary>Colours of pages and of what lies over a flight.</summary>
    public PaletteKind Palette { get; set; } = PaletteKind.Usual;

    /// <summary>A replay holds at every time mark.</summary>
    public bool HoldAtMarks { get; set; }

    /// <summary>View of the first flight.</summary>
    public View View { get; set; } = View.Chase;

    /// <summary>Tilt of the onboard camera, degrees up from level; the same for both builds, whatever their files say.</summary>
    public double CameraTilt_deg { get; set; } = 25;

    /// <summary>Angle between top and bottom of the onboard picture, degrees.</summary>
    public double FieldOfView_deg { get; set; } = 80;

    /// <summary>Onboard picture in true scale: the field of view is the angle that the screen takes up for the eye.</summary>
    public bool TrueScale { get; set; }

    /// <summary>Height of the screen's picture, mm.</summary>
    public double ScreenHeight_mm { get; set; } = 300;

    /// <summary>Distance from eye to screen, mm.</summary>
    public double EyeDistance_mm { get; set; } = 600;

    /// <summary>Bend of the onboard lens, 0 none to 1 wide.</summary>
    public double WideLens { get; set; }

    /// <summary>Loudness, 0 to 1.</summary>
    public double SoundGain { get; set; } = 0.5;

    /// <summary>Delay of the radio link, ms.</summary>
    public double RadioDelay_ms { get; set; } = 4;

    /// <summary>Delay added to the picture, ms.</summary>
    public double VideoDelay_ms { get; set; }

    /// <summary>Pictures a second.</summary>
    public double FrameRate_Hz { get; set; } = 60;

    /// <summary>Speeds in km/h, else m/s.</summary>
    public bool KilometresPerHour { get; set; } = true;

    /// <summary>Bars have their numbers beside them, and delays are shown.</summary>
    public bool ShowNumbers { get; set; }

    /// <summary>The picture fills the screen.</summary>
    public bool FullScreen { get; set; }
}
