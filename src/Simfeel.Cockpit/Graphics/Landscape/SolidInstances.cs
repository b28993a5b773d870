using System.Numerics;
using Simfeel.Cockpit.Graphics.Meshes;
using Simfeel.Flight.Fields;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Graphics.Landscape;

/// <summary>Turns the solids of a field into unit meshes: what is drawn fills what can be hit.</summary>
internal sealed class SolidInstances
{
    private static readonly Vector3
        Plaster = LinearColour.Of(0xD6D2C8), Slate = LinearColour.Of(0x59636B), Glass = LinearColour.Of(0x2C3A45), Frame = LinearColour.Of(0xF4F1EA),
        Door = LinearColour.Of(0x2E5F5B), White = LinearColour.Of(0xE4E0D6), Red = LinearColour.Of(0x8F2019), Iron = LinearColour.Of(0x3A3F44),
        Stone = LinearColour.Of(0xA39A88), Mortar = LinearColour.Of(0xC9C2B2), Cap = LinearColour.Of(0xB9B2A3),
        Warm = LinearColour.Of(0xF08A24), Cream = LinearColour.Of(0xFFF1D6), GateBack = LinearColour.Of(0x46506B),
        Navy = LinearColour.Of(0x1F3A5F), Bark = LinearColour.Of(0x6B5140), Boulder = LinearColour.Of(0x8F8A80), Lamp = LinearColour.Of(0xFFE9A8);

    private readonly Dictionary<(MeshShape, bool), List<Instance>> _instances = [];

    /// <summary>Places everything.</summary>
    public SolidInstances(FieldMap map)
    {
        for (int i = 0; i < map.Solids.Count; i++)
        {
            FieldSolid solid = map.Solids[i];
            switch (solid.Kind)
            {
                case SolidKind.Building:
                    House(solid);
                    break;
                case SolidKind.Lighthouse:
                    Lighthouse(solid);
                    break;
                case SolidKind.Wall:
                    Wall(solid);
                    break;
                case SolidKind.Gate:
                    Gate(solid, map.Gates);
                    break;
                case SolidKind.Pole:
                    Add(MeshShape.Cylinder, Placed(solid, Vector3.Zero, Size(solid)), White, gloss: 0.15f, second: Navy, period: 2);
                    break;
                case SolidKind.Trunk:
                    Add(MeshShape.Tower, Placed(solid, Vector3.Zero, Size(solid)), Bark);
                    break;
                case SolidKind.Crown:
                    Crown(solid, i);
                    break;
                case SolidKind.Rock:
                    Boulders(solid, i);
                    break;
                default:
                    throw new ArgumentOutOfRangeException(nameof(map), solid.Kind, "There is no look for this kind of solid.");
            }
        }
    }

    /// <summary>Meshes, whether they are masonry, and where they stand.</summary>
    public IEnumerable<(MeshShape Shape, bool Masonry, Instance[] Instances)> All =>
        _instances.Select(pair => (pair.Key.Item1, pair.Key.Item2, pair.Value.ToArray()));

