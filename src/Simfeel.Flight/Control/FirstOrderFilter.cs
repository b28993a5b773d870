using System.Numerics;

namespace Simfeel.Flight.Control;

/// <summary>A sampled first-order low-pass filter: y += a (x - y).</summary>
public static class FirstOrderFilter
{
    /// <summary>Share a of a cut-off (Hz) at a period (s), by the backward difference: a = p / (1 + p), p = 2 pi f T.</summary>
    public static double Share(double cutOff_Hz, double period)
    {
        double p = 2 * Math.PI * cutOff_Hz * period;
        return p / (1 + p);
    }

    /// <summary>Frequency response a / (1 - (1 - a) / z) at z = exp(i w T).</summary>
    public static Complex Response(double share, Complex z) => share / (1 - ((1 - share) / z));
}
