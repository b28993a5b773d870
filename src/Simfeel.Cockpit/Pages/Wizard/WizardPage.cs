using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Input.Wizard;
using Simfeel.Cockpit.Pages.Widgets;

namespace Simfeel.Cockpit.Pages.Wizard;

/// <summary>The sticks wizard: one question, what moves, what may be chosen.</summary>
/// <param name="model">What it shows and does.</param>
public sealed class WizardPage(WizardModel model) : Page
{
    private IReadOnlyList<string> _choices = [];
    private bool _done;

    /// <inheritdoc/>
    public override bool IsLive => true;

    private protected override IReadOnlyList<Widget> Build()
    {
        WizardView view = model.View();
        (_choices, _done) = ([.. view.Choices], view.Done);
        List<Widget> last = [];
        if (_done) last.Add(new Button("Store and close", Store, main: true));
        last.Add(new Button("Start over", model.Again));
        last.Add(new Button(_done ? "Leave without storing" : "Leave", Leave));
        return
        [
            new Label(() => model.Device() is { Length: > 0 } name ? "Sticks: " + name : "Sticks", TextStyle.Small, Palette.Quiet),
            new Label(() => model.View().Title, TextStyle.Title, Palette.Ink),
            new Label(() => model.View().Help, TextStyle.Body, Palette.Ink),
            new Flow([.. _choices.Select((text, k) => new Button(text, () => model.Choose(k)))], 300, 10),
            new Flow([new AxisBars(model.View), new StickPicture(model.View)], 280),
            new Flow(last, 200),
        ];
    }

    private protected override void Follow()
    {
        WizardView view = model.View();
        if (view.Done != _done || !view.Choices.SequenceEqual(_choices)) Rebuild();
    }

    internal override void Leave()
    {
        Stack?.Close();
        model.Cancel();
    }

    private void Store()
    {
        Stack?.Close();
        model.Store();
    }
}
