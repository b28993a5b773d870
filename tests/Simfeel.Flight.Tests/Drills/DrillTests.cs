using Simfeel.Flight.Drills;
using Simfeel.Physics.Lanes;

namespace Simfeel.Flight.Tests.Drills;

public class DrillTests
{
    public static TheoryData<string> Names => [.. DrillCatalogue.All.Select(drill => drill.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void The_same_flight_gives_the_same_bits_in_every_lane_and_width(string name)
    {
        Drill drill = DrillCatalogue.All.First(d => d.Name == name);
        TunedUnit a = Starters.Get("wagtail"), b = Starters.Get("curlew");
        ulong alone = DrillRunner.Fly(drill, b, Starters.Profile).Hash();
        Assert.Equal(alone, DrillRunner.Fly(drill, b, Starters.Profile).Hash());
        Assert.Equal(alone, DrillRunner.FlyLanes<Lane4>(drill, [a, b], Starters.Profile)[1].Hash());
        Assert.Equal(alone, DrillRunner.FlyLanes<Lane8>(drill, [a, a, a, a, a, a, a, b], Starters.Profile)[7].Hash());
    }

    [Theory]
    [InlineData("wagtail")]
    [InlineData("curlew")]
    public void Hover_stays_put(string name)
    {
        FlightLog log = DrillRunner.Fly(DrillCatalogue.Hover, Starters.Get(name), Starters.Profile);
        Assert.True(log.Samples[^1].State.p_WB.Length < 0.02, $"drifted {log.Samples[^1].State.p_WB}");
        Assert.True(log.Samples[^1].State.w_WB_B.Length < 1e-3);
    }

    /// <summary>Free fall bounds the drop: 4.903 m in a vacuum (g/2), and the air takes something away.</summary>
    [Fact]
    public void Drop_falls_less_than_in_a_vacuum_but_most_of_it()
    {
        FlightLog log = DrillRunner.Fly(DrillCatalogue.Drop, Starters.Get("wagtail"), Starters.Profile);
        int row = (int)Math.Round((Drill.LeadIn + 1) / log.Period);
        Assert.InRange(log.Samples[row].State.p_WB.Z, 4.0, 4.903);
    }

    [Fact]
    public void Stop_ends_at_rest_and_flip_ends_upright()
    {
        FlightLog stop = DrillRunner.Fly(DrillCatalogue.Stop, Starters.Get("wagtail"), Starters.Profile);
        Assert.True(stop.Samples[^1].State.w_WB_B.Length < 0.2);
        FlightLog flip = DrillRunner.Fly(DrillCatalogue.Flip, Starters.Get("curlew"), Starters.Profile);
        Assert.True(flip.Samples[^1].State.q_WB.ToMatrix().M22 > Math.Cos(10 * Math.PI / 180));
    }

    [Fact]
    public void Less_effort_turns_more_slowly()
    {
        double full = Peak(1), half = Peak(0.5);
        Assert.True(half < 0.5 * full, $"{half} against {full}");

        static double Peak(double effort) =>
            DrillRunner.Fly(DrillCatalogue.Roll, Starters.Get("wagtail"), Starters.Profile, effort)
                .Samples.Max(sample => sample.State.w_WB_B.X);
    }

    [Theory]
    [InlineData(0.2)]
    [InlineData(1.1)]
    [InlineData(double.NaN)]
    public void Effort_out_of_range_is_refused(double effort) =>
        Assert.Throws<ArgumentOutOfRangeException>(
            () => DrillRunner.Fly(DrillCatalogue.Roll, Starters.Get("wagtail"), Starters.Profile, effort));

    [Fact]
    public void A_tick_allocates_nothing()
    {
        using FlightLoop<Lane1> loop = new(4, Starters.Profile, new());
        TunedUnit unit = Starters.Get("wagtail");
        loop.SetUnit(0, unit, unit.Hover.State);
        for (int n = 0; n < 2000; n++) loop.Tick();
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int n = 0; n < 10000; n++)
        {
            loop.SetCommand(0, new(0.1, 0.2, 0), unit.HoverShare);
            loop.Tick();
        }
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }
}
