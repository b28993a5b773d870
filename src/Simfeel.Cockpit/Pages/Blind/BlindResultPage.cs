using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Pages.Widgets;
using Simfeel.Studies.Blind;

namespace Simfeel.Cockpit.Pages.Blind;

/// <summary>The truth after blind flights, and what the votes show.</summary>
/// <param name="model">What it shows.</param>
public sealed class BlindResultPage(BlindResultModel model) : Page
{
    private protected override IReadOnlyList<Widget> Build() =>
    [
        new Label("After the blind flights", TextStyle.Title),
        new Label(model.Sentence, TextStyle.Heading),
        new Label(model.Controls, TextStyle.Body),
        new Label($"A: {model.Builds[0]}. B: {model.Builds[1]}.", TextStyle.Body),
        new Table(["trial", "flown", "your vote", ""], () => [.. model.Trials.Select(Row)]),
        new Label(() => model.File, TextStyle.Small, Palette.Quiet),
        new Button("Close", Leave),
    ];

    private static string[] Row(RevealedTrial trial) =>
        [$"{trial.Trial}", string.Join(' ', trial.Order.ToCharArray()), trial.Answer, trial.Control ? "a control, does not count" : trial.Right ? "right" : "not right"];
}
