using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Metrics;
using Xunit.Abstractions;

namespace Simfeel.Studies.Tests.Metrics;

/// <summary>What flying in single precision, as the draws of an uncertainty study do, changes in the answers.</summary>
public class SinglePrecisionTests(ITestOutputHelper output)
{
    /// <summary>
    /// Every metric of every starter build lies within 3 parts in 10 000 of double precision, or within a fiftieth of the least
    /// difference that is told. Set from the first run, in which the largest was 1.8 parts in 10 000 (way for a watt hour).
    /// </summary>
    [Fact]
    public void Every_metric_of_every_starter_hardly_differs()
    {
        TunedUnit[] units = [.. Starters.Names.Select(Starters.Get)];
        StudyConditions conditions = new(Starters.Air, Starters.Profile, new());
        IReadOnlyList<Metric> metrics = MetricCatalogue.All;
        double[][] exact = MetricFlights.Read(units, metrics, conditions);
        double[][] single = MetricFlights.Read(units, metrics, conditions with { Precision = Precision.Single });
        (double Share, string What) worst = (0, "");
        int differing = 0;
        for (int n = 0; n < units.Length; n++)
        {
            for (int m = 0; m < metrics.Count; m++)
            {
                double expected = exact[n][m], actual = single[n][m];
                string what = $"{Starters.Names[n]}, {metrics[m].Name}: {expected} and {actual}";
                Assert.True(double.IsNaN(expected) == double.IsNaN(actual), what);
                if (double.IsNaN(expected)) continue;
                double difference = Math.Abs(actual - expected), share = difference / Math.Abs(expected);
                Assert.True(share < 3e-4 || difference < metrics[m].Floor / 50, what);
                if (difference > 0) differing++;
                if (share > worst.Share && difference > metrics[m].Floor / 50) worst = (share, what);
            }
        }
        // it is another flight, not the same one again
        Assert.InRange(differing, units.Length * metrics.Count / 2, int.MaxValue);
        output.WriteLine($"{worst.Share:E1} {worst.What}");
    }

    /// <summary>A lane's bits do not depend on its neighbours, in single precision neither.</summary>
    [Fact]
    public void A_craft_flies_alike_alone_and_among_others()
    {
        TunedUnit[] units = [Starters.Get("curlew"), Starters.Get("wagtail"), Starters.Get("knot")];
        FlightLog alone = Fly([units[2]])[0], among = Fly(units)[2];
        Assert.Equal(alone.Hash(), among.Hash());
        Assert.NotEqual(alone.Hash(), DrillRunner.Fly(DrillCatalogue.Stop, units[2], Starters.Profile).Hash());

        static FlightLog[] Fly(TunedUnit[] units) =>
            DrillBatch.Fly(DrillCatalogue.Stop, units, Starters.Profile, 1, new(), precision: Precision.Single);
    }
}
