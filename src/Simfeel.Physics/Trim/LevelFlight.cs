using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Trim;

/// <summary>Steady level flight at full throttle.</summary>
/// <param name="Speed">m/s.</param>
/// <param name="Tilt">Nose-down angle from level, rad.</param>
/// <param name="PackCurrent">A.</param>
public readonly record struct LevelFlight(double Speed, double Tilt, double PackCurrent)
{
    private const double Step = 1 / 4000.0;
    private const double SettleTime = 12;
    private const int Bisections = 24;

    /// <summary>
    /// Top speed in level flight with the pack held at a charge: flies forward at full duty with the attitude held until
    /// the speed is steady, and seeks the tilt at which height is kept. A craft that cannot hold itself up gets speed 0.
    /// </summary>
    /// <param name="craft">The craft.</param>
    /// <param name="density">Air density, kg/m^3.</param>
    /// <param name="gravity">m/s^2.</param>
    /// <param name="stateOfCharge">0 to 1.</param>
    public static LevelFlight Top(Craft craft, double density, double gravity, double stateOfCharge)
    {
        ArgumentNullException.ThrowIfNull(craft);
        // so heavy about every axis that nothing turns it, with a pack that never empties
        Craft held = craft with
        {
            I_BBcm_B = Mat3.Diagonal(1e9, 1e9, 1e9),
            Battery = craft.Battery with { Capacity = 1e9 * craft.Battery.Capacity },
        };
        HoverTrim hover = HoverTrim.Of(craft, density, gravity, stateOfCharge);
        using CraftBatch<Lane1> batch = new(craft.Rotors.Count);
        batch.SetCraft(0, held);
        batch.SetField(0, density, gravity);
        for (int k = 0; k < craft.Rotors.Count; k++) batch.SetCommand(0, k, 1);

        // with more tilt it sinks sooner or later: bracket the tilt at which it neither climbs nor sinks
        double low = 0, high = Math.PI / 2;
        for (int n = 0; n < Bisections; n++)
        {
            double middle = (low + high) / 2;
            if (Settle(middle).State.v_WB.Z > 0) high = middle;
            else low = middle;
        }
        Sample sample = Settle(low);
        return low == 0 ? default : new(sample.State.v_WB.X, low, sample.PackCurrent);

        Sample Settle(double tilt)
        {
            CraftState state = hover.State with
            {
                q_WB = Quat.FromEuler(0, -tilt, 0),
                Charge = stateOfCharge * held.Battery.Capacity,
                v_WB = new(30 * Math.Sin(tilt), 0, 0),
            };
            batch.SetState(0, state);
            for (int step = 0; step < SettleTime / Step; step++) batch.Step(Integrator.Midpoint, Step);
            batch.Evaluate();
            return batch.GetSample(0);
        }
    }
}
