using System.Diagnostics;
using System.Globalization;

namespace Simfeel.Mutation;

/// <summary>Mutates a project file by file and keeps what came out, so that a run can be broken off and taken up again.</summary>
internal sealed class Campaign(string root, string project)
{
    // These listen to the compiler, count what is allocated or start processes of their own that no switch reaches.
    private static readonly string[] LeftOut = ["InliningTests", "AllocationTests", "DeterminismTests"];

    private double mostMilliseconds = 4000;

    private readonly string work = Path.Combine(root, "artifacts", "mutation", project);
    private readonly string folder = Path.Combine(root, "artifacts", "mutation", project, "tests");
    private List<(string File, int First, int Last)> members = [];

    /// <summary>File with the results, one line for each mutant.</summary>
    public static string Results(string root, string project) =>
        Path.Combine(root, "benchmarks", "mutation", "results", project + ".tsv");

    /// <summary>Runs the mutants that have no results yet, or the survivors once more.</summary>
    public int Run(string[] options)
    {
        int sample = int.MaxValue;
        bool again = false;
        List<string> wanted = [];
        for (int i = 0; i < options.Length; i++)
        {
            if (options[i] == "--sample") sample = int.Parse(options[++i], CultureInfo.InvariantCulture);
            else if (options[i] == "--price") mostMilliseconds = double.Parse(options[++i], CultureInfo.InvariantCulture);
            else if (options[i] == "--again") again = true;
            else wanted.Add(options[i]);
        }
        MutatedProject source = Prepare();
        List<(HashSet<(string File, int Line)> Lines, string Method, double Ms)> coverage = Coverage(source);
        List<string[]> rows = ReadRows();
        foreach (string file in wanted.Count == 0
            ? source.Files
            : wanted.SelectMany(w => source.Files.Where(f => f.StartsWith(w, StringComparison.Ordinal))).Distinct())
        {
            HashSet<string> known = [.. rows.Where(r => r[0] == file && (!again || r[5] == "survived")).Select(r => Key(r))];
            if (again && known.Count == 0) continue;
            // all that the sample wants is there already, so that nothing has to be compiled to see it
            if (!again && rows.Find(r => r[0] == file) is { } any && known.Count >= Math.Min(sample, int.Parse(any[1], CultureInfo.InvariantCulture))) continue;
            List<Mutant> all = source.Compile(file, Path.Combine(folder, project + ".dll"));
            int[] chosen = [.. Sample(file, all.Count, again ? int.MaxValue : sample).Where(i => known.Contains(Key(all[i])) == again)];
            if (chosen.Length == 0) continue;
            List<string[]> fresh = RunFile(file, all, chosen, coverage);
            foreach (string[] row in fresh) rows.RemoveAll(r => Key(r) == Key(row));
            rows.AddRange(fresh);
            Directory.CreateDirectory(Path.GetDirectoryName(Results(root, project))!);
            File.WriteAllLines(Results(root, project), rows.OrderBy(r => r[0], StringComparer.Ordinal)
                .ThenBy(r => int.Parse(r[2], CultureInfo.InvariantCulture)).Select(r => string.Join('\t', r)));
            Console.WriteLine($"{file}: {all.Count} mutants, {fresh.Count} run, {string.Join(", ", fresh.GroupBy(r => r[5]).Select(g => $"{g.Count()} {g.Key}"))}");
        }
        return 0;
    }

    // Columns: file, mutants in it, line, column, change, outcome, test.
    private List<string[]> ReadRows() => File.Exists(Results(root, project))
        ? [.. File.ReadLines(Results(root, project)).Select(l => l.Split('\t'))]
        : [];

    private static string Key(string[] row) => $"{row[0]}:{row[2]}:{row[3]}:{row[4]}";

    private static string Key(Mutant m) => $"{m.File}:{m.Line}:{m.Column}:{m.Change}";

    private static int[] Sample(string file, int count, int sample)
    {
        // Seeded by the file's name, so that a second run draws the same.
        int seed = file.Aggregate(17, (h, c) => unchecked((h * 31) + c));
        int[] order = [.. Enumerable.Range(0, count)];
        new Random(seed).Shuffle(order);
        return [.. order.Take(sample).Order()];
    }

    private MutatedProject Prepare()
    {
        string built = Path.Combine(root, "tests", project + ".Tests", "bin", "Release", "net10.0");
        Directory.CreateDirectory(folder);
        foreach (string path in Directory.EnumerateFiles(built, "*", SearchOption.AllDirectories))
        {
            string target = Path.Combine(folder, Path.GetRelativePath(built, path));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            if (!File.Exists(target) || File.GetLastWriteTimeUtc(target) != File.GetLastWriteTimeUtc(path)) File.Copy(path, target, true);
        }
        File.Copy(typeof(Campaign).Assembly.Location, Path.Combine(folder, "Simfeel.Mutation.dll"), true);
        return new(root, project, folder);
    }

