using Simfeel.Cockpit.Application.Blind;
using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Pages.Widgets;
using Simfeel.Studies.Blind;

namespace Simfeel.Cockpit.Pages.Blind;

/// <summary>How blind flights are flown: kind, number of trials and controls, a late picture.</summary>
/// <param name="model">What it does.</param>
public sealed class BlindSetupPage(BlindSetupModel model) : Page
{
    private static readonly string[] Kinds = ["Triangle: three flights, which is the odd one?", "Pair: two flights, same or different?"];

    private int _kind, _trials = 12, _controls = 3;
    private double _late;

    private BlindTest Test => BlindTest.All[_kind];

    private protected override IReadOnlyList<Widget> Build() =>
    [
        new Label("Blind flights", TextStyle.Title),
        new Label("You fly the two builds of the start page without knowing which is which, and vote. The result is set against guessing.", TextStyle.Body),
        new Choice("Test", () => Kinds, () => _kind, kind => _kind = kind),
        new Slider("Trials", new(1, BlindOptions.MostTrials, 1), () => _trials, trials => _trials = (int)trials, trials => $"{trials:F0}", ""),
        new Label(() => BlindSentences.Plan(Test, _trials), TextStyle.Small, Palette.Quiet),
        new Slider(
            "Controls on top", new(0, 20, 1), () => _controls, controls => _controls = (int)controls, controls => $"{controls:F0}",
            "trials in which every flight is the same build; being right there is luck"),
        new Slider(
            "Late picture with the second build", new(0, 1000 * BlindOptions.LongestLate, 10), () => 1000 * _late, ms => _late = ms / 1000, ms => $"{ms:F0} ms",
            "to feel what a delay does; pick the same build twice for that"),
        new Label(() => $"{_trials + _controls} trials of {Test.Flights} flights: {(_trials + _controls) * Test.Flights} flights.", TextStyle.Small, Palette.Quiet),
        new Button("Begin", () => model.Begin(new(Test, _trials, _controls, _late)), "name, look and numbers are the same for all flights; the sound is off", main: true),
        new Button("Close", Leave),
    ];
}
