namespace Simfeel.Studies.Bench.Measuring;

/// <summary>A scale of which nothing else is said.</summary>
public static class KitchenScale
{
    /// <summary>Standard error, kg: 1 g or 0.2 % of what lies on it, whichever is less (kitchen and letter scales; common practice).</summary>
    /// <param name="mass">What lies on it, kg.</param>
    public static double Sigma(double mass) => Math.Min(1e-3, 0.002 * mass);
}
