using Simfeel.Builds.Reading;
using Simfeel.Flight.Contact;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Fields;

/// <summary>What must hold between the parts of a field. Every finding names the table that is to be changed.</summary>
internal static class FieldChecks
{
    /// <summary>Whether the corners make a land that holds the start; the first fault is said.</summary>
    /// <param name="map">A field of which only the land counts.</param>
    /// <param name="corners">The table of each corner.</param>
    /// <param name="field">The table [field].</param>
    /// <param name="startRoom">Land needed around the start, m.</param>
    /// <param name="bag">Receives the fault.</param>
    public static bool Land(FieldMap map, IReadOnlyList<FieldTable> corners, FieldTable field, double startRoom, DiagnosticBag bag)
    {
        if (corners.Count < 3)
        {
            Place at = corners.Count > 0 ? corners[^1].At : field.At;
            bag.Error(at, "land", "", $"The land has {corners.Count} corners; allowed are 3 to {FieldFormat.MostOfAKind}.", "write [[land]] for each corner, in order");
            return false;
        }
        for (int n = 1; n < corners.Count; n++)
        {
            if (corners.Take(n).FirstOrDefault(corner => corner.Foot == corners[n].Foot) is not FieldTable same) continue;
            bag.Error(corners[n].At, "land", "", $"This corner lies where the one in line {same.At.Line} does.", "leave it out; the last corner is joined to the first");
            return false;
        }
        if (Crossing(map.Land) is (int a, int b))
        {
            // said at the later one: the file was good up to there
            (FieldTable first, FieldTable last) = corners[a].At.Line < corners[b].At.Line ? (corners[a], corners[b]) : (corners[b], corners[a]);
            bag.Error(last.At, "land", "", $"The edge from this corner meets the edge from the corner in line {first.At.Line}; the corners must go round the land in order.", "check their order");
            return false;
        }
        (double room, int edge) = ToStart(map.Land);
        bool onLand = ContactWorld.Of(map).IsLand(0, 0);
        if (onLand && room >= startRoom) return true;
        string where = onLand ? $"has {room:0.##} m of land around it" : "lies in the sea";
        bag.Error(corners[edge].At, "land", "", $"The start pad at north 0, east 0 {where}; it needs at least {startRoom:G3} m.", "move the corners");
        return false;
    }

    /// <summary>Whether things stand where they may; one finding for each table.</summary>
    /// <param name="map">A field whose land is good.</param>
    /// <param name="owners">The table of each solid.</param>
    /// <param name="field">The table [field].</param>
    /// <param name="startRoom">Free room needed around the start, m.</param>
    /// <param name="bag">Receives the findings.</param>
    public static void Standing(FieldMap map, IReadOnlyList<FieldTable> owners, FieldTable field, double startRoom, DiagnosticBag bag)
    {
        ContactWorld world = ContactWorld.Of(map);
        FieldTable? said = null;
        for (int n = 0; n < owners.Count; n++)
        {
            FieldTable owner = owners[n];
            if (owner == said) continue;
            FieldSolid solid = map.Solids[n];
            string place = $"north {solid.p_WC.X:0.##} m, east {solid.p_WC.Y:0.##} m";
            if (world.Distance(n, Vec3.Zero, out _) < startRoom)
                bag.Error(owner.At, owner.Kind, "", $"What stands at {place} is in the way of the start; the pad at north 0, east 0 needs {startRoom:G3} m of free room.", "move it");
            else if (solid.Kind != SolidKind.Rock && !world.IsLand(solid.p_WC.X, solid.p_WC.Y))
                bag.Error(owner.At, owner.Kind, "", $"What stands at {place} stands in the sea; only rocks may.", "move it onto the land");
            else
                continue;
            said = owner;
        }
        if (!world.IsLand(map.PilotEye.X, map.PilotEye.Y))
            bag.Error(field.PlaceOf("pilot_north_m"), "field.pilot_north_m", $"{map.PilotEye.X:G6}", $"The pilot at north {map.PilotEye.X:0.##} m, east {map.PilotEye.Y:0.##} m stands in the sea.", "move the pilot onto the land");
    }

    /// <summary>Distance of the start from the nearest edge, m, and that edge's first corner by number.</summary>
    private static (double Distance, int Edge) ToStart(IReadOnlyList<Vec3> corners)
    {
        (double Distance, int Edge) least = (double.PositiveInfinity, 0);
        for (int n = 0; n < corners.Count; n++)
        {
            Vec3 from = corners[n], along = corners[(n + 1) % corners.Count] - from;
            double share = Math.Clamp(-Vec3.Dot(from, along) / Vec3.Dot(along, along), 0, 1), distance = (from + (share * along)).Length;
            if (distance < least.Distance) least = (distance, n);
        }
        return least;
    }

    /// <summary>Two edges of a closed line that cross, touch or fold back on each other, by number; null where it is simple.</summary>
    internal static (int A, int B)? Crossing(IReadOnlyList<Vec3> corners)
    {
        int count = corners.Count;
        for (int a = 0; a < count; a++)
        {
            Vec3 a0 = corners[a], a1 = corners[(a + 1) % count], a2 = corners[(a + 2) % count];
            bool folded = Side(a0, a1, a2) == 0 && Vec3.Dot(a1 - a0, a2 - a1) <= 0;
            if (folded) return (a, (a + 1) % count);
            // neighbours share a corner, and so do the first and the last edge
            for (int b = a + 2; b < count - (a == 0 ? 1 : 0); b++)
            {
                Vec3 b0 = corners[b], b1 = corners[(b + 1) % count];
                bool astride = Side(a0, a1, b0) * Side(a0, a1, b1) <= 0 && Side(b0, b1, a0) * Side(b0, b1, a1) <= 0;
                // edges on one line are astride of each other wherever they lie on it
                if (astride && Overlap(a0.X, a1.X, b0.X, b1.X) && Overlap(a0.Y, a1.Y, b0.Y, b1.Y)) return (a, b);
            }
        }
        return null;

        static double Side(Vec3 from, Vec3 to, Vec3 p) => ((to.X - from.X) * (p.Y - from.Y)) - ((to.Y - from.Y) * (p.X - from.X));

        static bool Overlap(double a0, double a1, double b0, double b1) =>
            Math.Max(a0, a1) >= Math.Min(b0, b1) && Math.Max(b0, b1) >= Math.Min(a0, a1);
    }
}
