using System.Numerics;
using Simfeel.Builds;
using Simfeel.Cockpit.Graphics.Meshes;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Graphics.Aircraft;

/// <summary>Turns the parts of a build into unit meshes in body axes from the centre of gravity.</summary>
internal sealed class CraftInstances
{
    private readonly Dictionary<MeshShape, List<Instance>> _instances = [];
    private readonly Livery _livery;
    private readonly AssembledBuild _build;

    /// <summary>Places all parts but the blades, which turn.</summary>
    public CraftInstances(AssembledBuild build, Livery livery)
    {
        _build = build;
        _livery = livery;
        foreach (PartMass part in build.Parts) Place(part);
    }

    /// <summary>Meshes and where they are.</summary>
    public IEnumerable<(MeshShape Shape, Instance[] Instances)> All => _instances.Select(pair => (pair.Key, pair.Value.ToArray()));

    private void Place(PartMass part)
    {
        PartShape shape = part.Shape;
        Vector3 colour = Livery.Of(part.Group);
        switch (part.Group)
        {
            case PartKind.Wiring:
                // spread over the deck, between what is drawn
                break;
            case PartKind.Propellers:
                double hub = 0.055 * shape.Size.X;
                Add(MeshShape.Cylinder, shape, Vec3.Zero, new(hub, hub, 0.9 * hub), Livery.Of(PartKind.Frame), 0.4f);
                break;
            case PartKind.Motors:
                Motor(shape);
                break;
            case PartKind.Frame when part.Name == "hardware":
                Standoffs(shape);
                break;
            case PartKind.Frame when shape.Kind == ShapeKind.Ring:
                Add(MeshShape.Pipe, shape, Vec3.Zero, shape.Size with { Y = shape.Size.X }, 0.7f * _livery.Colour, 0.2f);
                break;
            case PartKind.Frame when part.Name == "top plate":
                Add(MeshShape.Box, shape, Vec3.Zero, shape.Size, _livery.Colour, 0.3f);
                Stripes(shape, alongX: false);
                break;
            case PartKind.Frame:
                Add(MeshShape.Box, shape, Vec3.Zero, shape.Size, colour, 0.35f);
                if (part.Name.StartsWith("arm", StringComparison.Ordinal)) ArmBands(shape);
                break;
            case PartKind.Battery:
                Add(MeshShape.Box, shape, Vec3.Zero, shape.Size, LinearColour.Of(0x4A4F58), 0.25f);
                Stripes(shape, alongX: true);
                break;
            case PartKind.Camera:
                Camera(shape);
                break;
            default:
                Simple(part, colour);
                break;
        }
    }

    /// <summary>A bell in the trade's manner: dark foot, bright bell, coloured band.</summary>
    private void Motor(PartShape shape)
    {
        double h = shape.Size.Z;
        if (shape.Kind == ShapeKind.Ring)
        {
            double d = shape.Size.X;
            Add(MeshShape.Cylinder, shape, new(0, 0, -0.14 * h), new(d, d, 0.72 * h), Livery.Of(PartKind.Motors), 0.9f);
            Add(MeshShape.Cylinder, shape, new(0, 0, -0.38 * h), new(1.03 * d, 1.03 * d, 0.2 * h), _livery.Colour, 0.6f);
        }
        else
        {
            Add(MeshShape.Cylinder, shape, new(0, 0, 0.36 * h), new(shape.Size.X, shape.Size.X, 0.28 * h), Livery.Of(PartKind.Frame), 0.2f);
        }
    }

    /// <summary>Screws and spacers stand at the corners between the plates.</summary>
    private void Standoffs(PartShape shape)
    {
        double d = Math.Min(0.006, 0.14 * shape.Size.Y);
        for (int k = 0; k < 6; k++)
        {
            Vec3 at = new(((k % 3) - 1) * 0.44 * shape.Size.X, ((k / 3) - 0.5) * 0.84 * shape.Size.Y, 0);
            Add(MeshShape.Cylinder, shape, at, new(d, d, shape.Size.Z), _livery.Colour, 0.6f);
        }
    }

