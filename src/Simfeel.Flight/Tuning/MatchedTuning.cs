using Simfeel.Flight.Control;

namespace Simfeel.Flight.Tuning;

/// <summary>What a tuning reached on one axis.</summary>
/// <param name="Gains">The gains.</param>
/// <param name="Crossover">Frequency at which the open loop's gain falls through 1, rad/s.</param>
/// <param name="PhaseMargin">rad.</param>
/// <param name="GainMargin">Factor by which the gain could grow before the loop swings by itself.</param>
public readonly record struct AxisTuning(AxisGains Gains, double Crossover, double PhaseMargin, double GainMargin);

/// <summary>Margins that a tuning has to keep.</summary>
/// <param name="Phase">Phase margin, rad.</param>
/// <param name="Gain">Least gain margin, as a factor.</param>
public readonly record struct Margins(double Phase, double Gain);

/// <summary>
/// The policy "matched": every build gets the gains that reach the same phase margin at the highest crossover frequency
/// its own rotor lag and delays allow, with at least the gain margin stated. Fair to both builds, whatever their size:
/// a build is not blamed for another's gains.
/// </summary>
public sealed class MatchedTuning
{
    /// <summary>Phase margin of every axis, rad.</summary>
    public const double PhaseMargin = 60 * Math.PI / 180;

    /// <summary>Least gain margin, as a factor.</summary>
    public const double GainMargin = 2;

    /// <summary>The integral corner lies this far below the crossover.</summary>
    private const double IntegralRatio = 8;

    /// <summary>Lead times tried, as shares of the rotor lag: 0 to this in equal steps.</summary>
    private const double LargestLead = 1.0;

    private const int LeadSteps = 20;

    private static readonly Margins Wanted = new(PhaseMargin, GainMargin);

    /// <summary>The tuning of an axis by the policy.</summary>
    /// <param name="loop">The axis.</param>
    /// <param name="lag">Time constant of the rotors, s; lead times up to it are tried. 0 for yaw, which has its own lead.</param>
    /// <param name="feedForward">Share of the commanded angular acceleration that is fed forward.</param>
    /// <exception cref="InvalidOperationException">No gains reach the margins.</exception>
    public static AxisTuning Of(RateLoop loop, double lag, double feedForward)
    {
        LoopCurve curve = new(loop);
        AxisTuning best = default;
        int steps = lag > 0 ? LeadSteps : 0;
        (double Lead, double Bound)[] leads =
        [
            .. Enumerable.Range(0, steps + 1)
                .Select(n => steps == 0 ? 0 : LargestLead * lag * n / steps)
                .Select(lead => (lead, curve.PhaseFallsBelow(Wanted.Phase - Math.PI, at => Shape(at, lead)))),
        ];
        // no crossover lies above its bound, so most lead times need no closer look
        foreach ((double lead, double bound) in leads.OrderByDescending(each => each.Bound))
        {
            if (!(bound > best.Crossover)) break;
            if (AtMargins(loop, curve, lead, feedForward, Wanted, best.Crossover) is AxisTuning tuning) best = tuning;
        }
        return best.Crossover > 0
            ? best
            : throw new InvalidOperationException(
                "no gains reach 60 degrees of phase margin and a factor 2 of gain margin: its delays are too long for how strongly its rotors answer; look at kv_rpm_per_V and the cells, or shorten command_delay_ms or raise lowpass_Hz.");
    }

    /// <summary>
    /// The gains of one lead time (s) that keep some margins at the highest crossover; null where none do, or none above a crossover that
    /// is reached already (rad/s).
    /// </summary>
    internal static AxisTuning? AtMargins(RateLoop loop, LoopCurve curve, double lead, double feedForward, Margins wanted, double above = 0)
    {
        double w = curve.PhaseFalls(wanted.Phase - Math.PI, at => Shape(at, lead));
        if (!(w > above)) return null;
        AxisGains shape = Shape(w, lead);
        double gain = 1 / loop.Response(w, shape).Magnitude;
        AxisTuning tuning = Reading(curve, Times(gain, shape) with { FeedForward = feedForward });
        // long delays leave too little gain margin: the same gains turned down together end with more phase margin than asked for
        if (tuning.GainMargin < wanted.Gain)
            tuning = Reading(curve, Times(tuning.GainMargin / wanted.Gain, tuning.Gains) with { FeedForward = feedForward });
        return tuning.PhaseMargin >= wanted.Phase - Hair && tuning.GainMargin >= wanted.Gain - Hair && tuning.Crossover > above ? tuning : null;
    }

    /// <summary>What gains that came from elsewhere reach; a loop that swings by itself has a negative phase margin.</summary>
    internal static AxisTuning Reading(LoopCurve curve, AxisGains gains)
    {
        (double crossover, double phase) = curve.Crossover(gains);
        return double.IsNaN(crossover)
            ? new(gains, double.NaN, double.NaN, double.NaN)
            : new(gains, crossover, phase + Math.PI, curve.GainMargin(gains, crossover));
    }

    /// <summary>What rounding may take off a margin.</summary>
    private const double Hair = 1e-6;

    private static AxisGains Shape(double crossover, double lead) => new(1, crossover / IntegralRatio, lead, 0);

    private static AxisGains Times(double factor, AxisGains gains) =>
        new(factor * gains.Proportional, factor * gains.Integral, factor * gains.Derivative, gains.FeedForward);
}
