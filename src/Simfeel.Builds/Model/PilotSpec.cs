namespace Simfeel.Builds;

/// <summary>How one stick commands a rate.</summary>
/// <param name="CentreSlope">Rate per full stick around the centre, rad/s.</param>
/// <param name="EndRate">Rate at full stick, rad/s; at least <paramref name="CentreSlope"/>.</param>
/// <param name="Shape">0 rises early, 1 stays soft until near the end; default 0.5.</param>
public sealed record StickCurve(double CentreSlope, double EndRate, double Shape);

/// <summary>How the throttle stick commands thrust.</summary>
/// <param name="HoverStick">Stick position (0 to 1) at which the craft hovers; default 0.4.</param>
/// <param name="Shape">0 straight, 1 very flat around the hover point; default 0.3.</param>
public sealed record ThrottleCurve(double HoverStick, double Shape);

/// <summary>The pilot's settings that travel with the build.</summary>
public sealed record PilotSpec
{
    /// <summary>Roll stick.</summary>
    public required StickCurve Roll { get; init; }

    /// <summary>Pitch stick.</summary>
    public required StickCurve Pitch { get; init; }

    /// <summary>Yaw stick.</summary>
    public required StickCurve Yaw { get; init; }

    /// <summary>Throttle stick.</summary>
    public required ThrottleCurve Throttle { get; init; }
}
