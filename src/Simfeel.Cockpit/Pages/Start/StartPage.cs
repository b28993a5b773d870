using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Pages.Widgets;

namespace Simfeel.Cockpit.Pages.Start;

/// <summary>The first page: two builds, a field, the sticks, and off.</summary>
/// <param name="model">What it shows and does.</param>
public sealed class StartPage(StartModel model) : Page
{
    /// <summary>What every user should have read once; the README says more.</summary>
    internal const string Safety =
        "With a real craft: propellers off on the bench; stay by a charging lithium battery; "
        + "fly away from people and within your local rules.";

    private Button? _quit;
    private string _sticks = "";

    private protected override IReadOnlyList<Widget> Build()
    {
        _quit = new("Quit", model.Quit);
        return
        [
            new Label("Simfeel", TextStyle.Title),
            Label.Quiet("Fly two builds back to back with the same sticks, and feel what differs."),
            new Flow([Picker(0), Picker(1)], 330),
            new Flow(
                [
                    new Choice("Field", () => model.Fields, () => model.Field, SetField),
                    new Button("Sticks: " + model.SticksName, model.Sticks, model.SticksState, warn: model.SticksNeedCare),
                ],
                330),
            new Button("Fly", Fly, main: true),
            new Flow([new Button("Lessons", model.Lessons), new Button("Blind flights", model.Blind), new Button("Settings", model.Settings), new Button("Keys and help", model.Help), _quit], 150),
            Label.Quiet(Safety),
        ];
    }

    /// <summary>The first back goes to the button that leaves, the second one leaves.</summary>
    internal override void Leave()
    {
        if (_quit is null || Focused == _quit) model.Quit();
        else Focus(_quit);
    }

    private protected override void Follow()
    {
        string now = model.SticksName + "\n" + model.SticksState + model.SticksNeedCare;
        if (now == _sticks) return;
        _sticks = now;
        Rebuild();
    }

    private BuildPicker Picker(int index) => new(
        index,
        () => model.Builds[model.Picked[index]],
        step => Pick(index, (model.Picked[index] + step + model.Builds.Count) % model.Builds.Count),
        () => Stack?.Open(new BuildListPage(index, model, build => Pick(index, build))));

    private void Pick(int index, int build)
    {
        model.Picked[index] = build;
        model.Changed?.Invoke();
    }

    private void SetField(int field)
    {
        model.Field = field;
        model.Changed?.Invoke();
    }

    private void Fly()
    {
        if (model.Builds[model.Picked[0]].Fault is null && model.Builds[model.Picked[1]].Fault is null)
        {
            model.Fly();
            return;
        }
        BuildChoice faulty = model.Builds[model.Picked[0]].Fault is null ? model.Builds[model.Picked[1]] : model.Builds[model.Picked[0]];
        Stack?.Open(new MessagePage(new()
        {
            Title = faulty.Name + " cannot be flown",
            Text = faulty.Fault!,
            Choices = [new("Pick another build", null)],
        }));
    }
}
