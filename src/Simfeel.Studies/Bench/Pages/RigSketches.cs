using System.Xml.Linq;
using Simfeel.Builds;
using Simfeel.Studies.Sheet.Writing;
using static Simfeel.Studies.Sheet.Writing.SvgParts;

namespace Simfeel.Studies.Bench.Pages;

/// <summary>Sketches of the rigs with the build hung or laid in them, in three panels side by side.</summary>
internal static class RigSketches
{
    private const int Panel = Width / 3, Room = 128;
    private const double Small = 11;

    /// <summary>The swing test about roll, pitch and yaw.</summary>
    public static Figure Swing(BenchPlan plan)
    {
        Build build = plan.Build.Build;
        CraftDrawing craft = Craft(build);
        double scale = Room / CraftDrawing.Extent(build);
        const string label = "Three swing rigs: two parallel wires from a beam to a thin stick on the craft. Roll: the nose points up. Pitch: the right side points up. Yaw: the craft hangs level.";
        const int beam = 24, height = 268, middle = 172;
        return new(label,
            "The craft to scale, the wires shortened. d: spacing, the same above and below. L: free length, knot to knot. Dashed: the axis, upright, through the balance point and midway between the wires. Dashed circles: propellers, which stand still.",
            [],
            _ => Root(label, height, plan.Tests.Select((test, n) => Rig(test, (n * Panel) + (Panel / 2)))));

        IEnumerable<XElement> Rig(SwingPlan test, double x)
        {
            bool yaw = test.Axis == BenchAxis.Z;
            double half = scale * test.Spacing / 2;
            double stick = yaw ? middle - craft.Top - 3 : middle - Math.Max(craft.Reach(test.Axis == BenchAxis.X ? 0 : 1), 12);
            foreach (XElement part in yaw ? craft.Elevation(x, middle, 1) : craft.Planform(x, middle, test.Axis == BenchAxis.Y)) yield return part;
            yield return Line(x - 62, beam, x + 62, beam, Ink, width: 4);
            foreach (double wire in new[] { x - half, x + half })
            {
                yield return Line(wire, beam, wire, stick, Ink, width: 1.4);
                // the wire is longer than drawn
                yield return Line(wire - 5, 63, wire + 5, 59, "#fff", width: 4);
                yield return Line(wire - 5, 62, wire + 5, 57, Ink);
                yield return Line(wire - 5, 66, wire + 5, 61, Ink);
            }
            yield return Line(x - half - 6, stick, x + half + 6, stick, Ink, width: 3);
            yield return Line(x, beam, x, yaw ? middle + 30 : middle + 72, Ink, "6 4");
            foreach (XElement part in Measure(x - half, x + half, 44, "d")) yield return part;
            yield return Text(x + half + 8, 82, "L", "start", Small);
            double turn = yaw ? middle + 28 : middle + 74;
            yield return CraftDrawing.Curve($"M{Place(x - 20)},{Place(turn - 2)} A22,7 0 1 0 {Place(x + 20)},{Place(turn - 2)}");
            yield return CraftDrawing.Shape($"M{Place(x + 20)},{Place(turn - 9)} l5,8 l-9,1 Z", Ink);
            yield return Text(x, 12, test.Axis switch { BenchAxis.X => "roll: nose up", BenchAxis.Y => "pitch: right side up", _ => "yaw: level" }, "middle", 12.5);
        }
    }

