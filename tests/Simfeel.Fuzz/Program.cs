using System.Diagnostics;
using System.Globalization;
using Simfeel.Fuzz.Oracles;
using Simfeel.Fuzz.Processes;
using Simfeel.Fuzz.Running;
using Simfeel.Fuzz.Targets;

if (Arguments.Parse(args, out string wrong) is not Arguments asked)
{
    Console.Error.WriteLine(wrong);
    Console.Error.WriteLine(Arguments.Usage);
    return 2;
}
Target[] targets = [.. AllTargets.Make().Where(target => asked.Kinds.Count == 0 || asked.Kinds.Contains(target.Name))];
if (targets.Length == 0)
{
    Console.Error.WriteLine($"No such kind. Kinds: {string.Join(", ", AllTargets.Make().Select(target => target.Name))}.");
    return 2;
}
if (asked.Processes > 0) return Shown(HostileRun.Run(asked.Processes, asked.Seed, asked.Strace), "") ? 0 : 1;
if (asked.Case is string file) return Replay(targets[0], Path.GetFileName(file), File.ReadAllBytes(file)) ? 0 : 1;
if (asked.Cases) return targets.SelectMany(target => Corpus.Cases(target.Name).Select(one => Replay(target, one.Name, one.Input))).ToList().All(good => good) ? 0 : 1;

bool clean = true;
long weights = targets.Sum(target => target.Weight);
foreach (Target target in targets)
{
    Stopwatch clock = Stopwatch.StartNew();
    KindResult result = Campaign.Run(target, asked.Seed, asked.From, Math.Max(1, asked.Count * target.Weight / weights), failure =>
    {
        Store(target, failure);
        Console.Error.WriteLine($"{target.Name} {failure.Number}: does not end; the campaign is given up.");
        Environment.Exit(4);
    });
    foreach (Failure failure in result.Failures) Store(target, failure);
    clean &= Shown(result, string.Create(CultureInfo.InvariantCulture, $"{clock.Elapsed.TotalSeconds:F0} s"));
}
return clean ? 0 : 1;

void Store(Target target, Failure failure)
{
    if (asked.Save is null) return;
    Directory.CreateDirectory(asked.Save);
    string name = string.Create(CultureInfo.InvariantCulture, $"{target.Name.Replace(' ', '-')}-{asked.Seed}-{failure.Number}{target.Ending}");
    File.WriteAllBytes(Path.Combine(asked.Save, name), failure.Input);
}

bool Shown(KindResult result, string took)
{
    string line = string.Create(CultureInfo.InvariantCulture,
        $"| {result.Kind} | {result.Inputs} | {result.Rejected} | {result.Accepted} | {1e3 * result.Worst:F0} | {result.Largest / 1e6:F1} | {result.Crashes} | {result.Hangs} | {result.Unexplained} |");
    Console.WriteLine($"{line} slowest {result.WorstNumber}, {took}");
    if (asked.Out is not null) File.AppendAllText(asked.Out, line + "\n");
    foreach (IGrouping<string, Failure> same in result.Failures.GroupBy(failure => failure.What.Split('\n')[0][..Math.Min(90, failure.What.Split('\n')[0].Length)]))
        Console.WriteLine($"  {same.Count()} x {same.First().Number}: {string.Join("\n      ", same.First().What.Split('\n').Take(8))}");
    return result.Clean;
}

static bool Replay(Target target, string name, byte[] input)
{
    Target.Always = true;
    try
    {
        Console.WriteLine($"{target.Name} {name}: {target.Try(input, new Dice(1))}");
        return true;
    }
    catch (Exception error)
    {
        Console.WriteLine($"{target.Name} {name}: {error}");
        return false;
    }
}
