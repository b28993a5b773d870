using Simfeel.Physics.Guards;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Guards;

/// <summary>
/// The look at a state by itself: its energy is that of rigid body and rotors (<see cref="TestCraft.KineticEnergy"/>, in the frame of
/// the air) less weight times depth, and every number and the attitude's length count.
/// </summary>
public sealed unsafe class SoundStateTests : IDisposable
{
    private const double Step = 1 / 4000.0, Gravity = 9.81;

    private static readonly Craft Quad = TestCraft.Quad(TestCraft.Irregular);
    private static readonly Vec3 Wind = new(3, -2, 0.7);

    private readonly CraftLanes<Lane1>* _craft = LaneMemory.Allocate<CraftLanes<Lane1>>();
    private readonly FieldLanes<Lane1>* _field = LaneMemory.Allocate<FieldLanes<Lane1>>();
    private readonly GuardLanes<Lane1>* _guard = LaneMemory.Allocate<GuardLanes<Lane1>>();
    private readonly Lane1* _x = LaneMemory.Allocate<Lane1>(StateIndex.Stride);
    private readonly CraftState _state;

    public SoundStateTests()
    {
        CraftPacking.Pack(_craft, 0, Quad);
        _craft->RotorCount = 4;
        _craft->DynamicInflow = 1;
        (_field->Gravity, _field->WindX, _field->WindY, _field->WindZ) = (Lane1.Of(Gravity), Lane1.Of(Wind.X), Lane1.Of(Wind.Y), Lane1.Of(Wind.Z));
        _guard->Mass = Lane1.Of(Quad.Mass);
        _state = CraftState.AtRest(Quad, 0.6);
        _state.p_WB = new(1, 2, -30);
        _state.v_WB = new(-6, 4, 9);
        _state.q_WB = Quat.FromEuler(0.4, -0.3, 2);
        _state.w_WB_B = new(5, -7, 3);
        for (int k = 0; k < 4; k++)
        {
            _state.RotorSpeeds[k] = 700 + (150 * k);
            _state.InducedVelocities[k] = 4 + k;
        }
        Write(_state);
    }

    [Fact]
    public void Energy_is_that_of_motion_through_the_air_and_height()
    {
        CraftState inAir = _state;
        inAir.v_WB = _state.v_WB - Wind;
        double motion = TestCraft.KineticEnergy(Quad, inAir), expected = motion - (Quad.Mass * Gravity * _state.p_WB.Z);
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
            Write(_state);
            _guard->Energy = Lane1.Of(double.PositiveInfinity);
            Assert.True(IsSound());
            LaneMemory.Set(_x + n, 0, bad);
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
            Write(_state);
            double q = LaneMemory.Get(_x + StateIndex.Attitude + n, 0);
            LaneMemory.Set(_x + StateIndex.Attitude + n, 0, Math.Sqrt((q * q) + (offInTolerances * Guard.AttitudeTolerance)));
            _guard->Energy = Lane1.Of(double.PositiveInfinity);
            Assert.Equal(sound, IsSound());
        }
    }

    public void Dispose()
    {
        LaneMemory.Free(_craft);
        LaneMemory.Free(_field);
        LaneMemory.Free(_guard);
        LaneMemory.Free(_x);
    }

    private bool IsSound() => Kernel<Lane1>.IsSound(_x, _craft, _field, _guard, Step);

    private void Write(CraftState state)
    {
        double[] numbers =
        [
            state.p_WB.X, state.p_WB.Y, state.p_WB.Z, state.v_WB.X, state.v_WB.Y, state.v_WB.Z, state.q_WB.W, state.q_WB.X, state.q_WB.Y, state.q_WB.Z,
            state.w_WB_B.X, state.w_WB_B.Y, state.w_WB_B.Z, state.Charge, state.PairVoltage,
            .. Enumerable.Range(0, 4).Select(k => state.RotorSpeeds[k]), .. Enumerable.Range(0, 4).Select(k => state.InducedVelocities[k]),
        ];
        for (int n = 0; n < numbers.Length; n++) LaneMemory.Set(_x + n, 0, numbers[n]);
    }
}
