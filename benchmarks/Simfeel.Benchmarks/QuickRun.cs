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
            List<Entrant> entrants = contest.Entrants.FindAll(e => integrator == Integrator.Midpoint || !e.Fitted);
            double[] least = LeastTimes(entrants, entrant => entrant.Fly(integrator), seconds);
            text.AppendLine();
            text.AppendLine(CultureInfo.InvariantCulture, $"## {integrator}");
            text.AppendLine();
            Table(text, entrants, least);
            text.AppendLine();
            text.AppendLine(Gains(entrants, least));
        }
        text.AppendLine();
        text.AppendLine("## Midpoint with the rate controller at every step");
        text.AppendLine();
        ControlledTable(text, contest, seconds);
        text.AppendLine();
        text.AppendLine("Controlled craft followed their sticks: " + string.Join("; ", contest.Following) + ".");
        text.AppendLine("Twins against C# after the manoeuvre: " + string.Join("; ", contest.Agreement) + ".");
        return text.ToString();
    }

    private static double[] LeastTimes(List<Entrant> entrants, Action<Entrant> fly, double seconds)
    {
        double[] least = new double[entrants.Count];
        Array.Fill(least, double.PositiveInfinity);
        // lets the just-in-time compiler reach its last tier, on its own thread
        for (int round = 0; round < 10; round++)
        {
            foreach (Entrant entrant in entrants) fly(entrant);
            Thread.Sleep(120);
        }
        Stopwatch all = Stopwatch.StartNew();
        while (all.Elapsed.TotalSeconds < seconds)
        {
            for (int n = 0; n < least.Length; n++)
            {
                long start = Stopwatch.GetTimestamp();
                fly(entrants[n]);
                double nanoseconds = Stopwatch.GetElapsedTime(start).TotalNanoseconds;
                least[n] = Math.Min(least[n], nanoseconds / (Manoeuvre.Steps * entrants[n].Flight.Width));
            }
        }
        return least;
    }

    private static void Table(StringBuilder text, List<Entrant> entrants, double[] least)
    {
        double scalar = TimeOf(1, native: true);
        text.AppendLine("| kernel | ns per craft-step | of C++ scalar | C# of C++ at this width | times real time at 8 kHz |");
        text.AppendLine("| --- | ---: | ---: | ---: | ---: |");
        for (int n = 0; n < least.Length; n++)
        {
            Entrant entrant = entrants[n];
            double twin = entrant.Native ? double.NaN : TimeOf(entrant.Flight.Width, native: true);
            text.AppendLine(CultureInfo.InvariantCulture,
                $"| {entrant.Name} | {least[n]:f1} | {Ratio(least[n] / scalar)} | {Ratio(least[n] / twin)} | {1e9 / 8000 / least[n]:f0} |");
        }

        double TimeOf(int width, bool native)
        {
            int at = entrants.FindIndex(e => e.Flight.Width == width && e.Native == native);
            return at < 0 ? double.NaN : least[at];
        }

        static string Ratio(double value) => double.IsNaN(value) ? "" : value.ToString("f3", CultureInfo.InvariantCulture);
    }

    private static void ControlledTable(StringBuilder text, Contest contest, double seconds)
    {
        // the kernel alone takes turns with itself under the controller, so that their difference means something
        List<Entrant> controlled = contest.Controlled;
        List<Entrant> all = [.. controlled, .. controlled.Select(entrant => entrant with { Name = "alone" })];
        double[] least = LeastTimes(all, entrant => Fly(entrant), seconds);
        text.AppendLine("| kernel | ns per craft-step | of that the controller | times real time at 8 kHz |");
        text.AppendLine("| --- | ---: | ---: | ---: |");
        for (int n = 0; n < controlled.Count; n++)
        {
            text.AppendLine(CultureInfo.InvariantCulture,
                $"| {controlled[n].Name} | {least[n]:f1} | {least[n] - least[controlled.Count + n]:f1} | {1e9 / 8000 / least[n]:f0} |");
        }

        static void Fly(Entrant entrant)
        {
            if (entrant.Name == "alone") entrant.Fly(Integrator.Midpoint);
            else entrant.FlyControlled();
        }
    }

    /// <summary>How much faster than one craft in C++ each width is: what the lanes gain, and what table and memory take back.</summary>
    private static string Gains(List<Entrant> entrants, double[] least)
    {
        int scalar = entrants.FindIndex(e => e.Native && e.Flight.Width == 1);
        if (scalar < 0) return "No C++ scalar to compare with.";
        IEnumerable<string> gains = entrants.Select((entrant, n) => (entrant, n))
            .Where(item => !item.entrant.Native && item.entrant.Flight.Width > 1)
            .Select(item => string.Create(CultureInfo.InvariantCulture, $"{item.entrant.Name} {least[scalar] / least[item.n]:f1} of {item.entrant.Flight.Width} lanes"));
        return "Times as fast per core as C++ scalar: " + string.Join(", ", gains) + ".";
    }
}
