using System.Numerics;
using Simfeel.Flight.Control;
using Simfeel.Physics.Stand;

namespace Simfeel.Flight.Tuning;

/// <summary>What a tuning reached on one axis.</summary>
/// <param name="Gains">The gains.</param>
/// <param name="Crossover">Frequency at which the open loop's gain falls through 1, rad/s.</param>
/// <param name="PhaseMargin">rad.</param>
/// <param name="GainMargin">Factor by which the gain could grow before the loop swings by itself.</param>
public readonly record struct AxisTuning(AxisGains Gains, double Crossover, double PhaseMargin, double GainMargin);

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
    private const int FrequencySteps = 600;
    private const double LowestFrequency = 0.5;

    /// <summary>Tunings of roll, pitch and yaw of a craft at hover.</summary>
    public static (AxisTuning RollPitch, AxisTuning Yaw) Tune(
        FlightUnit unit, HoverTrim hover, ThrustMap map, double density, PilotProfile profile)
    {
        ArgumentNullException.ThrowIfNull(unit);
        ArgumentNullException.ThrowIfNull(profile);
        (AxisPlant rollPitch, AxisPlant yaw) = AxisPlant.Of(unit, hover, map, density);
        return (
            Best(new RateLoop(rollPitch, unit.GyroLowPass_Hz, profile), rollPitch.Lag, LeadSteps, profile.FeedForward),
            Best(new RateLoop(yaw, unit.GyroLowPass_Hz, profile), yaw.Lag, 0, profile.FeedForward));
    }

    /// <summary>The best of the lead times; yaw has its own lead and takes none.</summary>
    private static AxisTuning Best(RateLoop loop, double lag, int leadSteps, double feedForward)
    {
        AxisTuning best = default;
        for (int n = 0; n <= leadSteps; n++)
        {
            double lead = leadSteps == 0 ? 0 : LargestLead * lag * n / leadSteps;
            if (AtPhaseMargin(loop, lead, feedForward) is not { } tuning) continue;
            if (tuning.GainMargin < GainMargin) tuning = Lowered(loop, tuning);
            bool meets = tuning.PhaseMargin >= PhaseMargin && tuning.GainMargin >= GainMargin;
            if (meets && tuning.Crossover > best.Crossover) best = tuning;
        }
        return best.Crossover > 0
            ? best
            : throw new InvalidOperationException(
                "its delays leave no gains that reach 60 degrees of phase margin and a factor 2 of gain margin; shorten command_delay_ms or raise lowpass_Hz.");
    }

    /// <summary>
    /// The highest frequency at which the loop's phase falls through the margin, with the gain that makes it the crossover.
    /// The phase is followed upwards from low frequency so that dead time may turn it past -180 degrees and be seen to.
    /// </summary>
    private static AxisTuning? AtPhaseMargin(RateLoop loop, double lead, double feedForward)
    {
        double ratio = Math.Pow(loop.HighestFrequency / LowestFrequency, 1.0 / FrequencySteps);
        double found = 0, foundPhase = 0;
        double phase = Lagging(loop.Response(LowestFrequency, Shape(LowestFrequency, lead)));
        double w = LowestFrequency;
        for (int n = 0; n < FrequencySteps; n++)
        {
            double next = Follow(phase, loop.Response(w * ratio, Shape(w * ratio, lead)));
            if (Excess(phase) > 0 && Excess(next) <= 0) (found, foundPhase) = (w, phase);
            (w, phase) = (w * ratio, next);
        }
        if (found == 0) return null;

        double lower = found, upper = found * ratio;
        for (int n = 0; n < 50; n++)
        {
            double middle = Math.Sqrt(lower * upper);
            if (Excess(Follow(foundPhase, loop.Response(middle, Shape(middle, lead)))) > 0) lower = middle;
            else upper = middle;
        }
        AxisGains shape = Shape(lower, lead);
        double gain = 1 / loop.Response(lower, shape).Magnitude;
        AxisGains gains = new(gain, gain * shape.Integral, gain * shape.Derivative, feedForward);
        return new(gains, lower, PhaseMargin, Margin(loop, gains, lower));

        static double Excess(double phase) => phase + Math.PI - PhaseMargin;
    }

    /// <summary>The phase of a response in (-2 pi, 0]: the loops here lag.</summary>
    private static double Lagging(Complex response) => response.Phase > 0 ? response.Phase - (2 * Math.PI) : response.Phase;

    /// <summary>The phase of a response, on the turn that lies nearest to a phase close by.</summary>
    private static double Follow(double near, Complex response) =>
        near + Math.IEEERemainder(response.Phase - near, 2 * Math.PI);

    /// <summary>
    /// The same gains turned down together until the gain margin is there: long delays want this, and end with more phase
    /// margin than the policy asks for. The crossover is the last frequency at which the gain falls through 1.
    /// </summary>
    private static AxisTuning Lowered(RateLoop loop, AxisTuning tuning)
    {
        // a hair more than needed, since the margin was found on a grid of frequencies
        double factor = 0.999 * tuning.GainMargin / GainMargin;
        AxisGains gains = new(
            factor * tuning.Gains.Proportional, factor * tuning.Gains.Integral, factor * tuning.Gains.Derivative, tuning.Gains.FeedForward);
        double ratio = Math.Pow(loop.HighestFrequency / LowestFrequency, 1.0 / FrequencySteps);
        double crossover = 0, phase = 0, found = 0;
        double w = LowestFrequency;
        for (int n = 0; n <= FrequencySteps; n++, w *= ratio)
        {
            Complex now = loop.Response(w, gains);
            phase = n == 0 ? Lagging(now) : Follow(phase, now);
            if (now.Magnitude >= 1) (crossover, found) = (w, phase);
        }
        return crossover == 0 ? default : new(gains, crossover, found + Math.PI, Margin(loop, gains, crossover));
    }

    private static AxisGains Shape(double crossover, double lead) => new(1, crossover / IntegralRatio, lead, 0);

    /// <summary>Gain margin: the inverse of the largest gain at or beyond the frequency where the phase reaches -180 degrees.</summary>
    private static double Margin(RateLoop loop, AxisGains gains, double crossover)
    {
        const int steps = 400;
        double ratio = Math.Pow(loop.HighestFrequency / crossover, 1.0 / steps);
        double largest = 0;
        double phase = 0;
        double w = crossover;
        for (int n = 0; n <= steps; n++, w *= ratio)
        {
            Complex response = loop.Response(w, gains);
            phase = n == 0 ? Lagging(response) : Follow(phase, response);
            if (phase <= -Math.PI) largest = Math.Max(largest, response.Magnitude);
        }
        return largest > 0 ? 1 / largest : double.PositiveInfinity;
    }
}