    private void House(FieldSolid solid)
    {
        Vector3 size = Size(solid);
        // ridge along the longer side
        bool turned = size.Y > size.X;
        float length = turned ? size.Y : size.X, width = turned ? size.X : size.Y;
        float quarter = turned ? MathF.PI / 2 : 0;
        float eaves = 0.66f * size.Z, roof = size.Z - eaves, foot = -size.Z / 2;
        Block(solid, quarter, new(0, 0, foot + (eaves / 2)), new(length, width, eaves), Plaster);
        Block(solid, quarter, new(0, 0, foot + 0.3f), new(length + 0.06f, width + 0.06f, 0.6f), Stone, Mortar, 0.22f);
        Add(MeshShape.Roof, Placed(solid, new(0, 0, foot + eaves + (roof / 2)), new(length + 0.02f, width + 0.3f, roof), quarter), Slate, gloss: 0.1f);
        // gable ends of plaster, far enough out for the depth buffer at a hundred metres
        Add(MeshShape.Roof, Placed(solid, new(0, 0, foot + eaves + (0.46f * roof)), new(length + 0.16f, 0.93f * width, 0.92f * roof), quarter), Plaster);
        Block(solid, quarter, new(0.31f * length, 0, foot + size.Z - (0.30f * roof)), new(0.8f, 0.7f, 0.58f * roof), Stone, Mortar, 0.2f);

        int windows = Math.Max(1, (int)(length / 2.8f));
        float sill = foot + (0.55f * eaves);
        for (int side = -1; side <= 1; side += 2)
        {
            for (int k = 0; k < windows; k++)
            {
                float along = ((k + 0.5f) / windows - 0.5f) * length;
                bool door = side < 0 && k == windows / 2;
                if (door)
                {
                    Block(solid, quarter, new(along, side * width / 2, foot + 1.05f), new(1.25f, 0.10f, 2.1f), Frame);
                    Block(solid, quarter, new(along, side * width / 2, foot + 1.0f), new(1.0f, 0.16f, 2.0f), Door, gloss: 0.2f);
                    continue;
                }
                Window(solid, quarter, new(along, side * width / 2, sill), alongY: false);
            }
            if (width > 3) Window(solid, quarter, new(side * length / 2, 0, sill), alongY: true);
        }
    }

    private void Window(FieldSolid solid, float quarter, Vector3 at, bool alongY)
    {
        const float w = 0.95f, h = 1.15f;
        Vector3 Wide(float width, float thick, float height) => alongY ? new(thick, width, height) : new(width, thick, height);
        Block(solid, quarter, at, Wide(w + 0.22f, 0.10f, h + 0.22f), Frame);
        Block(solid, quarter, at, Wide(w, 0.14f, h), Glass, gloss: 0.9f);
        Block(solid, quarter, at, Wide(0.06f, 0.17f, h), Frame);
        Block(solid, quarter, at, Wide(w, 0.17f, 0.06f), Frame);
    }

    private void Lighthouse(FieldSolid solid)
    {
        Vector3 size = Size(solid);
        float d = MathF.Min(size.X, size.Y), h = size.Z, foot = -h / 2;
        float shaft = 0.76f * h, deck = foot + shaft;
        Add(MeshShape.Tower, Placed(solid, new(0, 0, foot + (shaft / 2)), new(d, d, shaft)), White, second: Red, period: shaft / 2.5f);
        Add(MeshShape.Cylinder, Placed(solid, new(0, 0, foot + 0.35f), new(1.08f * d, 1.08f * d, 0.7f)), Stone, second: Mortar, period: 0.24f, masonry: true);
        Add(MeshShape.Cylinder, Placed(solid, new(0, 0, deck + 0.12f), new(0.86f * d, 0.86f * d, 0.24f)), Iron);
        Add(MeshShape.Pipe, Placed(solid, new(0, 0, deck + 0.85f), new(0.86f * d, 0.86f * d, 0.07f)), Iron);
        for (int k = 0; k < 16; k++)
        {
            (float sin, float cos) = MathF.SinCos(2 * MathF.PI * k / 16);
            Add(MeshShape.Cylinder, Placed(solid, new(0.405f * d * cos, 0.405f * d * sin, deck + 0.5f), new(0.05f, 0.05f, 0.75f)), Iron);
        }
        float room = 0.13f * h, top = deck + 0.24f + room;
        Add(MeshShape.Cylinder, Placed(solid, new(0, 0, deck + 0.24f + (room / 2)), new(0.42f * d, 0.42f * d, room)), Glass, gloss: 1);
        Add(MeshShape.Cylinder, Placed(solid, new(0, 0, deck + 0.24f + (room / 2)), new(0.425f * d, 0.425f * d, 0.42f * room)), Lamp, gloss: 0.6f);
        for (int k = 0; k < 8; k++)
        {
            (float sin, float cos) = MathF.SinCos(2 * MathF.PI * k / 8);
            Add(MeshShape.Box, Placed(solid, new(0.215f * d * cos, 0.215f * d * sin, deck + 0.24f + (room / 2)), new(0.07f, 0.07f, room)), White);
        }
        float cap = (h / 2) - top;
        Add(MeshShape.Cone, Placed(solid, new(0, 0, top + (cap / 2)), new(0.56f * d, 0.56f * d, cap)), Red, gloss: 0.3f);
        // a door and small windows up the shaft
        Add(MeshShape.Box, Placed(solid, new(0.485f * d, 0, foot + 1.7f), new(0.24f, 1.1f, 2.1f)), Door, gloss: 0.2f);
        for (int k = 1; k < 4; k++)
        {
            float z = k * shaft / 4.2f, r = 0.5f - (0.18f * z / shaft);
            Add(MeshShape.Box, Placed(solid, new((r * d) - 0.04f, 0, foot + z + 1.5f), new(0.2f, 0.5f, 0.8f)), Glass, gloss: 0.8f);
        }
    }

