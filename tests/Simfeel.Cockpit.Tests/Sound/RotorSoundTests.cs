using System.Numerics;
using MathNet.Numerics;
using MathNet.Numerics.IntegralTransforms;
using Simfeel.Cockpit.Sound;
using Simfeel.Physics;

namespace Simfeel.Cockpit.Tests.Sound;

public class RotorSoundTests
{
    private const double TwoPi = 2 * Math.PI;

    private static SoundMoment Hover(double rpm, double thrust, int blades = 3) => new()
    {
        RotorCount = 4,
        Blades = blades,
        Radius = 0.0635,
        Speeds = PerRotor.All(rpm * TwoPi / 60),
        Thrusts = PerRotor.All(thrust),
    };

    private static float[] Heard(in SoundMoment now, int samples, double gain = 1)
    {
        RotorSound sound = new() { Gain = gain };
        float[] start = new float[RotorSound.Rate / 2];
        sound.Fill(start, now);
        float[] heard = new float[samples];
        sound.Fill(heard, now);
        return heard;
    }

    private static double Rms(ReadOnlySpan<float> samples)
    {
        double sum = 0;
        foreach (float sample in samples) sum += sample * (double)sample;
        return Math.Sqrt(sum / samples.Length);
    }

    /// <summary>Blade-pass frequency is blades times revolutions a second, by definition.</summary>
    [Theory]
    [InlineData(3, 10_500)]
    [InlineData(2, 5_800)]
    [InlineData(4, 33_000)]
    [InlineData(3, 27_000)]
    public void The_loudest_tone_is_the_blade_pass_frequency(int blades, double rpm)
    {
        float[] heard = Heard(Hover(rpm, 2, blades), 1 << 15);
        double[] window = Window.Hann(heard.Length);
        Complex[] spectrum = [.. heard.Select((sample, n) => new Complex(sample * window[n], 0))];
        Fourier.Forward(spectrum);
        int peak = Enumerable.Range(1, heard.Length / 2).MaxBy(n => spectrum[n].Magnitude);
        double frequency = peak * (double)RotorSound.Rate / heard.Length;
        Assert.InRange(frequency / (blades * rpm / 60), 0.99, 1.01);
        // the second harmonic stands out of the noise beside it
        double second = spectrum[2 * peak].Magnitude;
        Assert.True(second > 3 * spectrum[(int)(2.3 * peak)].Magnitude, $"{second}");
    }

    [Fact]
    public void More_load_faster_tips_wind_and_gain_are_louder()
    {
        double hover = Rms(Heard(Hover(10_000, 1.6), 24_000));
        Assert.True(Rms(Heard(Hover(10_000, 3.2), 24_000)) > 1.5 * hover);
        Assert.True(Rms(Heard(Hover(20_000, 1.6), 24_000)) > 1.5 * hover);
        Assert.Equal(0.5, Rms(Heard(Hover(10_000, 1.6), 24_000, gain: 0.5)) / hover, 0.01);
        SoundMoment still = default, slow = default, fast = default;
        (slow.AirSpeed, fast.AirSpeed) = (10, 20);
        Assert.Equal(0, Rms(Heard(still, 24_000)), 1e-12);
        // pressure with the square of the air speed
        Assert.Equal(4, Rms(Heard(fast, 24_000)) / Rms(Heard(slow, 24_000)), 0.05);
    }

    /// <summary>A hovering 5 inch craft is about 75 dB at 1 m (common practice): 0.11 Pa.</summary>
    [Fact]
    public void Hover_is_as_loud_as_it_is()
    {
        SoundMoment hover = Hover(10_500, 1.6);
        // no two rotors of a hovering craft turn alike, so their tones do not add up in step
        for (int n = 0; n < 4; n++) hover.Speeds[n] *= 1 + (0.013 * n);
        double pressure = Rms(Heard(hover, 48_000)) * 4;
        Assert.InRange(20 * Math.Log10(pressure / 20e-6), 70, 80);
    }

    /// <summary>
    /// A jump of the phase or loudness between two frames would be a step; from sample to sample a tone of amplitude a and
    /// frequency f changes by at most 2 pi f a / rate, and its first four harmonics of amplitudes a / k by four times that.
    /// </summary>
    [Fact]
    public void Frames_join_without_a_click()
    {
        RotorSound sound = new() { Gain = 1 };
        float[] heard = new float[RotorSound.Rate];
        float[] begin = new float[4800];
        sound.Fill(begin, Hover(9000, 1.5));
        int at = 0;
        // 60 frames: a throttle blip, then a swap to a craft with other blades
        for (int frame = 0; frame < 60; frame++)
        {
            SoundMoment now = Hover(frame < 30 ? 9000 + (frame * 300) : 6000, frame < 30 ? 1.5 + (0.1 * frame) : 2, frame < 30 ? 3 : 2);
            // no broadband: noise has steps of its own
            now.Radius = 0;
            sound.Fill(heard.AsSpan(at, 800), now);
            at += 800;
        }
        const double loudest = 4 * 0.05 * 900 * 4.5 / (2 * 340.3) / 4;
        double allowed = 1.2 * 4 * TwoPi * 900 / RotorSound.Rate * loudest;
        double inside = 0, between = 0;
        for (int n = 801; n < heard.Length; n++)
        {
            double step = Math.Abs(heard[n] - heard[n - 1]);
            if (n % 800 == 0) between = Math.Max(between, step);
            else inside = Math.Max(inside, step);
        }
        Assert.InRange(inside, 0.01, allowed);
        Assert.True(between <= inside, $"{between} between frames, {inside} inside");
    }

    [Fact]
    public void An_impact_is_one_thump_that_grows_with_its_speed_and_dies_away()
    {
        double soft = Rms(Thump(2)), hard = Rms(Thump(8));
        Assert.InRange(hard / soft, 2.5, 4.5);
        float[] heard = Thump(8);
        Assert.True(Rms(heard.AsSpan(0, 4800)) > 30 * Rms(heard.AsSpan(24_000, 4800)));
        Assert.True(Math.Abs(heard[0]) < 0.01);

        static float[] Thump(double impact)
        {
            RotorSound sound = new() { Gain = 1 };
            float[] heard = new float[48_000];
            sound.Fill(heard.AsSpan(0, 4800), default);
            sound.Fill(heard, new SoundMoment { Impact = impact });
            return heard;
        }
    }

    [Fact]
    public void Mute_is_silence_and_what_is_no_number_is_no_sound()
    {
        RotorSound sound = new() { Gain = 1, IsMuted = true };
        float[] heard = new float[9600];
        sound.Fill(heard, Hover(10_000, 2));
        Assert.Equal(0, Rms(heard));
        SoundMoment bad = Hover(double.NaN, double.PositiveInfinity);
        bad.AirSpeed = double.NaN;
        bad.Impact = double.NaN;
        sound.IsMuted = false;
        sound.Fill(heard, bad);
        sound.Gain = double.NaN;
        Assert.Equal(0, sound.Gain);
        Assert.All(heard, sample => Assert.True(float.IsFinite(sample)));
        sound.Gain = 1;
        sound.Fill(heard, Hover(60_000, 1e6));
        Assert.All(heard, sample => Assert.InRange(sample, -1f, 1f));
    }

    [Fact]
    public void Frames_allocate_nothing()
    {
        RotorSound sound = new() { Gain = 1 };
        float[] heard = new float[800];
        SoundMoment now = Hover(10_000, 2);
        sound.Fill(heard, now);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int n = 0; n < 100; n++) sound.Fill(heard, now);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }
}
