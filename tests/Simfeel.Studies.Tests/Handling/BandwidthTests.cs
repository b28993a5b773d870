using Simfeel.Studies.Handling;

namespace Simfeel.Studies.Tests.Handling;

/// <summary>Bandwidth and phase delay of systems known in closed form, by formula and identified from records.</summary>
public class BandwidthTests
{
    public static TheoryData<int> Systems { get; } = [0, 1, 2, 3];

    [Theory]
    [MemberData(nameof(Systems))]
    public void Formula_gives_the_closed_form(int n)
    {
        ModelSystem system = ModelSystem.All[n];
        BandwidthCriterion read = BandwidthCriterion.Of(system.Analytic(40001), system.Type);
        Assert.Equal("", read.Missing);
        Near(system, read, 1e-6);
    }

    [Theory]
    [MemberData(nameof(Systems))]
    public void Sweep_gives_the_closed_form_within_2_percent(int n)
    {
        ModelSystem system = ModelSystem.All[n];
        Near(system, system.Swept(), 0.02);
    }

    [Theory]
    [MemberData(nameof(Systems))]
    public void Step_and_sweep_agree_within_3_percent(int n)
    {
        BandwidthCriterion sweep = ModelSystem.All[n].Swept(), step = ModelSystem.All[n].Stepped();
        Assert.InRange(step.Bandwidth / sweep.Bandwidth, 0.97, 1.03);
        Near(ModelSystem.All[n], step, 0.02);
    }

    [Fact]
    public void Says_why_there_is_no_bandwidth()
    {
        double[] w = [1, 10, 100];
        BandwidthCriterion read = BandwidthCriterion.Of(new(w, [.. w.Select(x => 1 / new System.Numerics.Complex(0, x))]), ResponseType.Rate);
        Assert.True(double.IsNaN(read.Omega180) && double.IsNaN(read.Bandwidth) && double.IsNaN(read.PhaseDelay));
        Assert.Contains("-180", read.Missing, StringComparison.Ordinal);
        Assert.Contains("-135", read.Missing, StringComparison.Ordinal);
    }

    [Fact]
    public void Says_where_the_response_ends_before_the_phase_delay()
    {
        FrequencyResponse whole = ModelSystem.All[0].Analytic(2001);
        int count = whole.Frequencies.Count(w => w < 30);
        BandwidthCriterion read = BandwidthCriterion.Of(new([.. whole.Frequencies.Take(count)], [.. whole.Values.Take(count)]), ResponseType.Rate);
        Assert.True(double.IsNaN(read.PhaseDelay) && !double.IsNaN(read.Bandwidth));
        Assert.Contains($"ends before {2 * BandwidthCriterion.Of(whole, ResponseType.Rate).Omega180:F1} rad/s", read.Missing, StringComparison.Ordinal);
    }

    [Fact]
    public void Noise_lowers_the_coherence_and_is_told()
    {
        double[] input = ModelSystem.Commands(HandlingDrills.Chirp(HandlingAxis.Roll));
        double[] output = ModelSystem.All[1].Simulate(input, 0.001);
        HandlingReading clean = Read(output);
        Assert.Equal("", clean.Doubt);
        Assert.InRange(clean.CoherenceFloor, 0.99, 1);
        Random random = new(7);
        HandlingReading noisy = Read([.. output.Select(y => y + (0.2 * (random.NextDouble() - 0.5)))]);
        Assert.True(noisy.CoherenceFloor < HandlingReading.BelievedCoherence, $"{noisy.CoherenceFloor}");
        Assert.Contains("coherence", noisy.Doubt, StringComparison.Ordinal);

        HandlingReading Read(double[] rate) => HandlingReading.Of(
            ChirpIdentification.Identify(input, rate, 0.001, HandlingFlight.From, HandlingFlight.To, integrate: true), saturated: false);
    }

    private static void Near(ModelSystem system, BandwidthCriterion read, double tolerance)
    {
        Close(system.W180, read.Omega180);
        Close(system.Phase, read.PhaseBandwidth);
        Close(system.Gain, read.GainBandwidth);
        Close(system.Bandwidth, read.Bandwidth);
        Close(system.PhaseDelay, read.PhaseDelay);

        void Close(double expected, double value) => Assert.InRange(value / expected, 1 - tolerance, 1 + tolerance);
    }
}
