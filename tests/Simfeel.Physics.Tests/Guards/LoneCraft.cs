using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Guards;

/// <summary>One craft in motion, in the kernel's own memory, for tests of single stages.</summary>
internal sealed unsafe class LoneCraft : IDisposable
{
    public const double Gravity = 9.81;

    public static readonly Craft Quad = TestCraft.Quad(TestCraft.Irregular);
    public static readonly Vec3 Wind = new(3, -2, 0.7);

    public LoneCraft()
    {
        CraftPacking.Pack(Craft, 0, Quad);
        Craft->RotorCount = 4;
        Craft->DynamicInflow = 1;
        Field->Density = Lane1.Of(1.2);
        (Field->Gravity, Field->WindX, Field->WindY, Field->WindZ) = (Lane1.Of(Gravity), Lane1.Of(Wind.X), Lane1.Of(Wind.Y), Lane1.Of(Wind.Z));
        CraftState state = CraftState.AtRest(Quad, 0.6);
        state.p_WB = new(1, 2, -30);
        state.v_WB = new(-6, 4, 9);
        state.q_WB = Quat.FromEuler(0.4, -0.3, 2);
        state.w_WB_B = new(5, -7, 3);
        state.PairVoltage = 0.05;
        for (int k = 0; k < 4; k++)
        {
            state.RotorSpeeds[k] = 700 + (150 * k);
            state.InducedVelocities[k] = 4 + k;
            LaneMemory.Set((Lane1*)&Field->ThrustFactor + k, 0, 1 - (0.02 * k));
        }
        State = state;
        Reset();
    }

    public CraftLanes<Lane1>* Craft { get; } = LaneMemory.Allocate<CraftLanes<Lane1>>();

    public FieldLanes<Lane1>* Field { get; } = LaneMemory.Allocate<FieldLanes<Lane1>>();

    /// <summary>The state, <see cref="StateIndex"/>.</summary>
    public Lane1* X { get; } = LaneMemory.Allocate<Lane1>(StateIndex.Stride);

    /// <summary>What <see cref="X"/> held first.</summary>
    public CraftState State { get; }

    /// <summary>Writes <see cref="State"/> into <see cref="X"/> again.</summary>
    public void Reset()
    {
        double[] numbers =
        [
            State.p_WB.X, State.p_WB.Y, State.p_WB.Z, State.v_WB.X, State.v_WB.Y, State.v_WB.Z, State.q_WB.W, State.q_WB.X, State.q_WB.Y, State.q_WB.Z,
            State.w_WB_B.X, State.w_WB_B.Y, State.w_WB_B.Z, State.Charge, State.PairVoltage,
            .. Enumerable.Range(0, 4).Select(k => State.RotorSpeeds[k]), .. Enumerable.Range(0, 4).Select(k => State.InducedVelocities[k]),
        ];
        for (int n = 0; n < numbers.Length; n++) LaneMemory.Set(X + n, 0, numbers[n]);
    }

    public void Dispose()
    {
        LaneMemory.Free(Craft);
        LaneMemory.Free(Field);
        LaneMemory.Free(X);
    }
}
