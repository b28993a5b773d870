using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Simfeel.Physics;
using Simfeel.Physics.Lanes;

namespace Simfeel.Flight.Control;

/// <summary>Constants of the rate controller, one lane for each craft.</summary>
[StructLayout(LayoutKind.Sequential)]
public struct ControllerLanes<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Roll, pitch, yaw.</summary>
    public AxisArray<AxisLanes<T>> Axes;

    /// <summary>Shares of thrust for each rad/s^2 of roll, pitch and yaw.</summary>
    public RotorArray<MixLanes<T>> Mix;

    /// <summary>Smallest share of full thrust of a rotor.</summary>
    public T Idle;

    /// <summary>Coefficients of <see cref="ThrustMap"/>.</summary>
    public T B1, B2, B3;

    /// <summary>Rotors of every craft of the batch.</summary>
    public int RotorCount;
}

/// <summary>Constants of one axis.</summary>
[StructLayout(LayoutKind.Sequential)]
public struct AxisLanes<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Gains; integral times, derivative and feed-forward over the loop period.</summary>
    public T Proportional, IntegralStep, DerivativeRate, FeedForwardRate;

    /// <summary>Shares of the new value that the first-order filters take in at each run.</summary>
    public T GyroShare, DerivativeShare, FeedForwardShare;

    /// <summary>Largest integral, rad/s^2.</summary>
    public T IntegralLimit;
}

/// <summary>Shares of one rotor.</summary>
[StructLayout(LayoutKind.Sequential)]
public struct MixLanes<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Share of full thrust for each rad/s^2.</summary>
    public T Roll, Pitch, Yaw;
}

/// <summary>What the rate controller remembers between two runs.</summary>
[StructLayout(LayoutKind.Sequential)]
public struct ControllerState<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Roll, pitch, yaw.</summary>
    public AxisArray<AxisState<T>> Axes;
}

/// <summary>Memory of one axis.</summary>
[StructLayout(LayoutKind.Sequential)]
public struct AxisState<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Filtered rate, rad/s.</summary>
    public T Rate;

    /// <summary>Filtered change of the filtered rate in one run, rad/s.</summary>
    public T Change;

    /// <summary>Integral, rad/s^2.</summary>
    public T Integral;

    /// <summary>The last command, rad/s, and the filtered change of the command in one run, rad/s.</summary>
    public T Command, CommandChange;
}

/// <summary>Room for three axes.</summary>
[InlineArray(3)]
public struct AxisArray<TItem>
    where TItem : unmanaged
{
    private TItem _first;
}

/// <summary>Room for the rotors.</summary>
[InlineArray(Craft.MaxRotors)]
public struct RotorArray<TItem>
    where TItem : unmanaged
{
    private TItem _first;
}
