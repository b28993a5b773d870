namespace Simfeel.Physics.Maths;

/// <summary>
/// A unit quaternion q_WB = (w; x, y, z) that turns body components into world components:
/// v_W = q v_B q*. Its rate is q' = q (0, w_WB_B) / 2.
/// </summary>
public readonly record struct Quat(double W, double X, double Y, double Z)
{
    /// <summary>No rotation.</summary>
    public static Quat Identity => new(1, 0, 0, 0);

    /// <summary>Hamilton product.</summary>
    public static Quat operator *(Quat a, Quat b) => new(
        (a.W * b.W) - (a.X * b.X) - (a.Y * b.Y) - (a.Z * b.Z),
        (a.W * b.X) + (a.X * b.W) + (a.Y * b.Z) - (a.Z * b.Y),
        (a.W * b.Y) - (a.X * b.Z) + (a.Y * b.W) + (a.Z * b.X),
        (a.W * b.Z) + (a.X * b.Y) - (a.Y * b.X) + (a.Z * b.W));

    /// <summary>The inverse rotation.</summary>
    public Quat Conjugate => new(W, -X, -Y, -Z);

    /// <summary>Euclidean norm; 1 for a rotation.</summary>
    public double Norm => Math.Sqrt((W * W) + (X * X) + (Y * Y) + (Z * Z));

    /// <summary>Rotation by an angle (rad, right-handed) about a unit axis.</summary>
    public static Quat FromAxisAngle(Vec3 axis, double angle)
    {
        double s = Math.Sin(angle / 2);
        return new(Math.Cos(angle / 2), s * axis.X, s * axis.Y, s * axis.Z);
    }

    /// <summary>Rotation from yaw, pitch, roll (rad) applied in the order 3-2-1 (ISO 1151).</summary>
    public static Quat FromEuler(double roll, double pitch, double yaw) =>
        FromAxisAngle(Vec3.UnitZ, yaw) * FromAxisAngle(Vec3.UnitY, pitch) * FromAxisAngle(Vec3.UnitX, roll);

    /// <summary>The rotation matrix R_WB.</summary>
    public Mat3 ToMatrix() => new(
        1 - (2 * ((Y * Y) + (Z * Z))), 2 * ((X * Y) - (W * Z)), 2 * ((X * Z) + (W * Y)),
        2 * ((X * Y) + (W * Z)), 1 - (2 * ((X * X) + (Z * Z))), 2 * ((Y * Z) - (W * X)),
        2 * ((X * Z) - (W * Y)), 2 * ((Y * Z) + (W * X)), 1 - (2 * ((X * X) + (Y * Y))));

    /// <summary>Components in the world of a vector given in body axes.</summary>
    public Vec3 Rotate(Vec3 v_B) => ToMatrix() * v_B;

    /// <summary>Roll, pitch and yaw (rad) of the 3-2-1 sequence; pitch in [-pi/2, pi/2].</summary>
    public (double Roll, double Pitch, double Yaw) ToEuler()
    {
        Mat3 r = ToMatrix();
        return (Math.Atan2(r.M21, r.M22), Math.Asin(Math.Clamp(-r.M20, -1, 1)), Math.Atan2(r.M10, r.M00));
    }

    // The text that a record makes by itself would print Conjugate, whose text prints its Conjugate, without end.

    /// <summary>The four components in brackets.</summary>
    public override string ToString() => $"({W}; {X}, {Y}, {Z})";
}
