using Simfeel.Flight.Drills;
using Simfeel.Physics;

namespace Simfeel.Studies.Metrics;

/// <summary>How hard the rotors were worked in a flight.</summary>
/// <param name="DutyMovement">Root mean square over rotors and time of how far the duty lies from each rotor's mean, 0 to 1.</param>
/// <param name="SaturatedShare">Share of the time in which at least one rotor stood at its idle or at full duty: no more to give.</param>
public readonly record struct ControlEffort(double DutyMovement, double SaturatedShare)
{
    /// <summary>Reads a log from the first stick movement on.</summary>
    public static ControlEffort Of(FlightLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        int rotors = log.Unit.Unit.Craft.Rotors.Count, first = (int)Math.Round(Drill.LeadIn / log.Period), rows = log.Samples.Count - first;
        double least = log.Unit.Map.Duty(log.Unit.IdleShare) * (1 + 1e-9), squares = 0;
        int saturated = 0;
        double[] sums = new double[rotors], square = new double[rotors];
        for (int row = first; row < log.Samples.Count; row++)
        {
            PerRotor duty = log.Samples[row].Duty;
            bool held = false;
            for (int k = 0; k < rotors; k++)
            {
                sums[k] += duty[k];
                square[k] += duty[k] * duty[k];
                held |= duty[k] <= least || duty[k] >= 1;
            }
            if (held) saturated++;
        }
        for (int k = 0; k < rotors; k++) squares += Math.Max(0, (square[k] / rows) - (sums[k] / rows * (sums[k] / rows)));
        return new(Math.Sqrt(squares / rotors), (double)saturated / rows);
    }
}
