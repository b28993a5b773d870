using Simfeel.Flight;
using Simfeel.Flight.Traces;

namespace Simfeel.Cockpit.Stage;

/// <summary>Feeds a stage with the inputs of a trace and has each reading compared with what was recorded.</summary>
internal sealed class ReplayTape(Replay replay) : IInputTape
{
    private bool _flown;

    /// <summary>All inputs were flown.</summary>
    public bool Ended { get; private set; }

    /// <summary>Why the trace could not be read to its end; empty where it could.</summary>
    public string Trouble { get; private set; } = "";

    /// <summary>What came of it so far, in one sentence.</summary>
    public string Verdict =>
        Trouble.Length > 0 ? Trouble
        : replay.FirstDifferenceTime is double time ? $"The replay differs from the recording from {time:F2} s on: another version of the program, or another kind of machine."
        : $"Every row of the replay has the recorded state, bit for bit ({replay.Rows} rows).";

    /// <inheritdoc/>
    public bool TryNext(out PilotInput input)
    {
        input = default;
        try
        {
            if (_flown) replay.Compare();
            _flown = replay.TryNext(out input);
        }
        catch (TraceException error)
        {
            Trouble = error.Message;
            _flown = false;
        }
        Ended = !_flown;
        return _flown;
    }
}