    private void Wall(FieldSolid solid)
    {
        Vector3 size = Size(solid);
        const float cap = 0.12f;
        float foot = -size.Z / 2;
        Block(solid, 0, new(0, 0, foot + ((size.Z - cap) / 2)), new(size.X, size.Y, size.Z - cap), Stone, Mortar, 0.26f);
        Block(solid, 0, new(0, 0, foot + size.Z - (cap / 2)), new(size.X + 0.05f, size.Y + 0.08f, cap), Cap);
    }

    /// <summary>Bars are striped and warm on the side from which one flies in, plain and cool behind.</summary>
    private void Gate(FieldSolid solid, IReadOnlyList<FieldGate> gates)
    {
        Vector3 size = Size(solid);
        Vec3 through = new(Math.Cos(solid.Heading), Math.Sin(solid.Heading), 0);
        if (gates.Count > 0)
        {
            FieldGate gate = gates.MinBy(g => (g.p_WC - solid.p_WC).Length)!;
            through = new(Math.Cos(gate.Heading), Math.Sin(gate.Heading), 0);
        }
        // the bar's own axes: x along its heading (north cos, east sin), y left of it (north sin, east -cos)
        double along = (through.X * Math.Cos(solid.Heading)) + (through.Y * Math.Sin(solid.Heading));
        double across = (through.X * Math.Sin(solid.Heading)) - (through.Y * Math.Cos(solid.Heading));
        bool byX = Math.Abs(along) > Math.Abs(across);
        float thick = byX ? size.X : size.Y, forward = Math.Sign(byX ? along : across);
        Vector3 half = byX ? size with { X = thick / 2 } : size with { Y = thick / 2 };
        Vector3 shift = byX ? new(forward * thick / 4, 0, 0) : new(0, forward * thick / 4, 0);
        Bar(solid, -shift, half, Warm, Cream, 0.8f);
        Bar(solid, shift, half, GateBack, default, 0);
    }

    /// <summary>A bar whose bands run along its longest side.</summary>
    private void Bar(FieldSolid solid, Vector3 at, Vector3 size, Vector3 colour, Vector3 second, float period)
    {
        if (solid.Shape == SolidShape.Capsule)
        {
            Add(MeshShape.Cylinder, Placed(solid, at, size), colour, 0.15f, second, period);
            return;
        }
        Matrix4x4 turn = size.X > size.Y && size.X > size.Z ? Matrix4x4.CreateRotationY(MathF.PI / 2)
            : size.Y > size.Z ? Matrix4x4.CreateRotationX(MathF.PI / 2)
            : Matrix4x4.Identity;
        Vector3 own = size.X > size.Y && size.X > size.Z ? new(size.Z, size.Y, size.X) : size.Y > size.Z ? new(size.X, size.Z, size.Y) : size;
        Add(MeshShape.Box, Matrix4x4.CreateScale(own) * turn * Matrix4x4.CreateTranslation(at) * Standing(solid), colour, 0.15f, second, period);
    }

