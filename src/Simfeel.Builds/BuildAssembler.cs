using Simfeel.Builds.Assembly;
using Simfeel.Physics;
using Simfeel.Physics.Air;
using Simfeel.Physics.Mass;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;

namespace Simfeel.Builds;

/// <summary>Puts builds together.</summary>
public static class BuildAssembler
{
    /// <summary>
    /// The craft of a build: composite mass properties about the centre of gravity, rotors, battery, drag. The rotor
    /// table is computed once per propeller and air and kept.
    /// </summary>
    /// <param name="build">A build or a hybrid of two.</param>
    /// <param name="air">The air that it will fly in, for Reynolds and Mach numbers.</param>
    /// <exception cref="ArgumentNullException">The build is null.</exception>
    public static AssembledBuild Assemble(Build build, AirState air)
    {
        ArgumentNullException.ThrowIfNull(build);
        IReadOnlyList<PartMass> parts = PartPlacer.Place(build);
        MassProperties all = MassProperties.Combine([.. parts.Select(p => p.Mass)]);
        Vec3 p_OBcm = all.p_OBcm_O + build.Measured.BalanceShift;
        Vec3 shift = build.Measured.InertiaShift;
        BatterySpec battery = build.Battery;
        Craft craft = new()
        {
            Mass = all.Mass,
            I_BBcm_B = all.I_BBcm_O + Mat3.Diagonal(shift.X, shift.Y, shift.Z),
            Rotors = Rotors(build, p_OBcm, RotorTableCache.Get(build.Propeller.Blades, air)),
            Battery = new BatteryConstants
            {
                OpenCircuitVoltage = [.. battery.CellVoltage.Select(v => battery.Cells * v)],
                Capacity = battery.Capacity,
                SeriesResistance = battery.SeriesResistance,
                PairResistance = battery.PairResistance,
                PairCapacitance = battery.PairResistance > 0 ? battery.PairTime / battery.PairResistance : 1,
                ElectronicsPower = build.Stack.Power,
            },
            DragArea = build.Drag.Area,
            p_BcmD_B = build.Drag.p_OD - p_OBcm,
        };
        return new AssembledBuild
        {
            Build = build,
            Air = air,
            Craft = craft,
            Parts = parts,
            p_OBcm = p_OBcm,
            Hardware = new(
                build.Gyro.LowPass_Hz,
                build.SpeedController.CommandDelay,
                build.SpeedController.IdleDuty,
                build.Camera.Tilt,
                battery.CurrentRating),
        };
    }

    private static RotorConstants[] Rotors(Build build, Vec3 p_OBcm, RotorTable table)
    {
        MotorElectrics electrics = build.Motor.Electrics;
        return [.. build.Frame.Mounts.Select(mount => new RotorConstants
        {
            p_BcmR_B = PartPlacer.Hub(build, mount) - p_OBcm,
            Spin = mount.Spin,
            Radius = build.Propeller.Blades.Diameter / 2,
            Table = table,
            SpinInertia = build.Propeller.Body.SpinInertia + build.Motor.Bell.SpinInertia,
            Kt = electrics.Kt,
            Resistance = electrics.WindingResistance + build.SpeedController.Resistance,
            CommutationDroop = electrics.CommutationDroop,
            CurrentLimit = build.SpeedController.CurrentLimit,
            BrakeCurrentLimit = build.SpeedController.BrakeCurrentLimit,
            TorqueLimit = electrics.TorqueLimit,
            LossTorque = electrics.LossTorque,
            LossTorquePerSpeed = electrics.LossTorquePerSpeed,
        })];
    }
}