    private List<(HashSet<(string File, int Line)> Lines, string Method, double Ms)> Coverage(MutatedProject source)
    {
        string results = Path.Combine(work, "coverage.tsv");
        // Members are numbered: a new source makes all of it old. New test classes are added to what is known.
        string stamp = Path.Combine(work, "coverage.source");
        if (!File.Exists(stamp) || File.ReadAllText(stamp) != source.Hash) File.Delete(results);
        Directory.CreateDirectory(work);
        File.WriteAllText(stamp, source.Hash);
        bool isKnown = File.Exists(results)
            && File.GetLastWriteTimeUtc(results) > File.GetLastWriteTimeUtc(Path.Combine(folder, project + ".Tests.dll"));
        members = source.CompileWithNotes(isKnown ? null : Path.Combine(folder, project + ".dll"));
        if (!isKnown) Host(["host-cover", folder, project, results, .. LeftOut]);
        List<(HashSet<(string, int)>, string, double)> coverage = [];
        foreach (string[] line in File.ReadLines(results).Select(l => l.Split('\t')).Where(l => l[1] == "passed"))
        {
            HashSet<(string, int)> lines = [];
            foreach (string number in line[3].Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                (string file, int first, int last) = members[int.Parse(number, CultureInfo.InvariantCulture)];
                for (int i = first; i <= last; i++) lines.Add((file, i));
            }
            coverage.Add((lines, line[0], double.Parse(line[2], CultureInfo.InvariantCulture)));
        }
        return coverage;
    }

    private List<string[]> RunFile(string file, List<Mutant> all, int[] chosen, List<(HashSet<(string File, int Line)> Lines, string Method, double Ms)> coverage)
    {
        Dictionary<int, (string Outcome, string Test)> outcomes = [];
        Dictionary<int, string> methods = [];
        foreach (int i in chosen)
        {
            string[] tests = TestsOf(file, all[i], coverage);
            if (tests.Length == 0) outcomes[i] = ("survived", "not reached");
            else methods[i] = string.Join(';', tests);
        }
        string plan = Path.Combine(work, "plan.tsv"), log = Path.Combine(work, "log.tsv");
        while (methods.Keys.Any(i => !outcomes.ContainsKey(i)))
        {
            File.WriteAllLines(plan, chosen.Where(i => methods.ContainsKey(i) && !outcomes.ContainsKey(i)).Select(i => $"{i + 1}\t{methods[i]}"));
            File.Delete(log);
            int code = Host(["host-mutate", folder, project, plan, log]);
            int? begun = null;
            foreach (string[] line in File.ReadLines(log).Select(l => l.Split('\t')))
            {
                if (line[0] == "unfit")
                {
                    Console.WriteLine($"{file}: {line[1]} fails without a mutant and was left out.");
                    continue;
                }
                int i = int.Parse(line[1], CultureInfo.InvariantCulture) - 1;
                begun = line[0] == "start" ? i : null;
                if (begun is null) outcomes[i] = (line[0], line.Length > 2 ? line[2] : "");
            }
            if (code == 0) continue;
            outcomes[begun ?? throw new InvalidOperationException($"The tests of {file} end with {code} without a mutant.")] =
                (code == HostRuns.TooLong ? "timed out" : "killed", code == HostRuns.TooLong ? "" : "the process ended");
        }
        return [.. chosen.Select(i => new[]
        {
            file, all.Count.ToString(CultureInfo.InvariantCulture), all[i].Line.ToString(CultureInfo.InvariantCulture),
            all[i].Column.ToString(CultureInfo.InvariantCulture), all[i].Change, outcomes[i].Outcome, outcomes[i].Test.Replace($"{project}.Tests.", "", StringComparison.Ordinal),
        })];
    }

    // The cheapest tests of those that run the place, up to a price: what only a dearer test would see counts as survived.
    private string[] TestsOf(string file, Mutant mutant, List<(HashSet<(string File, int Line)> Lines, string Method, double Ms)> coverage)
    {
        var tests = coverage.Where(c => c.Lines.Contains((file, mutant.Line))).ToList();
        if (file.StartsWith("Lanes/", StringComparison.Ordinal))
        {
            tests = [.. coverage.Where(c => c.Method.Contains(".Lanes.", StringComparison.Ordinal) || c.Method.Contains("ConservationTests", StringComparison.Ordinal))];
        }
        // A field's first value is in no member that is noted: whoever runs anything of the file.
        else if (tests.Count == 0 && !IsInMember(file, mutant)) tests = [.. coverage.Where(c => c.Lines.Any(l => l.File == file))];
        double sum = 0;
        return [.. tests.OrderBy(c => c.Ms).TakeWhile((c, n) => (sum += c.Ms) < mostMilliseconds || n == 0).Select(c => c.Method)];
    }

    private bool IsInMember(string file, Mutant mutant) =>
        members.Any(m => m.File == file && m.First <= mutant.Line && mutant.Line <= m.Last);

    private int Host(string[] arguments)
    {
        ProcessStartInfo start = new("dotnet");
        start.ArgumentList.Add("exec");
        foreach ((string option, string ending) in new[] { ("--depsfile", "deps"), ("--runtimeconfig", "runtimeconfig") })
        {
            start.ArgumentList.Add(option);
            start.ArgumentList.Add(Path.Combine(folder, $"{project}.Tests.{ending}.json"));
        }
        start.ArgumentList.Add(Path.Combine(folder, "Simfeel.Mutation.dll"));
        foreach (string argument in arguments) start.ArgumentList.Add(argument);
        start.Environment["DOTNET_GCHeapHardLimit"] = "80000000";
        start.Environment["DOTNET_TieredPGO"] = "0";
        start.Environment["SIMFEEL_CACHE"] = "off";
        using Process process = Process.Start(start)!;
        process.WaitForExit();
        return process.ExitCode;
    }
}
