using System.Diagnostics;
using Simfeel.Flight.Traces;

namespace Simfeel.Flight.Tests.Traces;

/// <summary>What goes wrong with the disk ends the recording with one message; the flight goes on, what was written can be read.</summary>
public class RecordingTroubleTests
{
    [Fact]
    public void A_disk_that_is_full_ends_the_recording_only()
    {
        if (!OperatingSystem.IsLinux()) return;
        using TempFolder folder = new();
        string file = folder.File("flight.arrow");
        using Process child = Child.Start(20, [file], limit: 600);
        Assert.Equal("recording", child.StandardOutput.ReadLine());
        string? said = child.StandardOutput.ReadLine();
        child.WaitForExit();
        Assert.Equal(1, child.ExitCode);
        Assert.NotNull(said);
        Assert.StartsWith("20000 readings flown: The recording ended after ", said, StringComparison.Ordinal);
        Assert.Contains(file, said, StringComparison.Ordinal);

        using TraceReader trace = TraceReader.Open(file);
        TraceRow row = trace.NewRow();
        while (trace.Read(row))
        {
        }
        Assert.True(trace.CutShort);
        Assert.InRange(trace.Seconds, 1, 19);
        Assert.Contains($"after {trace.Seconds:F1} s", said, StringComparison.Ordinal);
        // half a batch at the end was taken away again
        using FileStream bytes = File.OpenRead(file);
        Assert.Equal(bytes.Length, Flights.Batches(bytes)[^1].End);
        using TraceReader again = TraceReader.Open(file);
        Assert.True(Replay.Run(again).Same);
    }

    [Fact]
    public void A_device_without_room_ends_the_recording_only()
    {
        if (!File.Exists("/dev/full")) return;
        using FlightSession session = Flights.NewSession();
        using TraceRecorder recorder = TraceRecorder.Start("/dev/full", Flights.Header);
        Flights.Record(session, recorder, 2000);
        recorder.Finish();
        Assert.Equal(2000, session.Readings);
        Assert.StartsWith("The recording ended after 0.0 s, which /dev/full holds: ", recorder.Trouble, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("missing/folder/flight.arrow")]
    [InlineData("")]
    public void A_place_that_cannot_be_written_is_said_at_once(string name)
    {
        using TempFolder folder = new();
        string file = folder.File(name);
        using FlightSession session = Flights.NewSession();
        using TraceRecorder recorder = TraceRecorder.Start(file, Flights.Header);
        Assert.False(recorder.Recording);
        Assert.StartsWith($"Nothing is recorded: {file} cannot be written. ", recorder.Trouble, StringComparison.Ordinal);
        Flights.Record(session, recorder, 500);
        Assert.Equal(500, session.Readings);
    }

    [Fact]
    public void An_older_recording_stands_until_the_new_one_is_whole()
    {
        using TempFolder folder = new();
        string file = folder.File("flight.arrow"), beside = file + TraceRecorder.Beside;
        Fly(file, 300);
        byte[] old = File.ReadAllBytes(file);
        // what a killed program left is written over
        File.WriteAllBytes(beside, new byte[1_000_000]);
        using FlightSession session = Flights.NewSession();
        using TraceRecorder recorder = TraceRecorder.Start(file, Flights.Header);
        Assert.Equal(beside, recorder.Path);
        Flights.Record(session, recorder, 800);
        while (recorder.Written == 0) Thread.Sleep(1);
        Assert.Equal(old, File.ReadAllBytes(file));
        using (TraceRecorder second = TraceRecorder.Start(file, Flights.Header))
            Assert.StartsWith($"Nothing is recorded: {file} cannot be written. ", second.Trouble, StringComparison.Ordinal);
        recorder.Finish();
        Assert.Null(recorder.Trouble);
        Assert.Equal(file, recorder.Path);
        Assert.False(File.Exists(beside));
        using TraceReader trace = TraceReader.Open(file);
        Assert.True(Replay.Run(trace) is { Same: true, Rows: 80, CutShort: false });
    }

    [Fact]
    public void Two_recordings_never_share_a_file()
    {
        using TempFolder folder = new();
        string file = folder.File("flight.arrow");
        using FlightSession session = Flights.NewSession();
        using TraceRecorder first = TraceRecorder.Start(file, Flights.Header), second = TraceRecorder.Start(file, Flights.Header);
        Assert.StartsWith($"Nothing is recorded: {file} cannot be written. ", second.Trouble, StringComparison.Ordinal);
        Flights.Record(session, first, 500);
        first.Finish();
        second.Finish();
        Assert.Null(first.Trouble);
        using TraceReader trace = TraceReader.Open(file);
        Assert.True(Replay.Run(trace) is { Same: true, Rows: 50 });
    }

    [Fact]
    public void A_recording_without_a_row_replaces_nothing()
    {
        using TempFolder folder = new();
        string file = folder.File("flight.arrow");
        Fly(file, 300);
        byte[] old = File.ReadAllBytes(file);
        using (TraceRecorder recorder = TraceRecorder.Start(file, Flights.Header)) recorder.Finish();
        Assert.Equal(old, File.ReadAllBytes(file));
        Assert.False(File.Exists(file + TraceRecorder.Beside));
    }

    [Fact]
    public void A_disk_too_slow_ends_the_recording_and_keeps_what_waited()
    {
        using SlowStream slow = new();
        using FlightSession session = Flights.NewSession();
        TraceRecorder recorder = TraceRecorder.Start(slow, Flights.Header);
        Flights.Record(session, recorder, 11_000);
        Assert.False(recorder.Recording);
        Assert.Contains("too slow", recorder.Trouble, StringComparison.Ordinal);
        Assert.Equal(11_000, session.Readings);
        slow.Open();
        recorder.Finish();
        using TraceReader trace = TraceReader.Open(new MemoryStream(slow.ToArray()));
        Assert.True(Replay.Run(trace) is { Same: true, Rows: 1024, CutShort: true });
        recorder.Dispose();
    }

    [Fact]
    public void A_recording_that_begins_late_is_refused()
    {
        using FlightSession session = Flights.NewSession();
        session.Fly(Flights.Input(0));
        using MemoryStream stream = new();
        using TraceRecorder recorder = TraceRecorder.Start(stream, Flights.Header);
        Flights.Record(session, recorder, 100);
        Assert.Contains("first stick reading", recorder.Trouble, StringComparison.Ordinal);
    }

    [Fact]
    public void Recording_allocates_nothing_on_the_flights_thread()
    {
        using MemoryStream stream = new();
        using FlightSession session = Flights.NewSession();
        using TraceRecorder recorder = TraceRecorder.Start(stream, Flights.Header);
        // the first round of the script warms up; restarts and swaps are in every round
        Taken(session, recorder);
        Assert.Equal(0, Taken(session, recorder) + Taken(session, recorder));
        Assert.Null(recorder.Trouble);
    }

    private static void Fly(string file, int readings)
    {
        using FlightSession session = Flights.NewSession();
        using TraceRecorder recorder = TraceRecorder.Start(file, Flights.Header);
        Flights.Record(session, recorder, readings);
    }

    private static long Taken(FlightSession session, TraceRecorder recorder)
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        Flights.Record(session, recorder, Flights.ReadingsPerRound);
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    /// <summary>Takes nothing until it is opened.</summary>
    private sealed class SlowStream : MemoryStream
    {
        private readonly ManualResetEventSlim _open = new(false);

        public void Open() => _open.Set();

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            _open.Wait();
            base.Write(buffer);
        }

        protected override void Dispose(bool disposing)
        {
            _open.Dispose();
            base.Dispose(disposing);
        }
    }
}
