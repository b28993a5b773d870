using Simfeel.Physics.Guards;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>Edges of a batch: lanes, constants, places in rows, and the end of its life.</summary>
public class BatchBoundsTests
{
    private static readonly Craft Quad = TestCraft.Quad(TestCraft.NoAir);

    public static TheoryData<string> Constants => new() { "radius", "spin inertia", "torque constant", "resistance", "torque limit" };

    [Theory]
    [MemberData(nameof(Constants))]
    public void Constants_that_are_divided_by_are_above_zero(string what)
    {
        using CraftBatch<Lane4> batch = new(4);
        foreach (double wrong in new[] { 0, -1, double.NaN, double.PositiveInfinity })
        {
            RotorConstants rotor = Quad.Rotors[2];
            rotor = what switch
            {
                "radius" => rotor with { Radius = wrong },
                "spin inertia" => rotor with { SpinInertia = wrong },
                "torque constant" => rotor with { Kt = wrong },
                "resistance" => rotor with { Resistance = wrong },
                _ => rotor with { TorqueLimit = wrong },
            };
            Craft craft = Quad with { Rotors = [Quad.Rotors[0], Quad.Rotors[1], rotor, Quad.Rotors[3]] };
            Assert.Contains(what, Assert.Throws<ArgumentException>(() => batch.SetCraft(1, craft)).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void There_are_as_many_lanes_as_the_width()
    {
        using CraftBatch<Lane4> batch = new(4);
        batch.SetCraft(0, Quad);
        batch.SetState(3, CraftState.AtRest(Quad) with { p_WB = new(1, 2, 3) });
        Assert.Equal(new(1, 2, 3), batch.GetState(3).p_WB);
        Assert.Throws<ArgumentOutOfRangeException>(() => batch.GetState(4));
        Assert.Throws<ArgumentOutOfRangeException>(() => batch.GetState(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => batch.SetState(4, CraftState.AtRest(Quad)));
    }

    /// <summary>Fifteen numbers of the body, the rotors' speeds, their induced velocities, their duties.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(8)]
    public void Places_follow_each_other(int rotors)
    {
        Assert.Equal(15 + rotors, StateIndex.Used(rotors, false));
        Assert.Equal(15 + rotors, StateIndex.Inflow(rotors));
        Assert.Equal(15 + (2 * rotors), StateIndex.Used(rotors, true));
        Assert.Equal(15 + (2 * rotors), RowIndex.Duty(rotors));
        Assert.Equal(15 + (3 * rotors), RowIndex.States(rotors));
    }

    [Fact]
    public void A_batch_may_be_given_back_twice()
    {
        CraftBatch<Lane8> batch = new(4);
        batch.Dispose();
        batch.Dispose();
    }

    [Fact]
    public void A_craft_without_a_name_is_told_by_its_lane()
    {
        using CraftBatch<Lane4> batch = new(4);
        for (int lane = 0; lane < 4; lane++)
        {
            batch.SetCraft(lane, Quad);
            batch.SetField(lane, 0, 9.81);
            batch.SetState(lane, CraftState.AtRest(Quad));
        }
        batch.SetState(2, CraftState.AtRest(Quad) with { p_WB = new(double.NaN, 0, 0) });
        FlightFaultException fault = Assert.Throws<FlightFaultException>(() => batch.Step(Integrator.Midpoint, 1e-3));
        Assert.StartsWith("Craft 2: the flight was stopped", fault.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// The published vectors of the hash (G. Fowler, L. C. Noll, K.-P. Vo, FNV-1a, 64 bits: "a" and "foobar") check the plain one here,
    /// which checks the project's over the bytes of numbers.
    /// </summary>
    [Fact]
    public void The_hash_is_the_published_one()
    {
        Assert.Equal(0xaf63dc4c8601ec8c, Plain(StateHash.Start, "a"u8));
        Assert.Equal(0x85944171f73967e8, Plain(StateHash.Start, "foobar"u8));
        foreach (double number in new[] { 0, -0.0, 1, -1.5e300, double.Epsilon, double.NaN })
            Assert.Equal(Plain(42, BitConverter.GetBytes(number)), StateHash.Mix(42, number));

        static ulong Plain(ulong hash, ReadOnlySpan<byte> bytes)
        {
            foreach (byte b in bytes) hash = unchecked((hash ^ b) * 0x100000001b3);
            return hash;
        }
    }
}
