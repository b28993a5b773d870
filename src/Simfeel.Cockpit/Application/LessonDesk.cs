using System.Globalization;
using Simfeel.Builds;
using Simfeel.Builds.Writing;
using Simfeel.Cockpit.Pages.Lessons;
using Simfeel.Cockpit.Platform;
using Simfeel.Cockpit.Stage;
using Simfeel.Flight;
using Simfeel.Studies.Blind;
using Simfeel.Studies.Lessons;

namespace Simfeel.Cockpit.Application;

/// <summary>Lessons in the window: the list, the question, and the result, which is flown by another thread.</summary>
internal sealed class LessonDesk(CockpitApp app, string ownLessons, string outputFolder) : IDisposable
{
    /// <summary>Trials and controls of a lesson that is flown blind: few, since a class waits.</summary>
    private const int BlindTrials = 6, BlindControls = 2;

    private readonly List<string> _wrong = [];

    private IReadOnlyList<(string File, Lesson Lesson)>? _read;
    private LessonShowPage? _page;
    private Build? _build;
    private Task<LessonResult>? _work;
    private Task<string>? _sheetWork;
    private LessonResult? _result;
    private ClassAnswers _answers = new(1);
    private string _state = "", _sheet = "";
    private double _own;
    private bool _asked, _keeps, _again;

    /// <summary>What is shown; null while no lesson is.</summary>
    public LessonStage? Stage { get; private set; }

    /// <summary>What came out last; for tests.</summary>
    public LessonResult? Result => _result;

    /// <summary>File of the sheet written last; empty for none. For tests.</summary>
    public string SheetFile => _sheet;

    /// <summary>File that answers are kept in.</summary>
    public string AnswersFile => Path.Combine(outputFolder, "class.csv");

    /// <summary>The page that the scene shows through, while it is on top.</summary>
    public LessonShowPage? Page => ReferenceEquals(app.Pages.Top, _page) ? _page : null;

    /// <summary>Opens the list, and says which of the user's own lessons are none.</summary>
    public void Open()
    {
        app.Pages.Open(new LessonListPage(new()
        {
            Lessons = [.. Lessons.Select(pair => pair.Lesson)],
            Open = Ask,
            KeepsAnswers = () => _keeps,
            KeepAnswers = on => _keeps = on,
            AnswersFile = AnswersFile,
        }));
        if (_wrong.Count > 0) app.Say("A lesson of your own cannot be read", string.Join('\n', _wrong));
        _wrong.Clear();
    }

    /// <summary>Read when they are first asked for, since a flight needs none.</summary>
    private IReadOnlyList<(string File, Lesson Lesson)> Lessons => _read ??= LessonShelf.With(ownLessons, _wrong);

    /// <summary>Time passes; what another thread has finished is taken over.</summary>
    public void Advance(double seconds)
    {
        if (_work is { IsCompleted: true }) Take();
        if (_sheetWork is { IsCompleted: true } done)
        {
            _sheetWork = null;
            _sheet = done.Result;
            app.Pages.Invalidate();
        }
        if (Page is not null) Stage?.Advance(seconds);
    }

    /// <summary>Opens the result of a lesson, held at a moment, as soon as it is flown; for pictures.</summary>
    /// <param name="name">Name of the lesson.</param>
    /// <param name="time">The moment, s.</param>
    /// <param name="masses">Whether masses and arrows are shown.</param>
    public void ShowAt(string name, double time, bool masses)
    {
        int n = Lessons.ToList().FindIndex(pair => pair.Lesson.Name == name);
        Ask(n);
        _work!.Wait();
        Take();
        Show(Lessons[n].Lesson);
        Stage!.ShowsMasses = masses;
        Stage.Seen = true;
        Stage.Seek(time);
    }

    /// <summary>Lets a sheet that is being written be finished.</summary>
    public void Dispose()
    {
        _sheetWork?.Wait();
        _work?.ContinueWith(_ => { }, TaskScheduler.Default).Wait();
    }

    private void Ask(int n)
    {
        (string file, Lesson lesson) = Lessons[n];
        string? path = LessonShelf.BuildFile(lesson, file);
        BuildResult? read = path is null ? null : BuildReader.Read(path);
        if (read?.Build is not Build build)
        {
            app.Say("This lesson cannot be flown", read is null ? $"There is no build {lesson.Build}." : string.Join('\n', read.Diagnostics));
            return;
        }
        // the last lesson's page must not take this one's result for shown
        (_page, _again) = (null, false);
        _build = build;
        _answers = new(lesson.Choices.Count);
        // it is flown while the class thinks
        Begin(lesson, null);
        app.Pages.Open(new LessonQuestionPage(new()
        {
            Lesson = lesson,
            Answers = _answers,
            Changed = app.Pages.Invalidate,
            Show = () => Show(lesson),
        }));
    }

    private void Begin(Lesson lesson, LessonValue? own)
    {
        Build build = _build!;
        _state = "It is being flown ...";
        (_result, Stage, _sheet, _asked) = own is null ? (null, null, "", true) : (_result, Stage, _sheet, _asked);
        _own = Place(lesson.Change.Key, own ?? lesson.Change.B);
        _work = Task.Run(() => LessonRun.Fly(lesson, build, own));
    }

    /// <summary>Takes over what was flown, or says why it cannot fly.</summary>
    private void Take()
    {
        Task<LessonResult> work = _work!;
        _work = null;
        if (work.Exception?.InnerException is Exception error)
        {
            _state = error is LessonException ? error.Message : throw error;
        }
        else
        {
            _state = "";
            _result = work.Result;
            Stage = new(_result) { ShowsMasses = Stage?.ShowsMasses ?? false, Seen = Stage?.Seen ?? false };
            if (_page is not null) app.Painter.Show(Stage);
            if (_page is not null && _asked) Shown();
        }
        app.Pages.Invalidate();
        if (!_again) return;
        _again = false;
        Begin(_result!.Lesson, Value(_result.Lesson.Change.Key, _own));
    }

