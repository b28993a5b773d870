using Simfeel.Physics;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Contact;

/// <summary>Velocity and rate of a craft, which contact changes.</summary>
/// <param name="p_WB">Centre of gravity in the world, m.</param>
/// <param name="v_WB">Velocity in the world, m/s.</param>
/// <param name="R_WB">Attitude, body to world.</param>
/// <param name="w_WB_B">Angular velocity, body axes, rad/s.</param>
public record struct ContactMotion(Vec3 p_WB, Vec3 v_WB, Mat3 R_WB, Vec3 w_WB_B);

/// <summary>
/// Contact of one craft, worked out between the kernel's steps: every probe that overlaps something is pushed out by a
/// spring and a damper (a penalty), and held back along the surface by Coulomb friction. Spring and damper are given as
/// a natural frequency and a damping ratio against the mass that the probe feels, so that a craft of 20 g and one of 4 kg
/// behave alike and the step of 1/4000 s, a quarter of a radian, stays far from the limit of stability (1.4 rad). Forces
/// act as impulses on the velocity before the next step moves the craft (semi-implicit). Nothing is allocated after the
/// constructor.
/// </summary>
public sealed class CraftContact(ContactBody body, ContactWorld world)
{
    /// <summary>Natural frequency of one touching probe, rad/s: at 60 m/s it sinks in by 6 cm.</summary>
    public const double Frequency = 1000;

    /// <summary>Damping ratio: what drops bounces with 0.4 of its speed, an estimate for frames on short grass.</summary>
    public const double Damping = 0.35;

    /// <summary>Coefficient of friction of carbon and plastic on short grass or gravel; an estimate.</summary>
    public const double Friction = 0.6;

    /// <summary>More solids than this are never close to one craft.</summary>
    private const int MostNear = 32;

    private const int RimPoints = 12;

    /// <summary>Points on a circle of radius 1.</summary>
    private static readonly (double X, double Y)[] Rim =
        [.. Enumerable.Range(0, RimPoints).Select(n => (Math.Cos(n * Math.Tau / RimPoints), Math.Sin(n * Math.Tau / RimPoints)))];

    private readonly int[] _near = new int[MostNear];
    private int _nearCount;

    /// <summary>How many times the way at the present speed <see cref="Look"/> looks ahead, for what accelerates.</summary>
    public const double SpeedMargin = 2;

    /// <summary>How far <see cref="Look"/> looks around a craft that stands still, m: its parts, and a hand's breadth.</summary>
    public double Margin { get; } = body.Reach + 0.05;

    /// <summary>A bit for each rotor that struck something.</summary>
    public int StruckRotors { get; private set; }

    /// <summary>Whether something may be touched before the next <see cref="Look"/>.</summary>
    public bool IsNear { get; private set; }

    /// <summary>Whether something was touched since the last <see cref="Look"/>.</summary>
    public bool Touching { get; private set; }

    /// <summary>Whether anything was touched, or struck by a propeller, since <see cref="Clear"/>.</summary>
    public bool HasTouched { get; private set; }

    /// <summary>Whether the sea was touched since <see cref="Clear"/>.</summary>
    public bool Wet { get; private set; }

    /// <summary>
    /// Fastest approach of the centre of gravity to something that was touched since the last <see cref="Look"/>, m/s: a foot that
    /// slaps down after another one does not count for more.
    /// </summary>
    public double ImpactSpeed { get; private set; }

    /// <summary>Mends everything, for a craft that is put at its start.</summary>
    public void Clear()
    {
        StruckRotors = 0;
        IsNear = false;
        Wet = false;
        HasTouched = false;
        Forget();
    }

    /// <summary>Once at each stick reading: finds what is within reach until the next one.</summary>
    /// <param name="p_WB">Centre of gravity in the world, m.</param>
    /// <param name="v_WB">Its velocity, m/s.</param>
    /// <param name="ahead">Time until the next look, s.</param>
    public void Look(Vec3 p_WB, Vec3 v_WB, double ahead)
    {
        Forget();
        double reach = Margin + (SpeedMargin * ahead * v_WB.Length);
        _nearCount = world.Near(p_WB, reach, _near);
        IsNear = _nearCount > 0 || p_WB.Z + reach > world.GroundAt(p_WB.X, p_WB.Y);
        // at the edge of the land, the ground may be higher a step aside
        IsNear |= p_WB.Z + reach > 0 && !world.IsLand(p_WB.X, p_WB.Y);
    }

