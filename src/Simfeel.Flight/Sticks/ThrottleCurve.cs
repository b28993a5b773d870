namespace Simfeel.Flight;

/// <summary>
/// Throttle stick t in [0, 1] to share f of full thrust: f = t / (t + c (1 - t)), which is rising, meets both ends, and
/// passes through the hover share at the stick position that the pilot wants for it.
/// </summary>
public sealed record ThrottleCurve
{
    private readonly double _c;

    /// <summary>A curve through a point.</summary>
    /// <param name="hoverStick">Stick position of hover, above 0 and below 1.</param>
    /// <param name="hoverShare">Share of full thrust that hovers, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public ThrottleCurve(double hoverStick, double hoverShare)
    {
        if (!(hoverStick > 0 && hoverStick < 1))
            throw new ArgumentOutOfRangeException(nameof(hoverStick), hoverStick, "The hover stick position lies between 0 and 1.");
        if (!(hoverShare > 0 && hoverShare < 1))
            throw new ArgumentOutOfRangeException(nameof(hoverShare), hoverShare, "The hover share of full thrust lies between 0 and 1.");
        HoverStick = hoverStick;
        _c = hoverStick * (1 - hoverShare) / (hoverShare * (1 - hoverStick));
    }

    /// <summary>Stick position of hover.</summary>
    public double HoverStick { get; }

    /// <summary>Share of full thrust at a stick position.</summary>
    public double Share(double stick)
    {
        double t = Math.Clamp(stick, 0, 1);
        return t / (t + (_c * (1 - t)));
    }

    /// <summary>Stick position for a share of full thrust, 0 to 1: the inverse of <see cref="Share"/>.</summary>
    public double Stick(double share)
    {
        double f = Math.Clamp(share, 0, 1);
        return _c * f / (1 - f + (_c * f));
    }
}
