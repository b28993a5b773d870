using System.Collections.Concurrent;
using Simfeel.Flight;
using Simfeel.Flight.Drills;

namespace Simfeel.Studies.Handling;

/// <summary>
/// Drills that measure handling qualities, from level hover. The sweep is of small amplitude whatever the stick effort,
/// since it measures what the craft does before any rotor meets its limits.
/// </summary>
public static class HandlingDrills
{
    /// <summary>
    /// Lowest and highest frequency of the sweep, rad/s: yaw answers to the torque that speeds a rotor up and lags by 180 degrees
    /// only near 300 rad/s, and its phase delay is read at twice that.
    /// </summary>
    public const double LowestFrequency = 3, HighestFrequency = 800;

    /// <summary>
    /// Deflection of the sweep: a thumb of 20 ms can still follow it at the highest frequency, and rotors of the
    /// starter craft stay within their limits. Our choice.
    /// </summary>
    public const double Amplitude = 0.02;

    /// <summary>Length of the sweep, and of the rest after it, s.</summary>
    public const double SweepTime = 8, RestTime = 0.8;

    /// <summary>Time over which an attitude change is watched, s.</summary>
    public const double WatchTime = 1.2;

    private static readonly ConcurrentDictionary<HandlingAxis, Drill> Chirps = new();

    /// <summary>A sweep whose frequency rises exponentially, begun at its crest so that the attitude swings about level.</summary>
    public static Drill Chirp(HandlingAxis axis) => Chirps.GetOrAdd(axis, _ => new(
        Name(axis) + "-sweep", $"Small {Name(axis)} stick, slow to fast: how the craft follows a correcting thumb.",
        Drill.LeadIn + SweepTime + RestTime,
        (hover, _) => view => axis.Deflected(Amplitude * Sweep(view.Time - Drill.LeadIn), hover)));

    /// <summary>
    /// Full stick one way, then let go, without reversal: from rest to rest over an angle. The stick is let go when the rates
    /// commanded so far and on the thumb's way back add up to the angle: a craft that follows linearly and comes to rest has
    /// then turned just that, however late it follows. One whose rotors meet their limits turns less.
    /// </summary>
    /// <param name="axis">Axis.</param>
    /// <param name="angle">Angle, rad; above what the thumb's way to the end and back commands.</param>
    /// <param name="profile">The pilot; must be the one who flies.</param>
    /// <exception cref="ArgumentOutOfRangeException">The angle is too small.</exception>
    public static Drill AttitudeChange(HandlingAxis axis, double angle, PilotProfile profile)
    {
        ArgumentNullException.ThrowIfNull(profile);
        double hold = HoldTime(axis.Curve(profile), angle, profile);
        if (!(hold > profile.ThumbTime))
            throw new ArgumentOutOfRangeException(nameof(angle), angle, "The angle is too small for full stick.");
        double release = Drill.LeadIn + hold;
        return new(
            Name(axis) + "-change", $"Full {Name(axis)} stick and letting go: how quickly it gets to a new attitude.", release + WatchTime,
            (hover, _) => view => axis.Deflected(view.Time >= Drill.LeadIn && view.Time < release ? 1 : 0, hover));
    }

    private static string Name(HandlingAxis axis) => axis switch
    {
        HandlingAxis.Roll => "roll",
        HandlingAxis.Pitch => "pitch",
        _ => "yaw",
    };

    private static double Sweep(double time)
    {
        const double fade = 0.2;
        if (time < 0 || time > SweepTime) return 0;
        double ratio = Math.Log(HighestFrequency / LowestFrequency);
        double phase = LowestFrequency * SweepTime / ratio * (Math.Exp(ratio * time / SweepTime) - 1);
        return Math.Clamp(time / fade, 0, 1) * Math.Clamp((SweepTime - time) / fade, 0, 1) * Math.Cos(phase);
    }

    /// <summary>Time from deflecting to letting go: both ways of the thumb command the same angle, the rest is at full rate.</summary>
    private static double HoldTime(StickCurve curve, double angle, PilotProfile profile)
    {
        const int steps = 1000;
        double mean = 0;
        for (int n = 0; n < steps; n++) mean += curve.Rate((n + 0.5) / steps) / steps;
        return profile.ThumbTime + ((angle - (2 * mean * profile.ThumbTime)) / curve.EndRate);
    }
}
