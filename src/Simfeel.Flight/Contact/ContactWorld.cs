using Simfeel.Flight.Fields;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Contact;

/// <summary>
/// What a craft can touch: flat ground everywhere, or a field's land, sea and solids. World W: north, east, down. Immutable,
/// shared by threads; asked many times a second, so nothing here allocates.
/// </summary>
public sealed class ContactWorld
{
    /// <summary>What lies deeper in the land than this came in through a cliff, m.</summary>
    private const double CliffDepth = 0.3;

    private readonly double _ground;
    private readonly double _sea;
    private readonly Vec3[] _land;
    private readonly Solid[] _solids;

    private ContactWorld(double ground, double sea, Vec3[] land, Solid[] solids)
    {
        _ground = ground;
        _sea = sea;
        _land = land;
        _solids = solids;
    }

    /// <summary>Number of solids.</summary>
    public int SolidCount => _solids.Length;

    /// <summary>Whether there is nothing but flat ground, so that only height counts.</summary>
    public bool IsFlat => _solids.Length == 0 && _land.Length == 0;

    /// <summary>Flat ground without end.</summary>
    /// <param name="ground">Where it lies along z (down), m; infinite for none.</param>
    public static ContactWorld Flat(double ground) => new(ground, ground, [], []);

    /// <summary>A field: land at z = 0, the sea beyond its edge, solids.</summary>
    public static ContactWorld Of(FieldMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        return new(0, map.SeaDepth, [.. map.Land], [.. map.Solids.Select(solid => new Solid(solid))]);
    }

    /// <summary>Where ground or sea lies under a place, along z (down), m.</summary>
    public double GroundAt(double north, double east) => IsLand(north, east) ? _ground : _sea;

    /// <summary>Whether a place lies on land: an odd number of edges lies north of it.</summary>
    public bool IsLand(double north, double east)
    {
        if (_land.Length == 0) return true;
        bool inside = false;
        Vec3 a = _land[^1];
        foreach (Vec3 b in _land)
        {
            if ((a.Y > east) != (b.Y > east) && north < a.X + ((east - a.Y) / (b.Y - a.Y) * (b.X - a.X))) inside = !inside;
            a = b;
        }
        return inside;
    }

    /// <summary>
    /// How deep a sphere's lowest point lies in the ground, the sea or a cliff, m (0 or less: not at all), and the way out.
    /// </summary>
    public double GroundDepth(Vec3 p_WP, double radius, out Vec3 away_W)
    {
        away_W = -Vec3.UnitZ;
        double depth = p_WP.Z + radius - GroundAt(p_WP.X, p_WP.Y);
        if (depth <= CliffDepth || _land.Length == 0 || !IsLand(p_WP.X, p_WP.Y)) return depth;
        double edge = ToEdge(p_WP, out Vec3 sideways_W);
        if (edge >= depth) return depth;
        away_W = sideways_W;
        return edge;
    }

    /// <summary>Fills in the solids within a distance of a point; returns how many.</summary>
    public int Near(Vec3 p_WP, double distance, Span<int> found)
    {
        int count = 0;
        for (int n = 0; n < _solids.Length && count < found.Length; n++)
        {
            ref readonly Solid solid = ref _solids[n];
            Vec3 d = p_WP - solid.Centre;
            double reach = distance + solid.Reach;
            if (Vec3.Dot(d, d) < reach * reach) found[count++] = n;
        }
        return count;
    }

    /// <summary>Distance of a point from a solid's surface (below 0 inside), m, and the direction away from it.</summary>
    public double Distance(int solid, Vec3 p_WP, out Vec3 away_W) => _solids[solid].Distance(p_WP, out away_W);

    /// <summary>Distance of a place on land from the land's edge, m, and the level direction there.</summary>
    internal double ToEdge(Vec3 p_WP, out Vec3 towards_W)
    {
        double least = double.PositiveInfinity;
        towards_W = Vec3.UnitX;
        Vec3 a = _land[^1], p = p_WP with { Z = 0 };
        foreach (Vec3 b in _land)
        {
            Vec3 along = b - a;
            double share = Math.Min(Math.Max(Vec3.Dot(p - a, along) / Vec3.Dot(along, along), 0), 1);
            Vec3 d = a + (share * along) - p;
            double distance = d.Length;
            if (distance < least && distance > 0)
            {
                least = distance;
                towards_W = d / distance;
            }
            a = b;
        }
        return least;
    }

    private readonly struct Solid
    {
        private readonly SolidShape _shape;
        private readonly Vec3 _half;
        private readonly double _sin, _cos;

        public Solid(FieldSolid solid)
        {
            _shape = solid.Shape;
            Centre = solid.p_WC;
            _half = 0.5 * solid.Size;
            (_sin, _cos) = Math.SinCos(solid.Heading);
            Reach = _half.Length;
        }

        public Vec3 Centre { get; }

        public double Reach { get; }

        public double Distance(Vec3 p_WP, out Vec3 away_W)
        {
            Vec3 d = p_WP - Centre;
            if (_shape == SolidShape.Capsule)
            {
                double straight = Math.Max(_half.Z - _half.X, 0);
                Vec3 axis = d - new Vec3(0, 0, Math.Min(Math.Max(d.Z, -straight), straight));
                double length = axis.Length;
                away_W = length > 0 ? axis / length : Vec3.UnitX;
                return length - _half.X;
            }
            Vec3 p = new((_cos * d.X) + (_sin * d.Y), (_cos * d.Y) - (_sin * d.X), d.Z);
            double distance = Box(p, out Vec3 away);
            away_W = new((_cos * away.X) - (_sin * away.Y), (_sin * away.X) + (_cos * away.Y), away.Z);
            return distance;
        }

        private double Box(Vec3 p, out Vec3 away)
        {
            Vec3 nearest = new(
                Math.Min(Math.Max(p.X, -_half.X), _half.X), Math.Min(Math.Max(p.Y, -_half.Y), _half.Y), Math.Min(Math.Max(p.Z, -_half.Z), _half.Z));
            Vec3 off = p - nearest;
            double outside = off.Length;
            if (outside > 0)
            {
                away = off / outside;
                return outside;
            }
            // inside: out through the nearest face
            double x = _half.X - Math.Abs(p.X), y = _half.Y - Math.Abs(p.Y), z = _half.Z - Math.Abs(p.Z);
            if (x <= y && x <= z) away = new(p.X < 0 ? -1 : 1, 0, 0);
            else if (y <= z) away = new(0, p.Y < 0 ? -1 : 1, 0);
            else away = new(0, 0, p.Z < 0 ? -1 : 1);
            return -Math.Min(x, Math.Min(y, z));
        }
    }
}
