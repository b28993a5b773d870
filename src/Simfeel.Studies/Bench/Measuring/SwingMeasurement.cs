using Simfeel.Builds;
using Simfeel.Studies.Fit;

namespace Simfeel.Studies.Bench.Measuring;

/// <summary>A bifilar swing test of several timings into a moment of inertia.</summary>
internal static class SwingMeasurement
{
    /// <summary>Moment of inertia about the axis that hung vertically, kg m^2.</summary>
    /// <param name="axis">That axis.</param>
    /// <param name="readings">All readings.</param>
    /// <param name="mass">Mass of the craft, kg.</param>
    /// <param name="scatter">Standard error of one timing, s.</param>
    /// <exception cref="FitException">The stick resists more than stick and craft together.</exception>
    public static Measurement Of(BenchAxis axis, BenchReadings readings, WithSigma mass, Scatter scatter)
    {
        SwingReadings swing = readings.Swings[axis];
        TimingReadings timing = readings.Timing;
        double random = scatter.Sigma / Math.Sqrt(swing.Times.Count) / timing.Swings, shared = timing.SharedSigma / timing.Swings;
        SwingTest test = new()
        {
            Mass = mass,
            Spacing = swing.Spacing,
            Length = swing.Length,
            Period = new(swing.Times.Average() / timing.Swings, double.Hypot(random, shared)),
            Swing = swing.Swing,
            RigMass = new(swing.StickMass, 0),
            // a thin rod about its middle
            RigInertia = new(swing.StickMass * swing.StickLength * swing.StickLength / 12, 0),
            Gravity = readings.Gravity,
        };
        WithSigma inertia;
        try
        {
            inertia = test.Inertia();
        }
        catch (FitException)
        {
            throw new FitException([new(Severity.Error, readings.Source, swing.Line, null, axis.Turn() + ".stick_mass_g", $"{1e3 * swing.StickMass:G4}",
                $"A stick of {1e3 * swing.StickLength:G4} mm and this mass resists more than stick and craft together did.", "check the stick and the spacing of the wires")]);
        }
        List<ErrorPart> parts = [];
        foreach ((string name, double share) in test.Shares())
        {
            double sigma = Math.Sqrt(share) * inertia.Sigma;
            if (name != "period")
            {
                parts.Add(new(name, sigma));
                continue;
            }
            parts.Add(new("scatter of the timings", sigma * random / test.Period.Sigma, scatter.Freedom));
            parts.Add(new("timing habit", sigma * shared / test.Period.Sigma));
        }
        return new(inertia.Value, parts);
    }
}
