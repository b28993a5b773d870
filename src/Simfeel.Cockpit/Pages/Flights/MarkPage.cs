using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Marks;
using Simfeel.Cockpit.Pages.Widgets;

namespace Simfeel.Cockpit.Pages.Flights;

/// <summary>One time mark: its note, from ready words or typed; to it; away with it.</summary>
/// <param name="model">The marks.</param>
/// <param name="index">Which one.</param>
public sealed class MarkPage(MarksModel model, int index) : Page
{
    /// <inheritdoc/>
    public override bool IsOverFlight => true;

    private protected override IReadOnlyList<Widget> Build()
    {
        List<Widget> last = [];
        if (model.Jump is { } jump) last.Add(new Button("Go to this mark", () => jump(index)));
        last.Add(new Button("Delete", () =>
        {
            Leave();
            model.Delete(index);
        }));
        last.Add(new Button("Done", Leave));
        return
        [
            new Label("Mark at " + MarksPage.Title(model.Marks()[index]), TextStyle.Title),
            new TextField("Note", TimeMark.LongestNote, () => model.Marks()[index].Note, note => model.SetNote(index, note), "choose to type; Enter keeps it, Esc does not"),
            new Label(() => "Or one of these", TextStyle.Body, Palette.Quiet),
            new Flow([.. TimeMark.Words.Select(word => new Button(word, () => Choose(word)))], 220),
            new Flow(last, 200),
        ];
    }

    private void Choose(string word)
    {
        model.SetNote(index, word);
        Leave();
    }
}
