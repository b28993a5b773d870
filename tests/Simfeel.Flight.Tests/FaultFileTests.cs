using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests.Traces;
using Simfeel.Physics;
using Simfeel.Physics.Guards;
using Simfeel.Physics.Lanes;

namespace Simfeel.Flight.Tests;

/// <summary>Faults on their way from the kernel to a file: drills and sessions say which craft, the file flies the step again.</summary>
public class FaultFileTests
{
    [Fact]
    public void A_drill_says_which_craft_of_several_was_stopped_and_in_which_drill()
    {
        TunedUnit good = Starters.Get("wagtail"), bad = Spoilt(good);
        FlightFaultException fault = Assert.Throws<FlightFaultException>(() => DrillRunner.FlyLanes<Lane4>(DrillCatalogue.Stop, [good, good, bad], Starters.Profile));
        Assert.StartsWith("Spoilt in drill stop: the flight was stopped at ", fault.Message, StringComparison.Ordinal);
        Assert.Equal((2, KernelStage.BodyAir), (fault.Record.Lane, fault.Record.Stage));
    }

    [Fact]
    public void A_session_says_which_craft_was_stopped_and_the_recording_up_to_there_is_whole()
    {
        using TempFolder folder = new();
        TunedUnit good = Flights.Build.Unit, bad = Spoilt(good);
        string file = folder.File("flight.arrow");
        using FlightSession session = new(good, bad, Starters.Profile, new());
        using (Simfeel.Flight.Traces.TraceRecorder recorder = Simfeel.Flight.Traces.TraceRecorder.Start(file, Flights.Header))
        {
            FlightFaultException fault = Assert.Throws<FlightFaultException>(() =>
            {
                for (int n = 0; n < 1000; n++)
                {
                    PilotInput input = PilotInput.Of(new(0, 0, 0, 0.5), n == 500 ? PilotSwitches.SwapFromStart : PilotSwitches.Armed);
                    session.Fly(input);
                    recorder.Add(input, session);
                }
            });
            Assert.StartsWith("Spoilt: ", fault.Message, StringComparison.Ordinal);
        }
        using Simfeel.Flight.Traces.TraceReader reader = Simfeel.Flight.Traces.TraceReader.Open(file);
        Simfeel.Flight.Traces.TraceRow row = reader.NewRow();
        while (reader.Read(row))
        {
        }
        Assert.Equal(500, row.Reading);
        Assert.False(reader.CutShort);
    }

    [Fact]
    public void The_file_flies_the_step_again()
    {
        using TempFolder folder = new();
        FlightFaultException fault = Fault();
        string? file = FaultFile.Write(fault, Path.Combine(folder.File("new"), "faults"), out string problem);
        Assert.Equal("", problem);
        Assert.Equal("simfeel-fault-bodyair-0-0.txt", Path.GetFileName(file));
        // twice the same fault, once the file
        Assert.Equal(file, FaultFile.Write(fault, Path.GetDirectoryName(file)!, out _));
        Assert.Single(Directory.GetFiles(Path.GetDirectoryName(file)!));
        Assert.Equal((fault.Record.Stage, fault.Record.Broken), FaultFile.Read(file!).Fly());
    }

    [Fact]
    public void What_cannot_be_written_or_read_has_one_clear_error()
    {
        using TempFolder folder = new();
        string taken = folder.File("file"), large = folder.File("large");
        File.WriteAllText(taken, "");
        Assert.Null(FaultFile.Write(Fault(), Path.Combine(taken, "below"), out string problem));
        Assert.Contains("cannot be written", problem, StringComparison.Ordinal);
        File.WriteAllText(large, new string('#', FaultFile.MostCharacters + 1));
        foreach (string file in new[] { taken, large, folder.File("missing") })
            Assert.StartsWith(file + ": ", Assert.Throws<FormatException>(() => FaultFile.Read(file)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void It_is_found_behind_what_threads_wrap_it_in()
    {
        FlightFaultException fault = Fault();
        Assert.Same(fault, FaultFile.In(fault));
        Assert.Same(fault, FaultFile.In(new AggregateException(new IOException(), new AggregateException(fault))));
        Assert.Same(fault, FaultFile.In(new InvalidOperationException("", fault)));
        Assert.Null(FaultFile.In(new AggregateException(new IOException())));
    }

    private static FlightFaultException Fault() => Assert.Throws<FlightFaultException>(() =>
        DrillRunner.Fly(DrillCatalogue.Stop, Spoilt(Starters.Get("wagtail")), Starters.Profile));

    /// <summary>A drag area that no build file can have, and that the kernel does not ask about.</summary>
    private static TunedUnit Spoilt(TunedUnit unit)
    {
        Craft craft = unit.Unit.Craft with { DragArea = new(0.01, 0.01, double.NaN) };
        return unit with { Unit = unit.Unit with { Name = "Spoilt", Craft = craft } };
    }
}
