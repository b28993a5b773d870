using System.Runtime.CompilerServices;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Kernel;

/// <summary>
/// Node indices of <see cref="Rotors.RotorTableGrid"/> as sums of clamped ramps; a test holds them against the grid's own.
/// Indices stay a hair below the last node so that the cell they fall into exists.
/// </summary>
public static unsafe partial class Kernel<T>
    where T : unmanaged, ILane<T>
{
    private const double Inside = 1e-5;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T AngleIndex(T u)
    {
        T low = T.Of(-0.4), middle = T.Of(0.45), one = T.Of(1);
        T index = T.Fma(T.Of(8 / 0.6), T.Min(u, low), T.Of(8 / 0.6));
        index = T.Fma(T.Of(56 / 0.85), T.Min(T.Max(u, low), middle) - low, index);
        index = T.Fma(T.Of(8 / 0.55), T.Min(T.Max(u, middle), one) - middle, index);
        index = T.Fma(T.Of(8), T.Max(u, one) - one, index);
        return T.Min(T.Max(index, T.Of(0)), T.Of(Rotors.RotorTableGrid.AngleCells - Inside));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T InPlaneIndex(T g)
    {
        T knot = T.Of(0.88);
        T index = T.Of(16 / 0.88) * T.Min(g, knot);
        index = T.Fma(T.Of(8 / ((1 / (1 + Rotors.RotorTableGrid.InPlaneWeight)) - 0.88)), T.Max(g, knot) - knot, index);
        return T.Min(index, T.Of(Rotors.RotorTableGrid.InPlaneCells - Inside));
    }

    /// <summary>Nodes per unit of the speed coordinate z.</summary>
    private const double SpeedNodes =
        Rotors.RotorTableGrid.SpeedCells / (Rotors.RotorTableGrid.LastSpeed - Rotors.RotorTableGrid.FirstSpeed);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T SpeedIndex(T z)
    {
        T index = T.Of(SpeedNodes) * (z - T.Of(Rotors.RotorTableGrid.FirstSpeed));
        return T.Min(T.Max(index, T.Of(0)), T.Of(Rotors.RotorTableGrid.SpeedCells - Inside));
    }
}
