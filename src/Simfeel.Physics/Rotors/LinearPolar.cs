namespace Simfeel.Physics.Rotors;

/// <summary>
/// cl = a alpha, cd = cd0 + k alpha^2 at every angle: the section of the closed-form solutions, and of section data
/// published as such. Not for flight: it never stalls.
/// </summary>
/// <param name="slope">Lift slope a, 1/rad.</param>
/// <param name="drag">Drag cd0 at zero lift.</param>
/// <param name="dragGrowth">Growth k of drag with the square of the angle, 1/rad^2.</param>
public sealed class LinearPolar(double slope, double drag, double dragGrowth) : SectionPolar
{
    /// <inheritdoc/>
    public override SectionCoefficients At(double angle, double reynolds, double mach) =>
        new(slope * angle, drag + (dragGrowth * angle * angle));
}
