using System.Globalization;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Filters;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using Simfeel.Benchmarks;
using Simfeel.Benchmarks.Soak;

const string usage = """
    simfeel benchmarks: the flight kernel in C# beside its C++ twin

      --quick [SECONDS]   interleaved least-of-many table in a few seconds (default 3 for each integrator)
      --only TEXT         with --quick: kernels whose name contains TEXT, for a profiler
      --write             also files the table under benchmarks/results
      --note TEXT         with --quick --write: a line on the conditions of the run
      --others            the kernel beside MathNet and SciPy (Debian: python3-scipy) on one second of flight
      --precision         error against work: both integrators, MathNet and SciPy, with a plot (some minutes)
      --steps             what the physics step does to every metric of every drill (a minute)
      --export FOLDER     writes the model for benchmarks/scipy
      --flight [PART]     start to first frame, frames by preset with garbage and physics, a change of propellers;
                          PART start, frames or change alone
      --tables [SECONDS]  what a rotor table costs to compute
      --drills [SECONDS]  what each drill costs a craft, all in
      --soak TIME         an erratic pilot in gusts for 8h, 30m or 120s of flight: memory, file size, replay; --write files it
      --tuning [SECONDS]  what it costs to assemble a build, to tune it and to read a sweep
      anything else       goes to BenchmarkDotNet, for example: --filter *
    """;

if (args.Contains("--help"))
{
    Console.WriteLine(usage);
    return 0;
}

if (args.Contains("--flight"))
{
    Console.Write(FlightRun.Report(Value("--flight")));
    return 0;
}

if (args.Contains("--tables"))
{
    Console.Write(TableRun.Report(SecondsOf("--tables", 5)));
    return 0;
}

if (args.Contains("--drills"))
{
    Console.Write(DrillRun.Report(SecondsOf("--drills", 10)));
    return 0;
}

if (args.Contains("--tuning"))
{
    Console.Write(TuningRun.Report(SecondsOf("--tuning", 5)));
    return 0;
}

if (args.Contains("--soak"))
{
    double seconds = SoakRun.Seconds(Value("--soak"));
    if (double.IsNaN(seconds))
    {
        Console.Error.WriteLine("--soak needs a time such as 8h, 30m or 120s.");
        return 2;
    }
    if (!args.Contains("--write")) return SoakRun.Report(seconds, Console.Out) ? 0 : 1;
    string file = Path.Combine(TwinBuild.RepositoryRoot(), "benchmarks", "results", "soak-" + Machine.FileName);
    using StreamWriter table = new(file);
    bool good = SoakRun.Report(seconds, table);
    Console.Error.WriteLine($"Written to {file}");
    return good ? 0 : 1;
}

if (args.Contains("--quick"))
{
    double seconds = SecondsOf("--quick", 3);
    using Contest contest = new();
    if (Value("--only") is { } only) contest.Keep(only);
    string report = QuickRun.Report(contest, seconds);
    if (Value("--note") is { } note) report += Environment.NewLine + note + Environment.NewLine;
    Console.Write(report);
    if (args.Contains("--write"))
    {
        string file = Path.Combine(TwinBuild.RepositoryRoot(), "benchmarks", "results", Machine.FileName);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(file, report);
        Console.Error.WriteLine($"Written to {file}");
    }
    return 0;
}

if (PrecisionCommands.Run(args)) return 0;

ManualConfig config = DefaultConfig.Instance.AddJob(Job.Default.WithEnvironmentVariable("DOTNET_TieredPGO", "0"));
using (Twin? twin = TwinBuild.Load())
{
    bool narrow = twin is not null, wide = twin?.SizeOf(8, Twin.Block.Lane) > 0;
    config.AddFilter(new SimpleFilter(benchmark => !(benchmark.Descriptor.HasCategory("twin") && !narrow)
        && !(benchmark.Descriptor.HasCategory("twin512") && !wide)));
}
BenchmarkSwitcher.FromAssembly(typeof(StepBenchmarks).Assembly).Run(args, config);
return 0;

double SecondsOf(string option, double usual) =>
    double.TryParse(Value(option), NumberStyles.Float, CultureInfo.InvariantCulture, out double given) ? given : usual;

string? Value(string option)
{
    int at = Array.IndexOf(args, option);
    return at >= 0 && at + 1 < args.Length && !args[at + 1].StartsWith("--", StringComparison.Ordinal) ? args[at + 1] : null;
}
