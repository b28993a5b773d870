using System.Collections.Concurrent;
using Simfeel.Flight;
using Simfeel.Physics;
using Simfeel.Physics.Air;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;

namespace Simfeel.Benchmarks;

/// <summary>
/// The craft that is timed: four rotors of 5 inch, invented parts. The lanes of a batch fly neighbours of it, so that
/// they look into different cells of the rotor table.
/// </summary>
internal static class Specimen
{
    /// <summary>Craft of a lane: mass, size and battery spread by a few percent.</summary>
    public static Craft Craft(int lane, RotorTable table)
    {
        double scale = 1 + (0.01 * lane);
        double arm = 0.078 * scale;
        return new Craft
        {
            Mass = 0.62 * scale,
            I_BBcm_B = new Mat3(1.5e-3 * scale, 1e-5, 2e-5, 1e-5, 1.9e-3 * scale, 1e-6, 2e-5, 1e-6, 2.8e-3 * scale),
            DragArea = new Vec3(0.010, 0.011, 0.017),
            p_BcmD_B = new Vec3(0.002, 0, 0.005),
            Rotors = [.. Enumerable.Range(0, 4).Select(n => Rotor(n, arm, table))],
            Battery = Battery(scale),
        };
    }

    /// <summary>A pilot whose rate controller runs at every step of 1/8000 s.</summary>
    public static PilotProfile Pilot { get; } = new() { StepRate = 8000, StepsPerLoop = 1, StepsPerStickReading = 8 };

    /// <summary>The craft of a lane with its own gains, tuned by the policy "matched".</summary>
    public static TunedUnit Tuned(int lane, RotorTable table) => TunedUnits.GetOrAdd((lane, table), static key => TunedUnit.Matched(
        new FlightUnit("specimen", Craft(key.Lane, key.Table), GyroLowPass_Hz: 120, CommandDelay: 0.001, IdleDuty: 0.05), SeaLevel, Pilot));

    private static readonly ConcurrentDictionary<(int Lane, RotorTable Table), TunedUnit> TunedUnits = new();

    private static readonly AirState SeaLevel =
        new(Temperature: 288.15, Pressure: 101325, Density: 1.225, SoundSpeed: 340.294, Viscosity: 1.78938e-5);

    /// <summary>Coefficients of its propeller, 5.1 x 4.3 inch with three blades, in sea-level air of ISO 2533.</summary>
    public static RotorTable Table(int threads = 0) => RotorTableBuilder.Build(
        RotorGeometry.FromPitch(2 * Radius, 4.3 * 0.0254, blades: 3),
        SeaLevel,
        threads);

    /// <summary>Radius of the propeller, m.</summary>
    private const double Radius = 5.1 * 0.0254 / 2;

    private static RotorConstants Rotor(int n, double arm, RotorTable table) => new()
    {
        p_BcmR_B = new Vec3(n < 2 ? arm : -arm, n is 0 or 3 ? arm : -arm, -0.012),
        Spin = n % 2 == 0 ? 1 : -1,
        Radius = Radius,
        Table = table,
        SpinInertia = 6.5e-6,
        Kt = 60 / (2 * Math.PI * 1800),
        Resistance = 0.064,
        CommutationDroop = 2.5e-5,
        CurrentLimit = 60,
        BrakeCurrentLimit = 60,
        TorqueLimit = 0.48,
        LossTorque = 0.004,
        LossTorquePerSpeed = 2.1e-6,
    };

    private static BatteryConstants Battery(double scale) => new()
    {
        OpenCircuitVoltage = [19.8, 21.3, 21.96, 22.32, 22.56, 22.8, 23.04, 23.34, 23.76, 24.18, 24.66, 25.2],
        Capacity = 4680 * scale,
        SeriesResistance = 0.031,
        PairResistance = 0.010,
        PairCapacitance = 300,
        ElectronicsPower = 15,
    };
}
