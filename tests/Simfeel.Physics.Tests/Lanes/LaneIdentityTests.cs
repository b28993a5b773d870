using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Lanes;

/// <summary>A craft flies the same whoever is beside it: different craft, air, states and commands in every lane.</summary>
public class LaneIdentityTests
{
    private const int Steps = 2000;

    [Theory]
    [InlineData(Integrator.Midpoint)]
    [InlineData(Integrator.RungeKutta)]
    public void Double_lanes_give_the_bits_of_one_craft_alone(Integrator integrator)
    {
        ulong[] alone = HashRun.Fly<Lane1>(integrator, Steps);
        Assert.Equal(HashRun.Count, alone.Distinct().Count());
        Assert.Equal(alone, HashRun.Fly<Lane4>(integrator, Steps));
        Assert.Equal(alone, HashRun.Fly<Lane8>(integrator, Steps));
        Assert.Equal(alone, HashRun.Fly<Lane1>(integrator, Steps, threads: 2));
    }

    [Fact]
    public void Hash_sees_every_bit_of_the_state_and_every_rotor()
    {
        Craft craft = HashRun.CraftOf(3);
        CraftState start = HashRun.StartOf(3, craft);
        ulong hash = HashOf(start);
        Assert.Equal(hash, HashOf(start));
        CraftState other = start;
        other.RotorSpeeds[3] = Math.BitIncrement(other.RotorSpeeds[3]);
        Assert.NotEqual(hash, HashOf(other));
        Assert.NotEqual(hash, HashOf(start with { PairVoltage = double.Epsilon }));
        Assert.NotEqual(hash, HashOf(start with { p_WB = new(-0.0, 0, 0) }));

        ulong HashOf(CraftState state)
        {
            using CraftBatch<Lane1> batch = TestCraft.Batch(craft, state);
            return batch.Hash(0);
        }
    }

    [Fact]
    public void Lanes_that_are_not_set_fly_a_copy_of_lane_0()
    {
        using CraftBatch<Lane8> batch = new(4);
        Craft craft = HashRun.CraftOf(5);
        batch.SetCraft(0, craft);
        batch.SetField(0, 1.2, 9.8);
        batch.SetState(0, HashRun.StartOf(5, craft));
        for (int k = 0; k < 4; k++) batch.SetCommand(0, k, 0.4);
        for (int n = 0; n < 100; n++) batch.Step(Integrator.Midpoint, 1e-3);
        for (int lane = 1; lane < 8; lane++) Assert.Equal(batch.Hash(0), batch.Hash(lane));
    }

    // Same flight in single precision, 0.25 s of hard manoeuvring on tables without pattern, which spread errors more than a
    // propeller's do. Measured at worst: 2e-5 m, 4e-4 m/s, 4e-4 rad, 7e-3 rad/s, 4e-2 rad/s of a rotor.
    [Theory]
    [InlineData(Integrator.Midpoint)]
    [InlineData(Integrator.RungeKutta)]
    public void Single_precision_stays_close_to_double(Integrator integrator)
    {
        using CraftBatch<LaneF16> single = HashRun.Batch<LaneF16>(0);
        using CraftBatch<Lane8> low = HashRun.Batch<Lane8>(0), high = HashRun.Batch<Lane8>(8);
        for (int n = 0; n < Steps; n++)
        {
            HashRun.Command(single, 0, n);
            HashRun.Command(low, 0, n);
            HashRun.Command(high, 8, n);
            single.Step(integrator, 1.0 / 8000);
            low.Step(integrator, 1.0 / 8000);
            high.Step(integrator, 1.0 / 8000);
        }
        double position = 0, velocity = 0, angle = 0, rate = 0, rotor = 0;
        for (int lane = 0; lane < 16; lane++)
        {
            CraftState a = single.GetState(lane), b = lane < 8 ? low.GetState(lane) : high.GetState(lane - 8);
            Quat turn = a.q_WB.Conjugate * b.q_WB;
            position = Math.Max(position, (a.p_WB - b.p_WB).Length);
            velocity = Math.Max(velocity, (a.v_WB - b.v_WB).Length);
            angle = Math.Max(angle, 2 * new Vec3(turn.X, turn.Y, turn.Z).Length);
            rate = Math.Max(rate, (a.w_WB_B - b.w_WB_B).Length);
            for (int k = 0; k < 4; k++) rotor = Math.Max(rotor, Math.Abs(a.RotorSpeeds[k] - b.RotorSpeeds[k]));
        }
        Bound.Check($"single, position, m, {integrator}", position, 2e-4);
        Bound.Check($"single, velocity, m/s, {integrator}", velocity, 3e-3);
        Bound.Check($"single, attitude, rad, {integrator}", angle, 3e-3);
        Bound.Check($"single, rate, rad/s, {integrator}", rate, 5e-2);
        Bound.Check($"single, rotor speed, rad/s, {integrator}", rotor, 0.3);
    }
}
