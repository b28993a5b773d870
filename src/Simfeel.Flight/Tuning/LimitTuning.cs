using Simfeel.Flight.Drills;

namespace Simfeel.Flight.Tuning;

/// <summary>
/// The policy "limit": what a patient pilot would find. Roll and pitch gains are searched over lead and phase margin for the best
/// stop, flown in the drill: stop time plus <see cref="BouncePrice"/> for each radian of bounce-back. Yaw stays as matched.
/// </summary>
internal static class LimitTuning
{
    /// <summary>Least phase margin tried, rad, and least gain margin.</summary>
    public const double LeastPhaseMargin = 35 * Math.PI / 180, LeastGainMargin = 1.5;

    /// <summary>Seconds of stop time that a radian of bounce-back is worth: 4 ms a degree. Our judgement.</summary>
    public const double BouncePrice = 0.004 * 180 / Math.PI;

    private const int LeadSteps = 6;
    private const int MarginSteps = 8;
    private const double LargestPhaseMargin = 70 * Math.PI / 180;

    /// <summary>What the search makes small, s.</summary>
    public static double Price(FlightLog log)
    {
        StopReading reading = StopReading.Of(log);
        return double.IsNaN(reading.StopTime) ? double.PositiveInfinity : reading.StopTime + (BouncePrice * reading.BounceBack);
    }

    /// <summary>The craft with the best gains found; those it came with are among the tried.</summary>
    /// <param name="matched">The craft, matched.</param>
    /// <param name="roll">Its roll loop.</param>
    /// <param name="pitch">Its pitch loop.</param>
    /// <param name="profile">The pilot.</param>
    public static TunedUnit Best(TunedUnit matched, RateLoop roll, RateLoop pitch, PilotProfile profile)
    {
        List<TunedUnit> tried = [matched];
        LoopCurve rollCurve = new(roll), pitchCurve = new(pitch);
        for (int lead = 0; lead <= LeadSteps; lead++)
        {
            for (int step = 0; step < MarginSteps; step++)
            {
                double margin = LeastPhaseMargin + ((LargestPhaseMargin - LeastPhaseMargin) * step / (MarginSteps - 1));
                if (At(roll, rollCurve) is AxisTuning ofRoll && At(pitch, pitchCurve) is AxisTuning ofPitch) tried.Add(matched with { Roll = ofRoll, Pitch = ofPitch });

                AxisTuning? At(RateLoop loop, LoopCurve curve) => MatchedTuning.AtMargins(
                    loop, curve, matched.Hover.TimeConstant * lead / LeadSteps, profile.FeedForward, new Margins(margin, LeastGainMargin));
            }
        }
        // steady loads only and no wake: the gains must not hang on the noise of one seed
        FieldConditions field = new() { Effects = Physics.AirEffects.DynamicInflow };
        LogBuffers buffers = LogBuffers.Rent();
        double[] prices =
        [
            .. tried.Chunk(DrillBatch.Width)
                .SelectMany(units => DrillBatch.Fly(DrillCatalogue.Stop, units, profile, 1, field, buffers, loadsFrom: double.PositiveInfinity).Select(Price).ToArray()),
        ];
        LogBuffers.Return(buffers);
        return tried[Array.IndexOf(prices, prices.Min())];
    }
}
