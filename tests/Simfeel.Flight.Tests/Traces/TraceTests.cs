using System.Text;
using Simfeel.Flight.Traces;
using Simfeel.Physics;

namespace Simfeel.Flight.Tests.Traces;

/// <summary>What is recorded is what was flown, and flies again to the same bits.</summary>
public class TraceTests
{
    private const double Seconds = 2.505;

    private static readonly Lazy<byte[]> Whole = new(() => Flights.Record(Seconds));

    [Fact]
    public void A_flight_with_restart_swaps_and_shadow_flies_again_to_the_same_hashes()
    {
        using TraceReader trace = TraceReader.Open(new MemoryStream(Whole.Value));
        ReplayResult result = Replay.Run(trace);
        Assert.Equal(new(251, Seconds, null, false), result);
    }

    [Fact]
    public void Two_unlike_builds_with_edits_and_a_polar_fly_again_without_their_files()
    {
        using TempFolder folder = new();
        string polar = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "polars", "sda1075-ncrit4.csv"));
        File.WriteAllText(folder.File("own.csv"), polar);
        string text = Flights.Build.Source.Text.Replace("blades = 3", "polar = \"own.csv\"\nblades = 3", StringComparison.Ordinal);
        File.WriteAllText(folder.File("own.toml"), text);
        FlyableBuild plain = FlyableBuild.Read(folder.File("own.toml"), Starters.Air, Starters.Profile).Build!;
        FlyableResult changed = FlyableBuild.Of(
            plain.Source, plain.Name, [new("battery.x_mm", 3.1), new("frame.wheelbase_mm", 230)], Starters.Air, Starters.Profile);
        Assert.True(changed.Build is not null, changed.Message);
        FlyableBuild a = changed.Build with { Path = plain.Path }, b = Flights.Build;
        File.Delete(folder.File("own.csv"));
        File.Delete(folder.File("own.toml"));

        string file = folder.File("flight.arrow");
        using (FlightSession session = new(a.Unit, b.Unit, Starters.Profile, new()))
        using (TraceRecorder recorder = TraceRecorder.Start(file, TraceHeader.Of(a, b, Starters.Profile, new())))
            Flights.Record(session, recorder, 1000);
        using TraceReader trace = TraceReader.Open(file);
        Assert.Equal("own.csv", trace.Header.A.Source.PolarFile);
        Assert.Equal(polar, trace.Header.A.Source.PolarText);
        Assert.Equal("own.toml", trace.Header.A.File);
        Assert.True(Replay.Run(trace) is { Same: true, Rows: 100 });
    }

    [Fact]
    public void Another_seed_or_stick_is_found_at_its_row()
    {
        using TraceReader trace = TraceReader.Open(new MemoryStream(Whole.Value));
        using Replay replay = new(trace);
        for (int n = 0; replay.TryNext(out PilotInput input); n++)
        {
            // one step of 65535 of the throttle, which the radio hands on 4 readings later, in row 40
            replay.Session.Fly(n == 404 ? input with { Throttle = (ushort)(input.Throttle + 1) } : input);
            replay.Compare();
        }
        Assert.Equal(40, replay.FirstDifference);
    }

    [Fact]
    public void Rows_hold_the_inputs_and_both_craft()
    {
        using TraceReader trace = TraceReader.Open(new MemoryStream(Whole.Value));
        using FlightSession session = Flights.NewSession();
        TraceRow row = trace.NewRow();
        long reading = 0;
        int shadows = 0;
        while (trace.Read(row))
        {
            foreach (PilotInput input in row.Inputs)
            {
                Assert.Equal(Flights.Input(reading++), input);
                session.Fly(input);
            }
            Assert.Equal(reading, row.Reading);
            Assert.Equal(session.Time, row.SinceRestart);
            Assert.Equal(session.Flown, row.Flown);
            Assert.Equal(session.Hash(), row.Hash);
            for (int craft = 0; craft < 2; craft++)
            {
                Assert.Equal(session.Flies(craft), row.Flies(craft));
                if (!row.Flies(craft)) continue;
                if (craft != row.Flown) shadows++;
                Dictionary<string, float> values = CraftColumns.Names(4).Zip(row.Values(craft).ToArray()).ToDictionary(p => p.First, p => p.Second);
                Sample sample = session.Sample(craft);
                Assert.Equal((float)sample.State.p_WB.X, values["position_north_m"]);
                Assert.Equal((float)sample.State.v_WB.Z, values["velocity_down_m_s"]);
                Assert.Equal((float)sample.State.q_WB.Z, values["attitude_z"]);
                Assert.Equal((float)sample.State.w_WB_B.Y, values["pitch_rate_rad_s"]);
                Assert.Equal((float)sample.PackVoltage, values["pack_voltage_V"]);
                Assert.Equal((float)sample.State.Charge, values["pack_charge_A_s"]);
                Assert.Equal((float)sample.State.RotorSpeeds[3], values["rotor4_speed_rad_s"]);
                Assert.Equal((float)sample.ReserveDown[1], values["rotor2_reserve_down_N_m"]);
            }
        }
        Assert.Equal(2505, reading);
        Assert.Equal(70, shadows);
        Assert.False(trace.CutShort);
    }

    [Fact]
    public void The_header_comes_back_as_it_was()
    {
        PilotProfile profile = new()
        {
            RadioDelay = 0.1 + 0.2,
            FeedForward = 1.0 / 3,
            StateOfCharge = 0.77,
            Yaw = new(1.1, 7.3, 0.25),
            StepRate = 8000,
            StepsPerLoop = 2,
            StepsPerStickReading = 16,
        };
        TraceHeader header = Flights.Header with
        {
            FieldName = "Gull Point",
            FieldText = "name = \"Gull Point\"\n",
            Profile = profile,
            VideoDelay = 0.028,
            SampleRate = 50,
            Blind = true,
            Conditions = new() { Effects = AirEffects.Wake, Seed = -7, StartHeight = 12.5 },
        };
        TraceHeader back = TraceHeader.FromMetadata(header.ToMetadata());
        Assert.Equal(header.ToMetadata(), back.ToMetadata());
        Assert.Equal(profile, back.Profile);
        Assert.Equal(header.Conditions, back.Conditions);
        Assert.Equal(header.Air, back.Air);
        Assert.Equal("wagtail.toml", back.A.File);
        Assert.Equal(10, back.ReadingsPerRow);
    }

    [Fact]
    public void A_cut_at_any_byte_keeps_all_whole_batches()
    {
        byte[] whole = Whole.Value;
        IReadOnlyList<(long End, int Rows)> batches = Flights.Batches(new MemoryStream(whole));
        Assert.Equal(251, batches[^1].Rows);
        Random random = new(5);
        for (int n = 0; n < 200; n++)
        {
            int length = random.Next(Flights.HeaderLength(whole), whole.Length - 1);
            using TraceReader trace = TraceReader.Open(new MemoryStream(whole, 0, length));
            TraceRow row = trace.NewRow();
            int rows = 0;
            while (trace.Read(row)) rows++;
            Assert.True(trace.CutShort);
            Assert.Equal(batches.LastOrDefault(batch => batch.End <= length).Rows, rows);
        }
    }

    [Fact]
    public void A_sample_rate_that_does_not_divide_the_readings_is_refused()
    {
        TraceException e = Assert.Throws<TraceException>(() => TraceRecorder.Start(Stream.Null, Flights.Header with { SampleRate = 300 }));
        Assert.Contains("300 rows a second", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_text_changed_by_hand_is_found_by_its_hash()
    {
        byte[] bytes = [.. Whole.Value];
        int at = bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes("wheelbase_mm = 225"));
        bytes[at + 15] = (byte)'9';
        TraceException e = Assert.Throws<TraceException>(() => TraceReader.Open(new MemoryStream(bytes)));
        Assert.Contains("_sha256", e.Message, StringComparison.Ordinal);
    }
}
