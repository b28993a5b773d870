using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Pages.Widgets;
using Simfeel.Studies;

namespace Simfeel.Cockpit.Pages.Blind;

/// <summary>The vote on a trial, and the way back to its flights.</summary>
/// <param name="model">What it shows and does.</param>
public sealed class BlindVotePage(BlindVoteModel model) : Page
{
    /// <inheritdoc/>
    public override bool IsOverFlight => true;

    /// <inheritdoc/>
    public override IReadOnlyList<PilotAction> Closing => [PilotAction.Results];

    private protected override IReadOnlyList<Widget> Build() =>
    [
        new Label(model.Question, TextStyle.Title),
        new Label(model.State, TextStyle.Body),
        model.WhyNot.Length == 0
            ? new Flow([.. model.Choices.Select((choice, k) => new Button(Capital(choice), () => model.Vote(k + 1)))], 200)
            : new Label(model.WhyNot, TextStyle.Body),
        new Flow([.. Enumerable.Range(1, model.Flights).Select(flight => new Button($"Fly flight {flight}", () => model.FlyAgain(flight), flight == model.Here ? "in the air now" : ""))], 200),
        new Button("Fly on", Leave),
    ];

    private static string Capital(string text) => char.IsDigit(text[0]) ? "Flight " + text : Words.Capital(text);
}
