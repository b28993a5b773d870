using Apache.Arrow;
using Apache.Arrow.Ipc;
using Simfeel.Flight.Traces;

namespace Simfeel.Flight.Tests.Traces;

/// <summary>A flight with all that a pilot can do in it: restarts, swaps, a shadow.</summary>
internal static class Flights
{
    private static readonly Lazy<FlyableBuild> Built = new(() => Read("wagtail"));

    private static readonly StickScript Script = new(
        (0.0, new(0, 0, 0, 0.35), PilotSwitches.Armed),
        (0.3, new(0.6, 0.1, 0, 0.5), PilotSwitches.Armed),
        (0.5, new(0.0, -0.4, 0.3, 0.6), PilotSwitches.Armed | PilotSwitches.Shadow),
        (0.9, new(-0.2, 0.2, 0, 0.4), PilotSwitches.Armed | PilotSwitches.Shadow | PilotSwitches.SwapInPlace),
        (1.2, new(0.9, 0, 0, 0.3), PilotSwitches.Armed),
        (1.5, new(0, 0.5, -0.5, 0.7), PilotSwitches.Armed | PilotSwitches.Restart),
        (1.8, new(0.1, 0, 0, 0.45), PilotSwitches.Armed | PilotSwitches.Level | PilotSwitches.SwapFromStart));

    /// <summary>Time after which the script begins anew, s.</summary>
    public const double Round = 2.2;

    public static long ReadingsPerRound => (long)Math.Round(Round / Starters.Profile.StickPeriod);

    public static FlyableBuild Build => Built.Value;

    /// <summary>Two of the same build: what is tested here does not ask what flies.</summary>
    public static TraceHeader Header => TraceHeader.Of(Build, Build, Starters.Profile, new());

    public static FlyableBuild Read(string name)
    {
        FlyableResult result = FlyableBuild.Read(Path.Combine(AppContext.BaseDirectory, "builds", name + ".toml"), Starters.Air, Starters.Profile);
        Assert.True(result.Build is not null, result.Message);
        return result.Build;
    }

    public static FlightSession NewSession() => new(Build.Unit, Build.Unit, Starters.Profile, new());

    public static PilotInput Input(long reading) => Script.At(reading % ReadingsPerRound, Starters.Profile.StickPeriod);

    public static void Record(FlightSession session, TraceRecorder recorder, long readings)
    {
        for (long n = 0; n < readings; n++)
        {
            PilotInput input = Input(n);
            session.Fly(input);
            recorder.Add(input, session);
        }
    }

    /// <summary>Records into memory and gives the bytes of the file.</summary>
    public static byte[] Record(double seconds, TraceHeader? header = null)
    {
        using MemoryStream stream = new();
        using FlightSession session = NewSession();
        using TraceRecorder recorder = TraceRecorder.Start(stream, header ?? Header);
        Record(session, recorder, (long)Math.Round(seconds / Starters.Profile.StickPeriod));
        recorder.Finish();
        Assert.Null(recorder.Trouble);
        return stream.ToArray();
    }

    /// <summary>The bytes of a trace with its batches of 50 rows, the same at every run.</summary>
    public static byte[] Steady(double seconds)
    {
        using MemoryStream stream = new();
        Schema schema = TraceSchema.Of(Header);
        using TraceFile file = new(stream, schema);
        TraceBatch batch = new(Header, schema);
        TraceRow row = new(Header.ReadingsPerRow, 4, 4);
        using FlightSession session = NewSession();
        file.Start();
        while (session.Readings < seconds / Starters.Profile.StickPeriod)
        {
            for (row.Count = 0; row.Count < row.Room.Length; row.Count++)
            {
                row.Room[row.Count] = Input(session.Readings);
                session.Fly(row.Room[row.Count]);
            }
            row.Take(session);
            batch.Add(row);
            if (batch.Rows == 50) file.Write(batch.Take());
        }
        file.End();
        return stream.ToArray();
    }

    /// <summary>Length of a trace's first message, the schema with its header; it has no body.</summary>
    public static int HeaderLength(byte[] trace) => 8 + BitConverter.ToInt32(trace, 4);

    /// <summary>
    /// Ends of the whole batches of a trace in bytes, and rows up to there, by the Arrow library alone; it throws in its own way
    /// where a stream is cut.
    /// </summary>
    public static IReadOnlyList<(long End, int Rows)> Batches(Stream trace)
    {
        List<(long End, int Rows)> ends = [];
        using ArrowStreamReader reader = new(trace, leaveOpen: true);
        try
        {
            while (reader.ReadNextRecordBatch() is RecordBatch batch)
                ends.Add((trace.Position, batch.Length + (ends.Count > 0 ? ends[^1].Rows : 0)));
        }
        catch (Exception e) when (e is InvalidOperationException or IOException or InvalidDataException)
        {
            // cut within a message
        }
        return ends;
    }
}