    /// <summary>Where <see cref="Look"/> found something near: which propellers strike it.</summary>
    public void Strike(in ContactMotion motion)
    {
        for (int k = 0; k < body.Rotors.Count; k++)
        {
            if ((StruckRotors & (1 << k)) == 0 && Strikes(body.Rotors[k], motion)) StruckRotors |= 1 << k;
        }
        HasTouched |= StruckRotors != 0;
    }

    /// <summary>Changes velocity and rate by what touches the craft over one step (s).</summary>
    public void Push(ref ContactMotion motion, double step)
    {
        foreach (ContactProbe probe in body.Probes)
        {
            Vec3 arm_W = motion.R_WB * probe.p_BcmP_B;
            Vec3 p_WP = motion.p_WB + arm_W;
            double depth = world.GroundDepth(p_WP, probe.Radius, out Vec3 away_W);
            if (depth > 0)
            {
                Wet |= !world.IsLand(p_WP.X, p_WP.Y);
                Touch(ref motion, arm_W - (probe.Radius * away_W), depth, away_W, step);
            }
            for (int n = 0; n < _nearCount; n++)
            {
                depth = probe.Radius - world.Distance(_near[n], p_WP, out away_W);
                if (depth > 0) Touch(ref motion, arm_W - (probe.Radius * away_W), depth, away_W, step);
            }
        }
    }

    private void Touch(ref ContactMotion motion, Vec3 arm_W, double depth, Vec3 normal_W, double step)
    {
        Mat3 toBody = motion.R_WB.Transpose;
        Vec3 arm_B = toBody * arm_W, normal_B = toBody * normal_W;
        Vec3 v_W = motion.v_WB + (motion.R_WB * Vec3.Cross(motion.w_WB_B, arm_B));
        double leaving = Vec3.Dot(v_W, normal_W);
        double mass = Felt(arm_B, normal_B);
        double acceleration = (Frequency * Frequency * depth) - (2 * Damping * Frequency * leaving);
        if (acceleration <= 0) return;
        double push = mass * acceleration * step;
        Vec3 slide_W = v_W - (leaving * normal_W);
        double slide = slide_W.Length;
        Vec3 impulse_W = push * normal_W;
        if (slide > 0)
        {
            // friction stops a slide within the step at most; the half leaves room for the neighbouring probes
            Vec3 along_W = slide_W / slide;
            double most = 0.5 * Felt(arm_B, toBody * along_W) * slide;
            impulse_W -= Math.Min(Friction * push, most) * along_W;
        }
        motion.v_WB += body.InverseMass * impulse_W;
        motion.w_WB_B += body.InverseInertia * Vec3.Cross(arm_B, toBody * impulse_W);
        Touching = true;
        HasTouched = true;
        ImpactSpeed = Math.Max(ImpactSpeed, -Vec3.Dot(motion.v_WB, normal_W));
    }

    /// <summary>Mass that a probe feels along a direction: 1/m_f = 1/m + (r x n) I^-1 (r x n), kg.</summary>
    private double Felt(Vec3 arm_B, Vec3 direction_B)
    {
        Vec3 turn = Vec3.Cross(arm_B, direction_B);
        return 1 / (body.InverseMass + Vec3.Dot(turn, body.InverseInertia * turn));
    }

    private bool Strikes(RotorConstants rotor, in ContactMotion motion)
    {
        Vec3 hub_W = motion.p_WB + (motion.R_WB * rotor.p_BcmR_B);
        Vec3 forward_W = motion.R_WB * Vec3.UnitX, right_W = motion.R_WB * Vec3.UnitY;
        foreach ((double x, double y) in Rim)
        {
            for (int ring = 1; ring <= 2; ring++)
            {
                Vec3 p_WP = hub_W + (rotor.Radius * ring / 2 * ((x * forward_W) + (y * right_W)));
                if (p_WP.Z > world.GroundAt(p_WP.X, p_WP.Y)) return true;
                for (int n = 0; n < _nearCount; n++)
                {
                    if (world.Distance(_near[n], p_WP, out _) < 0) return true;
                }
            }
        }
        return false;
    }

    private void Forget()
    {
        Touching = false;
        ImpactSpeed = 0;
    }
}
