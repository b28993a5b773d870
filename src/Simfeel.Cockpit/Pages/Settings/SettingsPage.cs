using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Graphics;
using Simfeel.Cockpit.Pages.Widgets;

namespace Simfeel.Cockpit.Pages.Settings;

/// <summary>Picture, view, sound and delays.</summary>
/// <param name="model">What it shows and changes.</param>
/// <param name="overFlight">Whether it lies over a flight.</param>
public sealed class SettingsPage(SettingsModel model, bool overFlight = false) : Page
{
    private static readonly string[] Qualities = ["low: for slow machines", "medium: shadows", "high: smooth edges"];

    private static readonly string[] Palettes = ["dark", "for a projector: light"];

    /// <inheritdoc/>
    public override bool IsOverFlight => overFlight;

    private protected override IReadOnlyList<Widget> Build()
    {
        List<Widget> widgets =
        [
            new Label("Settings", TextStyle.Title),
            new Label("Picture", TextStyle.Heading),
            new Flow(
                [
                    new Choice("Quality", () => Qualities, () => (int)model.Quality, k => Set(() => model.Quality = (Quality)k)),
                    Percent(
                        "Text size", 100 * TextScale.Low, 100 * TextScale.High, 100 * TextScale.Step, () => 100 * model.TextScale,
                        v => model.TextScale = v / 100),
                    new Toggle(
                        "Speed in km/h", () => model.SpeedInKilometresPerHour,
                        v => Set(() => model.SpeedInKilometresPerHour = v), "off: m/s"),
                    new Toggle(
                        "Numbers beside bars", () => model.ShowNumbers, v => Set(() => model.ShowNumbers = v),
                        "and delays at the top"),
                    new Toggle(
                        "For a projector", () => model.ForProjector, v => Set(() => model.ForProjector = v),
                        "colours for a washed-out picture and text of 150 %"),
                    new Choice("Colours", () => Palettes, () => (int)model.Palette, k => Set(() => model.Palette = (PaletteKind)k)),
                ],
                400, 10),
            new Label("View, the same for both builds", TextStyle.Heading),
            new Flow(
                [
                    new Choice("View at the start", () => model.Views, () => model.View, k => Set(() => model.View = k)),
                    Number("Camera tilt", "deg", 0, 60, 1, () => model.CameraTilt_deg, v => model.CameraTilt_deg = v),
                    Number("Field of view", "deg", 30, 130, 1, () => model.FieldOfView_deg, v => model.FieldOfView_deg = v,
                        "upright angle; not used at true scale"),
                    Percent("Wide lens", 0, 100, 5, () => model.WideLens_percent, v => model.WideLens_percent = v,
                        "bends straight lines as a wide lens does"),
                    new Toggle("True scale", () => model.TrueScale, v => Set(() => model.TrueScale = v),
                        "things look as large as they would out there"),
                    Number("Height of the picture", "cm", 5, 200, 1, () => model.ScreenHeight_cm, v => model.ScreenHeight_cm = v,
                        "measured on your screen, for true scale"),
                    Number("Eye to screen", "cm", 20, 400, 5, () => model.EyeDistance_cm, v => model.EyeDistance_cm = v,
                        "for true scale"),
                ],
                400, 10),
            new Label("Sound and delays, the same for both builds", TextStyle.Heading),
            new Flow(
                [
                    Percent("Loudness", 0, 100, 5, () => model.SoundGain_percent, v => model.SoundGain_percent = v),
                    Number("Radio delay", "ms", 0, 100, 1, () => model.RadioDelay_ms, v => model.RadioDelay_ms = v,
                        "stick to controller"),
                    Number("Video delay", "ms", 0, 200, 5, () => model.VideoDelay_ms, v => model.VideoDelay_ms = v,
                        "added on purpose to every picture"),
                ],
                400, 10),
        ];
        List<Widget> last = [new Button("Done", Leave)];
        if (model.Reset is { } reset) last.Add(new Button("Back to first settings", reset));
        widgets.Add(new Flow(last, 200));
        return widgets;
    }

    private Slider Number(
        string label, string unit, double low, double high, double step, Func<double> get, Action<double> set, string help = "") =>
        new(label, new(low, high, step), get, v => Set(() => set(v)), v => FormattableString.Invariant($"{v:0.#} {unit}"), help);

    private Slider Percent(
        string label, double low, double high, double step, Func<double> get, Action<double> set, string help = "") =>
        Number(label, "%", low, high, step, get, set, help);

    private void Set(Action change)
    {
        change();
        model.Changed?.Invoke();
    }
}
