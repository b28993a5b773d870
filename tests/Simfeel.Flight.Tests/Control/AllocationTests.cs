using Simfeel.Flight.Control;
using Simfeel.Physics;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Trim;

namespace Simfeel.Flight.Tests.Control;

public class AllocationTests
{
    public static TheoryData<int, bool, double> Layouts => new()
    {
        { 4, false, 0 },
        { 4, true, 0 },
        { 4, false, 0.02 },
        { 6, false, 0 },
        { 6, true, 0.01 },
        { 8, false, -0.015 },
    };

    /// <summary>
    /// Independent of the pseudo-inverse: the shares are put back into moment sums by hand and must make the wanted
    /// acceleration, no other, and leave the total thrust alone.
    /// </summary>
    [Theory]
    [MemberData(nameof(Layouts))]
    public void Each_axis_makes_its_own_acceleration_and_nothing_else(int count, bool plus, double shift)
    {
        (Craft craft, ThrustMap map) = Ring(count, plus, shift);
        Allocation allocation = Allocation.Of(craft, map);
        Mat3 resisting = craft.I_BBcm_B - Mat3.Diagonal(0, 0, craft.Rotors.Sum(rotor => rotor.SpinInertia));
        for (int axis = 0; axis < 3; axis++)
        {
            Vec3 moment = Vec3.Zero;
            double thrust = 0;
            for (int k = 0; k < count; k++)
            {
                RotorConstants rotor = craft.Rotors[k];
                double lift = allocation.Shares[k, axis] * map.FullThrust;
                thrust += lift;
                moment += Vec3.Cross(rotor.p_BcmR_B, new(0, 0, -lift))
                    + new Vec3(0, 0, -rotor.Spin * map.TorquePerThrust * lift);
            }
            Vec3 acceleration = resisting.Inverse * moment;
            for (int other = 0; other < 3; other++)
                Assert.Equal(other == axis ? 1 : 0, acceleration[other], 9);
            Assert.Equal(0, thrust, 9);
        }
    }

    [Fact]
    public void Equal_thrust_pitches_a_craft_whose_rotors_sit_forward()
    {
        (Craft craft, ThrustMap map) = Ring(4, false, 0.02);
        Vec3 acceleration = Allocation.Of(craft, map).EqualThrustAcceleration;
        double expected = 4 * map.FullThrust * 0.02 / craft.I_BBcm_B.M11;
        // the small products of inertia of this craft leak a little into roll and yaw
        Assert.Equal(expected, acceleration.Y, 1e-3 * expected);
        Assert.Equal(0, acceleration.X, 0.02 * expected);
    }

    [Fact]
    public void Rotors_in_a_line_are_refused()
    {
        (Craft craft, ThrustMap map) = Ring(4, false, 0);
        Craft line = craft with
        {
            Rotors = [.. craft.Rotors.Select((rotor, k) => rotor with { p_BcmR_B = new(0.1 * k, 0, 0) })],
        };
        Assert.Throws<InvalidOperationException>(() => Allocation.Of(line, map));
    }

    private static (Craft Craft, ThrustMap Map) Ring(int count, bool plus, double shift)
    {
        Craft wagtail = Starters.Get("wagtail").Unit.Craft;
        RotorConstants[] rotors = new RotorConstants[count];
        for (int k = 0; k < count; k++)
        {
            double azimuth = 2 * Math.PI * (k + (plus ? 0 : 0.5)) / count;
            rotors[k] = wagtail.Rotors[0] with
            {
                p_BcmR_B = new(shift + (0.11 * Math.Cos(azimuth)), 0.11 * Math.Sin(azimuth), -0.01),
                Spin = k % 2 == 0 ? 1 : -1,
            };
        }
        Craft craft = wagtail with { Rotors = rotors, I_BBcm_B = new(1.5e-3, 1e-5, 2e-5, 1e-5, 1.9e-3, 0, 2e-5, 0, 2.9e-3) };
        HoverTrim hover = HoverTrim.Of(craft, 1.225, 9.80665, 0.9);
        return (craft, ThrustMap.Of(craft, 1.225, 0.9, hover));
    }
}
