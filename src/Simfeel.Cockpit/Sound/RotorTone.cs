namespace Simfeel.Cockpit.Sound;

/// <summary>
/// The tone of one rotor: blade-pass frequency (blades times revolutions a second) and its first harmonics. Frequency and
/// loudness go straight from one block's end to the next one's, and the phase never jumps.
/// </summary>
internal struct RotorTone
{
    private const int Harmonics = 4;

    // Above this the pitch is out of the hearing of most pilots and near the half of the sample rate; it fades away.
    private const double FadeFrom_Hz = 14_000, FadeTo_Hz = 20_000;

    private double _phase;
    private double _frequency;
    private double _pressure;

    /// <summary>Adds a block to the samples.</summary>
    /// <param name="samples">Sound pressures at 1 m, Pa.</param>
    /// <param name="rate">Samples a second.</param>
    /// <param name="frequency">Blade-pass frequency at the end of the block, Hz.</param>
    /// <param name="pressure">Amplitude of the first harmonic at the end of the block, Pa.</param>
    public void Add(Span<double> samples, int rate, double frequency, double pressure)
    {
        double frequencyStep = (frequency - _frequency) / samples.Length;
        double pressureStep = (pressure - _pressure) / samples.Length;
        for (int n = 0; n < samples.Length; n++)
        {
            _frequency += frequencyStep;
            _pressure += pressureStep;
            _phase += _frequency / rate;
            _phase -= Math.Floor(_phase);
            (double sine, double cosine) = Math.SinCos(2 * Math.PI * _phase);
            // sin(k a) = 2 cos(a) sin((k - 1) a) - sin((k - 2) a)
            double before = 0, now = sine, sum = 0;
            for (int k = 1; k <= Harmonics; k++)
            {
                sum += now / k * Audible(k * _frequency);
                (before, now) = (now, (2 * cosine * now) - before);
            }
            samples[n] += _pressure * sum;
        }
        (_frequency, _pressure) = (frequency, pressure);
    }

    private static double Audible(double frequency) =>
        frequency <= FadeFrom_Hz ? 1 : Math.Max(0, (FadeTo_Hz - frequency) / (FadeTo_Hz - FadeFrom_Hz));
}
