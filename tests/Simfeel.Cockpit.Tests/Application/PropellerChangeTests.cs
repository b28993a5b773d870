using Simfeel.Cockpit.Parts;
using Simfeel.Flight;
using Simfeel.Physics.Rotors;
using static Simfeel.Cockpit.Platform.Scancode;

namespace Simfeel.Cockpit.Tests.Application;

/// <summary>Another propeller on the part bench needs a rotor table; the flight goes on meanwhile.</summary>
[Collection(WindowFixture.Collection)]
public class PropellerChangeTests(WindowFixture fixture)
{
    /// <summary>
    /// The change is held where its table would be computed. Were a frame or a restart to wait for it, the test would stand
    /// still until the guard lets go, and find that it did.
    /// </summary>
    [Fact]
    public void No_frame_waits_for_a_rotor_table() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, (_, options) => options with { StraightToTheField = true });
        run.ToTheField();
        using ManualResetEventSlim gate = new(), begun = new();
        int windowThread = Environment.CurrentManagedThreadId, workThread = windowThread;
        run.App.BenchWorkBegins = () =>
        {
            workThread = Environment.CurrentManagedThreadId;
            begun.Set();
            gate.Wait();
        };
        bool guarded = false;
        using Timer guard = new(_ => gate.Set(), null, TimeSpan.FromSeconds(120), Timeout.InfiniteTimeSpan);
        RotorTable before = Table(run);

        PartBench bench = run.App.BenchOf(0);
        bench.Change("propeller.pitch_in", 4.17);
        begun.Wait();
        FlightSession session = run.App.Outing!.Stage.Session;
        double time = session.Time;
        run.Press(Space);
        run.Frames(0.5);
        guarded |= gate.IsSet;
        Assert.True(session.Time > time + 0.4, "the flight stood still");
        Assert.Equal(PartBenchState.Working, bench.State);
        run.Press(R);
        run.Frames(0.1);
        guarded |= gate.IsSet;
        Assert.Same(before, Table(run));
        Assert.Equal(PartBenchState.Working, bench.State);
        Assert.False(guarded, "a frame waited");
        Assert.NotEqual(windowThread, workThread);

        gate.Set();
        bench.Settled.Wait();
        run.Frames(0.1);
        Assert.Same(before, Table(run));
        run.Press(R);
        Assert.NotSame(before, Table(run));
        Assert.Same(bench.Result!.Unit.Unit.Craft.Rotors[0].Table, Table(run));
    });

    private static RotorTable Table(AppRun run) => run.App.Outing!.Build(0).Unit.Unit.Craft.Rotors[0].Table;
}
