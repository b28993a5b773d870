using Simfeel.Physics.Mass;
using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Tests.Mass;

/// <summary>
/// Brute force: a solid as many equal point masses at the centres of a regular grid, summed from the definitions of
/// centre of gravity and inertia tensor. Knows no formula of the code under test.
/// </summary>
internal sealed class PointCloud
{
    private readonly List<Vec3> _points = [];
    private readonly List<double> _masses = [];

    /// <summary>
    /// Grid points of the box |x|, |y|, |z| up to the half sizes for which the predicate holds. A half size of 0 gives
    /// one layer of points.
    /// </summary>
    public static PointCloud Fill(double mass, Vec3 half, int perAxis, Func<Vec3, bool> inside)
    {
        PointCloud cloud = new();
        foreach (double x in Centres(half.X, perAxis))
        {
            foreach (double y in Centres(half.Y, perAxis))
            {
                foreach (double z in Centres(half.Z, perAxis))
                {
                    Vec3 p = new(x, y, z);
                    if (inside(p)) cloud._points.Add(p);
                }
            }
        }
        cloud._masses.AddRange(Enumerable.Repeat(mass / cloud._points.Count, cloud._points.Count));
        return cloud;
    }

    public PointCloud Placed(Mat3 rotation, Vec3 shift)
    {
        PointCloud moved = new();
        moved._points.AddRange(_points.Select(p => (rotation * p) + shift));
        moved._masses.AddRange(_masses);
        return moved;
    }

    public PointCloud With(PointCloud other)
    {
        PointCloud both = new();
        both._points.AddRange(_points.Concat(other._points));
        both._masses.AddRange(_masses.Concat(other._masses));
        return both;
    }

    public MassProperties Sum()
    {
        double mass = _masses.Sum();
        Vec3 centre = Vec3.Zero;
        for (int i = 0; i < _points.Count; i++) centre += (_masses[i] / mass) * _points[i];
        return new(mass, centre, InertiaAbout(centre));
    }

    public Mat3 InertiaAbout(Vec3 origin)
    {
        double xx = 0, yy = 0, zz = 0, xy = 0, xz = 0, yz = 0;
        for (int i = 0; i < _points.Count; i++)
        {
            Vec3 r = _points[i] - origin;
            double m = _masses[i];
            xx += m * r.X * r.X;
            yy += m * r.Y * r.Y;
            zz += m * r.Z * r.Z;
            xy += m * r.X * r.Y;
            xz += m * r.X * r.Z;
            yz += m * r.Y * r.Z;
        }
        return new(yy + zz, -xy, -xz, -xy, xx + zz, -yz, -xz, -yz, xx + yy);
    }

    private static IEnumerable<double> Centres(double half, int count)
    {
        if (half == 0) return [0];
        return Enumerable.Range(0, count).Select(i => half * (((2 * i) + 1.0) / count - 1));
    }
}
