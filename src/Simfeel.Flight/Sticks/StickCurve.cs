namespace Simfeel.Flight;

/// <summary>
/// Stick deflection x in [-1, 1] to commanded rate: r(x) = c x + (E - c) ((1 - h) x^3 + h x^5). Odd and smooth, and rising
/// everywhere since no term falls: c is the slope at the centre, E the rate at the end, h moves the rise outwards.
/// </summary>
public sealed record StickCurve
{
    /// <summary>A curve.</summary>
    /// <param name="centreSlope">Rate per deflection at the centre, rad/s; 0 to the end rate.</param>
    /// <param name="endRate">Rate at full deflection, rad/s; above 0.</param>
    /// <param name="shape">0 (cubic) to 1 (fifth power).</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public StickCurve(double centreSlope, double endRate, double shape)
    {
        if (!(endRate > 0)) throw new ArgumentOutOfRangeException(nameof(endRate), endRate, "The end rate is above 0 rad/s.");
        if (!(centreSlope >= 0 && centreSlope <= endRate))
            throw new ArgumentOutOfRangeException(nameof(centreSlope), centreSlope, "The centre slope is 0 to the end rate.");
        if (!(shape >= 0 && shape <= 1)) throw new ArgumentOutOfRangeException(nameof(shape), shape, "The shape is 0 to 1.");
        CentreSlope = centreSlope;
        EndRate = endRate;
        Shape = shape;
    }

    /// <summary>Rate per deflection at the centre, rad/s.</summary>
    public double CentreSlope { get; }

    /// <summary>Rate at full deflection, rad/s.</summary>
    public double EndRate { get; }

    /// <summary>0 (cubic) to 1 (fifth power).</summary>
    public double Shape { get; }

    /// <summary>Commanded rate, rad/s; deflections beyond the ends count as full.</summary>
    public double Rate(double deflection)
    {
        double x = Math.Clamp(deflection, -1, 1);
        double x2 = x * x;
        return x * (CentreSlope + ((EndRate - CentreSlope) * x2 * (1 - Shape + (Shape * x2))));
    }

    /// <summary>Deflection that commands a rate (rad/s), -1 to 1: the inverse of <see cref="Rate"/>; full beyond the end rate.</summary>
    public double Deflection(double rate)
    {
        double size = Math.Abs(rate);
        if (size >= EndRate) return Math.Sign(rate);
        // the curve rises: Newton's step, kept inside a shrinking bracket
        double low = 0, high = 1, x = size / EndRate;
        for (int n = 0; n < 60 && high - low > 1e-12; n++)
        {
            double error = Rate(x) - size;
            if (error > 0) high = x;
            else low = x;
            double x2 = x * x;
            double slope = CentreSlope + ((EndRate - CentreSlope) * x2 * ((3 * (1 - Shape)) + (5 * Shape * x2)));
            double next = slope > 0 ? x - (error / slope) : low;
            if (Math.Abs(next - x) < 1e-14) break;
            x = next > low && next < high ? next : (low + high) / 2;
        }
        return Math.CopySign(x, rate);
    }
}
