using Simfeel.Benchmarks.Soak;
using Simfeel.Flight.Fields;
using Simfeel.Flight.Tests.Traces;
using Simfeel.Flight.Traces;

namespace Simfeel.Flight.Tests;

/// <summary>Two minutes of what the benchmarks fly for hours: an erratic pilot in gusts, crashes, a recording, a replay.</summary>
public class SoakTests
{
    [Fact]
    public void Two_minutes_in_gusts_with_crashes_fly_again_from_their_file()
    {
        using TempFolder folder = new();
        FlyableBuild a = Flights.Read("wagtail"), b = Flights.Read("curlew");
        string fieldFile = Path.Combine(AppContext.BaseDirectory, "fields", "gull-point.toml"), file = folder.File("soak.arrow");
        FieldMap map = FieldReader.Read(fieldFile).Map!;
        FieldConditions gusts = new() { Seed = 8, WindSpeed = 7.7, WindFrom = 0.6 };
        TraceHeader header = TraceHeader.Of(a, b, Starters.Profile, gusts) with { FieldName = map.Name, FieldText = File.ReadAllText(fieldFile) };
        ulong end;
        using (SoakFlight flight = new(header, a, b, map, file, seed: 8))
        {
            flight.Fly(120);
            flight.Finish();
            end = flight.Hash;
            Assert.Equal(120, flight.Time, 9);
            Assert.True(flight.Pilot.Crashes >= 3, $"{flight.Pilot.Crashes} crashes");
            Assert.True(flight.Pilot.Swaps > 1, $"{flight.Pilot.Swaps} swaps");
            Assert.True(flight.MostAttitudeError < 1e-12, $"attitude {flight.MostAttitudeError}");
            Assert.True(flight.MostEnergyShare is > 0 and < 0.5, $"energy {flight.MostEnergyShare}");
            Assert.Equal(flight.FinishedSize, flight.File.Size);
        }
        using TraceReader reader = TraceReader.Open(file);
        using Replay replay = new(reader, map);
        while (replay.Fly())
        {
        }
        Assert.Null(replay.FirstDifference);
        Assert.False(reader.CutShort);
        Assert.Equal((12_000, end), (replay.Rows, replay.Session.Hash()));
    }

    [Fact]
    public void A_trace_of_before_there_was_wind_is_read_as_still_air()
    {
        Dictionary<string, string> old = new(Flights.Header.ToMetadata());
        Assert.True(old.Remove("wind_speed_m_s") && old.Remove("wind_from_rad"));
        Assert.Equal(0, TraceHeader.FromMetadata(old).Conditions.WindSpeed);
        TraceHeader windy = Flights.Header with { Conditions = new() { WindSpeed = 3.25, WindFrom = 1.5 } };
        Assert.Equal(windy.Conditions, TraceHeader.FromMetadata(windy.ToMetadata()).Conditions);
    }
}
