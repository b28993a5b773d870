using Simfeel.Physics;

namespace Simfeel.Cockpit.Sound;

/// <summary>
/// What a flown craft sounds like one metre away, in mono, from rotor speeds, thrusts and air speed alone. The same
/// constants for every build: a build sounds louder only where its physics makes it so. Nothing is allocated after
/// construction.
/// </summary>
/// <remarks>
/// Tone: a compact force F that fluctuates radiates the pressure amplitude f F / (2 c r) at its frequency f, the far field
/// of a dipole along its axis, p = (dF/dt) / (4 pi c r) (Curle, Proc. R. Soc. A 231, 1955). The fluctuating share of the
/// thrust, <see cref="Unsteady"/>, and the fall of the harmonics by 1/k are our choice, so that a hovering 5 inch craft comes
/// to about 75 dB at 1 m (common practice). Broadband: sound power of such sources goes with the sixth power of the speed
/// (the same paper), so pressure with the third power of the tip speed. Wind: with the dynamic pressure. Thump: common
/// practice.
/// </remarks>
public sealed class RotorSound
{
    /// <summary>Samples a second.</summary>
    public const int Rate = 48_000;

    // m/s, at 15 degrees (ISO 2533)
    private const double SoundSpeed = 340.3;

    // Share of the thrust that fluctuates at the blade-pass frequency.
    private const double Unsteady = 0.05;

    // Broadband pressure (Pa rms) of one rotor of 63.5 mm radius at 100 m/s tip speed without load, and the thrust
    // coefficient T / (rho A U^2) that doubles it, about that of hover.
    private const double Broadband = 0.02, BroadbandRadius = 0.0635, BroadbandTipSpeed = 100, BroadbandLoad = 0.015, AirDensity = 1.225;

    // Share of the dynamic pressure that is heard as wind.
    private const double Wind = 0.001;

    // Pressure, Pa, that would fill the samples; what comes near it is rounded off.
    private const double FullScale = 4;

    // gain and mute take effect within this time, or they would click
    private const double GainTime_s = 0.01;

    private readonly RotorTone[] _tones = new RotorTone[Craft.MaxRotors];
    private readonly double[] _pressures = new double[Rate / 10];
    private Noise _broadband = new(Rate, 500, 7000, 0x5EA60111);
    private Noise _wind = new(Rate, 40, 350, 0x0DDB1A5E);
    private Thump _thump;
    private double _gain;
    private double _gainNow;

    /// <summary>Master gain, 0 to 1, the same for every build.</summary>
    public double Gain
    {
        get => _gain;
        set => _gain = double.IsNaN(value) ? 0 : Math.Clamp(value, 0, 1);
    }

    /// <summary>Silence, without touching the gain.</summary>
    public bool IsMuted { get; set; }

    /// <summary>Makes the next samples.</summary>
    /// <param name="samples">Receives them, -1 to 1.</param>
    /// <param name="now">What holds at their end; they begin with what held at the end of the last ones.</param>
    public void Fill(Span<float> samples, in SoundMoment now)
    {
        // one impact is one thump, however the samples are cut up
        double impact = now.Impact;
        while (samples.Length > 0)
        {
            int length = Math.Min(samples.Length, _pressures.Length);
            FillPart(samples[..length], now, impact);
            samples = samples[length..];
            impact = 0;
        }
    }

    /// <summary>Blade-pass frequency, Hz.</summary>
    /// <param name="blades">Blades of a propeller.</param>
    /// <param name="speed">Its speed, rad/s.</param>
    public static double BladePassFrequency(int blades, double speed) => blades * Math.Abs(speed) / (2 * Math.PI);

    private void FillPart(Span<float> samples, in SoundMoment now, double impact)
    {
        Span<double> pressures = _pressures.AsSpan(0, samples.Length);
        pressures.Clear();
        double broadbandPower = 0;
        for (int n = 0; n < Craft.MaxRotors; n++)
        {
            bool turns = n < now.RotorCount;
            double speed = turns ? Finite(now.Speeds[n]) : 0;
            double thrust = turns ? Math.Abs(Finite(now.Thrusts[n])) : 0;
            double frequency = BladePassFrequency(now.Blades, speed);
            _tones[n].Add(pressures, Rate, frequency, Unsteady * frequency * thrust / (2 * SoundSpeed));
            double broadband = BroadbandPressure(Math.Abs(speed) * now.Radius, thrust, now.Radius);
            broadbandPower += broadband * broadband;
        }
        double airSpeed = Finite(now.AirSpeed);
        _broadband.Add(pressures, Math.Sqrt(broadbandPower));
        _wind.Add(pressures, Wind * 0.5 * AirDensity * airSpeed * airSpeed);
        _thump.Add(pressures, Rate, Finite(impact));
        Scale(pressures, samples);
    }

    private static double BroadbandPressure(double tipSpeed, double thrust, double radius)
    {
        if (tipSpeed < 1 || radius <= 0) return 0;
        double load = thrust / (AirDensity * Math.PI * radius * radius * tipSpeed * tipSpeed);
        double speedRatio = tipSpeed / BroadbandTipSpeed;
        // a stalled or stopping rotor has any load at hardly any speed
        return Broadband * speedRatio * speedRatio * speedRatio * (radius / BroadbandRadius) * (1 + Math.Min(load / BroadbandLoad, 3));
    }

    private void Scale(Span<double> pressures, Span<float> samples)
    {
        double gain = IsMuted ? 0 : _gain;
        double step = 1 - Math.Exp(-1 / (GainTime_s * Rate));
        for (int n = 0; n < samples.Length; n++)
        {
            _gainNow += step * (gain - _gainNow);
            double loud = _gainNow * pressures[n] / FullScale;
            // x / sqrt(1 + x^2): hardly changes what is quiet, never passes 1
            samples[n] = (float)(loud / Math.Sqrt(1 + (loud * loud)));
        }
    }

    private static double Finite(double value) => double.IsFinite(value) ? value : 0;
}
