using System.Xml.Linq;
using Simfeel.Builds;
using static Simfeel.Studies.Sheet.Writing.SvgParts;

namespace Simfeel.Studies.Bench.Pages;

/// <summary>Line drawings of a build to scale: from above, from the front and from the side.</summary>
/// <param name="build">The build.</param>
/// <param name="scale">Pixels for a metre.</param>
internal sealed class CraftDrawing(Build build, double scale)
{
    private const string Solid = "#fff", Pack = "#e4e4e4";

    private double Radius => build.Propeller.Blades.Diameter / 2;

    /// <summary>Widest extent of a build with its propellers, m.</summary>
    public static double Extent(Build build) =>
        build.Propeller.Blades.Diameter + (2 * build.Frame.Mounts.Max(mount => Math.Max(Math.Abs(mount.p_OM.X), Math.Abs(mount.p_OM.Y))));

    /// <summary>Farthest rotor along an axis, pixels.</summary>
    public double Reach(int axis) => scale * build.Frame.Mounts.Max(mount => Math.Abs(mount.p_OM[axis]));

    /// <summary>Top of what stands highest in the middle, pixels above the arms.</summary>
    public double Top => scale * Math.Max(build.Frame.DeckHeight, (build.Battery.Size.Z / 2) - build.Battery.p_OC.Z);

    /// <summary>From above, about a middle in pixels.</summary>
    /// <param name="x">Middle, from the left.</param>
    /// <param name="y">Middle, from the top.</param>
    /// <param name="sideUp">The right side up and the nose to the left, else the nose up.</param>
    public IEnumerable<XElement> Planform(double x, double y, bool sideUp)
    {
        FrameSpec frame = build.Frame;
        foreach (MotorMount mount in frame.Mounts)
        {
            (double mx, double my) = At(mount.p_OM.X, mount.p_OM.Y);
            yield return Line(x, y, mx, my, Ink, width: 3);
            yield return Round(mx, my, scale * Radius, "none", Soft, "3 2");
            yield return Round(mx, my, Math.Max(3, scale * build.Motor.Body.OuterDiameter / 2), Solid, Ink);
        }
        yield return Rectangle(frame.PlateLength, frame.PlateWidth, 0, 0, Solid);
        yield return Rectangle(build.Battery.Size.X, build.Battery.Size.Y, build.Battery.p_OC.X, build.Battery.p_OC.Y, Pack);
        (double nx, double ny) = At((frame.PlateLength / 2) + (9 / scale), 0);
        (double lx, double ly) = At(frame.PlateLength / 2, 6 / scale);
        (double rx, double ry) = At(frame.PlateLength / 2, -6 / scale);
        yield return Shape($"M{Place(nx)},{Place(ny)} L{Place(lx)},{Place(ly)} L{Place(rx)},{Place(ry)} Z", Ink);

        (double X, double Y) At(double forward, double right) =>
            sideUp ? (x - (scale * forward), y - (scale * right)) : (x + (scale * right), y - (scale * forward));

        XElement Rectangle(double length, double width, double forward, double right, string fill)
        {
            (double x1, double y1) = At(forward - (length / 2), right - (width / 2));
            (double x2, double y2) = At(forward + (length / 2), right + (width / 2));
            return Box(x1, x2, Math.Min(y1, y2), Math.Abs(y2 - y1), fill);
        }
    }

    /// <summary>Level, from the side with the nose to the left (axis 0) or from ahead (axis 1), about a middle in pixels.</summary>
    public IEnumerable<XElement> Elevation(double x, double y, int axis)
    {
        FrameSpec frame = build.Frame;
        double reach = Reach(axis), motor = Math.Max(5, scale * build.Motor.Body.Height), wide = Math.Max(3, scale * build.Motor.Body.OuterDiameter / 2);
        double plate = scale * (axis == 0 ? frame.PlateLength : frame.PlateWidth) / 2, deck = scale * frame.DeckHeight;
        yield return Line(x - reach, y, x + reach, y, Ink, width: 3);
        foreach (double place in frame.Mounts.Select(mount => Math.Round(mount.p_OM[axis], 3)).Distinct())
        {
            double at = x - (scale * place);
            yield return Box(at - wide, at + wide, y - motor, motor, Solid);
            yield return Line(at - (scale * Radius), y - motor - 3, at + (scale * Radius), y - motor - 3, Soft, "3 2", 1.6);
        }
        yield return Box(x - plate, x + plate, y - deck, deck, Solid);
        BatterySpec pack = build.Battery;
        double half = scale * (axis == 0 ? pack.Size.X : pack.Size.Y) / 2, height = scale * pack.Size.Z;
        double centre = x - (scale * (axis == 0 ? pack.p_OC.X : pack.p_OC.Y));
        yield return Box(centre - half, centre + half, y + (scale * pack.p_OC.Z) - (height / 2), height, Pack);
        if (axis == 0) yield return Shape($"M{Place(x - plate - 9)},{Place(y - (deck / 2))} l9,-6 v12 Z", Ink);
    }

    /// <summary>A closed shape.</summary>
    public static XElement Shape(string path, string fill) => new("path", new XAttribute("d", path), new XAttribute("fill", fill));

    /// <summary>A curve.</summary>
    public static XElement Curve(string path) =>
        new("path", new XAttribute("d", path), new XAttribute("fill", "none"), new XAttribute("stroke", Ink), new XAttribute("stroke-width", 1.4));

    private static XElement Round(double x, double y, double radius, string fill, string stroke, string? dashes = null) =>
        new("circle",
            new XAttribute("cx", Place(x)), new XAttribute("cy", Place(y)), new XAttribute("r", Place(radius)),
            new XAttribute("fill", fill), new XAttribute("stroke", stroke), new XAttribute("stroke-width", 1),
            dashes is null ? null : new XAttribute("stroke-dasharray", dashes));
}
