using System.Numerics;
using Simfeel.Flight.Control;

namespace Simfeel.Flight.Tuning;

/// <summary>
/// Open-loop frequency response of one axis: the sampled controller with its filters, the hold of its output over a loop
/// period, and the plant.
/// </summary>
public sealed class RateLoop(AxisPlant plant, double gyroLowPass_Hz, PilotProfile profile)
{
    /// <summary>Its sampling and filters.</summary>
    internal LoopSampling Sampling { get; } = new(
        profile.LoopPeriod,
        FirstOrderFilter.Share(gyroLowPass_Hz, profile.LoopPeriod),
        FirstOrderFilter.Share(profile.DerivativeLowPass_Hz, profile.LoopPeriod));

    /// <summary>The craft.</summary>
    internal AxisPlant Plant => plant;

    /// <summary>Response at w (rad/s) with gains.</summary>
    public Complex Response(double w, AxisGains gains)
    {
        (Complex integral, Complex derivative, Complex rest) = Parts(w);
        return (gains.Proportional + (gains.Integral * integral) + (gains.Derivative * derivative)) * rest;
    }

    /// <summary>
    /// What a response is made of at w (rad/s): it is (P + I Integral + D Derivative) Others with P, I, D the gains.
    /// </summary>
    internal (Complex Integral, Complex Derivative, Complex Others) Parts(double w)
    {
        (Complex integral, Complex derivative, Complex others) = Sampling.Parts(w);
        return (integral, derivative, others * plant.Response(w));
    }

    /// <summary>The controller alone at w (rad/s): from the rate heard to the acceleration wanted, sign left out.</summary>
    public Complex Controller(double w, AxisGains gains)
    {
        (Complex integral, Complex derivative, _) = Parts(w);
        return gains.Proportional + (gains.Integral * integral) + (gains.Derivative * derivative);
    }

    /// <summary>The gyro's filter at w, rad/s.</summary>
    public Complex Gyro(double w) => Sampling.Gyro(w);
}
