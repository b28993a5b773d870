using Simfeel.Flight.Fields;
using Simfeel.Flight.Traces;

namespace Simfeel.Flight.Tests.Traces;

/// <summary>A trace brings its field along: contacts and crashes fly again to the same bits.</summary>
public class FieldTraceTests
{
    private static readonly string Text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "fields", "gull-point.toml"));

    private static readonly StickScript Script = new(
        (0.0, new(0, 0, 0, 0), PilotSwitches.Armed),
        (0.2, new(0, 0, 0, 0.6), PilotSwitches.Armed),
        (0.6, new(0, -0.5, 0, 0.05), PilotSwitches.Armed | PilotSwitches.Shadow),
        (3.5, new(0, 0, 0, 0), PilotSwitches.Restart),
        (3.501, new(0, 0, 0, 0), PilotSwitches.Armed));

    [Fact]
    public void A_crash_over_a_field_flies_again_to_the_same_hashes()
    {
        byte[] trace = Fly();
        using (TraceReader reader = TraceReader.Open(new MemoryStream(trace)))
        {
            TraceRow row = reader.NewRow();
            int crashed = 0, mended = 0;
            while (reader.Read(row))
            {
                if (row.Crashed(0)) crashed++;
                else if (crashed > 0) mended++;
            }
            Assert.True(crashed > 0, "the craft never crashed");
            Assert.True(mended > 0, "the restart did not mend it");
        }
        using TraceReader again = TraceReader.Open(new MemoryStream(trace));
        Assert.Equal(new(400, 4, null, false), Replay.Run(again));
    }

    [Fact]
    public void Without_its_walls_and_ground_the_flight_differs_where_the_craft_touches_them()
    {
        using TraceReader trace = TraceReader.Open(new MemoryStream(Fly()));
        FieldMap sea = trace.Header.ReadField()! with { Land = [new(900, 900, 0), new(901, 900, 0), new(901, 901, 0)], Solids = [] };
        ReplayResult result = Replay.Run(trace, sea);
        Assert.NotNull(result.FirstDifference);
        Assert.Equal((result.FirstDifference.Value + 1) / 100.0, result.Seconds, 9);
    }

    [Fact]
    public void A_field_that_cannot_be_read_again_is_said()
    {
        TraceHeader header = Flights.Header with { FieldName = "Gull Point", FieldText = Text.Replace("sea_depth_m = 18", "sea_depth_m = -18", StringComparison.Ordinal) };
        TraceException e = Assert.Throws<TraceException>(header.ReadField);
        Assert.Contains("'Gull Point' cannot be made again", e.Message, StringComparison.Ordinal);
        Assert.Contains("sea_depth_m", e.Message, StringComparison.Ordinal);
    }

    private static byte[] Fly()
    {
        TraceHeader header = Flights.Header with { FieldName = "Gull Point", FieldText = Text };
        using MemoryStream stream = new();
        using FlightSession session = new(Flights.Build.Unit, Flights.Build.Unit, Starters.Profile, new(), header.ReadField());
        using TraceRecorder recorder = TraceRecorder.Start(stream, header);
        for (long n = 0; n < 4000; n++)
        {
            PilotInput input = Script.At(n, Starters.Profile.StickPeriod);
            session.Fly(input);
            recorder.Add(input, session);
        }
        recorder.Finish();
        Assert.Null(recorder.Trouble);
        return stream.ToArray();
    }
}
