using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Physics.Kernel;
using Simfeel.Studies.Metrics;
using Xunit.Abstractions;

namespace Simfeel.Studies.Tests;

/// <summary>What polynomials for the rotors (<see cref="RotorModel.Polynomials"/>) change in the answers.</summary>
public class RotorFitFlightTests(ITestOutputHelper output)
{
    /// <summary>Time for which they hold, s.</summary>
    private const double Hold = 0.004;

    /// <summary>
    /// Every metric of the scripted drills, flown with the tables and with polynomials: they differ by less than 0.05 %, or
    /// by less than a hundredth of what the catalogue calls nothing to be felt. Set from the first run, in which the largest
    /// was 0.012 % (8000 steps a second; at 4000 it is 0.020 %).
    /// </summary>
    [Theory]
    [InlineData("wagtail")]
    [InlineData("curlew")]
    [InlineData("knot")]
    public void Metrics_hardly_differ(string name)
    {
        TunedUnit unit = Starters.Get(name);
        PilotProfile profile = new();
        double worst = 0;
        foreach (Drill drill in DrillCatalogue.Scripted)
        {
            FlightLog table = DrillRunner.Fly(drill, unit, profile), fitted = DrillRunner.Fly(drill, unit, profile, rotorHold: Hold);
            // it is another flight, not the same one again
            Assert.NotEqual(table.Samples[^1].State.p_WB, fitted.Samples[^1].State.p_WB);
            foreach (Metric metric in MetricCatalogue.All.Where(m => m.Drill == drill))
            {
                double expected = metric.Read(table), actual = metric.Read(fitted), difference = Math.Abs(actual - expected);
                double share = difference / Math.Abs(expected);
                Assert.True(
                    share < 5e-4 || difference < 0.01 * metric.Floor,
                    $"{metric.Name}: {expected} by the table, {actual} by polynomials");
                worst = Math.Max(worst, share);
            }
        }
        output.WriteLine($"{name}: metrics differ by {worst:p4} at most");
    }
}