    /// <summary>One stripe or two on the top of a box, a hair above it.</summary>
    private void Stripes(PartShape shape, bool alongX)
    {
        Vec3 size = shape.Size;
        double length = alongX ? size.X : size.Y, width = 0.13 * length;
        for (int k = 0; k < _livery.Stripes; k++)
        {
            double along = _livery.Stripes == 1 ? 0.18 * length : ((k * 0.30) - 0.02) * length;
            Vec3 at = alongX ? new(along, 0, 0) : new(0, along - (0.13 * length), 0);
            Vec3 band = alongX ? new(width, size.Y + 0.0012, size.Z + 0.0012) : new(size.X + 0.0008, width, size.Z + 0.0008);
            Add(MeshShape.Box, shape, at, band, _livery.Stripe);
        }
    }

    private void ArmBands(PartShape shape)
    {
        Vec3 size = shape.Size;
        for (int k = 0; k < _livery.Stripes; k++)
        {
            double width = Math.Min(0.1 * size.X, 0.7 * size.Y);
            Vec3 at = new((0.20 * size.X) - (1.9 * k * width), 0, 0);
            Add(MeshShape.Box, shape, at, new(width, size.Y + 0.001, size.Z + 0.001), _livery.Stripe);
        }
    }

    private void Camera(PartShape shape)
    {
        double edge = shape.Size.X;
        Add(MeshShape.Box, shape, new(-0.15 * edge, 0, 0), new(0.7 * edge, edge, edge), Livery.Of(PartKind.Camera), 0.4f);
        PartShape lens = shape with { R_OP = shape.R_OP * Quat.FromAxisAngle(Vec3.UnitY, Math.PI / 2).ToMatrix() };
        Add(MeshShape.Cylinder, lens, new(0, 0, 0.3 * edge), new(0.72 * edge, 0.72 * edge, 0.4 * edge), LinearColour.Of(0x101214), 0.5f);
        Add(MeshShape.Ball, lens, new(0, 0, 0.44 * edge), new(0.5 * edge, 0.5 * edge, 0.2 * edge), LinearColour.Of(0x37507A), 1);
    }

    private void Simple(PartMass part, Vector3 colour)
    {
        PartShape shape = part.Shape;
        Vec3 size = shape.Size;
        switch (shape.Kind)
        {
            case ShapeKind.Box:
                Add(MeshShape.Box, shape, Vec3.Zero, size, colour, 0.3f);
                break;
            case ShapeKind.Cylinder:
                Add(MeshShape.Cylinder, shape, Vec3.Zero, size, colour, 0.3f);
                break;
            case ShapeKind.Ring:
                Add(MeshShape.Pipe, shape, Vec3.Zero, size with { Y = size.X }, colour, 0.3f);
                break;
            case ShapeKind.Rod:
                PartShape rod = shape with { R_OP = shape.R_OP * Quat.FromAxisAngle(Vec3.UnitY, Math.PI / 2).ToMatrix() };
                Add(MeshShape.Cylinder, rod, Vec3.Zero, new(0.004, 0.004, size.X), colour, 0.3f);
                break;
            case ShapeKind.Disc:
                Add(MeshShape.Cylinder, shape, Vec3.Zero, size with { Z = 0.001 }, colour, 0.3f);
                break;
            case ShapeKind.Sphere:
                Add(MeshShape.Ball, shape, Vec3.Zero, size, colour, 0.3f);
                break;
            default:
                double d = MassInstances.Diameter(part.Mass.Mass);
                Add(MeshShape.Ball, shape, Vec3.Zero, new(d, d, d), colour, 0.3f);
                break;
        }
    }

    private void Add(MeshShape mesh, PartShape shape, Vec3 at, Vec3 size, Vector3 colour, float gloss = 0)
    {
        Matrix4x4 place = Matrix4x4.CreateScale(GraphicsFrame.Body(size)) * Matrix4x4.CreateTranslation(GraphicsFrame.Body(at))
            * GraphicsFrame.Placed(shape.R_OP, shape.p_OC - _build.p_OBcm);
        if (!_instances.TryGetValue(mesh, out List<Instance>? list)) _instances.Add(mesh, list = []);
        list.Add(Instance.Of(place, colour, gloss));
    }
}
