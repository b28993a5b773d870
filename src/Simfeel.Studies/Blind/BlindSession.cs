using System.Diagnostics;

namespace Simfeel.Studies.Blind;

/// <summary>
/// One sitting of blind flights. The order of all trials is drawn at the start and sealed. For each trial the pilot flies its flights,
/// any of them again if wanted, and votes. Nothing that can be read here tells which craft a flight was, or whether a vote was right,
/// before the end: an answer between trials would teach the pilot, and votes would no longer be independent.
/// For one thread.
/// </summary>
public sealed class BlindSession
{
    /// <summary>Real trials of a session at most, and controls at most.</summary>
    public const int MostTrials = 1000;

    [DebuggerBrowsable(DebuggerBrowsableState.Never)]
    private readonly SealedTrial[] _trials;

    private readonly List<CastVote> _votes = [];
    private bool _abandoned;

    /// <summary>Draws a session.</summary>
    /// <param name="test">Kind of the test.</param>
    /// <param name="trials">Real trials, 1 to <see cref="MostTrials"/>.</param>
    /// <param name="controls">
    /// Control trials, 0 to <see cref="MostTrials"/>: the same build in every flight and the right answer drawn by lot, so that being right
    /// more often than by luck shows that something other than flying tells the answers.
    /// </param>
    /// <param name="seed">Seed for tests; without one the order comes from the system's cryptographic source.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number of trials is out of range.</exception>
    public BlindSession(BlindTest test, int trials, int controls = 0, int? seed = null)
    {
        ArgumentNullException.ThrowIfNull(test);
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(trials, MostTrials);
        ArgumentOutOfRangeException.ThrowIfNegative(controls);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(controls, MostTrials);
        Test = test;
        _trials = TrialPlan.Draw(test, trials, controls, seed);
        Current = new(_trials[0], 1, 1);
    }

    /// <summary>Kind of the test.</summary>
    public BlindTest Test { get; }

    /// <summary>Trials in all, controls included.</summary>
    public int Trials => _trials.Length;

    /// <summary>Trials voted so far.</summary>
    public int Voted => _votes.Count;

    /// <summary>Whether there is nothing more to fly.</summary>
    public bool IsOver => _abandoned || Voted == Trials;

    /// <summary>The flight that is next, or in the air; null at the end.</summary>
    public BlindFlight? Current { get; private set; }

    /// <summary>Whether every flight of the trial has been flown, so that it can be voted.</summary>
    public bool CanVote => !IsOver && _trials[Voted].AllFlown;

    /// <summary>Goes on to the next flight of the trial; after the last one to the first again.</summary>
    /// <exception cref="InvalidOperationException">The session is over.</exception>
    public BlindFlight Next() => Select(1 + (Open().Flight % Test.Flights));

    /// <summary>Chooses a flight of the trial, to fly it for the first time or again.</summary>
    /// <param name="flight">Counted from 1.</param>
    /// <exception cref="InvalidOperationException">The session is over.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no such flight.</exception>
    public BlindFlight Select(int flight)
    {
        Open();
        ArgumentOutOfRangeException.ThrowIfLessThan(flight, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(flight, Test.Flights);
        return Current = new(_trials[Voted], Voted + 1, flight);
    }

    /// <summary>Takes the vote on the trial and goes on to the next one.</summary>
    /// <param name="choice">Counted from 1, in the order of <see cref="BlindTest.Choices"/>.</param>
    /// <exception cref="InvalidOperationException">The session is over, or a flight of the trial has not been flown.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no such choice.</exception>
    public CastVote Vote(int choice)
    {
        Open();
        ArgumentOutOfRangeException.ThrowIfLessThan(choice, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(choice, Test.Choices.Count);
        if (!CanVote) throw new InvalidOperationException($"Fly all {Test.Flights} flights of trial {Voted + 1} before you vote.");
        SealedTrial trial = _trials[Voted];
        trial.Close();
        CastVote vote = new(Test, trial, Voted + 1, choice);
        _votes.Add(vote);
        Current = IsOver ? null : new(_trials[Voted], Voted + 1, 1);
        return vote;
    }

    /// <summary>The truth of all voted trials, after the last vote.</summary>
    /// <exception cref="InvalidOperationException">There are trials to vote on still.</exception>
    public IReadOnlyList<RevealedTrial> Reveal() => IsOver
        ? [.. _votes.Select(vote => vote.Open())]
        : throw new InvalidOperationException($"{Trials - Voted} of {Trials} trials are not voted yet; vote on them, or abandon the session.");

    /// <summary>Ends the session before its last vote and tells the truth of the trials voted so far; the others stay sealed.</summary>
    public IReadOnlyList<RevealedTrial> Abandon()
    {
        if (!IsOver) _trials[Voted].Close();
        _abandoned = true;
        Current = null;
        return Reveal();
    }

    /// <summary>How far it has come.</summary>
    public override string ToString() => Current is null ? $"{Test}, over after {Voted} of {Trials} trials" : $"{Test}, {Current} of {Trials} trials";

    private BlindFlight Open() => Current ?? throw new InvalidOperationException("The session is over.");
}
