using Simfeel.Physics.Guards;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Guards;

/// <summary>
/// The look at a state by itself: its energy is that of rigid body and rotors (<see cref="TestCraft.KineticEnergy"/>, in the frame of
/// the air) less weight times depth, and every number and the attitude's length count.
/// </summary>
public sealed unsafe class SoundStateTests : IDisposable
{
    private const double Step = 1 / 4000.0;

    private readonly LoneCraft _one = new();
    private readonly GuardLanes<Lane1>* _guard = LaneMemory.Allocate<GuardLanes<Lane1>>();

    public SoundStateTests() => _guard->Mass = Lane1.Of(LoneCraft.Quad.Mass);

    [Fact]
    public void Energy_is_that_of_motion_through_the_air_and_height()
    {
        CraftState inAir = _one.State;
        inAir.v_WB = inAir.v_WB - LoneCraft.Wind;
        double motion = TestCraft.KineticEnergy(LoneCraft.Quad, inAir), expected = motion - (LoneCraft.Quad.Mass * LoneCraft.Gravity * inAir.p_WB.Z);
        _guard->Energy = Lane1.Of(double.PositiveInfinity);
        Assert.True(IsSound());
        Assert.Equal(1, _guard->Energy.v / expected, 1e-12);

        // allowed: what it was, a step of the most power, and the share of motion that an integrator may find
        const double power = 5000;
        _guard->MostPower = Lane1.Of(power);
        double most = expected - (Guard.GrowthMargin * motion) - (power * Step);
        Assert.True(After(most + 1e-9));
        Assert.False(After(most - 1e-9));

        bool After(double before)
        {
            _guard->Energy = Lane1.Of(before);
            return IsSound();
        }
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void Every_number_of_the_state_must_be_finite(double bad)
    {
        int used = StateIndex.Used(4, true);
        for (int n = 0; n < used; n++)
        {
            _one.Reset();
            _guard->Energy = Lane1.Of(double.PositiveInfinity);
            Assert.True(IsSound());
            LaneMemory.Set(_one.X + n, 0, bad);
            Assert.False(IsSound(), $"number {n} is {bad}");
            Assert.Equal(1, _guard->Broken.v);
        }
    }

    [Theory]
    [InlineData(0.9, true)]
    [InlineData(-0.9, true)]
    [InlineData(1.1, false)]
    [InlineData(-1.1, false)]
    public void The_attitude_must_be_of_unit_length(double offInTolerances, bool sound)
    {
        for (int n = 0; n < 4; n++)
        {
            // all of the excess in one element
            _one.Reset();
            double q = LaneMemory.Get(_one.X + StateIndex.Attitude + n, 0);
            LaneMemory.Set(_one.X + StateIndex.Attitude + n, 0, Math.Sqrt((q * q) + (offInTolerances * Guard.AttitudeTolerance)));
            _guard->Energy = Lane1.Of(double.PositiveInfinity);
            Assert.Equal(sound, IsSound());
        }
    }

    public void Dispose()
    {
        _one.Dispose();
        LaneMemory.Free(_guard);
    }

    private bool IsSound() => Kernel<Lane1>.IsSound(_one.X, _one.Craft, _one.Field, _guard, Step);
}
