using Simfeel.Builds.Reading;
using Simfeel.Physics.Maths;

namespace Simfeel.Builds.Estimates;

/// <summary>Where the rotors stand and which way they turn.</summary>
internal static class RotorLayout
{
    /// <summary>
    /// Mounts of a named layout, clockwise from the nose. <paramref name="wheelbase"/> is the diagonal between
    /// opposite shafts, m; <paramref name="aspect"/> side-to-side over front-to-back distance (wide, stretched);
    /// <paramref name="sweep"/> rad (swept).
    /// </summary>
    public static IReadOnlyList<MotorMount> Named(string layout, double wheelbase, double aspect, double sweep, bool outward)
    {
        double radius = wheelbase / 2;
        double corner = layout is "wide" or "stretched" ? Math.Atan(aspect) : Math.PI / 4;
        double[] azimuths = layout switch
        {
            "plus" => Even(4, 0),
            "six" => Even(6, Math.PI / 6),
            "eight" => Even(8, Math.PI / 8),
            "swept" => [(Math.PI / 4) + sweep, 3 * Math.PI / 4, 5 * Math.PI / 4, (7 * Math.PI / 4) - sweep],
            _ => [corner, Math.PI - corner, Math.PI + corner, (2 * Math.PI) - corner],
        };
        Vec3[] places = [.. azimuths.Select(a => radius * new Vec3(Math.Cos(a), Math.Sin(a), 0))];
        return WithSpins(places, outward);

        static double[] Even(int count, double first) =>
            [.. Enumerable.Range(0, count).Select(i => first + (2 * Math.PI * i / count))];
    }

    /// <summary>Mounts at given places; spins by rule where none were given.</summary>
    public static IReadOnlyList<MotorMount> Explicit(IReadOnlyList<GivenPosition> positions, bool outward) =>
        positions[0].Spin is null
            ? WithSpins([.. positions.Select(p => p.p_OM)], outward)
            : [.. positions.Select(p => new MotorMount(p.p_OM, p.Spin!.Value))];

    /// <summary>
    /// Neighbours around the centre turn opposite ways, and so do rotors one above the other. The first rotor right of
    /// the nose turns with its front edge inward (counter-clockwise seen from above) unless outward is asked for.
    /// </summary>
    private static MotorMount[] WithSpins(Vec3[] places, bool outward)
    {
        const double sameAxis = 0.01;
        MotorMount[] mounts = new MotorMount[places.Length];
        int first = outward ? 1 : -1, station = -1, level = 0;
        Vec3? before = null;
        foreach (int i in Enumerable.Range(0, places.Length).OrderBy(i => Azimuth(places[i])).ThenBy(i => places[i].Z))
        {
            bool above = before is Vec3 b && Math.Abs(b.X - places[i].X) < sameAxis && Math.Abs(b.Y - places[i].Y) < sameAxis;
            (station, level) = above ? (station, level + 1) : (station + 1, 0);
            mounts[i] = new(places[i], (station + level) % 2 == 0 ? first : -first);
            before = places[i];
        }
        return mounts;

        // Rounded, so that two rotors on one axis sort by height even where their places differ in the last digit.
        static double Azimuth(Vec3 p)
        {
            double azimuth = Math.Round(Math.Atan2(p.Y, p.X), 6);
            return azimuth < 0 ? azimuth + (2 * Math.PI) : azimuth;
        }
    }
}
