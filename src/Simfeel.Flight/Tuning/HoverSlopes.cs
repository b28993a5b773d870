using Simfeel.Physics;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Trim;

namespace Simfeel.Flight.Tuning;

/// <summary>Derivatives of the flight kernel at hover about one axis, by central differences.</summary>
internal sealed class HoverSlopes : IDisposable
{
    /// <summary>
    /// Time over which a change is a derivative, as a share of the rotors' time constant: well under a thousandth of the inflow's, the
    /// quickest here, and alike for craft of all sizes.
    /// </summary>
    private const double Instant = 2e-5;

    private readonly CraftBatch<Lane1> _batch;
    private readonly HoverTrim _hover;
    private readonly double[] _pattern;
    private readonly int _axis;
    private readonly double _instant;

    /// <summary>A craft at hover.</summary>
    /// <param name="craft">The craft.</param>
    /// <param name="hover">Its hover.</param>
    /// <param name="pattern">How the rotors move together: a vector of length 1 over the rotors.</param>
    /// <param name="density">kg/m^3.</param>
    /// <param name="gravity">m/s^2.</param>
    /// <param name="axis">0 roll, 1 pitch, 2 yaw.</param>
    public HoverSlopes(Craft craft, HoverTrim hover, double[] pattern, double density, double gravity, int axis)
    {
        (_hover, _pattern, _axis, _instant) = (hover, pattern, axis, Instant * hover.TimeConstant);
        _batch = new(craft.Rotors.Count);
        _batch.SetCraft(0, craft);
        _batch.SetField(0, density, gravity);
        _batch.SetEffects(AirEffects.DynamicInflow);
    }

    /// <summary>
    /// How fast the rate (rad/s), and the rotor speeds (rad/s) and induced velocities (m/s) along the pattern change for each unit by
    /// which one of four things is moved; give three of them as 0.
    /// </summary>
    /// <param name="rate">Rate, rad/s.</param>
    /// <param name="speed">Rotor speeds along the pattern, rad/s.</param>
    /// <param name="inflow">Induced velocities along the pattern, m/s.</param>
    /// <param name="duty">Duties along the pattern.</param>
    public Vec3 By(double rate, double speed, double inflow, double duty) =>
        (Slope(rate, speed, inflow, duty) - Slope(-rate, -speed, -inflow, -duty)) / (2 * (rate + speed + inflow + duty));

    /// <inheritdoc/>
    public void Dispose() => _batch.Dispose();

    private Vec3 Slope(double rate, double speed, double inflow, double duty)
    {
        CraftState from = _hover.State;
        from.w_WB_B = new Vec3(_axis == 0 ? rate : 0, _axis == 1 ? rate : 0, _axis == 2 ? rate : 0);
        for (int k = 0; k < _pattern.Length; k++)
        {
            from.RotorSpeeds[k] += speed * _pattern[k];
            from.InducedVelocities[k] += inflow * _pattern[k];
            _batch.SetCommand(0, k, _hover.Rotor.Duty + (duty * _pattern[k]));
        }
        _batch.SetState(0, from);
        _batch.Step(Integrator.RungeKutta, _instant);
        CraftState to = _batch.GetState(0);
        double speeds = 0, inflows = 0;
        for (int k = 0; k < _pattern.Length; k++)
        {
            speeds += _pattern[k] * (to.RotorSpeeds[k] - from.RotorSpeeds[k]);
            inflows += _pattern[k] * (to.InducedVelocities[k] - from.InducedVelocities[k]);
        }
        return new Vec3(to.w_WB_B[_axis] - from.w_WB_B[_axis], speeds, inflows) / _instant;
    }
}
