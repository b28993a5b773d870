using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using Simfeel.Physics.Kernel;

namespace Simfeel.Benchmarks;

/// <summary>
/// A few seconds of timing: all kernels take turns, each manoeuvre (about a millisecond) timed alone, the least time
/// counts. Other work on the machine can only add time, so least times of one run compare fairly even while it is busy.
/// </summary>
internal static class QuickRun
{
    /// <summary>Runs and returns the Markdown report.</summary>
    public static string Report(Contest contest, double seconds)
    {
        StringBuilder text = new();
        text.AppendLine(CultureInfo.InvariantCulture, $"# Kernel on {Machine.CpuName}");
        text.AppendLine();
        text.AppendLine(CultureInfo.InvariantCulture, $"{RuntimeInformation.OSDescription}; {RuntimeInformation.FrameworkDescription}; {contest.Twin?.Compiler ?? "no C++ compiler"}.");
        text.AppendLine("Least time of many interleaved runs, ns per craft-step; a step is 1/8000 s of a craft with four rotors.");
        foreach (Integrator integrator in Enum.GetValues<Integrator>())
        {
            double[] least = LeastTimes(contest, integrator, seconds);
            text.AppendLine();
            text.AppendLine(CultureInfo.InvariantCulture, $"## {integrator}");
            text.AppendLine();
            Table(text, contest, least);
        }
        text.AppendLine();
        text.AppendLine("Twins against C# after the manoeuvre: " + string.Join("; ", contest.Agreement) + ".");
        return text.ToString();
    }

    private static double[] LeastTimes(Contest contest, Integrator integrator, double seconds)
    {
        double[] least = new double[contest.Entrants.Count];
        Array.Fill(least, double.PositiveInfinity);
        // lets the just-in-time compiler reach its last tier, on its own thread
        Warm(contest, integrator);
        Stopwatch all = Stopwatch.StartNew();
        while (all.Elapsed.TotalSeconds < seconds)
        {
            for (int n = 0; n < least.Length; n++)
            {
                Entrant entrant = contest.Entrants[n];
                long start = Stopwatch.GetTimestamp();
                entrant.Fly(integrator);
                double nanoseconds = Stopwatch.GetElapsedTime(start).TotalNanoseconds;
                least[n] = Math.Min(least[n], nanoseconds / (Manoeuvre.Steps * entrant.Flight.Width));
            }
        }
        return least;
    }

    private static void Warm(Contest contest, Integrator integrator)
    {
        for (int round = 0; round < 5; round++)
        {
            foreach (Entrant entrant in contest.Entrants) entrant.Fly(integrator);
            Thread.Sleep(120);
        }
    }

    private static void Table(StringBuilder text, Contest contest, double[] least)
    {
        double scalar = TimeOf(1, native: true);
        text.AppendLine("| kernel | ns per craft-step | of C++ scalar | C# of C++ at this width | times real time at 8 kHz |");
        text.AppendLine("| --- | ---: | ---: | ---: | ---: |");
        for (int n = 0; n < least.Length; n++)
        {
            Entrant entrant = contest.Entrants[n];
            double twin = entrant.Native ? double.NaN : TimeOf(entrant.Flight.Width, native: true);
            text.AppendLine(CultureInfo.InvariantCulture,
                $"| {entrant.Name} | {least[n]:f1} | {Ratio(least[n] / scalar)} | {Ratio(least[n] / twin)} | {1e9 / 8000 / least[n]:f0} |");
        }

        double TimeOf(int width, bool native)
        {
            int at = contest.Entrants.FindIndex(e => e.Flight.Width == width && e.Native == native);
            return at < 0 ? double.NaN : least[at];
        }

        static string Ratio(double value) => double.IsNaN(value) ? "" : value.ToString("f3", CultureInfo.InvariantCulture);
    }
}
