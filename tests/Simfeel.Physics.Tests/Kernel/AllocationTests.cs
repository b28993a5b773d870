using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>A step allocates nothing.</summary>
public class AllocationTests
{
    [Theory]
    [InlineData(Integrator.Midpoint, RotorModel.Table)]
    [InlineData(Integrator.Midpoint, RotorModel.Polynomials)]
    [InlineData(Integrator.RungeKutta, RotorModel.Table)]
    public void Ten_thousand_steps_allocate_nothing(Integrator integrator, RotorModel rotors)
    {
        Assert.Equal(0, Allocated<Lane1>(integrator, rotors));
        Assert.Equal(0, Allocated<Lane4>(integrator, rotors));
        Assert.Equal(0, Allocated<Lane8>(integrator, rotors));
        Assert.Equal(0, Allocated<LaneF16>(integrator, rotors));
    }

    [Fact]
    public void The_measure_sees_a_single_object()
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        object one = new();
        Assert.True(GC.GetAllocatedBytesForCurrentThread() > before);
        GC.KeepAlive(one);
    }

    private static long Allocated<T>(Integrator integrator, RotorModel rotors)
        where T : unmanaged, ILane<T>
    {
        using CraftBatch<T> batch = HashRun.Batch<T>(0);
        batch.SetRotorModel(rotors);
        ulong hash = Run(batch, integrator, 100);
        long before = GC.GetAllocatedBytesForCurrentThread();
        hash ^= Run(batch, integrator, 10_000);
        long after = GC.GetAllocatedBytesForCurrentThread();
        Assert.NotEqual(0UL, hash);
        return after - before;
    }

    private static ulong Run<T>(CraftBatch<T> batch, Integrator integrator, int steps)
        where T : unmanaged, ILane<T>
    {
        ulong hash = StateHash.Start;
        for (int n = 0; n < steps; n++)
        {
            HashRun.Command(batch, 0, n);
            batch.Step(integrator, 1.0 / 8000);
            if (n % 10 != 0) continue;
            batch.Evaluate();
            hash = batch.Hash(0, hash);
            hash = StateHash.Mix(hash, batch.GetSample(0).PackVoltage);
        }
        return hash;
    }
}
