using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Physics;
using Simfeel.Physics.Maths;

namespace Simfeel.Studies.Tests.Metrics;

/// <summary>Logs made from formulas of time, so that a metric's true value is known.</summary>
internal static class SyntheticLog
{
    private static readonly double Period = Starters.Profile.StickPeriod;

    public static FlightLog Of(
        double duration,
        Func<double, double>? height = null,
        Func<double, double>? climb = null,
        Func<double, Vec3>? rate = null)
    {
        int rows = (int)Math.Round(duration / Period) + 1;
        Sample[] samples = new Sample[rows];
        for (int row = 0; row < rows; row++)
        {
            double t = row * Period;
            samples[row].State = new CraftState
            {
                q_WB = Quat.Identity,
                p_WB = new(0, 0, -(height?.Invoke(t) ?? 0)),
                v_WB = new(0, 0, -(climb?.Invoke(t) ?? 0)),
                w_WB_B = rate?.Invoke(t) ?? Vec3.Zero,
            };
        }
        return new FlightLog
        {
            Drill = "synthetic",
            Unit = Starters.Get("wagtail"),
            Profile = Starters.Profile,
            Field = new(),
            Effort = 1,
            Samples = LogRows.Of(samples, 4),
            Sticks = new Simfeel.Flight.Sticks[rows],
        };
    }
}
