using Simfeel.Flight.Control;
using Simfeel.Physics;
using Simfeel.Physics.Rotors;

namespace Simfeel.Flight.Tests.Tuning;

/// <summary>
/// A twin of four times the size after Froude: under the same gravity and air, times and speeds grow with the root of the length, masses
/// with its third power, inertias with its fifth (B. Mettler, Identification, Modeling and Characteristics of Miniature Rotorcraft, 2003).
/// With motors, pack, delays and loop scaled alike it must get the same tuning in its own time.
/// </summary>
public class ScaledTwinTests
{
    private const double Length = 4, Time = 2;

    [Theory]
    [InlineData("wagtail")]
    [InlineData("curlew")]
    public void Twin_gets_the_scaled_gains(string name)
    {
        FlightUnit small = WithoutReynolds(Starters.Unit(name));
        PilotProfile profile = Starters.Profile, slow = profile with
        {
            StepRate = (int)(profile.StepRate / Time),
            DerivativeLowPass_Hz = profile.DerivativeLowPass_Hz / Time,
            FeedForwardLowPass_Hz = profile.FeedForwardLowPass_Hz / Time,
        };
        TunedUnit one = TunedUnit.Matched(small, Starters.Air, profile), twin = TunedUnit.Matched(Scaled(small), Starters.Air, slow);
        for (int axis = 0; axis < 3; axis++)
        {
            AxisGains gains = one.Gains[axis], grown = twin.Gains[axis];
            Assert.Equal(1, Time * grown.Proportional / gains.Proportional, 1e-5);
            Assert.Equal(1, Time * Time * grown.Integral / gains.Integral, 1e-5);
            Assert.Equal(gains.Derivative, grown.Derivative, 1e-5 * Math.Max(1, gains.Derivative));
        }
        Assert.Equal(1, Time * twin.Roll.Crossover / one.Roll.Crossover, 1e-5);
        Assert.Equal(one.Yaw.GainMargin, twin.Yaw.GainMargin, 1e-4);
    }

    /// <summary>The same craft with coefficients that do not change with rotor speed: Reynolds and Mach numbers break the similarity.</summary>
    private static FlightUnit WithoutReynolds(FlightUnit unit)
    {
        double[] nodes = unit.Craft.Rotors[0].Table.Nodes.ToArray();
        int slice = RotorTable.NodeOffset(0, 0, 1);
        for (int k = 0; k <= RotorTableGrid.SpeedCells; k++) nodes.AsSpan(5 * slice, slice).CopyTo(nodes.AsSpan(k * slice, slice));
        RotorTable table = new(nodes);
        return unit with { Body = null, Craft = unit.Craft with { Rotors = [.. unit.Craft.Rotors.Select(rotor => rotor with { Table = table })] } };
    }

    private static FlightUnit Scaled(FlightUnit unit)
    {
        Craft craft = unit.Craft;
        // voltages stay, so currents grow as power does, with length^3.5
        double current = Math.Pow(Length, 3.5), torque = Math.Pow(Length, 4), inertia = Math.Pow(Length, 5);
        return unit with
        {
            GyroLowPass_Hz = unit.GyroLowPass_Hz / Time,
            CommandDelay = unit.CommandDelay * Time,
            Craft = craft with
            {
                Mass = Math.Pow(Length, 3) * craft.Mass,
                I_BBcm_B = inertia * craft.I_BBcm_B,
                DragArea = Length * Length * craft.DragArea,
                p_BcmD_B = Length * craft.p_BcmD_B,
                Battery = craft.Battery with
                {
                    Capacity = current * Time * craft.Battery.Capacity,
                    SeriesResistance = craft.Battery.SeriesResistance / current,
                    PairResistance = craft.Battery.PairResistance / current,
                    PairCapacitance = current * Time * craft.Battery.PairCapacitance,
                    ElectronicsPower = current * craft.Battery.ElectronicsPower,
                },
                Rotors =
                [
                    .. craft.Rotors.Select(rotor => rotor with
                    {
                        p_BcmR_B = Length * rotor.p_BcmR_B,
                        Radius = Length * rotor.Radius,
                        SpinInertia = inertia * rotor.SpinInertia,
                        Kt = Time * rotor.Kt,
                        Resistance = rotor.Resistance / current,
                        CommutationDroop = Time * rotor.CommutationDroop / current,
                        CurrentLimit = current * rotor.CurrentLimit,
                        BrakeCurrentLimit = current * rotor.BrakeCurrentLimit,
                        TorqueLimit = torque * rotor.TorqueLimit,
                        LossTorque = torque * rotor.LossTorque,
                        LossTorquePerSpeed = torque * Time * rotor.LossTorquePerSpeed,
                    }),
                ],
            },
        };
    }
}
