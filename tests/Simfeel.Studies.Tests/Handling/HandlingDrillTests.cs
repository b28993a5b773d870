using System.Numerics;
using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Physics;
using Simfeel.Studies.Handling;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Tests.Metrics;

namespace Simfeel.Studies.Tests.Handling;

/// <summary>What the sticks of the handling drills ask for, and what is read off made-up logs and responses.</summary>
public class HandlingDrillTests
{
    private const double Start = Drill.LeadIn;

    /// <summary>
    /// A sweep whose frequency rises exponentially from w0 to w1 over T has the phase w0 T / ln(w1 / w0) (e^(t ln(w1 / w0) / T) - 1); faded in
    /// and out over 0.2 s.
    /// </summary>
    [Fact]
    public void A_sweep_begins_at_its_crest_and_gets_faster_without_a_jump()
    {
        const double amplitude = HandlingDrills.Amplitude, from = HandlingDrills.LowestFrequency, to = HandlingDrills.HighestFrequency, time = HandlingDrills.SweepTime;
        Func<double, Simfeel.Flight.Sticks> sticks = Script(HandlingDrills.Chirp(HandlingAxis.Pitch));
        Assert.Equal(0, sticks(0).Pitch);
        Assert.Equal(0, sticks(Start - 0.01).Pitch);
        Assert.Equal(0, sticks(Start + time + 0.01).Pitch);
        // half faded in, still near the crest: 3 rad/s for a tenth of a second
        Assert.InRange(sticks(Start + 0.1).Pitch / amplitude, 0.5 * Math.Cos(0.34), 0.5 * Math.Cos(0.29));
        // after a third of the time the frequency is w0 times the cube root of the ratio
        double growth = Math.Pow(to / from, 1.0 / 3);
        Assert.Equal(amplitude * Math.Cos(from * time / Math.Log(to / from) * (growth - 1)), sticks(Start + (time / 3)).Pitch, 1e-9);
        // it falls through its centre at a quarter of a turn
        foreach (double after in (double[])[2, 5])
            Assert.Equal(Math.PI / 2, Phase(Crossing(after)) % Math.Tau, 0.01);
        // fading out
        Assert.InRange(Enumerable.Range(0, 1000).Max(n => sticks(Start + time - 0.1 - (n * 1e-5)).Pitch) / amplitude, 0.49, 0.56);
        Assert.Equal((0.0, 0.0, Starters.Get("wagtail").Throttle.HoverStick), (sticks(Start + 1).Roll, sticks(Start + 1).Yaw, sticks(Start + 1).Throttle));
        Assert.Equal(Start + time + HandlingDrills.RestTime, HandlingDrills.Chirp(HandlingAxis.Pitch).Duration);
        Assert.Equal(["roll-sweep", "pitch-sweep", "yaw-sweep"], Enum.GetValues<HandlingAxis>().Select(axis => HandlingDrills.Chirp(axis).Name));
        Assert.Same(HandlingDrills.Chirp(HandlingAxis.Yaw), HandlingDrills.Chirp(HandlingAxis.Yaw));

        static double Phase(double t) => from * time / Math.Log(to / from) * (Math.Exp(t * Math.Log(to / from) / time) - 1);

        // next time at which the stick falls through its centre
        double Crossing(double after)
        {
            double t = after;
            while (!(sticks(Start + t).Pitch > 0 && sticks(Start + t + 1e-5).Pitch <= 0)) t += 1e-5;
            return t;
        }
    }

