using System.Runtime.InteropServices;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Kernel;

/// <summary>
/// Loads of one rotor as polynomials about a state, see <see cref="Kernel{T}.FitRotors"/>. With w the rotor's speed
/// (rad/s), Vc its axial and Vx its in-plane speed through the air (m/s):
/// <list type="bullet">
/// <item>thrust in free air and torque: a + b w^2 + c Vc + d Vx^2, N and N m;</item>
/// <item>in-plane drag and pitching moment over Vx: a + b w + c Vc + d Vx^2, N s/m and N s; the moment is about the centre
/// of gravity, with the drag's on its arm.</item>
/// </list>
/// </summary>
[StructLayout(LayoutKind.Sequential)]
public struct RotorFitLanes<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Thrust.</summary>
    public LoadFit<T> Thrust;

    /// <summary>Torque of the air against the rotation.</summary>
    public LoadFit<T> Torque;

    /// <summary>In-plane drag over in-plane speed.</summary>
    public LoadFit<T> Drag;

    /// <summary>Moment about the centre of gravity over in-plane speed.</summary>
    public LoadFit<T> Pitch;
}

/// <summary>The four numbers of one polynomial of <see cref="RotorFitLanes{T}"/>.</summary>
[StructLayout(LayoutKind.Sequential)]
public struct LoadFit<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>What is left where speed and flow are 0.</summary>
    public T Constant;

    /// <summary>Of the rotor's speed, or of its square.</summary>
    public T Speed;

    /// <summary>Of the axial speed.</summary>
    public T Axial;

    /// <summary>Of the square of the in-plane speed.</summary>
    public T InPlane;
}
