using System.Diagnostics;

namespace Simfeel.Studies.Blind;

/// <summary>
/// One trial and its truth, which leaves this type by three doors only: a take-off, the vote log, and the session's reveal.
/// It prints as nothing but its state.
/// </summary>
/// <param name="order">The build of each flight as A or B.</param>
/// <param name="control">Whether all flights are one build and the right answer is a lot.</param>
/// <param name="right">The vote that is right, counted from 1.</param>
internal sealed class SealedTrial(string order, bool control, int right)
{
    [DebuggerBrowsable(DebuggerBrowsableState.Never)]
    private readonly string _order = order;

    [DebuggerBrowsable(DebuggerBrowsableState.Never)]
    private readonly bool _control = control;

    [DebuggerBrowsable(DebuggerBrowsableState.Never)]
    private readonly int _right = right;

    private readonly bool[] _flown = new bool[order.Length];

    /// <summary>Whether every flight has been flown at least once.</summary>
    public bool AllFlown => Array.TrueForAll(_flown, flown => flown);

    /// <summary>Whether the trial is over, voted or abandoned.</summary>
    public bool IsClosed { get; private set; }

    /// <summary>The build of a flight, 0 for A and 1 for B, for the one who puts it into the air.</summary>
    /// <param name="flight">Counted from 1.</param>
    public int TakeOff(int flight)
    {
        _flown[flight - 1] = true;
        return _order[flight - 1] - 'A';
    }

    /// <summary>Ends the trial.</summary>
    public void Close() => IsClosed = true;

    /// <summary>The truth beside the vote.</summary>
    public RevealedTrial Open(BlindTest test, int trial, int choice) => new(trial, _control, _order, test.Choices[choice - 1], choice == _right);

    /// <summary>The state, and nothing of the truth.</summary>
    public override string ToString() => IsClosed ? "closed trial" : "open trial";
}
