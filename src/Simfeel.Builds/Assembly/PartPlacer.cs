using Simfeel.Builds.Estimates;
using Simfeel.Physics.Mass;
using Simfeel.Physics.Maths;

namespace Simfeel.Builds.Assembly;

/// <summary>Turns the parts of a build into placed shapes with mass.</summary>
internal static class PartPlacer
{
    /// <summary>Every part, placed from the build's origin in body axes.</summary>
    public static IReadOnlyList<PartMass> Place(Build build)
    {
        List<PartMass> parts = [];
        Frame(parts, build.Frame);
        for (int i = 0; i < build.Frame.Mounts.Count; i++) Motor(parts, build, i);
        parts.Add(Part("battery", PartKind.Battery, build.Battery.Mass, Upright(ShapeKind.Box, build.Battery.Size, build.Battery.p_OC)));
        parts.Add(Part("stack", PartKind.Electronics, build.Stack.Mass, Upright(ShapeKind.Box, build.Stack.Size, build.Stack.p_OC)));
        if (build.Camera.Mass > 0)
        {
            double edge = build.Camera.Size;
            parts.Add(Part("camera", PartKind.Camera, build.Camera.Mass, new(ShapeKind.Box, new(edge, edge, edge), build.Camera.p_OC, Tilt(build.Camera.Tilt))));
        }
        foreach (ExtraSpec extra in build.Extras) parts.Add(Part(extra.Name, PartKind.Extras, extra.Mass, extra.Shape));
        if (build.Stack.WiringMass > 0) parts.Add(Wiring(build.Frame, build.Stack.WiringMass));
        return parts;
    }

    /// <summary>Centre of the propeller's disc on a mount, from the build's origin, m.</summary>
    public static Vec3 Hub(Build build, MotorMount mount)
    {
        // The hub stands a quarter of the motor's height above the bell: nut and half a hub (common practice).
        double above = (build.Frame.ArmThickness / 2) + (1.25 * build.Motor.Body.Height);
        return mount.p_OM - (above * Vec3.UnitZ);
    }

    /// <summary>Mass properties of a shape of uniform density, placed.</summary>
    public static MassProperties MassOf(double mass, PartShape shape)
    {
        Vec3 size = shape.Size;
        MassProperties own = shape.Kind switch
        {
            ShapeKind.Box => MassProperties.Box(mass, size.X, size.Y, size.Z),
            ShapeKind.Cylinder => MassProperties.Cylinder(mass, size.X / 2, size.Z),
            ShapeKind.Ring => MassProperties.HollowCylinder(mass, size.Y / 2, size.X / 2, size.Z),
            ShapeKind.Rod => MassProperties.Rod(mass, size.X),
            ShapeKind.Sphere => MassProperties.Sphere(mass, size.X / 2),
            ShapeKind.Disc => MassProperties.Disc(mass, size.X / 2),
            _ => MassProperties.Point(mass),
        };
        return own.Rotated(shape.R_OP).Translated(shape.p_OC);
    }

    private static void Frame(List<PartMass> parts, FrameSpec frame)
    {
        for (int i = 0; i < frame.Mounts.Count; i++)
        {
            if (ArmShape(frame, frame.Mounts[i].p_OM) is not PartShape arm) continue;
            double mass = frame.MaterialDensity * arm.Size.X * arm.Size.Y * arm.Size.Z;
            parts.Add(Part($"arm {i + 1}", PartKind.Frame, mass, arm));
        }
        Vec3 plate = new(frame.PlateLength, frame.PlateWidth, frame.PlateThickness);
        parts.Add(Part("bottom plate", PartKind.Frame, frame.PlateMass, Upright(ShapeKind.Box, plate, Vec3.Zero)));
        double deckTop = -((frame.PlateThickness / 2) + frame.DeckHeight);
        if (frame.TopPlateMass > 0)
        {
            Vec3 top = plate with { Z = frame.TopPlateThickness };
            parts.Add(Part("top plate", PartKind.Frame, frame.TopPlateMass, Upright(ShapeKind.Box, top, new(0, 0, deckTop - (frame.TopPlateThickness / 2)))));
        }
        if (frame.HardwareMass > 0)
        {
            Vec3 size = plate with { Z = Math.Max(frame.DeckHeight, frame.PlateThickness) };
            parts.Add(Part("hardware", PartKind.Frame, frame.HardwareMass, Upright(ShapeKind.Box, size, new(0, 0, deckTop / 2))));
        }
    }

