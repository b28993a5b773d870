using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Pages.Widgets;
using Simfeel.Studies.Lessons;

namespace Simfeel.Cockpit.Pages.Lessons;

/// <summary>All lessons by topic.</summary>
/// <param name="model">What it shows and does.</param>
public sealed class LessonListPage(LessonListModel model) : Page
{
    private protected override IReadOnlyList<Widget> Build() =>
    [
        new Label("Lessons", TextStyle.Title),
        Label.Quiet("A question first, then two craft that differ in one thing, and why."),
        .. model.Lessons.Select((lesson, k) => (lesson, k)).GroupBy(pair => pair.lesson.Topic).SelectMany(topic => (Widget[])
        [
            new Label(topic.Key, TextStyle.Heading),
            new Flow([.. topic.Select(pair => Entry(pair.lesson, pair.k))], 330),
        ]),
        new Toggle("Keep the answers in a table", model.KeepsAnswers, model.KeepAnswers, "No names. " + model.AnswersFile),
        new Button("Close", Leave),
        Label.Quiet(LessonWords.Safety),
    ];

    private Button Entry(Lesson lesson, int k) => new(lesson.Title, () => model.Open(k), lesson.Idea);
}
