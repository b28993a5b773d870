using Simfeel.Cockpit.Input;
using Simfeel.Flight;
using static Simfeel.Cockpit.Platform.Scancode;

namespace Simfeel.Cockpit.Tests.Application;

/// <summary>The level grid from its key to the readout, and what the helps for teaching cost in flight.</summary>
[Collection(WindowFixture.Collection)]
public class LevelGridFlightTests(WindowFixture fixture)
{
    [Fact]
    public void The_grid_stays_where_it_was_switched_on_and_the_readout_tells_the_height() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, (_, options) => options with { StraightToTheField = true });
        run.ToTheField();
        FlightSession session = run.App.Outing!.Stage.Session;
        run.Press(Space);
        run.Climb(2.5);
        // until it rises no more
        run.Frames(2);
        double at = -session.State(0).p_WB.Z, shown = run.App.Readout.Builds[0].Height;
        run.Press(H);
        Assert.Equal(at, run.App.Painter.LevelGrid);
        Assert.Equal(shown, run.App.Readout.GridHeight);
        Assert.True(at > 1.5, $"{at} m");
        AppRun.Key(S, down: true);
        run.Until(() => run.App.Readout.OverGrid < -0.5, 5, "it did not sink");
        AppRun.Key(S, down: false);
        Assert.Equal(at, run.App.Painter.LevelGrid);
        Assert.Equal(-session.State(0).p_WB.Z - at, run.App.Readout.OverGrid, 12);

        // while time is held, too
        run.Press(P);
        run.Press(H);
        Assert.Null(run.App.Painter.LevelGrid);
        Assert.True(double.IsNaN(run.App.Readout.GridHeight));
        run.Press(H);
        Assert.Equal(-session.State(0).p_WB.Z, run.App.Painter.LevelGrid);
        Assert.Equal(0, run.App.Readout.OverGrid);
    });

    [Fact]
    public void Grid_mass_view_and_marks_allocate_nothing_in_flight() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, (folder, options) => options with { StraightToTheField = true, Record = Path.Combine(folder, "flight.arrow") });
        run.ToTheField();
        run.Press(Space);
        run.Climb(1);
        run.App.Do(PilotAction.LevelGrid);
        run.App.Do(PilotAction.MassView);
        run.App.Do(PilotAction.Mark);
        run.Frames(3);
        long least = long.MaxValue;
        // the just-in-time compiler may still be at work in the first rounds
        for (int round = 0; round < 4 && least > 0; round++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            run.Frames(3);
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        Assert.Equal(0, least);
    });
}
