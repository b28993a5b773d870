using System.Runtime.CompilerServices;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Kernel;

/// <content>
/// Node indices of <see cref="Rotors.RotorTableGrid"/> as sums of clamped ramps; a test holds them against the grid's own.
/// Indices stay a hair below the last node so that the cell they fall into exists, also where a coordinate is not a number.
/// Angle and in-plane coordinate have their least value at node 0, but for a rounding that truncation takes away.
/// </content>
public static unsafe partial class Kernel<T>
    where T : unmanaged, ILane<T>
{
    private const double Inside = 1e-5;

    /// <summary>Nodes per unit of the flow-angle coordinate u in its four spans.</summary>
    private const double Angle0 = 8 / 0.6, Angle1 = 56 / 0.85, Angle2 = 8 / 0.55, Angle3 = 8;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T AngleIndex(T u)
    {
        T low = T.Of(-0.4), middle = T.Of(0.45), one = T.Of(1);
        T index = T.Fma(T.Of(Angle0), u, T.Of(Angle0 + (0.4 * (Angle1 - Angle0)) - (0.45 * (Angle2 - Angle1)) - (Angle3 - Angle2)));
        index = T.Fma(T.Of(Angle1 - Angle0), T.Max(u, low), index);
        index = T.Fma(T.Of(Angle2 - Angle1), T.Max(u, middle), index);
        index = T.Fma(T.Of(Angle3 - Angle2), T.Max(u, one), index);
        return T.Min(index, T.Of(Rotors.RotorTableGrid.AngleCells - Inside));
    }

    /// <summary>Nodes per unit of the in-plane coordinate g in its three spans.</summary>
    private const double InPlane0 = 5 / 0.1, InPlane1 = 13 / 0.78, InPlane2 = 6 / ((1 / (1 + Rotors.RotorTableGrid.InPlaneWeight)) - 0.88);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T InPlaneIndex(T g)
    {
        T index = T.Fma(T.Of(InPlane0), g, T.Of(-(0.1 * (InPlane1 - InPlane0)) - (0.88 * (InPlane2 - InPlane1))));
        index = T.Fma(T.Of(InPlane1 - InPlane0), T.Max(g, T.Of(0.1)), index);
        index = T.Fma(T.Of(InPlane2 - InPlane1), T.Max(g, T.Of(0.88)), index);
        return T.Min(index, T.Of(Rotors.RotorTableGrid.InPlaneCells - Inside));
    }

    /// <summary>Nodes per unit of the speed coordinate z.</summary>
    private const double SpeedNodes =
        Rotors.RotorTableGrid.SpeedCells / (Rotors.RotorTableGrid.LastSpeed - Rotors.RotorTableGrid.FirstSpeed);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T SpeedIndex(T z)
    {
        T index = T.Fma(T.Of(SpeedNodes), z, T.Of(-Rotors.RotorTableGrid.FirstSpeed * SpeedNodes));
        return T.Min(T.Max(index, T.Of(0)), T.Of(Rotors.RotorTableGrid.SpeedCells - Inside));
    }
}