    /// <summary>The rates that stick and thumb command add up to the angle: the integral of the curve over the thumb's limited way.</summary>
    [Theory]
    [InlineData(HandlingAxis.Roll, 1.0471975512)]
    [InlineData(HandlingAxis.Pitch, 2)]
    [InlineData(HandlingAxis.Yaw, 1.5)]
    public void A_change_commands_just_its_angle(HandlingAxis axis, double angle)
    {
        PilotProfile profile = Starters.Profile;
        Drill drill = HandlingDrills.AttitudeChange(axis, angle, profile);
        Func<double, Simfeel.Flight.Sticks> sticks = Script(drill);
        const double step = 1e-5;
        double thumb = 0, turned = 0, released = 0;
        for (int n = 0; n < drill.Duration / step; n++)
        {
            double wanted = Deflection(sticks(n * step));
            if (wanted == 1) released = n * step;
            thumb += Math.Clamp(wanted - thumb, -step / profile.ThumbTime, step / profile.ThumbTime);
            turned += step * axis.Curve(profile).Rate(thumb);
        }
        Assert.Equal(angle, turned, 0.001);
        Assert.Equal(released + HandlingDrills.WatchTime, drill.Duration, 1e-4);
        Assert.Equal(0, Deflection(sticks(Start - step)));
        Assert.Equal($"{axis.ToString().ToLowerInvariant()}-change", drill.Name);
        Assert.Throws<ArgumentOutOfRangeException>(() => HandlingDrills.AttitudeChange(axis, 0.01, profile));

        double Deflection(Simfeel.Flight.Sticks all) => axis == HandlingAxis.Roll ? all.Roll : axis == HandlingAxis.Pitch ? all.Pitch : all.Yaw;
    }

    [Fact]
    public void Doubts_are_said_each_and_together()
    {
        Assert.Equal("", Reading("", 0.9, false).Doubt);
        Assert.Equal("the coherence falls to 0.89: the craft's motion is not all from the stick", Reading("", 0.89, false).Doubt);
        Assert.Equal("the coherence falls to NaN: the craft's motion is not all from the stick", Reading("", double.NaN, false).Doubt);
        Assert.Equal("a rotor met its limits in the sweep, which is then not small", Reading("", 1, true).Doubt);
        Assert.Equal(
            "no phase; a rotor met its limits in the sweep, which is then not small; the coherence falls to 0.50: the craft's motion is not all from the stick",
            Reading("no phase", 0.5, true).Doubt);

        static HandlingReading Reading(string missing, double coherence, bool saturated) => new()
        {
            Bandwidth = new() { Omega180 = 1, PhaseBandwidth = 1, GainBandwidth = 1, Bandwidth = 1, PhaseDelay = 1, Missing = missing },
            CoherenceFloor = coherence,
            Saturated = saturated,
        };
    }

    /// <summary>
    /// An integrator behind a lag of 0.1 s and a delay of 0.05 s: the coherence is looked at from the bandwidth to twice the frequency of
    /// -180 degrees only, or everywhere where the response ends before.
    /// </summary>
    [Fact]
    public void Coherence_counts_where_the_criterion_looks()
    {
        static HandlingReading Read(double last, double badFrom, double badTo)
        {
            double[] frequencies = [.. Enumerable.Range(0, 400).Select(n => 0.5 * Math.Pow(last / 0.5, n / 399.0))];
            Complex[] values = [.. frequencies.Select(w => Complex.Exp(new(0, -0.05 * w)) / (new Complex(0, w) * new Complex(1, 0.1 * w)))];
            return HandlingReading.Of(new(frequencies, values, [.. frequencies.Select(w => w > badFrom && w < badTo ? 0.3 : 0.99)]), false);
        }

        HandlingReading good = Read(100, 0, 0);
        double bandwidth = good.Bandwidth.Bandwidth, end = 2 * good.Bandwidth.Omega180;
        Assert.Equal(0.99, good.CoherenceFloor);
        Assert.Equal(0.99, Read(100, 0, 0.98 * bandwidth).CoherenceFloor);
        Assert.Equal(0.3, Read(100, 0, 1.05 * bandwidth).CoherenceFloor);
        Assert.Equal(0.99, Read(100, 1.02 * end, 200).CoherenceFloor);
        Assert.Equal(0.3, Read(100, 0.95 * end, 200).CoherenceFloor);
        // without a phase of -180 degrees there is no end to look up to
        Assert.Equal(0.3, Read(4, 3.9, 5).CoherenceFloor);
        Assert.Equal(0.3, Read(4, 0, 0.6).CoherenceFloor);
    }

