namespace Simfeel.Builds;

/// <summary>
/// The whole craft larger by similarity under gravity (Froude): lengths with s, times with s^(1/2), so masses with s^3, torques with
/// s^4, inertias with s^5, powers with s^3.5. Voltages stay, so currents grow as powers do. What the air makes of the larger blades is
/// not scaled but worked out, Reynolds and Mach numbers included.
/// </summary>
internal static class CraftSize
{
    /// <summary>The build with all parts scaled.</summary>
    /// <param name="build">The build.</param>
    /// <param name="s">Factor of every length, above 0.</param>
    public static Build Grow(Build build, double s)
    {
        double time = Math.Sqrt(s), mass = s * s * s, torque = mass * s, inertia = torque * s, current = mass * time;
        return build with
        {
            Frame = Grow(build.Frame, s, mass),
            Motor = new(
                build.Motor.Body with
                {
                    Mass = mass * build.Motor.Body.Mass,
                    StatorDiameter = s * build.Motor.Body.StatorDiameter,
                    StatorHeight = s * build.Motor.Body.StatorHeight,
                    OuterDiameter = s * build.Motor.Body.OuterDiameter,
                    Height = s * build.Motor.Body.Height,
                },
                new MotorBell { SpinInertia = inertia * build.Motor.Bell.SpinInertia },
                build.Motor.Electrics with
                {
                    Kt = time * build.Motor.Electrics.Kt,
                    WindingResistance = build.Motor.Electrics.WindingResistance / current,
                    TorqueLimit = torque * build.Motor.Electrics.TorqueLimit,
                    LossTorque = torque * build.Motor.Electrics.LossTorque,
                    LossTorquePerSpeed = torque * time * build.Motor.Electrics.LossTorquePerSpeed,
                    CommutationDroop = time * build.Motor.Electrics.CommutationDroop / current,
                }),
            Propeller = new(
                new PropellerBody { Mass = mass * build.Propeller.Body.Mass, SpinInertia = inertia * build.Propeller.Body.SpinInertia },
                build.Propeller.Blades with { Diameter = s * build.Propeller.Blades.Diameter, Pitch = s * build.Propeller.Blades.Pitch }),
            SpeedController = build.SpeedController with
            {
                CurrentLimit = current * build.SpeedController.CurrentLimit,
                BrakeCurrentLimit = current * build.SpeedController.BrakeCurrentLimit,
                Resistance = build.SpeedController.Resistance / current,
                CommandDelay = time * build.SpeedController.CommandDelay,
            },
            Battery = build.Battery with
            {
                Capacity = current * time * build.Battery.Capacity,
                Mass = mass * build.Battery.Mass,
                Size = s * build.Battery.Size,
                p_OC = s * build.Battery.p_OC,
                SeriesResistance = build.Battery.SeriesResistance / current,
                PairResistance = build.Battery.PairResistance / current,
                PairTime = time * build.Battery.PairTime,
                CurrentRating = current * build.Battery.CurrentRating,
                NominalEnergy = current * time * build.Battery.NominalEnergy,
            },
            Stack = build.Stack with
            {
                Mass = mass * build.Stack.Mass,
                Size = s * build.Stack.Size,
                p_OC = s * build.Stack.p_OC,
                Power = current * build.Stack.Power,
                WiringMass = mass * build.Stack.WiringMass,
            },
            Camera = build.Camera with { Mass = mass * build.Camera.Mass, Size = s * build.Camera.Size, p_OC = s * build.Camera.p_OC },
            Extras = [.. build.Extras.Select(extra => extra with
            {
                Mass = mass * extra.Mass,
                Shape = extra.Shape with { Size = s * extra.Shape.Size, p_OC = s * extra.Shape.p_OC },
            })],
            Drag = new() { Area = s * s * build.Drag.Area, p_OD = s * build.Drag.p_OD },
            Gyro = build.Gyro with { LowPass_Hz = build.Gyro.LowPass_Hz / time },
            Measured = new() { BalanceShift = s * build.Measured.BalanceShift, InertiaShift = inertia * build.Measured.InertiaShift },
        };
    }

    private static FrameSpec Grow(FrameSpec frame, double s, double mass) => frame with
    {
        Mounts = [.. frame.Mounts.Select(mount => mount with { p_OM = s * mount.p_OM })],
        Wheelbase = s * frame.Wheelbase,
        ArmWidth = s * frame.ArmWidth,
        ArmThickness = s * frame.ArmThickness,
        PlateLength = s * frame.PlateLength,
        PlateWidth = s * frame.PlateWidth,
        PlateThickness = s * frame.PlateThickness,
        PlateMass = mass * frame.PlateMass,
        TopPlateThickness = s * frame.TopPlateThickness,
        TopPlateMass = mass * frame.TopPlateMass,
        DeckHeight = s * frame.DeckHeight,
        HardwareMass = mass * frame.HardwareMass,
        DuctMass = mass * frame.DuctMass,
        DuctDiameter = s * frame.DuctDiameter,
        DuctHeight = s * frame.DuctHeight,
    };
}
