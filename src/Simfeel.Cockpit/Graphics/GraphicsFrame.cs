using System.Numerics;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Graphics;

/// <summary>
/// The one place where north-east-down doubles become the floats of the pictures. Graphics frame G: x east, y north,
/// z up, m, from the world's origin; it is a rotation of the world, so windings and signs of angles stay. Matrices are
/// those of <see cref="System.Numerics"/> (row vectors), whose memory OpenGL reads as its own.
/// </summary>
internal static class GraphicsFrame
{
    /// <summary>A vector of the world in G.</summary>
    public static Vector3 Of(Vec3 v_W) => new((float)v_W.Y, (float)v_W.X, (float)-v_W.Z);

    /// <summary>From body axes with their origin at a point of the world to G.</summary>
    public static Matrix4x4 FromBody(Vec3 p_WB, Quat q_WB)
    {
        Mat3 r = q_WB.ToMatrix();
        Vector3 x = Of(new(r.M00, r.M10, r.M20)), y = Of(new(r.M01, r.M11, r.M21)), z = Of(new(r.M02, r.M12, r.M22)), p = Of(p_WB);
        return new(x.X, x.Y, x.Z, 0, y.X, y.Y, y.Z, 0, z.X, z.Y, z.Z, 0, p.X, p.Y, p.Z, 1);
    }

    /// <summary>From a part's own axes to the axes it is placed in.</summary>
    public static Matrix4x4 Placed(Mat3 r, Vec3 p) => new(
        (float)r.M00, (float)r.M10, (float)r.M20, 0,
        (float)r.M01, (float)r.M11, (float)r.M21, 0,
        (float)r.M02, (float)r.M12, (float)r.M22, 0,
        (float)p.X, (float)p.Y, (float)p.Z, 1);

    /// <summary>A vector in body axes as floats.</summary>
    public static Vector3 Body(Vec3 v_B) => new((float)v_B.X, (float)v_B.Y, (float)v_B.Z);

    /// <summary>From G to eye axes (x right, y up, z back) of an eye with axes x ahead, y right, z down.</summary>
    public static Matrix4x4 View(Vec3 eye, Quat look)
    {
        Mat3 r = look.ToMatrix();
        Vector3 right = Of(new(r.M01, r.M11, r.M21)), up = -Of(new(r.M02, r.M12, r.M22)), back = -Of(new(r.M00, r.M10, r.M20));
        Vector3 e = Of(eye);
        return new(
            right.X, up.X, back.X, 0,
            right.Y, up.Y, back.Y, 0,
            right.Z, up.Z, back.Z, 0,
            -Vector3.Dot(right, e), -Vector3.Dot(up, e), -Vector3.Dot(back, e), 1);
    }

    /// <summary>Perspective whose picture reaches from the given tangents left, right, down and up, to OpenGL's clip space.</summary>
    public static Matrix4x4 Perspective(float left, float right, float bottom, float top, float near, float far)
    {
        float w = right - left, h = top - bottom;
        return new(
            2 / w, 0, 0, 0,
            0, 2 / h, 0, 0,
            (right + left) / w, (top + bottom) / h, (far + near) / (near - far), -1,
            0, 0, 2 * far * near / (near - far), 0);
    }

    /// <summary>Parallel projection of a box about the origin, to OpenGL's clip space.</summary>
    public static Matrix4x4 Parallel(float halfWidth, float halfHeight, float near, float far) => new(
        1 / halfWidth, 0, 0, 0,
        0, 1 / halfHeight, 0, 0,
        0, 0, -2 / (far - near), 0,
        0, 0, -(far + near) / (far - near), 1);
}
