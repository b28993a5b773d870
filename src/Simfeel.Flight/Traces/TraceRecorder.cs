using System.Globalization;
using Apache.Arrow;

namespace Simfeel.Flight.Traces;

/// <summary>
/// Records a flight while it is flown. The flight's thread only copies into a ring of rows made beforehand and allocates nothing;
/// a thread of the recorder's own writes them, a batch every half second at most. Whatever goes wrong ends the recording, never
/// the flight, and leaves readable what was written.
/// </summary>
public sealed class TraceRecorder : IDisposable
{
    /// <summary>Longest time between two batches, s, in flight and by the wall clock.</summary>
    public const double BatchTime = 0.5;

    /// <summary>Rows that can wait to be written: 10 s at the usual rate.</summary>
    private const int Capacity = 1024;

    /// <summary>Further ending of a recording that is to replace another.</summary>
    public const string Beside = ".part";

    /// <summary>How often the writer looks for rows.</summary>
    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(10);

    /// <summary>How long <see cref="Finish"/> waits for a disk that hangs.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    private const string Overflow = "The recording ended: the disk is too slow, and the rows that wait to be written fill their room.";
    private const string Late = "Nothing is recorded: a recording has to begin with the first stick reading of its session.";

    private readonly TraceHeader _header;
    private readonly TraceRow[] _ring = new TraceRow[Capacity];
    private readonly TraceFile _file;
    private readonly TraceBatch _batch;
    private readonly Thread _thread;
    private readonly ManualResetEvent _finish = new(false);
    private readonly int _rowsPerBatch;
    private long _filled, _emptied;
    private volatile bool _recording = true;
    private volatile string? _trouble;
    private volatile string _path;
    private readonly string? _target;
    private double _writtenTime;
    private FlightSession? _session;
    private int _count;

    private TraceRecorder(TraceHeader header, Stream stream, string name, string? target = null)
    {
        TraceNumbers.Check(header);
        _header = header;
        _path = name;
        _target = target;
        for (int n = 0; n < Capacity; n++) _ring[n] = new(header.ReadingsPerRow, header.A.Rotors, header.B.Rotors);
        _rowsPerBatch = Math.Max(1, (int)(BatchTime * header.SampleRate));
        Schema schema = TraceSchema.Of(header);
        _file = new(stream, schema);
        _batch = new(header, schema);
        _thread = new(WriteAll) { Name = "trace", IsBackground = true };
        _thread.Start();
    }

    /// <summary>The file, where it is now: see <see cref="Start(string, TraceHeader)"/>.</summary>
    public string Path => _path;

    /// <summary>False once the recording has ended, by <see cref="Finish"/> or because of <see cref="Trouble"/>.</summary>
    public bool Recording => _recording;

    /// <summary>What ended the recording before its time, one message for people; null while all is well.</summary>
    public string? Trouble => _trouble;

    /// <summary>Time of flight that is in the file, s.</summary>
    public double Written => Volatile.Read(ref _writtenTime);

