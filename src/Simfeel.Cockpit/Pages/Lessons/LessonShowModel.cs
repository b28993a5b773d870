using Simfeel.Studies.Lessons;

namespace Simfeel.Cockpit.Pages.Lessons;

/// <summary>What the result of a lesson shows and does; it comes when the flights are done.</summary>
public sealed class LessonShowModel
{
    /// <summary>The lesson.</summary>
    public required Lesson Lesson { get; init; }

    /// <summary>What was answered.</summary>
    public required ClassAnswers Answers { get; init; }

    /// <summary>What came out; null while it is flown.</summary>
    public required Func<LessonResult?> Result { get; init; }

    /// <summary>What goes on or went wrong; empty for nothing.</summary>
    public required Func<string> State { get; init; }

    /// <summary>Whether the flights were seen, so that the result may be told.</summary>
    public required Func<bool> Seen { get; init; }

    /// <summary>Tells the result at once.</summary>
    public required Action Tell { get; init; }

    /// <summary>The moment that is shown, s.</summary>
    public required Func<double> Time { get; init; }

    /// <summary>Length of the flights, s.</summary>
    public required Func<double> Length { get; init; }

    /// <summary>Shows another moment.</summary>
    public required Action<double> Seek { get; init; }

    /// <summary>Whether time goes on.</summary>
    public required Func<bool> Plays { get; init; }

    /// <summary>Lets time go on, or holds it.</summary>
    public required Action PlayOrHold { get; init; }

    /// <summary>Speed of time, 0.1 to 1.</summary>
    public required Func<double> Speed { get; init; }

    /// <summary>Next speed of time.</summary>
    public required Action NextSpeed { get; init; }

    /// <summary>Whether masses and arrows are shown in place of shapes.</summary>
    public required Func<bool> ShowsMasses { get; init; }

    /// <summary>Shows masses or shapes.</summary>
    public required Action<bool> ShowMasses { get; init; }

    /// <summary>The value that the second craft has; a number, or the place of a word among the key's words.</summary>
    public required Func<double> Own { get; init; }

    /// <summary>Gives the second craft another value.</summary>
    public required Action<double> SetOwn { get; init; }

    /// <summary>Takes both craft to the field; null where they are the same.</summary>
    public Action? FlyBoth { get; init; }

    /// <summary>Flies both blind; null where the lesson is none to be felt.</summary>
    public Action? FlyBlind { get; init; }

    /// <summary>Where the sheet of this lesson is; empty while there is none.</summary>
    public required Func<string> SheetFile { get; init; }
}
