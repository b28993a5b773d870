using BenchmarkDotNet.Attributes;
using Simfeel.Physics.Kernel;

namespace Simfeel.Benchmarks;

/// <summary>Time of a craft-step in each lane type, C# beside C++; the scalar twin is the baseline.</summary>
public class StepBenchmarks
{
    private Contest? _contest;
    private Entrant? _twin1, _twin4, _twin8, _twinF16, _lane1, _lane4, _lane8, _laneF16;

    [Params(Integrator.Midpoint, Integrator.RungeKutta)]
    public Integrator Integrator { get; set; }

    [GlobalSetup]
    public void SetUp()
    {
        _contest = new Contest();
        (_twin1, _lane1) = (_contest.Find(1, native: true), _contest.Find(1, native: false));
        (_twin4, _lane4) = (_contest.Find(4, native: true), _contest.Find(4, native: false));
        (_twin8, _lane8) = (_contest.Find(8, native: true), _contest.Find(8, native: false));
        (_twinF16, _laneF16) = (_contest.Find(16, native: true), _contest.Find(16, native: false));
    }

    [GlobalCleanup]
    public void CleanUp() => _contest?.Dispose();

    [Benchmark(Baseline = true, OperationsPerInvoke = Manoeuvre.Steps, Description = "C++ scalar")]
    [BenchmarkCategory("twin")]
    public void TwinScalar() => _twin1!.Fly(Integrator);

    [Benchmark(OperationsPerInvoke = Manoeuvre.Steps, Description = "C# Lane1")]
    public void Lane1() => _lane1!.Fly(Integrator);

    [Benchmark(OperationsPerInvoke = Manoeuvre.Steps * 4, Description = "C++ AVX2 double")]
    [BenchmarkCategory("twin")]
    public void TwinLane4() => _twin4!.Fly(Integrator);

    [Benchmark(OperationsPerInvoke = Manoeuvre.Steps * 4, Description = "C# Lane4")]
    public void Lane4() => _lane4!.Fly(Integrator);

    [Benchmark(OperationsPerInvoke = Manoeuvre.Steps * 8, Description = "C++ AVX-512 double")]
    [BenchmarkCategory("twin512")]
    public void TwinLane8() => _twin8!.Fly(Integrator);

    [Benchmark(OperationsPerInvoke = Manoeuvre.Steps * 8, Description = "C# Lane8")]
    public void Lane8() => _lane8!.Fly(Integrator);

    [Benchmark(OperationsPerInvoke = Manoeuvre.Steps * 16, Description = "C++ AVX-512 float")]
    [BenchmarkCategory("twin512")]
    public void TwinLaneF16() => _twinF16!.Fly(Integrator);

    [Benchmark(OperationsPerInvoke = Manoeuvre.Steps * 16, Description = "C# LaneF16")]
    public void LaneF16() => _laneF16!.Fly(Integrator);
}
