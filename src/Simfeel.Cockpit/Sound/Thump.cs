namespace Simfeel.Cockpit.Sound;

/// <summary>A blow: a low tone that swells at once and dies away, louder for a harder impact. Common practice, no physics.</summary>
internal struct Thump
{
    private const double Frequency_Hz = 85, Attack_s = 0.004, Decay_s = 0.07;

    // pressure for each metre a second of impact, and the hardest that is told apart
    private const double Pressure = 0.25, Hardest = 12;

    private double _phase;
    private double _wanted;
    private double _pressure;

    /// <summary>Adds a block to the samples.</summary>
    /// <param name="samples">Sound pressures, Pa.</param>
    /// <param name="rate">Samples a second.</param>
    /// <param name="impact">Speed of an impact that began, m/s; 0 for none.</param>
    public void Add(Span<double> samples, int rate, double impact)
    {
        if (impact > 0) _wanted = Math.Max(_wanted, Pressure * Math.Min(impact, Hardest));
        if (_wanted < 1e-5 && _pressure < 1e-5)
        {
            _wanted = _pressure = _phase = 0;
            return;
        }
        double attack = 1 - Math.Exp(-1 / (Attack_s * rate));
        double decay = Math.Exp(-1 / (Decay_s * rate));
        for (int n = 0; n < samples.Length; n++)
        {
            _wanted *= decay;
            _pressure += attack * (_wanted - _pressure);
            _phase += Frequency_Hz / rate;
            _phase -= Math.Floor(_phase);
            samples[n] += _pressure * Math.Sin(2 * Math.PI * _phase);
        }
    }
}