    /// <summary>Rows of the flight: a rotor at full duty or at idle anywhere but in the first row, which has no duty yet.</summary>
    [Fact]
    public void Saturation_is_any_rotor_at_a_limit_behind_the_first_row()
    {
        double idle = Starters.Get("wagtail").Unit.IdleDuty;
        Assert.False(HandlingFlight.Saturates(Log(2, (_, _) => 0.5)));
        Assert.False(HandlingFlight.Saturates(Log(2, (row, _) => row == 0 ? 0 : 0.5)));
        foreach ((double duty, bool saturates) in new (double, bool)[] { (1, true), (0.99, false), (idle, true), (idle + 0.01, false), (0, true) })
        {
            Assert.Equal(saturates, HandlingFlight.Saturates(Log(2, (row, k) => row == 1 && k == 3 ? duty : 0.5)));
            Assert.Equal(saturates, HandlingFlight.Saturates(Log(5, (row, k) => row == 4 && k == 0 ? duty : 0.5)));
        }
    }

    /// <summary>Quickness counts where the change is within a fifth of 60 degrees: 48 to 72.</summary>
    [Theory]
    [InlineData(60, true)]
    [InlineData(48.5, true)]
    [InlineData(71.5, true)]
    [InlineData(47.5, false)]
    [InlineData(72.5, false)]
    public void Quickness_is_read_over_about_its_angle(double degrees, bool counts)
    {
        // 5 rad/s until the angle is turned: quickness rate by angle
        double angle = degrees * Math.PI / 180, time = angle / 5;
        FlightLog log = SyntheticLog.Of(1, rate: t => new(t < time ? 5 : 0, 0, 0));
        double read = MetricCatalogue.All.Single(metric => metric.Name == "roll_quickness").Read(log);
        if (counts) Assert.Equal(1, read / (5 / angle), 0.005);
        else Assert.True(double.IsNaN(read));
    }

    [Fact]
    public void Records_and_ranges_that_make_no_response_are_refused()
    {
        double[] second = new double[1000], short_ = new double[999];
        Assert.Throws<ArgumentException>(() => ChirpIdentification.Identify(short_, short_, 0.001, 10, 100, false));
        Assert.Throws<ArgumentException>(() => ChirpIdentification.Identify(second, short_, 0.001, 10, 100, false));
        Assert.Equal(61, ChirpIdentification.Identify(second, second, 0.001, 10, 100, false).Frequencies.Count);
        foreach ((double from, double to) in new (double, double)[] { (0, 100), (-1, 100), (100, 100), (100, 10), (10, Math.PI / 0.001), (double.NaN, 100) })
            Assert.Throws<ArgumentException>(() => ChirpIdentification.Grid(from, to, 0.001));
        double[] grid = ChirpIdentification.Grid(10, 100, 0.001);
        Assert.Equal((61, 10.0, 100.0), (grid.Length, grid[0], Math.Round(grid[^1], 9)));
        Assert.Equal(Math.Pow(10, 1 / 60.0), grid[1] / grid[0], 1e-12);
        Assert.Equal(2, ChirpIdentification.Grid(10, 10.1, 0.001).Length);
    }

    private static FlightLog Log(int rows, Func<int, int, double> duty)
    {
        FlightLog log = SyntheticLog.Of(0.01);
        Sample[] samples = new Sample[rows];
        for (int row = 0; row < rows; row++)
        {
            for (int k = 0; k < 4; k++) samples[row].Duty[k] = duty(row, k);
        }
        return new() { Drill = log.Drill, Unit = log.Unit, Profile = log.Profile, Field = log.Field, Effort = 1, Samples = LogRows.Of(samples, 4), Sticks = log.Sticks };
    }

    private static Func<double, Simfeel.Flight.Sticks> Script(Drill drill)
    {
        Func<PilotView, Simfeel.Flight.Sticks> script = drill.NewScript(new(Starters.Get("wagtail"), Starters.Profile, 1));
        LogRow still = LogRows.Of([default], 4)[0];
        PilotView view = new(0.001);
        return time =>
        {
            view.Move(time, still);
            return script(view);
        };
    }
}
