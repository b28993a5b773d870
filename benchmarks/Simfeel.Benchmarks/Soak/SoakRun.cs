using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using Simfeel.Flight;
using Simfeel.Flight.Fields;
using Simfeel.Flight.Traces;
using Simfeel.Physics.Air;
using Simfeel.Physics.Guards;

namespace Simfeel.Benchmarks.Soak;

/// <summary>Hours of simulated flight in gusts, with crashes, recorded, then flown again from the file.</summary>
internal static class SoakRun
{
    private const double HalfHour = 1800;

    /// <summary>Growth of memory from the first report to the last that is still called flat.</summary>
    private const double Flat = 0.1;

    private static readonly FieldConditions Conditions = new() { Seed = 8, WindSpeed = 7.7, WindFrom = 0.6 };

    /// <summary>A time such as 8h, 30m or 120s, in seconds; NaN where it is none.</summary>
    public static double Seconds(string? text)
    {
        if (text is not { Length: > 1 } || !double.TryParse(text[..^1], NumberStyles.Float, CultureInfo.InvariantCulture, out double number)) return double.NaN;
        double unit = text[^1] switch { 'h' => 3600, 'm' => 60, 's' => 1, _ => double.NaN };
        return number > 0 ? number * unit : double.NaN;
    }

    /// <summary>Flies, reports as it goes, and returns whether all was as it should be.</summary>
    public static bool Report(double seconds, TextWriter to)
    {
        PilotProfile profile = new();
        AirState air = StandardAtmosphere.At(0);
        FlyableBuild a = Build("wagtail", air, profile), b = Build("curlew", air, profile);
        string fieldFile = Path.Combine(AppContext.BaseDirectory, "fields", "gull-point.toml"), fieldText = File.ReadAllText(fieldFile);
        FieldMap map = FieldReader.Read(fieldFile).Map ?? throw new InvalidOperationException("The field cannot be read.");
        TraceHeader header = TraceHeader.Of(a, b, profile, Conditions) with { FieldName = map.Name, FieldText = fieldText };
        string file = Path.Combine(Path.GetTempPath(), $"simfeel-soak-{Environment.ProcessId}.arrow");
        Write($"# Soak: {seconds / 3600:G3} simulated hours on {Machine.CpuName}");
        Write($"\n{RuntimeInformation.OSDescription}; {RuntimeInformation.FrameworkDescription}. Wagtail and Curlew over {map.Name}, an erratic pilot (seed 8),");
        Write($"wind of {Conditions.WindSpeed} m/s with gusts (light turbulence by MIL-F-8785C), every reading recorded at 100 rows a second.\n");
        to.WriteLine("| flown min | crashes | restarts | swaps | working set MB | managed heap MB | file MB | predicted MB | attitude off | energy rise of bound % | fastest m/s, rad/s | wall s |");
        to.WriteLine("| ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        try
        {
            return Fly(seconds, new(header, a, b, map, file, 8), file, to);
        }
        finally
        {
            File.Delete(file);
        }

        void Write(FormattableString text) => to.WriteLine(FormattableString.Invariant(text));
    }

    private static bool Fly(double seconds, SoakFlight flight, string file, TextWriter to)
    {
        Stopwatch wall = Stopwatch.StartNew();
        List<(double WorkingSet, double Heap)> memory = [];
        using (flight)
        {
            try
            {
                while (flight.Time < seconds - 0.5)
                {
                    flight.Fly(Math.Min(HalfHour, seconds - flight.Time));
                    memory.Add(Row(flight, wall, to));
                }
            }
            catch (FlightFaultException fault)
            {
                to.WriteLine();
                to.WriteLine($"**Stopped**: {fault.Message} {FaultFile.Write(fault, Environment.CurrentDirectory, out string problem) ?? problem}");
                return false;
            }
            flight.Finish();
        }
        long size = flight.File.Size, predicted = flight.FinishedSize;
        double growth = (memory[^1].WorkingSet / memory[0].WorkingSet) - 1, heap = memory[^1].Heap - memory[0].Heap;
        Stopwatch again = Stopwatch.StartNew();
        using TraceReader reader = TraceReader.Open(file);
        ReplayResult replay = Replay.Run(reader);
        bool sameEnd = replay.Same && !replay.CutShort && Math.Abs(replay.Seconds - flight.Time) < 1e-6;
        bool flat = growth < Flat && heap < 20, asPredicted = size == predicted, good = flat && asPredicted && sameEnd;
        to.WriteLine();
        Say($"- No step broke an invariant: every number finite, attitudes of unit length to {flight.MostAttitudeError:G2}, energy plausible.");
        Say($"- {(flat ? "Memory is flat" : "MEMORY GREW")}: the working set changed by {100 * growth:F1} %, the managed heap by {heap:F1} MB, from the first row to the last.");
        Say($"- {(asPredicted ? "The file has the size that its format predicts" : "THE FILE'S SIZE IS NOT AS PREDICTED")}: {size} bytes, by the format of its rows and batches {predicted}.");
        Say($"- {(sameEnd ? "Flown again from the file, every row came out bit for bit" : "FLOWN AGAIN IT DIFFERS")}: {replay.Rows} rows, {replay.Seconds:F1} s, in {again.Elapsed.TotalSeconds:F0} s.");
        Say($"\nVerdict: {(good ? "good" : "NOT GOOD")}.");
        return good;

        void Say(FormattableString text) => to.WriteLine(FormattableString.Invariant(text));
    }

    private static (double WorkingSet, double Heap) Row(SoakFlight flight, Stopwatch wall, TextWriter to)
    {
        GC.Collect();
        GC.WaitForPendingFinalizers();
        double heap = GC.GetTotalMemory(forceFullCollection: true) / 1e6;
        using Process self = Process.GetCurrentProcess();
        double workingSet = self.WorkingSet64 / 1e6;
        (long size, long predicted) = flight.File;
        ErraticPilot pilot = flight.Pilot;
        to.WriteLine(FormattableString.Invariant(
            $"| {flight.Time / 60:F0} | {pilot.Crashes} | {pilot.Restarts} | {pilot.Swaps} | {workingSet:F1} | {heap:F1} | {size / 1e6:F1} | {predicted / 1e6:F1} | {flight.MostAttitudeError:G2} | {100 * flight.MostEnergyShare:F1} | {flight.Fastest.Speed:F0}, {flight.Fastest.Rate:F0} | {wall.Elapsed.TotalSeconds:F0} |"));
        to.Flush();
        return (workingSet, heap);
    }

    private static FlyableBuild Build(string name, AirState air, PilotProfile profile)
    {
        FlyableResult result = FlyableBuild.Read(Path.Combine(AppContext.BaseDirectory, "builds", name + ".toml"), air, profile);
        return result.Build ?? throw new InvalidOperationException(result.Message);
    }
}
