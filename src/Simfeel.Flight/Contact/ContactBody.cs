using Simfeel.Builds;
using Simfeel.Physics;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Contact;

/// <summary>A small sphere of a craft that can touch things.</summary>
/// <param name="p_BcmP_B">Centre from the craft's centre of gravity, body axes, m.</param>
/// <param name="Radius">Radius, m.</param>
public readonly record struct ContactProbe(Vec3 p_BcmP_B, double Radius);

/// <summary>
/// What of a craft can touch things: spheres under the motors and at the corners of plates, battery and camera, which push
/// back; and the propellers' discs, which break. Immutable.
/// </summary>
public sealed class ContactBody
{
    /// <summary>Half the thickness of the carbon and plastic edges that corners stand for, m; an estimate.</summary>
    private const double EdgeRadius = 0.002;

    private readonly ContactProbe[] _probes;

    /// <summary>A body of probes.</summary>
    /// <param name="craft">Its craft.</param>
    /// <param name="probes">Probes, at least one.</param>
    public ContactBody(Craft craft, IEnumerable<ContactProbe> probes)
    {
        ArgumentNullException.ThrowIfNull(craft);
        _probes = [.. probes];
        if (_probes.Length == 0) throw new ArgumentException("A body needs at least one probe.", nameof(probes));
        InverseMass = 1 / craft.Mass;
        InverseInertia = craft.I_BBcm_B.Inverse;
        Rotors = craft.Rotors;
        Reach = Math.Max(
            _probes.Max(probe => probe.p_BcmP_B.Length + probe.Radius),
            craft.Rotors.Max(rotor => rotor.p_BcmR_B.Length + rotor.Radius));
        RestHeight = _probes.Max(probe => probe.p_BcmP_B.Z + probe.Radius);
    }

    /// <summary>The probes.</summary>
    public ReadOnlySpan<ContactProbe> Probes => _probes;

    /// <summary>The rotors, whose discs break.</summary>
    public IReadOnlyList<RotorConstants> Rotors { get; }

    /// <summary>1/kg.</summary>
    public double InverseMass { get; }

    /// <summary>Inverse of the inertia tensor about the centre of gravity, body axes, 1/(kg m^2).</summary>
    public Mat3 InverseInertia { get; }

    /// <summary>No point of the craft is further from its centre of gravity, m.</summary>
    public double Reach { get; }

    /// <summary>Height of the centre of gravity over flat ground where the level craft just touches, m.</summary>
    public double RestHeight { get; }

    /// <summary>The body of an assembled build.</summary>
    public static ContactBody Of(AssembledBuild build)
    {
        ArgumentNullException.ThrowIfNull(build);
        FrameSpec frame = build.Build.Frame;
        double foot = Math.Max(frame.ArmThickness / 2, build.Build.Motor.Body.OuterDiameter / 4);
        List<ContactProbe> probes = [];
        foreach (MotorMount mount in frame.Mounts)
        {
            // as low as the arm's underside: motors stand on top of it
            Vec3 under = mount.p_OM + (((frame.ArmThickness / 2) - foot) * Vec3.UnitZ);
            probes.Add(new(under - build.p_OBcm, foot));
        }
        foreach (PartMass part in build.Parts)
        {
            bool edged = part.Group is PartKind.Battery or PartKind.Camera || part.Name is "top plate" or "bottom plate";
            if (edged && part.Shape.Kind == ShapeKind.Box) AddCorners(probes, part.Shape, build.p_OBcm);
        }
        return new(build.Craft, probes);
    }

    private static void AddCorners(List<ContactProbe> probes, PartShape box, Vec3 p_OBcm)
    {
        double radius = Math.Min(EdgeRadius, Math.Min(box.Size.X, Math.Min(box.Size.Y, box.Size.Z)) / 2);
        Vec3 half = new((box.Size.X / 2) - radius, (box.Size.Y / 2) - radius, (box.Size.Z / 2) - radius);
        for (int corner = 0; corner < 8; corner++)
        {
            Vec3 p = new(
                (corner & 1) == 0 ? half.X : -half.X, (corner & 2) == 0 ? half.Y : -half.Y, (corner & 4) == 0 ? half.Z : -half.Z);
            probes.Add(new(box.p_OC + (box.R_OP * p) - p_OBcm, radius));
        }
    }
}
