namespace Simfeel.Physics.Maths;

/// <summary>A three-component vector of doubles; its frame and unit belong to the name of the variable that holds it.</summary>
public readonly record struct Vec3(double X, double Y, double Z)
{
    /// <summary>The zero vector.</summary>
    public static Vec3 Zero => default;

    /// <summary>Unit vector along the first axis.</summary>
    public static Vec3 UnitX => new(1, 0, 0);

    /// <summary>Unit vector along the second axis.</summary>
    public static Vec3 UnitY => new(0, 1, 0);

    /// <summary>Unit vector along the third axis.</summary>
    public static Vec3 UnitZ => new(0, 0, 1);

    /// <summary>Sum.</summary>
    public static Vec3 operator +(Vec3 a, Vec3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Difference.</summary>
    public static Vec3 operator -(Vec3 a, Vec3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>Opposite vector.</summary>
    public static Vec3 operator -(Vec3 a) => new(-a.X, -a.Y, -a.Z);

    /// <summary>Product with a scalar.</summary>
    public static Vec3 operator *(double s, Vec3 a) => new(s * a.X, s * a.Y, s * a.Z);

    /// <summary>Product with a scalar.</summary>
    public static Vec3 operator *(Vec3 a, double s) => s * a;

    /// <summary>Quotient by a scalar.</summary>
    public static Vec3 operator /(Vec3 a, double s) => new(a.X / s, a.Y / s, a.Z / s);

    /// <summary>Scalar product.</summary>
    public static double Dot(Vec3 a, Vec3 b) => (a.X * b.X) + (a.Y * b.Y) + (a.Z * b.Z);

    /// <summary>Vector product a x b.</summary>
    public static Vec3 Cross(Vec3 a, Vec3 b) =>
        new((a.Y * b.Z) - (a.Z * b.Y), (a.Z * b.X) - (a.X * b.Z), (a.X * b.Y) - (a.Y * b.X));

    /// <summary>Euclidean length.</summary>
    public double Length => Math.Sqrt(Dot(this, this));

    /// <summary>Component by axis: 0 is X, 1 is Y, 2 is Z.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The axis is not 0, 1 or 2.</exception>
    public double this[int axis] => axis switch
    {
        0 => X,
        1 => Y,
        2 => Z,
        _ => throw new ArgumentOutOfRangeException(nameof(axis), axis, "An axis is 0, 1 or 2."),
    };
}
