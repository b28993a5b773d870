using MathNet.Numerics.LinearRegression;
using Simfeel.Physics;
using Simfeel.Physics.Stand;
using Simfeel.Physics.Trim;

namespace Simfeel.Flight.Control;

/// <summary>
/// Share f of full thrust to duty: d = s (b1 + s (b2 + s b3)) with s = sqrt(f), since thrust goes with the square of rotor
/// speed and the voltage a motor needs is a low polynomial of it. Fitted to the virtual stand with all rotors on the pack.
/// </summary>
public sealed record ThrustMap
{
    private const int Points = 25;

    private ThrustMap(double b1, double b2, double b3, double fullThrust, double torquePerThrust)
    {
        (B1, B2, B3) = (b1, b2, b3);
        FullThrust = fullThrust;
        TorquePerThrust = torquePerThrust;
    }

    /// <summary>Coefficient of s.</summary>
    public double B1 { get; }

    /// <summary>Coefficient of s^2.</summary>
    public double B2 { get; }

    /// <summary>Coefficient of s^3.</summary>
    public double B3 { get; }

    /// <summary>Thrust of one rotor at full duty, all rotors on the pack, N.</summary>
    public double FullThrust { get; }

    /// <summary>Torque of the air by thrust at hover, m.</summary>
    public double TorquePerThrust { get; }

    /// <summary>Duty for a share of full thrust.</summary>
    public double Duty(double share)
    {
        double s = Math.Sqrt(Math.Max(0, share));
        return s * (B1 + (s * (B2 + (s * B3))));
    }

    /// <summary>Share of full thrust for a duty, 0 to 1: the inverse of <see cref="Duty"/>, which rises.</summary>
    public double Share(double duty)
    {
        double low = 0, high = 1;
        for (int n = 0; n < 60; n++)
        {
            double middle = (low + high) / 2;
            if (Duty(middle) < duty) low = middle;
            else high = middle;
        }
        return (low + high) / 2;
    }

    /// <summary>Slope of <see cref="Duty"/>.</summary>
    public double Slope(double share)
    {
        double s = Math.Sqrt(share);
        return ((B1 / s) + (2 * B2) + (3 * B3 * s)) / 2;
    }

    /// <summary>The map of a craft.</summary>
    /// <param name="craft">The craft.</param>
    /// <param name="density">Air density, kg/m^3.</param>
    /// <param name="stateOfCharge">0 to 1.</param>
    /// <param name="hover">Hover of the same craft in the same air.</param>
    public static ThrustMap Of(Craft craft, double density, double stateOfCharge, HoverTrim hover)
    {
        ArgumentNullException.ThrowIfNull(craft);
        VirtualStand stand = new(craft, density, stateOfCharge, craft.Rotors.Count);
        OperatingPoint full = stand.AtDuty(1);
        double[][] terms = new double[Points][];
        double[] duty = new double[Points];
        for (int n = 0; n < Points; n++)
        {
            // equal steps of rotor speed from a fifth of the full one: below lies idle, where static friction rules
            double speed = full.Speed * (0.2 + (0.8 * n / (Points - 1)));
            OperatingPoint point = stand.AtSpeed(speed);
            double s = Math.Sqrt(Math.Max(0, point.Thrust / full.Thrust));
            // d(1) = 1 is kept exactly: b3 = 1 - b1 - b2
            terms[n] = [s - (s * s * s), (s * s) - (s * s * s)];
            duty[n] = Math.Min(1, point.Duty) - (s * s * s);
        }
        double[] b = MultipleRegression.QR(terms, duty);
        return new(b[0], b[1], 1 - b[0] - b[1], full.Thrust, hover.Rotor.Torque / hover.Rotor.Thrust);
    }
}
