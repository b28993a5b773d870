using MathNet.Numerics.LinearAlgebra;
using Simfeel.Physics;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Control;

/// <summary>
/// Shares of rotor thrust that make a wanted angular acceleration: the least-squares (minimum-norm) inverse of the real
/// geometry, so that any number and placing of rotors works and roll, pitch and yaw do not disturb each other or the
/// total thrust.
/// </summary>
public sealed class Allocation
{
    private Allocation(double[,] shares, Vec3 equalThrustAcceleration)
    {
        Shares = shares;
        EqualThrustAcceleration = equalThrustAcceleration;
    }

    /// <summary>
    /// Share of full thrust to add to rotor k (row) for each rad/s^2 about roll, pitch, yaw (column).
    /// </summary>
    public double[,] Shares { get; }

    /// <summary>
    /// Angular acceleration (rad/s^2) that equal thrust of all rotors makes for each unit share, where the centre of
    /// gravity lies off the rotors' middle.
    /// </summary>
    public Vec3 EqualThrustAcceleration { get; }

    /// <summary>The allocation of a craft.</summary>
    /// <exception cref="InvalidOperationException">The rotors cannot turn the craft about every axis.</exception>
    public static Allocation Of(Craft craft, ThrustMap map)
    {
        ArgumentNullException.ThrowIfNull(craft);
        ArgumentNullException.ThrowIfNull(map);
        int count = craft.Rotors.Count;
        Matrix<double> effect = Matrix<double>.Build.Dense(4, count);
        double spinInertia = 0;
        for (int k = 0; k < count; k++)
        {
            RotorConstants rotor = craft.Rotors[k];
            effect[0, k] = 1;
            effect[1, k] = -rotor.p_BcmR_B.Y;
            effect[2, k] = rotor.p_BcmR_B.X;
            effect[3, k] = -rotor.Spin * map.TorquePerThrust;
            spinInertia += rotor.SpinInertia;
        }
        if (effect.Rank() < 4)
            throw new InvalidOperationException("These rotors cannot turn the craft about roll, pitch and yaw at once; spread them and let neighbours turn opposite ways.");
        Matrix<double> inverse = effect.PseudoInverse();

        Mat3 resisting = craft.I_BBcm_B - Mat3.Diagonal(0, 0, spinInertia);
        double[,] shares = new double[count, 3];
        for (int axis = 0; axis < 3; axis++)
        {
            Vec3 moment = resisting * new Vec3(axis == 0 ? 1 : 0, axis == 1 ? 1 : 0, axis == 2 ? 1 : 0);
            for (int k = 0; k < count; k++)
            {
                shares[k, axis] = ((inverse[k, 1] * moment.X) + (inverse[k, 2] * moment.Y) + (inverse[k, 3] * moment.Z))
                    / map.FullThrust;
            }
        }

        Vec3 equal = Vec3.Zero;
        for (int k = 0; k < count; k++)
            equal += new Vec3(effect[1, k], effect[2, k], effect[3, k]) * map.FullThrust;
        return new(shares, resisting.Inverse * equal);
    }
}
