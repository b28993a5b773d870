using Simfeel.Flight.Drills;

namespace Simfeel.Studies.Handling;

/// <summary>Handling qualities of a craft about one axis.</summary>
public sealed record HandlingReading
{
    /// <summary>
    /// Least coherence at which a response is believed: common practice in identifying aircraft is 0.6; a simulated sweep
    /// without wind has no excuse for less than this.
    /// </summary>
    public const double BelievedCoherence = 0.9;

    /// <summary>Bandwidth and phase delay from the sweep.</summary>
    public required BandwidthCriterion Bandwidth { get; init; }

    /// <summary>
    /// Least coherence from the smaller bandwidth to twice the frequency of -180 degrees, or over the whole response where
    /// these are not found.
    /// </summary>
    public required double CoherenceFloor { get; init; }

    /// <summary>Whether a rotor met its limits in the sweep.</summary>
    public required bool Saturated { get; init; }

    /// <summary>Why bandwidth and phase delay are not to be used; empty where they are.</summary>
    public string Doubt
    {
        get
        {
            List<string> doubts = [];
            if (Bandwidth.Missing.Length > 0) doubts.Add(Bandwidth.Missing);
            if (Saturated) doubts.Add("a rotor met its limits in the sweep, which is then not small");
            if (!(CoherenceFloor >= BelievedCoherence))
                doubts.Add($"the coherence falls to {CoherenceFloor:F2}: the craft's motion is not all from the stick");
            return string.Join("; ", doubts);
        }
    }

    /// <summary>Reads a flight of <see cref="HandlingDrills.Chirp"/>.</summary>
    public static HandlingReading Of(FlightLog log, HandlingAxis axis) =>
        Of(HandlingFlight.Swept(log, axis), HandlingFlight.Saturates(log));

    /// <summary>Reads a response of attitude to commanded rate.</summary>
    public static HandlingReading Of(FrequencyResponse response, bool saturated)
    {
        ArgumentNullException.ThrowIfNull(response);
        BandwidthCriterion criterion = BandwidthCriterion.Of(response, ResponseType.Rate);
        double from = Known(criterion.Bandwidth, response.Frequencies[0]), to = Known(2 * criterion.Omega180, response.Frequencies[^1]);
        return new() { Bandwidth = criterion, CoherenceFloor = response.LeastCoherence(from, to), Saturated = saturated };

        static double Known(double value, double otherwise) => double.IsNaN(value) ? otherwise : value;
    }
}
