using System.Globalization;
using Simfeel.Builds;
using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Pages.Blind;
using Simfeel.Flight;
using Simfeel.Flight.Tuning;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Blind;
using Simfeel.Studies.Compare;
using Simfeel.Studies.Metrics;

namespace Simfeel.Cockpit.Application.Blind;

/// <summary>
/// Blind flights in the window. Whatever is flown bears the same name, the same look and no sound, and nothing is written before the vote:
/// recordings wait as sticks in memory and are made after the end.
/// </summary>
internal sealed class BlindDesk(CockpitApp app, CockpitOptions options)
{
    private const string NeutralName = "Blind craft";

    private readonly List<BlindRecording> _recordings = [];
    private FlyableBuild[] _craft = [];
    private BlindOptions? _how;
    private BlindSession? _session;
    private BlindAirtime _airtime = new(1);
    private Task<VoteSubject>? _subject;
    private int _notStored;
    private string _trouble = "";

    /// <summary>Whether a session is open.</summary>
    public bool IsOn => _session is { IsOver: false };

    /// <summary>The session; for tests.</summary>
    public BlindSession? Session => _session;

    /// <summary>Delay added to the picture of the flight in the air, s.</summary>
    public double Late { get; private set; }

    /// <summary>Build whose look every flight has.</summary>
    public AssembledBuild Look => _craft[0].Assembled;

    /// <summary>The file of votes.</summary>
    public string VotesFile => _how?.VotesFile ?? Path.Combine(options.PictureFolder, VoteLog.UsualName);

    /// <summary>Where the session stands, in words that tell nothing.</summary>
    public string State => _session?.Current is BlindFlight flight
        ? $"Trial {flight.Trial} of {_session.Trials}, flight {flight.Flight} of {_session.Test.Flights}."
        : "";

    /// <summary>Opens the page that asks how.</summary>
    public void OpenSetup() => app.Pages.Open(new BlindSetupPage(new()
    {
        Begin = how => app.FlyBlind(how),
    }));

    /// <summary>Draws a session for two builds and flies its first flight.</summary>
    public void Begin(FlyableBuild a, FlyableBuild b, BlindOptions how)
    {
        _craft = [a, b];
        _how = how;
        _recordings.Clear();
        (_notStored, _trouble) = (0, "");
        _session = new(how.Test, how.Trials, how.Controls);
        _airtime = new(how.Test.Flights);
        PilotProfile profile = app.Profile;
        _subject = Task.Run(() => Subject(a, b, profile, how));
        Fly();
        app.Notify($"{app.KeyOf(PilotAction.Swap)}: next flight of the trial. {app.KeyOf(PilotAction.Results)}: vote. The sound is off, since its pitch would tell.");
    }

    /// <summary>Takes an action that means another thing in blind flights, or would tell; true where it was taken.</summary>
    public bool Takes(PilotAction action)
    {
        if (!IsOn) return false;
        switch (action)
        {
            case PilotAction.Swap:
                Next();
                return true;
            case PilotAction.Results:
                OpenVote();
                return true;
            case PilotAction.SwapInPlace or PilotAction.Shadow or PilotAction.Bench or PilotAction.MassView or PilotAction.Graphs:
                app.Notify("Not in a blind flight: it would tell which craft this is.");
                return true;
            default:
                return false;
        }
    }

    /// <summary>Counts the time (s) that the flight in the air really was there.</summary>
    public void Flew(CraftCondition condition, double seconds)
    {
        if (_session?.Current is BlindFlight flight && condition is { Armed: true, Crashed: false, Touching: false }) _airtime.Add(flight.Flight, seconds);
    }

    /// <summary>Why two builds cannot be told apart by anybody; empty where they may be.</summary>
    public static string WhyAlike(FlyableBuild a, FlyableBuild b, BlindOptions how) =>
        how.Late == 0 && a.Assembled.Build.Source is BuildSource source && source == b.Assembled.Build.Source && a.Edits.SequenceEqual(b.Edits)
            ? BlindOptions.NothingToTell(a.Name)
            : "";

    /// <summary>Goes on to the next flight of the trial.</summary>
    public void Next()
    {
        _session!.Next();
        Fly();
    }

