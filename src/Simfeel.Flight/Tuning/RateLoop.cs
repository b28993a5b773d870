using System.Numerics;
using Simfeel.Flight.Control;

namespace Simfeel.Flight.Tuning;

/// <summary>
/// Open-loop frequency response of one axis: the sampled controller with its filters, the hold of its output over a loop
/// period, and the plant.
/// </summary>
public sealed class RateLoop(AxisPlant plant, double gyroLowPass_Hz, PilotProfile profile)
{
    private readonly double _period = profile.LoopPeriod;
    private readonly double _gyroShare = FirstOrderFilter.Share(gyroLowPass_Hz, profile.LoopPeriod);
    private readonly double _derivativeShare = FirstOrderFilter.Share(profile.DerivativeLowPass_Hz, profile.LoopPeriod);

    /// <summary>Highest frequency at which the response means something, rad/s: half the loop's sampling rate.</summary>
    public double HighestFrequency => Math.PI / _period;

    /// <summary>Response at w (rad/s) with gains.</summary>
    public Complex Response(double w, AxisGains gains)
    {
        Complex z = Complex.Exp(new Complex(0, w * _period));
        Complex integral = _period / (1 - (1 / z));
        Complex derivative = (1 - (1 / z)) / _period * FirstOrderFilter.Response(_derivativeShare, z);
        Complex controller = gains.Proportional + (gains.Integral * integral) + (gains.Derivative * derivative);
        Complex s = new(0, w);
        Complex hold = (1 - (1 / z)) / (s * _period);
        return controller * FirstOrderFilter.Response(_gyroShare, z) * hold * plant.Response(w);
    }
}
