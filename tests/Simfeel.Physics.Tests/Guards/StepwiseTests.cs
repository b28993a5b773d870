using Simfeel.Physics.Guards;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Tests.Guards;

/// <summary>A step taken stage by stage is the step that flights take, to the last bit, and shows every stage in its turn.</summary>
public sealed unsafe class StepwiseTests : IDisposable
{
    private const double Step = 1 / 4000.0;

    private static readonly KernelStage[] Table =
    [
        KernelStage.Kinematics, KernelStage.SourceVoltage, KernelStage.TerminalVoltage, KernelStage.RotorFlow, KernelStage.Motors, KernelStage.Battery,
        KernelStage.BodyAir, KernelStage.RotorAir, KernelStage.Accelerations,
    ];

    private static readonly KernelStage[] Fitted =
    [
        KernelStage.Kinematics, KernelStage.SourceVoltage, KernelStage.TerminalVoltage, KernelStage.BodyAir, KernelStage.FittedRotors, KernelStage.Motors,
        KernelStage.Battery, KernelStage.MotorReactions, KernelStage.Accelerations,
    ];

    private readonly LoneCraft _one = new();
    private readonly LoadLanes<Lane1>* _load = LaneMemory.Allocate<LoadLanes<Lane1>>(2);
    private readonly RotorFitLanes<Lane1>* _fits = LaneMemory.Allocate<RotorFitLanes<Lane1>>(Craft.MaxRotors);
    private readonly Lane1* _blocks = LaneMemory.Allocate<Lane1>(9 * StateIndex.Stride);
    private readonly Lane1* _command = LaneMemory.Allocate<Lane1>(Craft.MaxRotors);
    private readonly List<KernelStage> _seen = [];

    public StepwiseTests()
    {
        for (int k = 0; k < 4; k++) LaneMemory.Set(_command + k, 0, 0.2 + (0.25 * k));
    }

    [Theory]
    [InlineData(false, true)]
    [InlineData(false, false)]
    [InlineData(true, true)]
    [InlineData(true, false)]
    public void Midpoint_steps_are_the_same(bool fitted, bool dynamicInflow)
    {
        Lane1* dx = Block(0), next = Block(1), dnext = Block(2), next2 = Block(3), dnext2 = Block(4), scratch = Block(5);
        _one.Craft->DynamicInflow = dynamicInflow ? 1 : 0;
        Kernel<Lane1>.Derivative(_one.X, _command, _one.Craft, _one.Field, _load, dx);
        if (fitted)
        {
            Kernel<Lane1>.FitRotors(_one.X, dx, Step, _one.Craft, _one.Field, _load, scratch, _fits);
            _one.Craft->Fits = _fits;
        }
        Kernel<Lane1>.MidpointStep(_one.X, dx, next, dnext, _command, _one.Craft, _one.Field, _load, scratch, Step);
        Kernel<Lane1>.MidpointStepwise(_one.X, dx, next2, dnext2, _command, _one.Craft, _one.Field, _load, scratch, Step, _seen.Add);
        Same(next, next2, dynamicInflow);
        Same(dnext, dnext2, dynamicInflow);
        Assert.Equal([KernelStage.Predict, .. fitted ? Fitted : Table], _seen);
        Assert.NotEqual(LaneMemory.Get(_one.X, 0), LaneMemory.Get(next2, 0));
    }

    [Fact]
    public void Steps_of_four_evaluations_are_the_same()
    {
        Lane1* next = Block(1), next2 = Block(3), scratch = Block(5);
        Kernel<Lane1>.RungeKuttaStep(_one.X, next, _command, _one.Craft, _one.Field, _load, scratch, Step);
        Kernel<Lane1>.RungeKuttaStepwise(_one.X, next2, _command, _one.Craft, _one.Field, _load, scratch, Step, _seen.Add);
        Same(next, next2, true);
        Assert.Equal([.. Table, KernelStage.Predict, .. Table, KernelStage.Predict, .. Table, KernelStage.Predict, .. Table], _seen);
    }

    public void Dispose()
    {
        _one.Dispose();
        LaneMemory.Free(_load);
        LaneMemory.Free(_fits);
        LaneMemory.Free(_blocks);
        LaneMemory.Free(_command);
    }

    private Lane1* Block(int n) => _blocks + (n * StateIndex.Stride);

    private static void Same(Lane1* a, Lane1* b, bool dynamicInflow)
    {
        for (int n = 0; n < StateIndex.Used(4, dynamicInflow); n++)
            Assert.Equal(BitConverter.DoubleToInt64Bits(LaneMemory.Get(a + n, 0)), BitConverter.DoubleToInt64Bits(LaneMemory.Get(b + n, 0)));
    }
}