    private void Show(Lesson lesson)
    {
        // one page back from the result is the list
        app.Pages.Close();
        LessonShowPage page = new(new()
        {
            Lesson = lesson,
            Answers = _answers,
            Result = () => _result,
            State = () => _state,
            Seen = () => Stage?.Seen ?? false,
            Tell = () =>
            {
                if (Stage is not null) Stage.Seen = true;
            },
            Time = () => Stage?.Time ?? 0,
            Length = () => Stage?.Length ?? 0,
            Seek = time => Stage?.Seek(time),
            Plays = () => Stage?.Plays ?? false,
            PlayOrHold = () =>
            {
                if (Stage is not null) Stage.Plays = !Stage.Plays;
            },
            Speed = () => Stage?.Speed ?? 1,
            NextSpeed = () => Stage?.NextSpeed(),
            ShowsMasses = () => Stage?.ShowsMasses ?? false,
            ShowMasses = on =>
            {
                if (Stage is not null) Stage.ShowsMasses = on;
            },
            Own = () => _own,
            SetOwn = own => Change(lesson, own),
            FlyBoth = MakesTwoCraft(lesson.Change.Key) ? FlyBoth : null,
            FlyBlind = lesson.FlyBlind ? FlyBlind : null,
            SheetFile = () => _sheet,
        });
        _page = page;
        app.Pages.Open(page);
        if (Stage is null || _result is null) return;
        app.Painter.Show(Stage);
        Shown();
    }

    /// <summary>The lesson's own result is on screen for the first time: the sheet is written, the answers are kept.</summary>
    private void Shown()
    {
        _asked = false;
        LessonResult result = _result!;
        ClassAnswers answers = _answers;
        Build build = _build!;
        if (_keeps) Keep(result, answers);
        _sheetWork = Task.Run(() => WriteSheet(result, answers, build));
    }

    private void Keep(LessonResult result, ClassAnswers answers)
    {
        try
        {
            Directory.CreateDirectory(outputFolder);
            ClassLog.Append(AnswersFile, result, answers, DateOnly.FromDateTime(DateTime.Now), CockpitApp.Version);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            _state = $"The answers cannot be kept: {error.Message}";
        }
    }

    /// <summary>Writes the sheet of the day for this lesson; gives its file, or why there is none.</summary>
    private string WriteSheet(LessonResult result, ClassAnswers answers, Build build)
    {
        DateOnly today = DateOnly.FromDateTime(DateTime.Now);
        string file = Path.Combine(outputFolder, string.Create(CultureInfo.InvariantCulture, $"lesson-{result.Lesson.Name}-{today:yyyy-MM-dd}.html"));
        try
        {
            Directory.CreateDirectory(outputFolder);
            string text = new LessonSheet(result, LessonTrial.Over(result.Lesson, build), answers, today, CockpitApp.Version).Html(withAnswers: true);
            WholeFile.Write(file, text);
            return file;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return $"cannot be stored: {error.Message} Set {UserFolder.OutputVariable} to another folder.";
        }
    }

    /// <summary>The second craft gets another value; while one is flown the last one asked for waits.</summary>
    private void Change(Lesson lesson, double own)
    {
        _own = own;
        if (_work is not null) _again = true;
        else Begin(lesson, Value(lesson.Change.Key, own));
    }

    private LessonValue Value(LessonKey key, double own) =>
        key.Words.Count > 0 ? new(double.NaN, key.Words[(int)own]) : _result!.Lesson.Change.B with { Number = own };

    private static double Place(LessonKey key, LessonValue value) =>
        key.Words.Count > 0 ? Math.Max(0, key.Words.ToList().IndexOf(value.Word)) : value.Number;

    /// <summary>Both craft as a pilot flies them: matched gains, whatever the lesson's policy.</summary>
    private FlyableBuild[] Craft() =>
        [.. new[] { _result!.A, _result.B }.Select(flight => Named(flight, MakesTwoCraft(_result.Lesson.Change.Key) ? flight.Name : flight.Assembled.Build.Name))];

    /// <summary>Whether a key changes the craft itself: a number of its build, or ballast on it; others change how it is flown.</summary>
    private static bool MakesTwoCraft(LessonKey key) => key.Kind != LessonKeyKind.Own || key.Path.StartsWith("ballast.", StringComparison.Ordinal);

    private FlyableBuild Named(LessonFlight flight, string name) => new(
        flight.Assembled with { Build = flight.Assembled.Build with { Name = name } },
        TunedUnit.Matched(FlightUnit.Of(flight.Assembled) with { Name = name }, flight.Assembled.Air, app.Profile), [], null);

    /// <summary>Takes the two craft to the field.</summary>
    private void FlyBoth()
    {
        FlyableBuild[] craft = Craft();
        app.FlyCraft(craft[0], craft[1]);
    }

    /// <summary>Takes the two to the field under one name; where the lesson is about a late picture, the second one's comes late.</summary>
    private void FlyBlind()
    {
        FlyableBuild[] craft = Craft();
        LessonChange change = _result!.Lesson.Change;
        double late = change.Key.Path == "display.delay_ms" ? (_result.B.Value.Number - _result.A.Value.Number) / 1000 : 0;
        if (_result.A.Value == _result.B.Value)
        {
            app.Say("Nothing to tell apart", "Both craft have the same value here. Change it first.");
            return;
        }
        app.Pages.Clear();
        app.Blind.Begin(craft[0], craft[1], new(BlindTest.Pair, BlindTrials, BlindControls, late));
    }
}
