using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Graphics;

namespace Simfeel.Cockpit.Pages.Settings;

/// <summary>What the settings page shows and changes. Values are in the units that it shows.</summary>
public sealed class SettingsModel
{
    /// <summary>How much the picture costs.</summary>
    public Quality Quality { get; set; }

    /// <summary>Text scale, 0.75 to 2.</summary>
    public double TextScale { get; set; } = 1;

    /// <summary>Colours of pages and of what lies over a flight.</summary>
    public PaletteKind Palette { get; set; }

    /// <summary>
    /// For a projector: its palette and text of 150 % in one go, both free to be set apart afterwards; off, the usual of both.
    /// On as long as its palette is.
    /// </summary>
    public bool ForProjector
    {
        get => Palette == PaletteKind.Projector;
        set => (Palette, TextScale) = value ? (PaletteKind.Projector, 1.5) : (PaletteKind.Usual, 1);
    }

    /// <summary>Names of the views.</summary>
    public IReadOnlyList<string> Views { get; set; } = ["Onboard"];

    /// <summary>View at the start of a flight, index of <see cref="Views"/>.</summary>
    public int View { get; set; }

    /// <summary>Tilt of the onboard camera, nose up, degrees, 0 to 60.</summary>
    public double CameraTilt_deg { get; set; } = 25;

    /// <summary>Angle between top and bottom of the picture, degrees, 30 to 130; not used at true scale.</summary>
    public double FieldOfView_deg { get; set; } = 75;

    /// <summary>Whether the picture shows things under the angle they would have for the pilot's own eye.</summary>
    public bool TrueScale { get; set; }

    /// <summary>Height of the picture on the screen, cm, 5 to 200.</summary>
    public double ScreenHeight_cm { get; set; } = 30;

    /// <summary>From eye to screen, cm, 20 to 400.</summary>
    public double EyeDistance_cm { get; set; } = 60;

    /// <summary>Bend of a wide lens, percent, 0 to 100.</summary>
    public double WideLens_percent { get; set; }

    /// <summary>Loudness, percent, 0 to 100, for both builds alike.</summary>
    public double SoundGain_percent { get; set; } = 60;

    /// <summary>Delay of the radio link for both builds, ms, 0 to 100.</summary>
    public double RadioDelay_ms { get; set; } = 4;

    /// <summary>Delay of the video that is added for both builds, ms, 0 to 200.</summary>
    public double VideoDelay_ms { get; set; }

    /// <summary>Whether speeds are shown in km/h; m/s else.</summary>
    public bool SpeedInKilometresPerHour { get; set; } = true;

    /// <summary>Whether bars have their numbers beside them.</summary>
    public bool ShowNumbers { get; set; }

    /// <summary>Called after each change; may be null.</summary>
    public Action? Changed { get; init; }

    /// <summary>Puts everything back to what a new user has; the page then shows it. Null for no such button.</summary>
    public Action? Reset { get; init; }
}