    /// <summary>The arm of a mount: a box from the plate's edge to the shaft; null where the mount is on the plate.</summary>
    internal static PartShape? ArmShape(FrameSpec frame, Vec3 p_OM)
    {
        double reach = double.Hypot(p_OM.X, p_OM.Y);
        if (reach == 0) return null;
        double cos = p_OM.X / reach, sin = p_OM.Y / reach;
        // Where the ray from the centre leaves the plate's rectangle.
        double edge = Math.Min(
            frame.PlateLength / 2 / Math.Max(Math.Abs(cos), 1e-9),
            frame.PlateWidth / 2 / Math.Max(Math.Abs(sin), 1e-9));
        double length = reach - edge;
        if (length <= 0) return null;
        Vec3 centre = new((edge + (length / 2)) * cos, (edge + (length / 2)) * sin, p_OM.Z);
        return new(ShapeKind.Box, new(length, frame.ArmWidth, frame.ArmThickness), centre, Quat.FromEuler(0, 0, Math.Atan2(sin, cos)).ToMatrix());
    }

    private static void Motor(List<PartMass> parts, Build build, int index)
    {
        FrameSpec frame = build.Frame;
        MotorBody motor = build.Motor.Body;
        Vec3 mount = frame.Mounts[index].p_OM;
        Vec3 centre = mount - (((frame.ArmThickness / 2) + (motor.Height / 2)) * Vec3.UnitZ);
        // The ring of the outer diameter that has the bell's radius of gyration: k^2 = (r_o^2 + r_i^2)/2.
        const double k = MotorRules.BellGyration;
        double outer = motor.OuterDiameter, inner = 2 * Math.Sqrt((2 * k * k) - 0.25) * outer;
        string number = $"{index + 1}";
        parts.Add(Part("stator " + number, PartKind.Motors, (1 - motor.RotatingShare) * motor.Mass,
            Upright(ShapeKind.Cylinder, new(motor.StatorDiameter, motor.StatorDiameter, motor.Height), centre)));
        parts.Add(Part("bell " + number, PartKind.Motors, motor.RotatingShare * motor.Mass,
            Upright(ShapeKind.Ring, new(outer, inner, motor.Height), centre)));

        Vec3 hub = Hub(build, frame.Mounts[index]);
        double diameter = build.Propeller.Blades.Diameter;
        // A flat body that is the same about all its blades: half the spin inertia about each line in its plane.
        double spin = build.Propeller.Body.SpinInertia;
        MassProperties flat = new(build.Propeller.Body.Mass, hub, Mat3.Diagonal(spin / 2, spin / 2, spin));
        parts.Add(new("propeller " + number, PartKind.Propellers, flat, Upright(ShapeKind.Disc, new(diameter, diameter, 0), hub)));

        if (frame.DuctMass > 0)
        {
            Vec3 size = new(1.04 * frame.DuctDiameter, frame.DuctDiameter, frame.DuctHeight);
            parts.Add(Part("duct " + number, PartKind.Frame, frame.DuctMass, Upright(ShapeKind.Ring, size, hub)));
        }
    }

    private static PartMass Wiring(FrameSpec frame, double mass)
    {
        Vec3 size = new(frame.PlateLength / 2, frame.PlateWidth, Math.Max(frame.DeckHeight, frame.PlateThickness));
        return Part("wiring", PartKind.Wiring, mass, Upright(ShapeKind.Box, size, new(0, 0, -((frame.PlateThickness + frame.DeckHeight) / 2))));
    }

    private static Mat3 Tilt(double angle) => Quat.FromEuler(0, angle, 0).ToMatrix();

    private static PartShape Upright(ShapeKind kind, Vec3 size, Vec3 centre) => new(kind, size, centre, Mat3.Identity);

    private static PartMass Part(string name, PartKind group, double mass, PartShape shape) => new(name, group, MassOf(mass, shape), shape);
}
