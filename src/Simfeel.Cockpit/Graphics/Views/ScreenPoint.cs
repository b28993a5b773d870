using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Graphics.Views;

/// <summary>Where a point of the world is in a picture whose lens does not bend.</summary>
internal static class ScreenPoint
{
    /// <summary>The place in shares of the picture's width and height from its upper left; false behind the eye.</summary>
    /// <param name="camera">The eye.</param>
    /// <param name="aspect">Width over height of the picture.</param>
    /// <param name="p_W">The point, m.</param>
    /// <param name="x">Share of the width.</param>
    /// <param name="y">Share of the height.</param>
    public static bool TryPlace(in Camera camera, double aspect, Vec3 p_W, out float x, out float y)
    {
        // eye axes: ahead, right, down
        Vec3 p = camera.Look.Conjugate.Rotate(p_W - camera.Eye);
        (x, y) = (0, 0);
        if (p.X <= 0) return false;
        double top = p.X * Math.Tan(camera.VerticalFieldOfView / 2);
        x = (float)(0.5 + (0.5 * p.Y / (top * aspect)));
        y = (float)(0.5 + (0.5 * p.Z / top));
        return true;
    }
}