    private void Crown(FieldSolid solid, int index)
    {
        Vector3 size = Size(solid);
        double tone = TileNoise.Hash(index, 1, 17);
        Vector3 dark = LinearColour.Of(0x3F5A2E), light = LinearColour.Of(0x7C8B45);
        Vector3 colour = Vector3.Lerp(dark, light, (float)tone);
        Add(MeshShape.Crown, Turned(solid, Vector3.Zero, new(0.98f * size.X, 0.98f * size.Y, 0.98f * size.Z), index), colour);
        for (int k = 0; k < 4; k++)
        {
            double angle = (2 * Math.PI * (k / 4.0)) + TileNoise.Hash(index, 10 + k, 17);
            float up = (float)(TileNoise.Hash(index, 20 + k, 17) - 0.45), share = 0.46f + (0.16f * (float)TileNoise.Hash(index, 30 + k, 17));
            Vector3 at = new((float)Math.Cos(angle) * 0.24f * size.X, (float)Math.Sin(angle) * 0.24f * size.Y, up * 0.5f * size.Z);
            Vector3 shade = colour * (0.88f + (0.34f * (float)TileNoise.Hash(index, 40 + k, 17)));
            Add(MeshShape.Crown, Turned(solid, at, share * size, (7 * index) + k), shade);
        }
    }

    private void Boulders(FieldSolid solid, int index)
    {
        Vector3 size = Size(solid);
        Vector3 colour = Boulder * (0.8f + (0.4f * (float)TileNoise.Hash(index, 1, 19)));
        Add(MeshShape.Rock, Turned(solid, Vector3.Zero, 1.08f * size, index), colour);
        Add(MeshShape.Rock, Turned(solid, new(0.3f * size.X, -0.22f * size.Y, -0.24f * size.Z), 0.52f * size, index + 31), 0.9f * colour);
    }

    private void Block(FieldSolid solid, float quarter, Vector3 at, Vector3 size, Vector3 colour, float gloss = 0) =>
        Add(MeshShape.Box, Placed(solid, at, size, quarter), colour, gloss);

    private void Block(FieldSolid solid, float quarter, Vector3 at, Vector3 size, Vector3 colour, Vector3 joints, float course) =>
        Add(MeshShape.Box, Placed(solid, at, size, quarter), colour, 0, joints, course, masonry: true);

    private void Add(MeshShape shape, Matrix4x4 place, Vector3 colour, float gloss = 0, Vector3 second = default, float period = 0, bool masonry = false)
    {
        if (!_instances.TryGetValue((shape, masonry), out List<Instance>? list)) _instances.Add((shape, masonry), list = []);
        list.Add(Instance.Of(place, colour, gloss).Banded(second, period));
    }

    private static Vector3 Size(FieldSolid solid) => new((float)solid.Size.X, (float)solid.Size.Y, (float)solid.Size.Z);

    /// <summary>A size at a place in the solid's own axes: x along its length, y left of it, z up from its centre.</summary>
    private static Matrix4x4 Placed(FieldSolid solid, Vector3 at, Vector3 size, float turn = 0) =>
        Matrix4x4.CreateScale(size) * Matrix4x4.CreateTranslation(at) * Matrix4x4.CreateRotationZ(turn) * Standing(solid);

    private static Matrix4x4 Turned(FieldSolid solid, Vector3 at, Vector3 size, int seed) =>
        Matrix4x4.CreateRotationZ(6.283f * (float)TileNoise.Hash(seed, 3, 23)) * Matrix4x4.CreateScale(size) * Matrix4x4.CreateTranslation(at) * Standing(solid);

    /// <summary>From the solid's own axes to G: heading 0 looks north, which is y.</summary>
    private static Matrix4x4 Standing(FieldSolid solid) =>
        Matrix4x4.CreateRotationZ((MathF.PI / 2) - (float)solid.Heading) * Matrix4x4.CreateTranslation(GraphicsFrame.Of(solid.p_WC));
}
