using System.Collections.Concurrent;
using Simfeel.Builds;
using Simfeel.Cockpit.Pages.Lessons;
using Simfeel.Studies.Lessons;

namespace Simfeel.Cockpit.Tests.Pages;

/// <summary>Models of the lesson pages with lessons that come along.</summary>
internal static class LessonSamples
{
    private static readonly ConcurrentDictionary<string, LessonResult> Flown = [];

    /// <summary>A lesson about a number, and one about words.</summary>
    public static Lesson Numbers => Read("ballast-to-the-tips");

    public static Lesson Words => Read("three-axes");

    public static LessonListModel List(Samples samples) => new()
    {
        Lessons = [.. LessonShelf.All().Select(pair => pair.Lesson)],
        Open = k => samples.Called.Add($"lesson {k}"),
        KeepsAnswers = () => false,
        KeepAnswers = on => samples.Called.Add($"keep {on}"),
        AnswersFile = "~/simfeel/class.csv",
    };

    public static LessonQuestionModel Question(Samples samples)
    {
        ClassAnswers answers = new(Numbers.Choices.Count);
        answers.Add(1);
        return new() { Lesson = Numbers, Answers = answers, Changed = () => samples.Called.Add("answered"), Show = () => samples.Called.Add("show") };
    }

    public static LessonShowModel Show(Samples samples, Lesson lesson, bool flown)
    {
        ClassAnswers answers = new([.. lesson.Choices.Select((_, k) => k + 1)]);
        LessonResult? result = flown ? Flown.GetOrAdd(lesson.Name, _ => LessonRun.Fly(lesson, Build(lesson))) : null;
        double time = 0.3;
        return new()
        {
            Lesson = lesson,
            Answers = answers,
            Result = () => result,
            State = () => flown ? "" : "It is being flown ...",
            Seen = () => true,
            Tell = () => samples.Called.Add("tell"),
            Time = () => time,
            Length = () => 0.75,
            Seek = to => time = to,
            Plays = () => false,
            PlayOrHold = () => samples.Called.Add("play"),
            Speed = () => 0.25,
            NextSpeed = () => samples.Called.Add("speed"),
            ShowsMasses = () => false,
            ShowMasses = on => samples.Called.Add($"masses {on}"),
            Own = () => lesson.Change.Key.Words.Count > 0 ? 1 : lesson.Change.B.Number,
            SetOwn = own => samples.Called.Add($"own {own}"),
            FlyBoth = () => samples.Called.Add("fly both"),
            FlyBlind = () => samples.Called.Add("fly blind"),
            SheetFile = () => "~/simfeel/lesson-ballast-to-the-tips-2026-11-28.html",
        };
    }

    private static Build Build(Lesson lesson) => BuildReader.Read(LessonShelf.BuildFile(lesson, null)!).Build!;

    private static Lesson Read(string name) => LessonReader.Read(LessonShelf.Files.PathOf(name)!).Lesson!;
}
