namespace Simfeel.Physics.Rotors;

/// <summary>Integral of the annuli over the disc.</summary>
internal struct RotorSum
{
    private double _thrust, _torque, _inPlane, _pitch, _induced, _area;

    /// <summary>Induced velocity over U, mean over the annuli's area.</summary>
    public readonly double InducedVelocity => _induced / _area;

    /// <summary>Adds an annulus with its mean forces and its induced velocity over U.</summary>
    public void Add(in RotorAnnulus annulus, in AnnulusForces forces, double induced)
    {
        double area = annulus.Radius * annulus.Width;
        _thrust += forces.Thrust * annulus.Width;
        _torque += forces.Drag * area;
        _inPlane += forces.InPlane * annulus.Width;
        _pitch += forces.FrontThrust * area;
        _induced += induced * area;
        _area += area;
    }

    /// <summary>Loads over rho A U^2 (and R), the in-plane ones over Vx/U as well.</summary>
    public readonly RotorCoefficients Coefficients(in FlowDirection direction) => new(
        _thrust / Math.PI,
        _torque / Math.PI,
        _inPlane / Math.PI / direction.InPlane,
        _pitch / Math.PI / direction.InPlane);
}
