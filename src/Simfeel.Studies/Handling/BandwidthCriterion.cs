namespace Simfeel.Studies.Handling;

/// <summary>What a held stick commands.</summary>
public enum ResponseType
{
    /// <summary>A rate.</summary>
    Rate,

    /// <summary>An attitude.</summary>
    Attitude,
}

/// <summary>
/// Small-amplitude bandwidth and phase delay after ADS-33E-PRF (US Army AMCOM, 2000): margins of 45 degrees and of 6 dB
/// before the frequency at which attitude lags the stick by 180 degrees, and how fast the phase falls beyond.
/// </summary>
public sealed record BandwidthCriterion
{
    /// <summary>Frequency at which the phase is -180 degrees, rad/s; NaN where it is not reached.</summary>
    public required double Omega180 { get; init; }

    /// <summary>Highest frequency up to that at which the phase is -135 degrees, rad/s.</summary>
    public required double PhaseBandwidth { get; init; }

    /// <summary>Highest frequency up to that at which the gain is 6 dB over the gain there, rad/s.</summary>
    public required double GainBandwidth { get; init; }

    /// <summary>The smaller of both for a rate command, the one by phase for an attitude command, rad/s.</summary>
    public required double Bandwidth { get; init; }

    /// <summary>Phase from -180 degrees to twice that frequency by twice that frequency (two points), s.</summary>
    public required double PhaseDelay { get; init; }

    /// <summary>Why a number is NaN; empty where none is.</summary>
    public required string Missing { get; init; }

    /// <summary>Reads the numbers off a response of attitude to stick; what has no crossing is NaN with the reason.</summary>
    public static BandwidthCriterion Of(FrequencyResponse response, ResponseType type)
    {
        ArgumentNullException.ThrowIfNull(response);
        double w180 = response.FirstPhaseCrossing(-Math.PI), gain180 = response.GainAt(w180);
        double phase = response.PhaseCrossing(-0.75 * Math.PI, double.IsNaN(w180) ? double.PositiveInfinity : w180);
        double gain = response.GainCrossing(gain180 * SixDecibel, w180);
        double delay = (-Math.PI - response.PhaseAt(2 * w180)) / (2 * w180);
        List<string> missing = [];
        if (double.IsNaN(w180)) missing.Add($"the phase does not fall through -180 degrees {Range()}");
        if (double.IsNaN(phase)) missing.Add($"the phase does not fall through -135 degrees {Range()}");
        if (!double.IsNaN(w180) && double.IsNaN(gain)) missing.Add($"the gain is nowhere 6 dB over that at {w180:F1} rad/s");
        if (!double.IsNaN(w180) && double.IsNaN(delay)) missing.Add($"the response ends before {2 * w180:F1} rad/s");
        return new()
        {
            Omega180 = w180,
            PhaseBandwidth = phase,
            GainBandwidth = gain,
            // Math.Min hands on a NaN
            Bandwidth = type == ResponseType.Rate ? Math.Min(phase, gain) : phase,
            PhaseDelay = delay,
            Missing = string.Join("; ", missing),
        };

        string Range() => $"between {response.Frequencies[0]:F1} and {response.Frequencies[^1]:F1} rad/s";
    }

    private static readonly double SixDecibel = Math.Pow(10, 6.0 / 20);
}
