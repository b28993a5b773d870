using System.Diagnostics;
using Simfeel.Flight.Traces;

namespace Simfeel.Flight.Tests.Traces;

/// <summary>A recording whose process is killed keeps all batches that were whole.</summary>
public class KilledRecordingTests
{
    private const int Kills = 20, RecordingsPerKill = 5;

    /// <summary>Length up to which files are awaited before a kill: some 6 batches, bytes.</summary>
    private const long MostLength = 300_000;

    [Fact]
    public void A_hundred_recordings_killed_at_random_moments_open_to_their_last_whole_batch()
    {
        if (!OperatingSystem.IsLinux()) return;
        using TempFolder folder = new();
        Random random = new(11);
        (long Length, int Pause)[] moments = [.. Enumerable.Range(0, Kills).Select(_ => (random.NextInt64(MostLength), random.Next(20)))];
        Parallel.For(0, Kills, new ParallelOptions { MaxDegreeOfParallelism = 2 }, kill => Kill(folder, kill, moments[kill]));

        List<ulong> hashes = Hashes(rows: 6000);
        int opened = 0, cutWithinBatch = 0;
        HashSet<long> lengths = [];
        for (int n = 0; n < Kills * RecordingsPerKill; n++)
        {
            string file = folder.File($"{n}.arrow");
            using FileStream bytes = File.OpenRead(file);
            IReadOnlyList<(long End, int Rows)> batches = Flights.Batches(bytes);
            using TraceReader trace = TraceReader.Open(file);
            TraceRow row = trace.NewRow();
            int rows = 0;
            while (trace.Read(row))
            {
                // longer than the flight known here only on a machine far faster than ours
                if (rows < hashes.Count) Assert.Equal(hashes[rows], row.Hash);
                rows++;
            }
            Assert.True(trace.CutShort);
            Assert.Equal(batches.Count > 0 ? batches[^1].Rows : 0, rows);
            Assert.Equal(rows / 100.0, trace.Seconds, 9);
            if (rows > 0) opened++;
            if (batches.Count > 0 && bytes.Length > batches[^1].End) cutWithinBatch++;
            lengths.Add(bytes.Length);
        }
        Assert.True(opened > 50, $"only {opened} recordings had rows when they were killed");
        // few where the disk keeps up, for then hardly a batch is cut
        Assert.True(lengths.Count > 5, $"only {lengths.Count} lengths, {cutWithinBatch} cut within a batch");
    }

    /// <summary>Kills a process once one of its files has grown to a length, and some milliseconds later.</summary>
    private static void Kill(TempFolder folder, int kill, (long Length, int Pause) moment)
    {
        string[] files = [.. Enumerable.Range(0, RecordingsPerKill).Select(k => folder.File($"{(kill * RecordingsPerKill) + k}.arrow"))];
        using Process child = Child.Start(1e6, files);
        Assert.Equal("recording", child.StandardOutput.ReadLine());
        while (!child.HasExited && new FileInfo(files[kill % RecordingsPerKill]).Length < moment.Length) Thread.Sleep(1);
        Thread.Sleep(moment.Pause);
        child.Kill();
        child.WaitForExit();
        // 128 + SIGKILL
        Assert.Equal(137, child.ExitCode);
    }

    private static List<ulong> Hashes(int rows)
    {
        using FlightSession session = Flights.NewSession();
        List<ulong> hashes = new(rows);
        for (long n = 0; hashes.Count < rows; n++)
        {
            session.Fly(Flights.Input(n));
            if (session.Readings % 10 == 0) hashes.Add(session.Hash());
        }
        return hashes;
    }
}
