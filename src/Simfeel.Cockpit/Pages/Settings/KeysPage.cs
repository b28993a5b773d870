using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Pages.Widgets;

namespace Simfeel.Cockpit.Pages.Settings;

/// <summary>Every action with its key and its pad button, each of which can be put elsewhere.</summary>
/// <param name="model">What it shows and changes.</param>
/// <param name="overFlight">Whether it lies over a flight.</param>
public sealed class KeysPage(KeysModel model, bool overFlight = false) : Page
{
    /// <inheritdoc/>
    public override bool IsOverFlight => overFlight;

    /// <inheritdoc/>
    public override IReadOnlyList<PilotAction> Closing => [PilotAction.Help];

    private protected override IReadOnlyList<Widget> Build() =>
    [
        new Label("Keys and buttons", TextStyle.Title),
        Label.Quiet(
            "Left the key, right the button of the pad. Choose one to put its action on another; Esc keeps the old one."),
        new Label(() => model.FlyingKeys, TextStyle.Body, Palette.Ink),
        new Flow([.. model.Lines.Select(line => new KeyRow(line))], 460, 8),
        new Flow([new Button("Done", Leave), new Button("Back to first keys", model.Reset)], 200),
    ];
}
