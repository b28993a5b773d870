using System.Diagnostics;
using System.Globalization;

namespace Simfeel.Mutation;

/// <summary>What is done inside the process that holds the tests. Each result is a line that is written at once.</summary>
internal static class HostRuns
{
    /// <summary>Exit code of a process whose test ran too long.</summary>
    public const int TooLong = 77;

    private static long limit = long.MaxValue, wallLimit = long.MaxValue;

    /// <summary>Runs every test method by itself and writes its processor time and the members that it ran.</summary>
    public static int Cover(string folder, string project, string results, string[] leftOut)
    {
        string[] classes;
        {
            TestHost all = new(folder, project, 0, null);
            classes = [.. all.Methods.Select(ClassOf).Distinct().Where(c => !leftOut.Any(o => c.EndsWith("." + o, StringComparison.Ordinal)))];
        }
        HashSet<string> done = File.Exists(results) ? [.. File.ReadLines(results).Select(l => ClassOf(l.Split('\t')[0]))] : [];
        foreach (string name in classes.Where(c => !done.Contains(c)))
        {
            // A class by itself, so that what is worked out once for all tests is counted for it, too.
            TestHost host = new(folder, project, 0, [name]);
            bool[] seen = (bool[])host.Project.GetType("SimfeelMutation.Seen", true)!.GetField("Members")!.GetValue(null)!;
            List<string> lines = [];
            foreach (string method in host.Methods)
            {
                Array.Clear(seen);
                TimeSpan before = Environment.CpuUsage.TotalTime;
                bool passed = host.Passes(method);
                double ms = (Environment.CpuUsage.TotalTime - before).TotalMilliseconds;
                string members = string.Join(' ', Enumerable.Range(0, seen.Length).Where(i => seen[i]));
                lines.Add(string.Create(CultureInfo.InvariantCulture, $"{method}\t{(passed ? "passed" : "failed")}\t{ms:F0}\t{members}"));
            }
            File.AppendAllLines(results, lines);
        }
        return 0;
    }

    /// <summary>
    /// Runs mutants against their tests. All share one set of assemblies, whose statics the unchanged code has filled; what
    /// survives there is run again in a set of its own, from the finding of the tests on.
    /// </summary>
    /// <param name="folder">Folder with the tests and the changed project.</param>
    /// <param name="project">Name of the changed project.</param>
    /// <param name="plan">File with lines: number of the mutant, tabulator, its test methods.</param>
    /// <param name="results">File that the results are appended to.</param>
    public static int Mutate(string folder, string project, string plan, string results)
    {
        List<(int Id, string[] Methods)> work = [.. File.ReadLines(plan).Select(l => l.Split('\t')).Select(p => (int.Parse(p[0], CultureInfo.InvariantCulture), p[1].Split(';')))];
        using StreamWriter writer = new(results, true) { AutoFlush = true };
        Thread watch = new(Watch) { IsBackground = true, Priority = ThreadPriority.Highest };
        watch.Start();
        string[] methods = [.. work.SelectMany(w => w.Methods).Distinct()];
        TestHost shared = new(folder, project, 0, [.. methods.Select(ClassOf).Distinct()]);
        Dictionary<string, double> cost = [];
        foreach (string method in methods)
        {
            TimeSpan before = Environment.CpuUsage.TotalTime;
            bool passed = shared.Passes(method);
            if (passed) cost[method] = (Environment.CpuUsage.TotalTime - before).TotalSeconds;
            else writer.WriteLine($"unfit\t{method}");
        }
        foreach ((int id, string[] tests) in work)
        {
            writer.WriteLine($"start\t{id}");
            string[] fit = [.. tests.Where(cost.ContainsKey).OrderBy(t => cost[t])];
            shared.Active = id;
            string? killer = FirstFailing(shared, fit, cost, spare: 3);
            shared.Active = 0;
            if (killer is null && fit.Length > 0)
            {
                Limit(30);
                TestHost alone = new(folder, project, id, [.. fit.Select(ClassOf).Distinct()]);
                // whatever the tests work out once for all of them is worked out again here, by the first that needs it
                killer = fit.FirstOrDefault(t => !alone.Methods.Contains(t)) ?? FirstFailing(alone, fit, cost, spare: 60);
            }
            Volatile.Write(ref limit, long.MaxValue);
            Volatile.Write(ref wallLimit, long.MaxValue);
            writer.WriteLine(killer is null ? $"survived\t{id}" : $"killed\t{id}\t{killer}");
        }
        return 0;
    }

    private static string ClassOf(string method) => method[..method.LastIndexOf('.')];

    private static string? FirstFailing(TestHost host, string[] methods, Dictionary<string, double> cost, double spare)
    {
        foreach (string method in methods)
        {
            Limit(spare + (4 * cost[method]));
            if (!host.Passes(method)) return method;
        }
        return null;
    }

    // Processor time, since others may use the machine; by the clock only what waits for ever is found.
    private static void Limit(double seconds)
    {
        Volatile.Write(ref limit, (Environment.CpuUsage.TotalTime + TimeSpan.FromSeconds(seconds)).Ticks);
        Volatile.Write(ref wallLimit, Stopwatch.GetTimestamp() + (300 * Stopwatch.Frequency));
    }

    private static void Watch()
    {
        while (Environment.CpuUsage.TotalTime.Ticks < Volatile.Read(ref limit) && Stopwatch.GetTimestamp() < Volatile.Read(ref wallLimit)) Thread.Sleep(100);
        Environment.Exit(TooLong);
    }
}
