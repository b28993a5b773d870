using System.Runtime.InteropServices;

namespace Simfeel.Physics.Lanes;

/// <summary>
/// A number, or several side by side, one for each craft that is flown at once. The flight kernel is written against
/// this interface only, so one source flies one craft (<see cref="Lane1"/>) and many (<see cref="Lane4"/>,
/// <see cref="Lane8"/>, <see cref="LaneF16"/>). Every operation works lane by lane and rounds as IEEE 754 says, so a
/// craft's bits do not depend on the width (the double types) or on the instruction set.
/// </summary>
/// <remarks>
/// Implementations are flat structs with one public field, no constructor and no call nested in a call: the just-in-time
/// compiler then inlines whole kernel stages; a nested wrapper cost a factor of 2.5 when tried.
/// </remarks>
/// <typeparam name="T">The implementing type.</typeparam>
public unsafe interface ILane<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Sum.</summary>
    static abstract T operator +(T a, T b);

    /// <summary>Difference.</summary>
    static abstract T operator -(T a, T b);

    /// <summary>Product.</summary>
    static abstract T operator *(T a, T b);

    /// <summary>Quotient.</summary>
    static abstract T operator /(T a, T b);

    /// <summary>Opposite.</summary>
    static abstract T operator -(T a);

    /// <summary>The same number in every lane.</summary>
    static abstract T Of(double value);

    /// <summary>a b + c with one rounding.</summary>
    static abstract T Fma(T a, T b, T c);

    /// <summary>a b - c with one rounding.</summary>
    static abstract T Fms(T a, T b, T c);

    /// <summary>c - a b with one rounding.</summary>
    static abstract T Fnma(T a, T b, T c);

    /// <summary>Square root.</summary>
    static abstract T Sqrt(T a);

    /// <summary>Absolute value.</summary>
    static abstract T Abs(T a);

    /// <summary>The smaller number; b where either is NaN.</summary>
    static abstract T Min(T a, T b);

    /// <summary>The larger number; b where either is NaN.</summary>
    static abstract T Max(T a, T b);

    /// <summary>Lane by lane: <paramref name="then"/> where a is less than b, else <paramref name="otherwise"/>.</summary>
    static abstract T IfLess(T a, T b, T then, T otherwise);

    /// <summary>True where a equals b in every lane.</summary>
    static abstract bool AllEqual(T a, T b);

    /// <summary>
    /// Finds the cell of each lane's packed rotor table that continuous indices fall into; they are at least 0 and below
    /// the number of cells.
    /// </summary>
    /// <param name="angle">Continuous index in flow angle.</param>
    /// <param name="inPlane">Continuous index in in-plane flow.</param>
    /// <param name="speed">Continuous index in speed.</param>
    /// <param name="table">Where each lane's packed cells begin.</param>
    /// <param name="cell">Receives address and local coordinates.</param>
    static abstract void Locate(T angle, T inPlane, T speed, TableLanes* table, CellLanes<T>* cell);

    /// <summary>Trilinear interpolation in the cells found by <see cref="Locate"/>, lane by lane.</summary>
    /// <param name="cell">The cells.</param>
    /// <param name="c0">Thrust coefficient.</param>
    /// <param name="c1">Torque coefficient.</param>
    /// <param name="c2">In-plane coefficient.</param>
    /// <param name="c3">Pitch coefficient.</param>
    static abstract void Interpolate(CellLanes<T>* cell, out T c0, out T c1, out T c2, out T c3);

    /// <summary>Writes all lanes side by side as doubles.</summary>
    static abstract void Store(T a, double* to);

    /// <summary>Number of lanes.</summary>
    static abstract int Width { get; }

    /// <summary>True where a lane is a float instead of a double.</summary>
    static abstract bool IsSingle { get; }
}

/// <summary>Addresses of the packed rotor tables, or of cells in them, of up to sixteen lanes.</summary>
public unsafe struct TableLanes
{
    /// <summary>Address of each lane's first number.</summary>
    public fixed ulong Address[16];
}

/// <summary>A place in each lane's rotor table.</summary>
[StructLayout(LayoutKind.Sequential)]
public struct CellLanes<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>The cells.</summary>
    public TableLanes Cell;

    /// <summary>Local coordinates, 0 to 1, in flow angle, in-plane flow and speed.</summary>
    public T X, Y, Z;
}
