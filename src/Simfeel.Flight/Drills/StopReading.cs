namespace Simfeel.Flight.Drills;

/// <summary>How a roll ends, read off a log of <see cref="DrillCatalogue.Stop"/>.</summary>
/// <param name="StopTime">
/// From letting go of the stick until the rate has fallen to a tenth of what it was then, s; NaN where it never does, or did not turn.
/// </param>
/// <param name="BounceBack">Angle turned back after the furthest point, rad.</param>
public readonly record struct StopReading(double StopTime, double BounceBack)
{
    /// <summary>Share of the rate at which a roll counts as stopped: a narrower band near the overshoot makes the time jump.</summary>
    public const double Stopped = 0.1;

    /// <summary>Reads a log.</summary>
    public static StopReading Of(FlightLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        const double release = Drill.LeadIn + DrillCatalogue.TurnBeforeStop;
        LogRows rows = log.Samples;
        double period = log.Period, turned = 0, furthest = 0, lowest = 0, time = double.NaN;
        int first = (int)Math.Round(release / period);
        // a roll the other way round, such as of a craft that struck something, has no end to measure
        bool rolls = rows[first].State.w_WB_B.X > 0;
        double level = Stopped * rows[first].State.w_WB_B.X, before = rows[0].State.w_WB_B.X;
        for (int row = 1; row < rows.Count; row++)
        {
            double now = rows[row].State.w_WB_B.X;
            turned += period / 2 * (before + now);
            if (turned > furthest) (furthest, lowest) = (turned, turned);
            else lowest = Math.Min(lowest, turned);
            if (rolls && row > first && double.IsNaN(time) && now <= level)
                time = ((row - 1) * period) + (period * (before - level) / (before - now)) - release;
            before = now;
        }
        return new(time, furthest - lowest);
    }
}
