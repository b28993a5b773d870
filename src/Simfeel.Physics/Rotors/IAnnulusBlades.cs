using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Rotors;

/// <summary>Means over a turn of the forces on an annulus per unit of span, in rho U^2 R.</summary>
internal readonly record struct AnnulusForces(double Thrust, double Drag, double InPlane, double FrontThrust);

/// <summary>Flow that a blade meets on its way round an annulus, in units of U; one annulus in each lane.</summary>
/// <param name="Tangential">Speed of the blade through the swirling air, along rotation.</param>
/// <param name="Axial">Mean speed of the air down through the disc.</param>
/// <param name="InPlane">In-plane speed of the hub.</param>
/// <param name="Gradient">Extra downward speed at the rear of the disc, the front having as much less.</param>
internal readonly record struct AnnulusFlow<T>(T Tangential, T Axial, T InPlane, T Gradient)
    where T : unmanaged, ILane<T>;

/// <summary>The blades of an annulus, in each lane at a Reynolds and Mach number of its own.</summary>
internal interface IAnnulusBlades<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Middle radius over R.</summary>
    double Radius { get; }

    /// <summary>Tip loss factor at the sine of an inflow angle.</summary>
    T TipLoss(T sine);

    /// <summary>Whether the wake turns.</summary>
    bool Swirl { get; }

    /// <summary>Drag in the disc plane against positive rotation, per unit of span in rho U^2 R, in a flow that is the same all round.</summary>
    T MeanDrag(T tangential, T axial);

    /// <summary>Mean thrust over a turn.</summary>
    T Thrust(in AnnulusFlow<T> flow);

    /// <summary>All mean forces over a turn.</summary>
    void Forces(in AnnulusFlow<T> flow, Span<AnnulusForces> forces);
}
