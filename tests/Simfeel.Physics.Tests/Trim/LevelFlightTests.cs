using Simfeel.Physics.Maths;
using Simfeel.Physics.Tests.Kernel;
using Simfeel.Physics.Trim;

namespace Simfeel.Physics.Tests.Trim;

/// <summary>Top speed against the balance of forces, where it has a closed form (statics of a point: thrust, weight, drag).</summary>
public class LevelFlightTests
{
    private const double Density = 1.2, Gravity = 9.8, Charge = 0.7, Thrust = 0.012, DragArea = 0.02;

    /// <summary>
    /// Rotors that feel no torque turn at V / Kt, and with one thrust coefficient they lift T = n c rho A (w^2 R^2 + v^2). With a drag
    /// D = rho S v^2 / 2 against the flight, T^2 = (m g)^2 + D^2 is a quadratic in v^2; the tilt has tan = D / (m g).
    /// </summary>
    [Theory]
    [InlineData(0.65)]
    [InlineData(1.3)]
    public void Speed_and_tilt_are_those_of_the_balance(double mass)
    {
        Craft craft = Craft(mass);
        RotorConstants rotor = craft.Rotors[0];
        double voltage = craft.Battery.OpenCircuitVoltageAt(Charge), tip = voltage / rotor.Kt * rotor.Radius;
        double lift = 4 * Thrust * Density * Math.PI * rotor.Radius * rotor.Radius, drag = Density * DragArea / 2, weight = mass * Gravity;
        double a = (lift * lift) - (drag * drag), b = 2 * lift * lift * tip * tip, c = (lift * lift * Math.Pow(tip, 4)) - (weight * weight);
        // of the two roots the one at which drag grows faster than thrust
        double square = (-b - Math.Sqrt((b * b) - (4 * a * c))) / (2 * a);
        Assert.True(square > 0);

        LevelFlight top = LevelFlight.Top(craft, Density, Gravity, Charge);

        // after 12 s of flight a little of the speed is still to come
        Assert.Equal(Math.Sqrt(square), top.Speed, 2e-4 * top.Speed);
        Assert.Equal(Math.Atan2(drag * square, weight), top.Tilt, 3e-4);
        // nothing but the electronics draws on the pack
        Assert.Equal(craft.Battery.ElectronicsPower / voltage, top.PackCurrent, 1e-4);
    }

    [Fact]
    public void What_cannot_lift_itself_has_no_top_speed() =>
        Assert.Equal(default, LevelFlight.Top(Craft(50), Density, Gravity, Charge));

    private static Craft Craft(double mass)
    {
        Craft quad = TestCraft.Quad(TestCraft.Constant(Thrust, 0, 0, 0));
        RotorConstants first = quad.Rotors[0] with { LossTorque = 0, LossTorquePerSpeed = 0, CommutationDroop = 0 };
        return quad with
        {
            Mass = mass,
            DragArea = new(DragArea, DragArea, DragArea),
            p_BcmD_B = Vec3.Zero,
            // so large that only one made still larger is held at its charge
            Battery = quad.Battery with { SeriesResistance = 1e-6, PairResistance = 0, Capacity = 1e7 },
            Rotors = [.. Enumerable.Range(0, 4).Select(k => first with
            {
                p_BcmR_B = new(k is 0 or 3 ? 0.08 : -0.08, k < 2 ? 0.08 : -0.08, 0),
                Spin = (k & 1) == 0 ? 1 : -1,
            })],
        };
    }
}
