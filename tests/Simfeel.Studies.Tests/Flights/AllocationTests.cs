using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Physics;
using Simfeel.Studies.Flights;

namespace Simfeel.Studies.Tests.Flights;

/// <summary>Finds are read while a craft is flown: nothing is left for the collector.</summary>
public class AllocationTests
{
    private static readonly CraftCondition Flying = new() { Armed = true };

    [Fact]
    public void Readings_allocate_nothing()
    {
        FlightLog log = DrillRunner.Fly(DrillCatalogue.Stop, Starters.Get("wagtail"), Starters.Profile);
        Sample[] samples = [.. log.Samples.Select(row => row.ToSample())];
        Flight.Sticks[] sticks = [.. log.Sticks];
        FlightFinds finds = new();
        Take(2000);
        // what the runtime does once, such as compiling the loop again, is not ours; what a reading leaves is left in every round
        Assert.Contains(0, Enumerable.Range(0, 3).Select(_ => Taken(100_000)));
        Assert.NotNull(finds.Rows().Single(row => row.Name == "sharpest stop").A);

        long Taken(int readings)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            Take(readings);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        void Take(int readings)
        {
            for (int n = 0; n < readings; n++)
            {
                int row = n % samples.Length;
                if (row == 0) finds.Interrupt(n % 2);
                finds.Take(n % 2, samples[row], sticks[row], Flying, 1e-3, PilotSwitches.Armed);
            }
        }
    }
}
