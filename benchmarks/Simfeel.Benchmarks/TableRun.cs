using System.Diagnostics;
using System.Globalization;
using System.Text;
using Simfeel.Physics.Rotors;

namespace Simfeel.Benchmarks;

/// <summary>What a rotor table costs to compute: the first of the process, then the least of many on one thread and on all.</summary>
internal static class TableRun
{
    /// <summary>Runs and returns the Markdown report.</summary>
    public static string Report(double seconds)
    {
        double first = Time(0), one = double.PositiveInfinity, all = double.PositiveInfinity;
        Stopwatch clock = Stopwatch.StartNew();
        while (clock.Elapsed.TotalSeconds < seconds)
        {
            one = Math.Min(one, Time(1));
            all = Math.Min(all, Time(0));
        }
        StringBuilder text = new();
        text.AppendLine(CultureInfo.InvariantCulture, $"# Rotor table on {Machine.CpuName}");
        text.AppendLine();
        text.AppendLine(CultureInfo.InvariantCulture, $"{RotorTable.NodeCount / RotorTable.CoefficientCount} nodes; ms, least of many but for the first.");
        text.AppendLine();
        text.AppendLine(CultureInfo.InvariantCulture, $"| first of a process, {Environment.ProcessorCount} threads | 1 thread | {Environment.ProcessorCount} threads |");
        text.AppendLine("| ---: | ---: | ---: |");
        text.AppendLine(CultureInfo.InvariantCulture, $"| {first:f1} | {one:f1} | {all:f1} |");
        return text.ToString();
    }

    private static double Time(int threads)
    {
        long start = Stopwatch.GetTimestamp();
        Specimen.Table(threads);
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }
}
