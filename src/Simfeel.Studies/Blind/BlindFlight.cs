using System.Diagnostics;

namespace Simfeel.Studies.Blind;

/// <summary>A flight that is to be flown blind: a handle that shows its numbers and not which craft it is.</summary>
public sealed class BlindFlight
{
    [DebuggerBrowsable(DebuggerBrowsableState.Never)]
    private readonly SealedTrial _sealed;

    internal BlindFlight(SealedTrial trial, int number, int flight) => (_sealed, Trial, Flight) = (trial, number, flight);

    /// <summary>Number of the trial, counted from 1.</summary>
    public int Trial { get; }

    /// <summary>Number of the flight within its trial, counted from 1.</summary>
    public int Flight { get; }

    /// <summary>
    /// Index of the build to fly, 0 for the first and 1 for the second: for the one who puts it into the air, not for the pilot's eyes.
    /// The same however often the flight is flown.
    /// </summary>
    /// <exception cref="InvalidOperationException">The trial is over.</exception>
    public int TakeOff()
    {
        if (_sealed.IsClosed) throw new InvalidOperationException($"Trial {Trial} is over; it cannot be flown again.");
        return _sealed.TakeOff(Flight);
    }

    /// <summary>Its numbers.</summary>
    public override string ToString() => $"trial {Trial}, flight {Flight}";
}