    /// <summary>
    /// Starts a recording in a file. Where one stands already, it stays until the new recording is whole: that is written beside it,
    /// with <see cref="Beside"/> behind its name, and takes its place in <see cref="Finish"/>. What a killed program left beside is
    /// written over. Never throws for what is wrong with the place, or when another recording goes there: that is in
    /// <see cref="Trouble"/>.
    /// </summary>
    /// <exception cref="TraceException">The sample rate does not fit the stick readings.</exception>
    public static TraceRecorder Start(string path, TraceHeader header)
    {
        ArgumentNullException.ThrowIfNull(header);
        try
        {
            FileStream stream = Alone(path, FileMode.OpenOrCreate);
            if (stream.Length == 0) return new(header, stream, path);
            stream.Dispose();
            return new(header, Alone(path + Beside, FileMode.Create), path + Beside, path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            TraceRecorder recorder = new(header, Stream.Null, path);
            recorder.Stop($"Nothing is recorded: {path} cannot be written. {e.Message}");
            return recorder;
        }
    }

    /// <summary>Unbuffered: every message is written in one piece.</summary>
    private static FileStream Alone(string path, FileMode mode) => new(path, mode, FileAccess.ReadWrite, FileShare.None, bufferSize: 0);

    /// <summary>For tests: a recording into any stream.</summary>
    internal static TraceRecorder Start(Stream stream, TraceHeader header) => new(header, stream, "stream");

    /// <summary>
    /// Takes over a stick reading that the session has just flown. Call it after every <see cref="FlightSession.Fly"/> from the
    /// session's first reading on, from one thread.
    /// </summary>
    public void Add(in PilotInput input, FlightSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        if (!_recording) return;
        if (_session != session)
        {
            if (_session is not null || session.Readings != 1)
            {
                Stop(Late);
                return;
            }
            _session = session;
        }
        long filled = _filled;
        if (filled - Volatile.Read(ref _emptied) >= Capacity)
        {
            Stop(Overflow);
            return;
        }
        TraceRow row = _ring[filled % Capacity];
        row.Room[_count++] = input;
        if (_count == row.Room.Length) Publish(session);
    }

    /// <summary>Writes what is left and the mark of the end; what was written beside an older recording takes its place. More than once does nothing.</summary>
    public void Finish()
    {
        if (_count > 0 && _recording) Publish(_session!);
        _finish.Set();
        _thread.Join(Patience);
        _recording = false;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Finish();
        _file.Dispose();
        _finish.Dispose();
    }

    /// <summary>Hands the row that is full, or the flight's last one, to the writer.</summary>
    private void Publish(FlightSession session)
    {
        TraceRow row = _ring[_filled % Capacity];
        row.Count = _count;
        row.Take(session);
        _count = 0;
        Volatile.Write(ref _filled, _filled + 1);
    }

    private void Stop(string trouble)
    {
        _trouble ??= trouble;
        _recording = false;
    }

    /// <summary>The writer's thread.</summary>
    private void WriteAll()
    {
        try
        {
            _file.Start();
            long since = Environment.TickCount64;
            bool finish = false;
            while (!finish)
            {
                finish = _finish.WaitOne(Look);
                long waiting = Volatile.Read(ref _filled) - _emptied;
                bool due = waiting >= _rowsPerBatch || Environment.TickCount64 - since >= 1000 * BatchTime;
                if (!due && !finish) continue;
                while (_emptied < Volatile.Read(ref _filled)) WriteBatch();
                since = Environment.TickCount64;
            }
            if (_trouble is not null) return;
            _file.End();
            if (_target is not null) TakePlace(_target);
        }
        catch (Exception e)
        {
            // whatever it is, it must not end the flight; a file that reached its largest size is an ArgumentException here
            string when = Written.ToString("F1", CultureInfo.InvariantCulture);
            string why = e is ArgumentException ? "The file cannot grow any further." : e.Message;
            Stop($"The recording ended after {when} s, which {Path} holds: {why}");
        }
        finally
        {
            // from now on others may read it
            _file.Dispose();
        }
    }

    /// <summary>The recording is whole and replaces the older one; one without a row replaces nothing.</summary>
    private void TakePlace(string target)
    {
        _file.Dispose();
        if (_writtenTime > 0) File.Move(Path, target, overwrite: true);
        else File.Delete(Path);
        _path = target;
    }

    private void WriteBatch()
    {
        long until = Math.Min(Volatile.Read(ref _filled), _emptied + _rowsPerBatch);
        double time = 0;
        for (long n = _emptied; n < until; n++)
        {
            TraceRow row = _ring[n % Capacity];
            _batch.Add(row);
            time = row.Reading * _header.Profile.StickPeriod;
        }
        Volatile.Write(ref _emptied, until);
        _file.Write(_batch.Take());
        Volatile.Write(ref _writtenTime, time);
    }
}