    /// <summary>Opens the vote on this trial.</summary>
    public void OpenVote()
    {
        BlindSession session = _session!;
        BlindFlight here = session.Current!;
        app.Pages.Open(new BlindVotePage(new()
        {
            State = State,
            Question = session.Test.Question,
            Choices = session.Test.Choices,
            Flights = session.Test.Flights,
            WhyNot = _airtime.Missing,
            Vote = Vote,
            FlyAgain = flight =>
            {
                app.Pages.Close();
                session.Select(flight);
                Fly();
            },
            Here = here.Flight,
        }));
    }

    /// <summary>Ends the session, voted or not, and tells the truth of what was voted.</summary>
    public void End()
    {
        IReadOnlyList<RevealedTrial> truth = _session!.IsOver ? _session.Reveal() : _session.Abandon();
        app.LeaveField();
        WriteRecordings();
        if (truth.Count == 0) return;
        BlindResult result = BlindResult.Of(_how!.Test, truth);
        string second = _how.Late > 0 ? string.Create(CultureInfo.InvariantCulture, $"{_craft[1].Name}, picture {1000 * _how.Late:F0} ms later") : _craft[1].Name;
        app.Pages.Open(new BlindResultPage(new()
        {
            Builds = [_craft[0].Name, second],
            Sentence = BlindSentences.Of(result),
            Controls = BlindSentences.OfControls(result),
            Trials = truth,
            File = _notStored == 0 ? $"Votes are in {VotesFile}; ./simfeel votes reads them." : $"{_notStored} votes could not be stored. {_trouble}",
        }));
    }

    private void Vote(int choice)
    {
        CastVote vote = _session!.Vote(choice);
        _airtime.Clear();
        try
        {
            new VoteLog(VotesFile).Append(vote, _subject!.Result, DateTimeOffset.Now);
        }
        catch (VoteLogException error)
        {
            _notStored++;
            _trouble = error.Message;
            app.Notify(_trouble);
        }
        app.Pages.Clear();
        if (_session.IsOver) End();
        else Fly();
    }

    /// <summary>Puts the flight that is next into the air, under the name that all of them have.</summary>
    private void Fly()
    {
        BlindFlight flight = _session!.Current!;
        int which = flight.TakeOff();
        FlyableBuild craft = _craft[which];
        Late = which == 1 ? _how!.Late : 0;
        AssembledBuild assembled = craft.Assembled with { Build = craft.Assembled.Build with { Name = NeutralName } };
        FlyableBuild neutral = new(assembled, craft.Unit with { Unit = craft.Unit.Unit with { Name = NeutralName } }, [], null);
        BlindRecording? recording = options.Record is null || craft.Assembled.Build.Source is null ? null : new(flight.Trial, flight.Flight, craft, Late);
        if (recording is not null) _recordings.Add(recording);
        app.FlyUnknown(neutral, recording?.Inputs);
        app.Notify(State);
    }

    private void WriteRecordings()
    {
        foreach (BlindRecording recording in _recordings)
        {
            string? trouble = recording.Write(options.Record!, app);
            if (trouble is not null) app.Notify(trouble);
        }
        _recordings.Clear();
    }

    /// <summary>In what the two differ most, among what a pilot feels in the short drills.</summary>
    private static VoteSubject Subject(FlyableBuild a, FlyableBuild b, PilotProfile profile, BlindOptions how)
    {
        Metric[] metrics = [.. MetricCatalogue.All.Where(metric => !metric.Instrument && metric.Topic is Topic.Rolling or Topic.Turning or Topic.Climbing or Topic.Falling)];
        double[][] values = MetricFlights.Read([a.Unit, b.Unit], metrics, new StudyConditions(a.Assembled.Air, profile, new FieldConditions()));
        MetricPair[] told = [.. metrics.Select((metric, n) => new MetricPair(metric, values[0][n], values[1][n], FeelBands.Usual))
            .Where(pair => double.IsFinite(pair.DifferencePercent) && Math.Abs(pair.A - pair.B) >= pair.Metric.Floor)
            .OrderByDescending(pair => Math.Abs(pair.DifferencePercent)).Take(1)];
        // two craft that fly alike differ by nothing, or by their picture alone, which no metric counts
        double percent = told.Length > 0 ? told[0].DifferencePercent : how.Late > 0 ? double.NaN : 0;
        return new(a.Name, b.Name, told.Length > 0 ? told[0].Metric.Name : "", percent, TuningPolicy.Matched, 1000 * how.Late, CockpitApp.Version);
    }
}
