using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Pages.Widgets;

namespace Simfeel.Cockpit.Pages.Flights;

/// <summary>The menu while time is held.</summary>
/// <param name="model">What it shows and does.</param>
public sealed class PausePage(PauseModel model) : Page
{
    /// <inheritdoc/>
    public override bool IsOverFlight => true;

    private protected override IReadOnlyList<Widget> Build()
    {
        List<Widget> buttons = [];
        Add("Restart", model.Restart, "both craft from their start");
        Add("Swap builds", model.Swap, "fly the other one from the start");
        Add("Next flight", model.NextFlight, "of this trial");
        Add("Vote", model.Vote, "which craft was which");
        Add("Part bench", model.Bench, "change a part of the flown build");
        Add("After-flight table", model.Results, "what the flights so far show");
        Add("Time marks", model.Marks, "moments to come back to");
        Add("Sticks", model.Sticks, "set up the stick device");
        Add("Settings", model.Settings, "picture, sound, delays");
        Add("Keys", model.Keys, "every key and button");
        return
        [
            new Label("Paused", TextStyle.Title),
            new Label(() => model.State, TextStyle.Body, Palette.Quiet),
            new Button("Fly on", model.Resume, main: true),
            new Flow(buttons, 250),
            new Button("End this flight", model.EndFlight, model.AfterFlight),
        ];

        void Add(string text, Action? action, string detail)
        {
            if (action is not null) buttons.Add(new Button(text, action, detail));
        }
    }

    internal override void Leave() => model.Resume();
}
