using Simfeel.Flight.Fields;

namespace Simfeel.Flight.Traces;

/// <summary>What came of flying a trace again.</summary>
/// <param name="Rows">Rows flown and compared.</param>
/// <param name="Seconds">Time flown, s; where rows differ, up to the end of the first that does.</param>
/// <param name="FirstDifference">Number of the first row, counted from 0, whose state has another hash; null where all agree.</param>
/// <param name="CutShort">The trace ends without the mark of its end.</param>
public readonly record struct ReplayResult(long Rows, double Seconds, long? FirstDifference, bool CutShort)
{
    /// <summary>Every row came out bit for bit.</summary>
    public bool Same => FirstDifference is null;
}

/// <summary>
/// Flies a trace again: the builds made anew from its texts, the same session, the inputs one by one. After each row the hash of
/// the session's state is compared with the recorded one. Use it row by row, or let <see cref="Run"/> do it all.
/// </summary>
public sealed class Replay : IDisposable
{
    private readonly TraceReader _trace;
    private readonly TraceRow _row;
    private int _next;

    /// <summary>A replay that stands before the first reading.</summary>
    /// <param name="trace">The trace, no row of it read yet; it stays the caller's.</param>
    /// <param name="map">The trace's field, where the caller has read it already; else it is read here from the trace's text.</param>
    /// <exception cref="TraceException">The builds or the field cannot be made again, or a field is given for a trace that has none.</exception>
    public Replay(TraceReader trace, FieldMap? map = null)
    {
        ArgumentNullException.ThrowIfNull(trace);
        _trace = trace;
        _row = trace.NewRow();
        TraceHeader header = trace.Header;
        try
        {
            if (header.Policy != "matched") throw new TraceException($"The trace was flown with the tuning policy {TraceHeader.Shown(header.Policy)}; this program knows 'matched'.");
            if (map is not null && header.FieldText.Length == 0) throw new TraceException("The trace was flown over no field.");
            Map = map ?? header.ReadField();
            A = header.A.Rebuild(header.Air, header.Profile);
            B = header.B.Rebuild(header.Air, header.Profile);
        }
        catch (TraceException error)
        {
            throw new TraceException($"{trace.Name}: {error.Message}", error);
        }
        Session = new(A.Unit, B.Unit, header.Profile, header.Conditions, Map);
    }

    private Replay(TraceReader trace, Replay before)
    {
        _trace = trace;
        _row = trace.NewRow();
        (Map, A, B) = (before.Map, before.A, before.B);
        Session = new(A.Unit, B.Unit, trace.Header.Profile, trace.Header.Conditions, Map);
    }

    /// <summary>First build, made again.</summary>
    public FlyableBuild A { get; }

    /// <summary>Second build, made again.</summary>
    public FlyableBuild B { get; }

    /// <summary>The field, made again; null where the flight had none.</summary>
    public FieldMap? Map { get; }

    /// <summary>The session that flies the trace.</summary>
    public FlightSession Session { get; }

    /// <summary>Rows flown and compared.</summary>
    public long Rows { get; private set; }

    /// <summary>Number of the first row, counted from 0, whose state has another hash; null as long as all agree.</summary>
    public long? FirstDifference { get; private set; }

    /// <summary>Time since the session began at the end of that row, s; null as long as all agree.</summary>
    public double? FirstDifferenceTime { get; private set; }

    /// <summary>Flies the next stick reading; false at the end of the trace.</summary>
    /// <exception cref="TraceException">The trace is damaged from here on.</exception>
    public bool Fly()
    {
        if (!TryNext(out PilotInput input)) return false;
        Session.Fly(input);
        Compare();
        return true;
    }

    /// <summary>The same trace from its start, with the builds and the field of this replay, which need not be made again.</summary>
    /// <param name="trace">The same trace, no row of it read yet; it stays the caller's.</param>
    public Replay Again(TraceReader trace)
    {
        ArgumentNullException.ThrowIfNull(trace);
        return new(trace, this);
    }

    /// <summary>The next input, for a caller that flies <see cref="Session"/> itself and then calls <see cref="Compare"/>.</summary>
    /// <exception cref="TraceException">The trace is damaged from here on.</exception>
    public bool TryNext(out PilotInput input)
    {
        input = default;
        if (_next == _row.Count)
        {
            _next = 0;
            if (!_trace.Read(_row))
            {
                _row.Count = 0;
                return false;
            }
        }
        input = _row.Inputs[_next++];
        return true;
    }

    /// <summary>Compares the session's hash with the trace's where a row is complete.</summary>
    public void Compare()
    {
        if (_next != _row.Count) return;
        if (FirstDifference is null && Session.Hash() != _row.Hash)
        {
            FirstDifference = Rows;
            FirstDifferenceTime = _trace.Seconds;
        }
        Rows++;
    }

    /// <summary>Flies a trace from start to end, or to its first difference.</summary>
    /// <param name="trace">The trace, no row of it read yet.</param>
    /// <param name="map">The trace's field, where the caller has read it already.</param>
    /// <exception cref="TraceException">The trace is damaged, or cannot be flown again.</exception>
    public static ReplayResult Run(TraceReader trace, FieldMap? map = null)
    {
        using Replay replay = new(trace, map);
        while (replay.FirstDifference is null && replay.Fly())
        {
        }
        return new(replay.Rows, trace.Seconds, replay.FirstDifference, trace.CutShort);
    }

    /// <inheritdoc/>
    public void Dispose() => Session.Dispose();
}
