namespace Simfeel.Cockpit.Sound;

/// <summary>
/// Noise between two frequencies: white noise through a first-order high-pass and low-pass filter. Its loudness goes
/// straight from one block's end to the next one's.
/// </summary>
internal struct Noise
{
    private readonly double _lowPass;
    private readonly double _highPass;
    private readonly double _scale;
    private uint _seed;
    private double _slow;
    private double _smooth;
    private double _pressure;

    /// <summary>A source.</summary>
    /// <param name="rate">Samples a second.</param>
    /// <param name="low_Hz">Where it starts.</param>
    /// <param name="high_Hz">Where it ends.</param>
    /// <param name="seed">Not 0; sources of different seeds are independent.</param>
    public Noise(int rate, double low_Hz, double high_Hz, uint seed)
    {
        _lowPass = 1 - Math.Exp(-2 * Math.PI * high_Hz / rate);
        _highPass = 1 - Math.Exp(-2 * Math.PI * low_Hz / rate);
        _seed = seed;
        // the root mean square of white noise in [-1, 1] is sqrt(1/3), and the low-pass keeps a / (2 - a) of its power;
        // the little that the high-pass takes is left out
        _scale = Math.Sqrt(3 * (2 - _lowPass) / _lowPass);
    }

    /// <summary>Adds a block to the samples.</summary>
    /// <param name="samples">Sound pressures, Pa.</param>
    /// <param name="pressure">Root mean square at the end of the block, Pa.</param>
    public void Add(Span<double> samples, double pressure)
    {
        double step = (pressure - _pressure) / samples.Length;
        for (int n = 0; n < samples.Length; n++)
        {
            _pressure += step;
            // xorshift (Marsaglia, Journal of Statistical Software 8(14), 2003)
            _seed ^= _seed << 13;
            _seed ^= _seed >> 17;
            _seed ^= _seed << 5;
            double white = ((int)_seed) * (1.0 / int.MaxValue);
            _smooth += _lowPass * (white - _smooth);
            _slow += _highPass * (_smooth - _slow);
            samples[n] += _pressure * _scale * (_smooth - _slow);
        }
        _pressure = pressure;
    }
}
