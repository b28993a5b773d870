using System.Runtime.CompilerServices;
using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Mass;

/// <content>
/// Uniform solids centred on the origin; the formulas are those of every mechanics handbook. Masses in kg and sizes in
/// m, 0 or more and finite.
/// </content>
public readonly partial record struct MassProperties
{
    /// <summary>A box with edges x, y, z along the axes: Ixx = m (y^2 + z^2) / 12, and so on.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative or not finite.</exception>
    public static MassProperties Box(double mass, double x, double y, double z)
    {
        Check(mass, "kg");
        Check(x);
        Check(y);
        Check(z);
        double k = mass / 12;
        return Centred(mass, k * ((y * y) + (z * z)), k * ((x * x) + (z * z)), k * ((x * x) + (y * y)));
    }

    /// <summary>A solid cylinder, axis z: Izz = m r^2 / 2, Ixx = Iyy = m (3 r^2 + h^2) / 12.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative or not finite.</exception>
    public static MassProperties Cylinder(double mass, double radius, double height)
    {
        Check(mass, "kg");
        Check(radius);
        Check(height);
        return Tube(mass, radius * radius, height);
    }

    /// <summary>A cylinder with a bore, axis z: that of a solid one with r^2 = inner^2 + outer^2. A thin ring has inner = outer.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative or not finite, or the inner radius exceeds the outer.</exception>
    public static MassProperties HollowCylinder(double mass, double inner, double outer, double height)
    {
        Check(mass, "kg");
        Check(inner);
        Check(outer);
        Check(height);
        if (inner > outer)
            throw new ArgumentOutOfRangeException(nameof(inner), inner, $"inner must be from 0 to the outer radius {outer} m, but is {inner} m.");
        return Tube(mass, (inner * inner) + (outer * outer), height);
    }

    /// <summary>A thin rod along x: Iyy = Izz = m l^2 / 12, Ixx = 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative or not finite.</exception>
    public static MassProperties Rod(double mass, double length)
    {
        Check(mass, "kg");
        Check(length);
        double i = mass * length * length / 12;
        return Centred(mass, 0, i, i);
    }

    /// <summary>A thin disc, axis z: Izz = m r^2 / 2, Ixx = Iyy = m r^2 / 4.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative or not finite.</exception>
    public static MassProperties Disc(double mass, double radius)
    {
        Check(mass, "kg");
        Check(radius);
        return Tube(mass, radius * radius, 0);
    }

    /// <summary>A solid sphere: I = 2 m r^2 / 5.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative or not finite.</exception>
    public static MassProperties Sphere(double mass, double radius)
    {
        Check(mass, "kg");
        Check(radius);
        double i = 0.4 * mass * radius * radius;
        return Centred(mass, i, i, i);
    }

    /// <summary>A point mass.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The mass is negative or not finite.</exception>
    public static MassProperties Point(double mass)
    {
        Check(mass, "kg");
        return Centred(mass, 0, 0, 0);
    }

    /// <summary>Any body of revolution made of full cylinders: radiusSquared is r^2, or inner^2 + outer^2 with a bore.</summary>
    private static MassProperties Tube(double mass, double radiusSquared, double height)
    {
        double transverse = mass * ((3 * radiusSquared) + (height * height)) / 12;
        return Centred(mass, transverse, transverse, mass * radiusSquared / 2);
    }

    private static MassProperties Centred(double mass, double xx, double yy, double zz) =>
        new(mass, Vec3.Zero, Mat3.Diagonal(xx, yy, zz));

    private static void Check(double value, string unit = "m", [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value >= 0) || !double.IsFinite(value))
            throw new ArgumentOutOfRangeException(name, value, $"{name} must be finite and 0 {unit} or more, but is {value} {unit}.");
    }
}
