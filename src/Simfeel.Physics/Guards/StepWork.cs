using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Guards;

/// <summary>Force (N) and moment about the centre of gravity (N m), body axes.</summary>
internal readonly record struct StepLoads(Vec3 Force, Vec3 Moment);

/// <summary>
/// Work that motors, body drag and rotors would each do on the craft in one step, alone: where the energy rose too much, the
/// one that gave too much is the culprit.
/// </summary>
internal struct StepWork
{
    public StepLoads Body, All;
    public Vec3 AirVelocity, Rate;
    public double Mass, MostPower;
    private double _motors, _air, _reaction;

    public void Clear() => _motors = _air = _reaction = 0;

    /// <summary>A rotor: work of a torque t over a step h from a speed w is h t w + (h t)^2 / 2J.</summary>
    public void AddRotor(double speed, double inverseInertia, double motor, double air, double spin, double step)
    {
        _motors += Turn(motor);
        _air += Turn(-air);
        _reaction += spin * motor;

        double Turn(double torque) => step * torque * (speed + (0.5 * step * torque * inverseInertia));
    }

    /// <summary>Who did more work than a step may bring; the whole step where each alone stays within it.</summary>
    public readonly KernelStage Culprit(StepRecord record)
    {
        double most = MostPower * record.Step;
        if (_motors > most) return KernelStage.Motors;
        if (Work(Body, record) > most) return KernelStage.BodyAir;
        StepLoads rotors = new(All.Force - Body.Force, All.Moment - Body.Moment + new Vec3(0, 0, _reaction));
        if (Work(rotors, record) + _air > most) return record.Fitted ? KernelStage.FittedRotors : KernelStage.RotorAir;
        return KernelStage.Advance;
    }

    /// <summary>Work of a force at the centre of gravity and a moment over the step, from the present velocity and rate.</summary>
    private readonly double Work(StepLoads loads, StepRecord record)
    {
        double h = record.Step;
        Vec3 gain = Mass > 0 ? h / Mass * loads.Force : Vec3.Zero;
        Vec3 turn = h * (InverseInertia(record) * loads.Moment);
        return (h * Vec3.Dot(loads.Force, AirVelocity + (0.5 * gain))) + (h * Vec3.Dot(loads.Moment, Rate + (0.5 * turn)));
    }

    private static Mat3 InverseInertia(StepRecord record)
    {
        double xx = Of("axx"), yy = Of("ayy"), zz = Of("azz"), xy = Of("axy"), xz = Of("axz"), yz = Of("ayz");
        return new(xx, xy, xz, xy, yy, yz, xz, yz, zz);

        double Of(string element) => record.Numbers[StepNumbers.Body.ToList().IndexOf(element + "_1_kg_m2")];
    }
}
