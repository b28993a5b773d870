using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Rotors;

/// <summary>Working state of a rotor as a direction: wR, Vc and Vx over U, squares summing to 1.</summary>
internal readonly record struct FlowDirection(double Rotation, double Axial, double InPlane)
{
    /// <summary>
    /// Mean speed over U that a blade meets at a radius, induced flow apart: sets its Reynolds and Mach number for the
    /// whole turn.
    /// </summary>
    public double SectionSpeed(double radius) =>
        Math.Sqrt((Rotation * radius * Rotation * radius) + (Axial * Axial) + (0.5 * InPlane * InPlane));
}

/// <summary>Working states of a rotor as directions, one in each lane, see <see cref="FlowDirection"/>.</summary>
internal readonly record struct FlowLanes<T>(T Rotation, T Axial, T InPlane)
    where T : unmanaged, ILane<T>;
