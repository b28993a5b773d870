using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Pages.Widgets;
using Simfeel.Studies.Lessons;

namespace Simfeel.Cockpit.Pages.Lessons;

/// <summary>The question of a lesson, before anything is shown. Each press on an answer is a hand, so that a class can be counted.</summary>
/// <param name="model">What it shows and does.</param>
public sealed class LessonQuestionPage(LessonQuestionModel model) : Page
{
    private readonly Stack<int> _raised = [];
    private int _shown = -1;

    private protected override IReadOnlyList<Widget> Build()
    {
        _shown = model.Answers.Count;
        return
        [
            new Label(model.Lesson.Title, TextStyle.Title),
            new Label(model.Lesson.Question, TextStyle.Body),
            .. model.Lesson.Choices.Select((choice, k) => new Button(
                $"{Lesson.Letter(k)}   {choice.Text}", () => Raise(k), Hands(model.Answers.Hands[k]))),
            new Flow(
                [
                    new Button(model.Answers.Count == 0 ? "Show it without an answer" : "Show it", model.Show, main: model.Answers.Count > 0),
                    new Button("Take the last hand back", TakeBack),
                    new Button("Other lesson", Leave),
                ],
                210),
            Label.Quiet("Press an answer once for yourself, or once for every hand of a class. Nobody is asked for a name."),
        ];
    }

    private protected override void Follow()
    {
        if (_shown != model.Answers.Count) Rebuild();
    }

    private static string Hands(int hands) => hands switch { 0 => "no hand yet", 1 => "1 hand", _ => $"{hands} hands" };

    private void Raise(int choice)
    {
        model.Answers.Add(choice);
        _raised.Push(choice);
        model.Changed();
    }

    private void TakeBack()
    {
        if (!_raised.TryPop(out int choice)) return;
        model.Answers.Take(choice);
        model.Changed();
    }
}
