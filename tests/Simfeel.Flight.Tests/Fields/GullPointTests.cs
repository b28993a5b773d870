using Simfeel.Flight.Contact;
using Simfeel.Flight.Fields;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Tests.Fields;

/// <summary>What the shipped field promises.</summary>
public class GullPointTests
{
    [Fact]
    public void ReadsWithoutAnyFinding()
    {
        Assert.Empty(GullPoint.Result.Diagnostics);
        Assert.Equal("Gull Point", GullPoint.Map.Name);
    }

    [Fact]
    public void HasWhatItIsKnownFor()
    {
        FieldMap map = GullPoint.Map;
        Assert.InRange(map.Land.Count, 12, 20);
        Assert.InRange(map.Land.Max(c => c.X) - map.Land.Min(c => c.X), 240, 260);
        Assert.InRange(map.Land.Max(c => c.Y) - map.Land.Min(c => c.Y), 170, 190);
        Assert.InRange(map.Solids.Count, 80, 200);
        Assert.InRange(map.Solids.Count(s => s.Kind == SolidKind.Crown), 20, 40);
        Assert.Single(map.Solids, s => s.Kind == SolidKind.Lighthouse);
        Assert.Equal(6, map.Gates.Count);
        Assert.All(map.Gates, gate => Assert.InRange(gate.Width, 2, 3));
        Assert.Equal([1, 5], map.Marks.Where(m => m.Radius > 0 && m.From == Vec3.Zero).Select(m => m.Radius).Order());
    }

    [Fact]
    public void SlalomPolesStandEightMetresApart()
    {
        FieldSolid[] poles = [.. GullPoint.Map.Solids.Where(s => s.Kind == SolidKind.Pole)];
        Assert.Equal(7, poles.Length);
        for (int n = 1; n < poles.Length; n++) Assert.Equal(8, (poles[n].p_WC - poles[n - 1].p_WC).Length, 9);
    }

    [Fact]
    public void RungsLieTenMetresApart()
    {
        double[] rungs = [.. GullPoint.Map.Marks.Where(m => m.Radius == 0 && m.From.X == m.To.X).Select(m => m.From.X).Distinct().Order()];
        Assert.Equal([-30, -20, -10, 0, 10, 20, 30, 40, 50, 60], rungs);
    }

    /// <summary>A ball of 0.4 m fits along the axis of every opening, 3 m before and behind it; the opening itself is free to its edges.</summary>
    [Fact]
    public void OpeningsAreFree()
    {
        ContactWorld world = ContactWorld.Of(GullPoint.Map);
        foreach (FieldGate gate in GullPoint.Map.Gates)
        {
            (double sin, double cos) = Math.SinCos(gate.Heading);
            Vec3 along = new(cos, sin, 0), aside = new(-sin, cos, 0);
            for (double d = -3; d <= 3; d += 0.1) Assert.True(Free(world, gate.p_WC + (d * along)) >= 0.4, $"{gate.Name} at {d:F1} m");
            for (double y = -0.49; y < 0.5; y += 0.02)
            {
                for (double z = -0.49; z < 0.5; z += 0.02)
                    Assert.True(Free(world, gate.p_WC + (y * gate.Width * aside) + (z * gate.Height * Vec3.UnitZ)) > 0, gate.Name);
            }
        }
    }

    /// <summary>A bar stands right outside each side of an opening and above it.</summary>
    [Fact]
    public void OpeningsAreFramed()
    {
        ContactWorld world = ContactWorld.Of(GullPoint.Map);
        foreach (FieldGate gate in GullPoint.Map.Gates)
        {
            (double sin, double cos) = Math.SinCos(gate.Heading);
            Vec3 aside = new(-sin, cos, 0);
            double side = (gate.Width / 2) + 0.05, up = (gate.Height / 2) + 0.05;
            Assert.All([gate.p_WC + (side * aside), gate.p_WC - (side * aside), gate.p_WC - (up * Vec3.UnitZ)], p => Assert.True(Free(world, p) < 0, gate.Name));
            double below = -gate.p_WC.Z - up;
            Assert.True(below < 0 || Free(world, gate.p_WC + (up * Vec3.UnitZ)) < 0, gate.Name);
        }
    }

    /// <summary>Each gate lies ahead within 70 m, faces the way that one comes, and the first lies before the start.</summary>
    [Fact]
    public void CourseFlows()
    {
        FieldMap map = GullPoint.Map;
        Vec3 at = Vec3.Zero;
        foreach (FieldGate gate in map.Gates)
        {
            Vec3 way = gate.p_WC - at;
            double bearing = Math.Atan2(way.Y, way.X);
            Assert.True(Math.Abs(Math.IEEERemainder(gate.Heading - bearing, 2 * Math.PI)) < Math.PI / 3, $"{gate.Name}: flown from ahead");
            Assert.True(way.Length is > 15 and < 70, $"{gate.Name}: {way.Length:F0} m");
            at = gate.p_WC;
        }
        Vec3 first = map.Gates[0].p_WC;
        Assert.True(Math.Abs(Math.IEEERemainder(Math.Atan2(first.Y, first.X) - map.StartHeading, 2 * Math.PI)) < 0.1);
    }

    private static double Free(ContactWorld world, Vec3 p)
    {
        double least = double.PositiveInfinity;
        for (int n = 0; n < world.SolidCount; n++) least = Math.Min(least, world.Distance(n, p, out _));
        return least;
    }
}
