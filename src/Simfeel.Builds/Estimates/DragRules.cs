using Simfeel.Physics.Maths;

namespace Simfeel.Builds.Estimates;

/// <summary>
/// Drag of the body from the areas of its parts, rotors apart. Coefficients are those of bluff bodies at Reynolds
/// numbers of 1e4 to 1e5 (Hoerner, Fluid-Dynamic Drag, 1965, ch. III, from memory): box face-on 1.05, plate 1.17,
/// short cylinder across 0.64, end-on 1.0. Wires, straps and antennas add a quarter (estimate).
/// </summary>
internal static class DragRules
{
    private const double Box = 1.05, Plate = 1.17, CylinderAcross = 0.64, CylinderEnd = 1.0, Clutter = 1.25;

    public static DragSpec Resolve(ValueLedger ledger, IReadOnlyList<PartMass> parts, FrameSpec frame)
    {
        Vec3 area = Vec3.Zero, moment = Vec3.Zero;
        double weight = 0;
        foreach (PartMass part in parts)
        {
            Vec3 own = Area(part, frame);
            double mean = (own.X + own.Y + own.Z) / 3;
            area += own;
            moment += mean * part.Shape.p_OC;
            weight += mean;
        }
        area = Clutter * area;
        Vec3 centre = moment / weight;
        return new DragSpec
        {
            Area = new(
                ledger.OrRule("drag.area_x_cm2", area.X, 0.25),
                ledger.OrRule("drag.area_y_cm2", area.Y, 0.25),
                ledger.OrRule("drag.area_z_cm2", area.Z, 0.25)),
            p_OD = new(
                ledger.OrRule("drag.centre_x_mm", centre.X, 0),
                ledger.OrRule("drag.centre_y_mm", centre.Y, 0),
                ledger.OrRule("drag.centre_z_mm", centre.Z, 0)),
        };
    }

    /// <summary>Drag area of one part for flow along x, y, z, m^2.</summary>
    private static Vec3 Area(PartMass part, FrameSpec frame)
    {
        Vec3 size = part.Shape.Size;
        Mat3 r = part.Shape.R_OP;
        switch (part.Group)
        {
            case PartKind.Frame when part.Name == "hardware":
                // The deck between the plates: half filled by standoffs, electronics and wires.
                return 0.5 * Box * new Vec3(size.Y * size.Z, size.X * size.Z, 0);
            case PartKind.Frame when part.Shape.Kind == ShapeKind.Ring:
                double side = CylinderAcross * size.X * size.Z;
                return new(side, side, Plate * Math.PI / 4 * ((size.X * size.X) - (size.Y * size.Y)));
            case PartKind.Frame when part.Name == "top plate":
                // In the shadow of the bottom plate, seen from above or below.
                return Plate * new Vec3(size.Y * size.Z, size.X * size.Z, 0);
            case PartKind.Frame:
                return Plate * Shadow(size, r);
            case PartKind.Motors when part.Shape.Kind == ShapeKind.Ring:
                return new(CylinderAcross * size.X * size.Z, CylinderAcross * size.X * size.Z, CylinderEnd * Math.PI / 4 * size.X * size.X);
            case PartKind.Battery:
                // From above only what stands out beyond the plate.
                double covered = Math.Min(size.X, frame.PlateLength) * Math.Min(size.Y, frame.PlateWidth);
                return Box * new Vec3(size.Y * size.Z, size.X * size.Z, Math.Max(0, (size.X * size.Y) - covered));
            case PartKind.Camera:
                return Box * new Vec3(size.Y * size.Z, size.X * size.Z, 0);
            case PartKind.Extras:
                return Box * Shadow(Bounds(part.Shape), r);
            default:
                return Vec3.Zero;
        }
    }

    /// <summary>Projected areas of a box of the given edges, turned by R, along the body axes.</summary>
    private static Vec3 Shadow(Vec3 size, Mat3 r)
    {
        double yz = size.Y * size.Z, xz = size.X * size.Z, xy = size.X * size.Y;
        return new(
            (Math.Abs(r.M00) * yz) + (Math.Abs(r.M01) * xz) + (Math.Abs(r.M02) * xy),
            (Math.Abs(r.M10) * yz) + (Math.Abs(r.M11) * xz) + (Math.Abs(r.M12) * xy),
            (Math.Abs(r.M20) * yz) + (Math.Abs(r.M21) * xz) + (Math.Abs(r.M22) * xy));
    }

    private static Vec3 Bounds(PartShape shape) => shape.Kind switch
    {
        ShapeKind.Rod => new(shape.Size.X, 0.003, 0.003),
        _ => shape.Size,
    };
}