    /// <summary>The balance test on an edge, on two scales and on a hook.</summary>
    public static Figure Balance(BenchPlan plan)
    {
        CraftDrawing craft = Craft(plan.Build.Build);
        double support = Math.Min(plan.Support * Room / CraftDrawing.Extent(plan.Build.Build), craft.Reach(0));
        const string label = "Three balance rigs, seen from the left: the craft level on a knife edge, level on two supports that each stand on a scale, and hung by its nose from a hook with a plumb line.";
        const int arms = 96, height = 206;
        return new(label,
            "The nose points left, or up on the hook. Thin upright line: middle of the bottom plate, from which all places are measured; ahead of it positive, behind it negative. On the hook the angle is positive where the plumb line passes above the arms.",
            [],
            _ => Root(label, height, [.. Edge(Panel / 2), .. Scales(Panel + (Panel / 2)), .. Hook((2 * Panel) + 86)]));

        IEnumerable<XElement> Edge(double x)
        {
            foreach (XElement part in craft.Elevation(x, arms, 0)) yield return part;
            double at = x + 13;
            yield return CraftDrawing.Shape($"M{Place(at)},{arms + 2} l11,26 h-22 Z", Ink);
            yield return Line(x - 70, arms + 28, x + 70, arms + 28, Ink, width: 2);
            yield return Line(x, arms - 52, x, arms + 52, Ink);
            yield return Line(at, arms + 30, at, arms + 52, Ink);
            foreach (XElement part in Measure(x, at, arms + 48, "")) yield return part;
            yield return Text((x + at) / 2, arms + 66, "edge_mm", "middle", Small);
            yield return Text(x, 14, "knife edge", "middle");
        }

        IEnumerable<XElement> Scales(double x)
        {
            foreach (XElement part in craft.Elevation(x, arms, 0)) yield return part;
            foreach ((double at, string name) in new[] { (x - support, "front"), (x + support, "rear") })
            {
                yield return CraftDrawing.Shape($"M{Place(at)},{arms + 2} l6,22 h-12 Z", Ink);
                yield return Box(at - 26, at + 26, arms + 24, 14, "#fff");
                yield return Text(at, arms + 35, "g", "middle", Small);
                yield return Text(at, arms + 78, name, "middle", Small);
            }
            yield return Line(x - 70, arms + 38, x + 70, arms + 38, Ink, width: 2);
            yield return Line(x, arms - 52, x, arms + 60, Ink);
            foreach (XElement part in Measure(x - support, x, arms + 54, "").Concat(Measure(x, x + support, arms + 54, ""))) yield return part;
            yield return Text(x, 14, "two scales", "middle");
        }

        IEnumerable<XElement> Hook(double x)
        {
            const int top = 42, lean = 18;
            double reach = craft.Reach(0);
            yield return new("g",
                new XAttribute("transform", $"rotate({90 + lean} {Place(x)} {top})"),
                craft.Elevation(x + reach, top, 0));
            yield return Line(x - 14, top - 18, x + 40, top - 18, Ink, width: 4);
            yield return Line(x, top - 18, x, top, Ink, width: 1.4);
            yield return Line(x, top, x, 186, Ink, "6 4");
            yield return Disc(x, 190, 4);
            double tail = 2.35 * reach * Math.Sin(lean * Math.PI / 180), down = 2.35 * reach * Math.Cos(lean * Math.PI / 180);
            yield return Line(x, top, x - tail, top + down, Ink);
            yield return CraftDrawing.Curve($"M{Place(x - tail)},{Place(top + down)} A{Place(2.35 * reach)},{Place(2.35 * reach)} 0 0 0 {Place(x)},{Place(top + (2.35 * reach))}");
            yield return Text(x - (tail / 2) - 2, top + down + 22, "angle", "middle", Small);
            yield return Text(x - 6, 14, "hook", "middle");
        }
    }

    private static CraftDrawing Craft(Build build) => new(build, Room / CraftDrawing.Extent(build));

    /// <summary>A dimension with an arrow at both ends.</summary>
    private static IEnumerable<XElement> Measure(double left, double right, double y, string name)
    {
        yield return Line(left, y, right, y, Ink);
        yield return CraftDrawing.Shape($"M{Place(left)},{Place(y)} l6,-3 v6 Z", Ink);
        yield return CraftDrawing.Shape($"M{Place(right)},{Place(y)} l-6,-3 v6 Z", Ink);
        if (name.Length > 0) yield return Text((left + right) / 2, y - 4, name, "middle", Small);
    }
}
