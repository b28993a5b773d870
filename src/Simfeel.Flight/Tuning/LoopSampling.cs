using System.Numerics;
using Simfeel.Flight.Control;

namespace Simfeel.Flight.Tuning;

/// <summary>What a rate loop is sampled and filtered with.</summary>
/// <param name="Period">Loop period, s.</param>
/// <param name="GyroShare">Share of the gyro's filter, see <see cref="FirstOrderFilter"/>.</param>
/// <param name="DerivativeShare">Share of the derivative's filter.</param>
internal readonly record struct LoopSampling(double Period, double GyroShare, double DerivativeShare)
{
    /// <summary>Answers at w (rad/s): of the controller's integral, of its filtered derivative, and of the gyro's filter with the hold.</summary>
    public (Complex Integral, Complex Derivative, Complex Others) Parts(double w)
    {
        Complex z = Turn(w);
        Complex step = 1 - (1 / z);
        Complex others = FirstOrderFilter.Response(GyroShare, z) * (step / (new Complex(0, w) * Period));
        return (Period / step, step / Period * FirstOrderFilter.Response(DerivativeShare, z), others);
    }

    /// <summary>The gyro's filter at w, rad/s.</summary>
    public Complex Gyro(double w) => FirstOrderFilter.Response(GyroShare, Turn(w));

    private Complex Turn(double w) => Complex.FromPolarCoordinates(1, w * Period);
}
