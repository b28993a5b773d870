namespace Simfeel.Physics.Rotors;

/// <summary>Lift and drag of a blade section, each over (rho/2) W^2 c per unit of span.</summary>
/// <param name="Lift">Lift coefficient, normal to the flow.</param>
/// <param name="Drag">Drag coefficient, along the flow.</param>
public readonly record struct SectionCoefficients(double Lift, double Drag);

/// <summary>Lift and drag of a blade section at any angle of attack. Immutable; shared by threads.</summary>
public abstract class SectionPolar
{
    /// <summary>Coefficients in a flow.</summary>
    /// <param name="angle">Angle of attack, rad, -pi to pi; beyond a quarter turn the flow meets the trailing edge.</param>
    /// <param name="reynolds">Reynolds number on the chord, positive.</param>
    /// <param name="mach">Mach number, at least 0.</param>
    public abstract SectionCoefficients At(double angle, double reynolds, double mach);
}
