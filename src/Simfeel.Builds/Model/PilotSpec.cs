namespace Simfeel.Builds;

/// <summary>How one stick commands a rate.</summary>
/// <param name="CentreSlope">Rate per full stick around the centre, rad/s.</param>
/// <param name="EndRate">Rate at full stick, rad/s; at least <paramref name="CentreSlope"/>.</param>
/// <param name="Shape">0 rises early, 1 stays soft until near the end; default 0.5.</param>
public sealed record StickSettings(double CentreSlope, double EndRate, double Shape);

/// <summary>A pilot's settings that travel with the build. So far nothing flies by them: all builds get the same curves.</summary>
public sealed record PilotSpec
{
    /// <summary>Roll stick.</summary>
    public required StickSettings Roll { get; init; }

    /// <summary>Pitch stick.</summary>
    public required StickSettings Pitch { get; init; }

    /// <summary>Yaw stick.</summary>
    public required StickSettings Yaw { get; init; }

    /// <summary>Throttle stick position (0.05 to 0.95) at which the craft hovers; default 0.4.</summary>
    public required double ThrottleHoverStick { get; init; }
}
