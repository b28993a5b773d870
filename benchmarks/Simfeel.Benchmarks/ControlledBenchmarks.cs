using BenchmarkDotNet.Attributes;

namespace Simfeel.Benchmarks;

/// <summary>Time of a craft-step with the rate controller at every step, midpoint rule, in each lane type.</summary>
public class ControlledBenchmarks
{
    private Contest? _contest;
    private Entrant? _lane1, _lane4, _lane8, _laneF16;

    [GlobalSetup]
    public void SetUp()
    {
        _contest = new Contest();
        (_lane1, _lane4) = (_contest.Find(1, native: false), _contest.Find(4, native: false));
        (_lane8, _laneF16) = (_contest.Find(8, native: false), _contest.Find(16, native: false));
    }

    [GlobalCleanup]
    public void CleanUp() => _contest?.Dispose();

    [Benchmark(Baseline = true, OperationsPerInvoke = Manoeuvre.Steps, Description = "C# Lane1 with controller")]
    public void Lane1() => _lane1!.FlyControlled();

    [Benchmark(OperationsPerInvoke = Manoeuvre.Steps * 4, Description = "C# Lane4 with controller")]
    public void Lane4() => _lane4!.FlyControlled();

    [Benchmark(OperationsPerInvoke = Manoeuvre.Steps * 8, Description = "C# Lane8 with controller")]
    public void Lane8() => _lane8!.FlyControlled();

    [Benchmark(OperationsPerInvoke = Manoeuvre.Steps * 16, Description = "C# LaneF16 with controller")]
    public void LaneF16() => _laneF16!.FlyControlled();
}
