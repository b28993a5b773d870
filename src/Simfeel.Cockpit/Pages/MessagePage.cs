using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Pages.Widgets;

namespace Simfeel.Cockpit.Pages;

/// <summary>Something that must be read, with its answers.</summary>
/// <param name="model">What it says and takes.</param>
/// <param name="overFlight">Whether it lies over a flight.</param>
public sealed class MessagePage(MessageModel model, bool overFlight = false) : Page
{
    /// <inheritdoc/>
    public override bool IsOverFlight => overFlight;

    private protected override IReadOnlyList<Widget> Build() =>
    [
        new Label(model.Title, TextStyle.Title),
        new Label(() => model.Text, TextStyle.Body, Palette.Ink),
        new Flow([.. model.Choices.Select((choice, k) => new Button(choice.Text, () => Answer(choice), main: k == 0))], 220),
    ];

    internal override void Leave() =>
        Answer(model.Choices[Math.Clamp(model.BackChoice, 0, model.Choices.Count - 1)]);

    private void Answer(MessageChoice choice)
    {
        Stack?.Close();
        choice.Action?.Invoke();
    }
}
