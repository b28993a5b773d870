using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Marks;
using Simfeel.Cockpit.Pages.Widgets;

namespace Simfeel.Cockpit.Pages.Flights;

/// <summary>The time marks of a recording.</summary>
/// <param name="model">What it shows and does.</param>
public sealed class MarksPage(MarksModel model) : Page
{
    private int _version = -1;

    /// <inheritdoc/>
    public override bool IsOverFlight => true;

    private protected override void Follow()
    {
        if (_version != model.Marks().Version) Rebuild();
    }

    private protected override IReadOnlyList<Widget> Build()
    {
        TimeMarks marks = model.Marks();
        _version = marks.Version;
        return
        [
            new Label("Time marks", TextStyle.Title),
            new Label(() => marks.Count == 0 ? "There is no mark yet." : "Choose a mark to go there, to change its note or to delete it.", TextStyle.Body, Palette.Quiet),
            new Flow([.. Enumerable.Range(0, marks.Count).Select(k => new Button(Title(marks[k]), () => Stack?.Open(new MarkPage(model, k)), marks[k].Note))], 250),
            new Toggle("Hold the replay at every mark", model.HoldsAtMarks, model.SetHoldsAtMarks),
            new Flow([new Button("Set a mark here", model.Set), new Button("Close", Leave)], 200),
            Label.Quiet(model.Where),
        ];
    }

    /// <summary>A mark's time as pages show it.</summary>
    internal static string Title(TimeMark mark) => FormattableString.Invariant($"{mark.Time:F2} s");
}
