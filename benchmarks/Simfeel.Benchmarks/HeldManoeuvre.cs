using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Physics;
using Simfeel.Physics.Air;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;

namespace Simfeel.Benchmarks;

/// <summary>
/// Duties held for equal stretches of one second, so that any integrator can fly it: within a stretch the equations know no
/// time and no controller.
/// </summary>
/// <param name="Name">Name, also of its file.</param>
/// <param name="Purpose">What it is.</param>
/// <param name="HoldsPerSecond">Stretches a second.</param>
/// <param name="Duty">Duty of a rotor by stretch, rotor and lane, 0 to 1.</param>
internal sealed record HeldManoeuvre(string Name, string Purpose, int HoldsPerSecond, Func<int, int, int, double> Duty)
{
    /// <summary>Rotors of its craft.</summary>
    public const int Rotors = 4;

    /// <summary>Density of the air, kg/m^3, and gravity, m/s^2.</summary>
    public const double Density = 1.225, Gravity = 9.80665;

    /// <summary>Length of a stretch, s.</summary>
    public double Hold => 1.0 / HoldsPerSecond;

    /// <summary>Wind that a lane meets, m/s.</summary>
    public static Vec3 Wind(int lane) => new(2 + (0.1 * lane), 0, 0);

    /// <summary>Where a lane begins.</summary>
    public static CraftState Start(int lane) => new()
    {
        v_WB = new(lane - 3, 0, 0),
        q_WB = Quat.Identity,
        w_WB_B = new(0.2 * lane, 0, 0),
        Charge = 4000 - (40 * lane),
        RotorSpeeds = PerRotor.All(1300),
    };

    /// <summary>One hard second: <see cref="Manoeuvre"/> carried on, commands held for 2 ms.</summary>
    public static HeldManoeuvre HardSecond { get; } = new(
        "hard-second", "open loop: throttle swings with roll, pitch and yaw reversals, duties held for 2 ms", 500, Manoeuvre.Duty);

    /// <summary>
    /// What the rate controller asked of the rotors, 4000 times a second, in a second of full reversed sticks, flown here at 32 000
    /// steps a second and written down: the changes of command that an integrator meets in flight. The same for every lane.
    /// </summary>
    public static HeldManoeuvre Controlled(RotorTable table)
    {
        const int rate = 4000, steps = 8, readings = 4;
        PilotProfile profile = new() { StepRate = rate * steps, StepsPerLoop = steps, StepsPerStickReading = steps * readings };
        FlightUnit specimen = new("specimen", Specimen.Craft(0, table), GyroLowPass_Hz: 250, CommandDelay: 0.001, IdleDuty: 0.05);
        TunedUnit unit = TunedUnit.Matched(specimen, StandardAtmosphere.At(0), profile);
        FieldConditions field = new() { Effects = AirEffects.None };
        using FlightLoop<Lane1> loop = new(Rotors, profile, field);
        loop.SetUnit(0, unit, DrillStart.Hover(unit, Start(0)));
        loop.Batch.SetField(0, Density, Gravity, Wind(0));
        double[] duties = new double[rate * Rotors];
        for (int tick = 0; tick < rate * steps; tick++)
        {
            double time = tick / (double)(rate * steps);
            if (tick % (steps * readings) == 0) loop.SetCommand(0, profile.RateFor(Sticks(time)), unit.Throttle.Share(Sticks(time).Throttle));
            loop.Tick();
            if (tick % steps != 0) continue;
            unsafe
            {
                for (int k = 0; k < Rotors; k++) duties[(tick / steps * Rotors) + k] = loop.Batch.Commands[k].v;
            }
        }
        return new(
            "controlled", "the duties that a rate controller at 4000 Hz asked for under full reversed sticks, held for 0.25 ms",
            rate, (hold, rotor, _) => duties[(hold * Rotors) + rotor]);

        static Sticks Sticks(double t) => new(
            Math.Sign(Math.Sin(2 * Math.PI * 3 * t)), 0.6 * Math.Sign(Math.Cos(2 * Math.PI * 2 * t)),
            0.8 * Math.Sign(Math.Sin(2 * Math.PI * t)), t < 0.5 ? 0.7 : 0.25);
    }
}
