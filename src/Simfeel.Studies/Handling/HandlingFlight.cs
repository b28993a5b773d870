using Simfeel.Flight.Drills;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Handling;

/// <summary>
/// Reads a handling flight: response of attitude to the rate that the recorded stick commands, so that the stick's curve and
/// the thumb's limits are outside of it and the radio's delay is inside.
/// </summary>
public static class HandlingFlight
{
    /// <summary>Band of the responses, rad/s: within the sweep's, whose ends have little in them.</summary>
    public const double From = 4, To = 700;

    /// <summary>Response from a flight of <see cref="HandlingDrills.Chirp"/>, with coherence.</summary>
    public static FrequencyResponse Swept(FlightLog log, HandlingAxis axis)
    {
        ArgumentNullException.ThrowIfNull(log);
        return ChirpIdentification.Identify(Command(log, axis), Rate(log, axis), log.Period, From, To, integrate: true);
    }

    /// <summary>Quickness from a flight of <see cref="HandlingDrills.AttitudeChange"/>.</summary>
    public static AttitudeQuickness Quickness(FlightLog log, HandlingAxis axis)
    {
        ArgumentNullException.ThrowIfNull(log);
        return AttitudeQuickness.Of(Rate(log, axis), log.Turned((int)axis));
    }

    /// <summary>Whether some rotor was at full duty or at idle at some row.</summary>
    public static bool Saturates(FlightLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        const double near = 1e-6;
        double idle = log.Unit.Unit.IdleDuty;
        // the first row is before the controller's first run and has no duty yet
        foreach (LogRow sample in log.Samples.Skip(1))
        {
            for (int k = 0; k < log.Unit.Unit.Craft.Rotors.Count; k++)
            {
                if (sample.Duty[k] >= 1 - near || sample.Duty[k] <= idle + near) return true;
            }
        }
        return false;
    }

    /// <summary>Rate that the sticks command at each row, rad/s.</summary>
    internal static double[] Command(FlightLog log, HandlingAxis axis) => [.. log.Sticks.Select(sticks => axis.Command(log.Profile, sticks))];

    /// <summary>Rate about the axis at each row, rad/s.</summary>
    internal static double[] Rate(FlightLog log, HandlingAxis axis) => [.. log.Samples.Select(sample => sample.State.w_WB_B[(int)axis])];
}
