using Simfeel.Physics.Kernel;
using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Air;

/// <summary>Mean wind: its speed at <see cref="DrydenGusts.ReferenceHeight"/>, m/s, and where it comes from, from north towards east, rad.</summary>
public readonly record struct MeanWind(double Speed, double From);

/// <summary>
/// Wind near the ground with its turbulence, after MIL-F-8785C (1980), 3.7.3: the logarithmic shear of the mean wind (u20 at
/// 20 feet, roughness length 0.15 ft) and the low-altitude Dryden model. With h the height in feet, from 10 to 1000:
/// L_w = h, L_u = L_v = h / (0.177 + 0.000823 h)^1.2, sigma_w = 0.1 u20,
/// sigma_u = sigma_v = sigma_w / (0.177 + 0.000823 h)^0.4, and spectra over the wave number W
/// Phi_u = sigma^2 (2 L / pi) / (1 + (L W)^2), Phi_v = Phi_w = sigma^2 (L / pi) (1 + 3 (L W)^2) / (1 + (L W)^2)^2.
/// The field of gusts is frozen and swept past the craft (Taylor), u along the mean wind, w vertical. Gusts that turn a craft
/// by differing over its span are left out: the shortest length is 3 m. One of these for each craft; a default value starts
/// in the mean wind.
/// </summary>
/// <remarks>
/// Phi_v is what white noise becomes behind (1 + sqrt(3) s t) / (1 + s t)^2 with t = L / V, that is
/// sqrt(3) / (1 + s t) + (1 - sqrt(3)) / (1 + s t)^2: two lags in a row, of which the sum has twice the first one's variance.
/// A lag over a time d keeps the share (1 - z) / (1 + z) with z = d / 2t, and is given the noise that holds its variance
/// whatever L and V do meanwhile.
/// </remarks>
public struct DrydenGusts
{
    /// <summary>Height at which the mean wind is stated, m: 20 ft.</summary>
    public const double ReferenceHeight = 20 * Foot;

    private const double Foot = 0.3048, Roughness = 0.15 * Foot;

    /// <summary>Slowest air that the frozen field is swept past with, m/s: eddies change by themselves, too.</summary>
    private const double SlowestAir = 1;

    /// <summary>Where the noise of gusts begins among the numbers of <see cref="WakeNoise"/>, beyond those of all rotors.</summary>
    private const int NoisePlace = 100;

    private double _along, _across, _acrossLag, _up, _upLag;

    /// <summary>Lengths L_u = L_v and L_w at a height, m.</summary>
    public static (double Along, double Up) Lengths(double height)
    {
        double h = Feet(height);
        return (Foot * h / Math.Pow(0.177 + (0.000823 * h), 1.2), Foot * h);
    }

    /// <summary>Standard deviations sigma_u = sigma_v and sigma_w at a height under a mean wind, m/s.</summary>
    public static (double Along, double Up) Deviations(double speed, double height)
    {
        double up = 0.1 * speed;
        return (up / Math.Pow(0.177 + (0.000823 * Feet(height)), 0.4), up);
    }

    /// <summary>Mean wind at a height, m/s.</summary>
    public static double MeanAt(double speed, double height) =>
        speed * Math.Log(Math.Clamp(height, 3 * Foot, 1000 * Foot) / Roughness) / Math.Log(ReferenceHeight / Roughness);

    /// <summary>The wind from here on for a time: gusts move on by that time, and the mean wind is added.</summary>
    /// <param name="mean">The mean wind.</param>
    /// <param name="height">Height above the ground, m.</param>
    /// <param name="v_WB">Velocity of the craft, m/s.</param>
    /// <param name="seed">Seed of the run.</param>
    /// <param name="count">Which call this is; counts the draws of noise.</param>
    /// <param name="time">The time, s.</param>
    /// <returns>Velocity of the air in the world (north, east, down), m/s.</returns>
    public Vec3 Next(MeanWind mean, double height, Vec3 v_WB, int seed, long count, double time)
    {
        Vec3 along_W = new(-Math.Cos(mean.From), -Math.Sin(mean.From), 0), across_W = new(-along_W.Y, along_W.X, 0);
        Vec3 steady_W = MeanAt(mean.Speed, height) * along_W;
        double speed = Math.Max(SlowestAir, (v_WB - steady_W).Length);
        (double length, double depth) = Lengths(height);
        (double strong, double up) = Deviations(mean.Speed, height);
        (double keptU, double freshU) = Lag(time * speed / length);
        (double keptW, double freshW) = Lag(time * speed / depth);
        _along = (keptU * _along) + (freshU * WakeNoise.At(seed, count, NoisePlace));
        double v = Row(ref _across, ref _acrossLag, keptU, freshU, WakeNoise.At(seed, count, NoisePlace + 1));
        double w = Row(ref _up, ref _upLag, keptW, freshW, WakeNoise.At(seed, count, NoisePlace + 2));
        return steady_W + (strong * _along * along_W) + (strong * v * across_W) + new Vec3(0, 0, up * w);
    }

    /// <summary>Share that a lag of variance 1 keeps over a share of its time, and what it takes of fresh noise.</summary>
    private static (double Kept, double Fresh) Lag(double share)
    {
        double z = Math.Min(1, share / 2), kept = (1 - z) / (1 + z);
        return (kept, Math.Sqrt(1 - (kept * kept)));
    }

    /// <summary>Two lags in a row, and the sum of them that has variance 1 and the spectrum Phi_v.</summary>
    private static double Row(ref double first, ref double second, double kept, double fresh, double noise)
    {
        double before = first;
        first = (kept * first) + (fresh * noise);
        second = (kept * second) + ((1 - kept) * 0.5 * (before + first));
        return ((Math.Sqrt(3) * first) + ((1 - Math.Sqrt(3)) * second)) / Math.Sqrt(2);
    }

    private static double Feet(double height) => Math.Clamp(height / Foot, 10, 1000);
}
