using Simfeel.Builds;
using Simfeel.Cockpit.Graphics.Aircraft;
using Simfeel.Flight.Fields;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Graphics.Views;

/// <summary>
/// Makes the camera of a picture from the craft's pose. The settings are the same for both builds: an angle or a distance
/// that differed would fake a difference in feel. One rig follows one craft.
/// </summary>
public sealed class ViewRig(FieldMap map)
{
    /// <summary>Narrowest and widest field of view from top to bottom, rad: 15 and 130 degrees.</summary>
    public const double LeastFieldOfView = Math.PI / 12, LargestFieldOfView = 13 * Math.PI / 18;

    // The chase eye keeps this far from every craft, so that a larger one looks larger, m.
    private const double ChaseBehind = 0.92, ChaseAbove = 0.33;

    // It looks this far over the craft, m, which leaves the strip of instruments below it free.
    private const double ChaseLookAbove = 0.07;

    // Widest chase picture, rad: wider ones make the craft small and the field far.
    private const double ChaseField = 54 * Math.PI / 180;

    // Time constants of following: heading and place of the chase eye, turn and zoom of the pilot's head, s.
    private const double HeadingTime = 0.16, PlaceTime = 0.07, HeadTime = 0.08, ZoomTime = 0.6;

    // Lowest eye over the ground, m.
    private const double LeastHeight = 0.18;

    // The pilot on the ground sees this much of the field about a craft, m, before zoom ends.
    private const double GroundWindow = 5.5;

    private bool _started;
    private View _last;
    private Vec3 _place;
    private double _heading, _azimuth, _elevation, _zoom;

    /// <summary>Field of view of onboard and chase pictures from top to bottom, rad; 15 to 130 degrees.</summary>
    public double FieldOfView { get; set; } = 80 * Math.PI / 180;

    /// <summary>0 straight lines stay straight, 1 equal angles per distance; onboard pictures only.</summary>
    public double Bend { get; set; }

    /// <summary>Tilt of the onboard camera upwards, rad; null for each build's own.</summary>
    public double? Tilt { get; set; }

    /// <summary>
    /// Onboard, the field of view is the angle under which the eye sees the screen, so that angles on the screen are
    /// those of the world.
    /// </summary>
    public bool TrueScale { get; set; }

    /// <summary>Height of the picture on the screen, m; above 0. For <see cref="TrueScale"/>.</summary>
    public double ScreenHeight { get; set; } = 0.3;

    /// <summary>Distance of the eye from the screen, m; above 0. For <see cref="TrueScale"/>.</summary>
    public double EyeDistance { get; set; } = 0.6;

    /// <summary>Forgets where the eye was; after a restart or a swap.</summary>
    public void Reset() => _started = false;

    /// <summary>The camera of the next picture.</summary>
    /// <param name="view">Where from; <see cref="View.Split"/> is taken as chase.</param>
    /// <param name="build">The build that is followed.</param>
    /// <param name="pose">Its pose.</param>
    /// <param name="elapsed">Time since the last picture, s; 0 or above.</param>
    public Camera Update(View view, AssembledBuild build, in CraftPose pose, double elapsed)
    {
        ArgumentNullException.ThrowIfNull(build);
        if (view == View.Split) view = View.Chase;
        if (view != _last) _started = false;
        _last = view;
        Camera camera = view switch
        {
            View.Onboard => Onboard(build, pose),
            View.Ground => FromGround(pose, elapsed),
            _ => Chase(pose, elapsed),
        };
        _started = true;
        return camera;
    }

    /// <summary>A close eye that circles a craft; for the mass view.</summary>
    /// <param name="build">The build, for its size.</param>
    /// <param name="pose">Its pose.</param>
    /// <param name="azimuth">Direction from the craft to the eye, from north towards east, rad.</param>
    /// <param name="elevation">Height of the eye over the craft's level, rad; -pi/2 to pi/2, ends left out.</param>
    public static Camera Orbit(AssembledBuild build, in CraftPose pose, double azimuth, double elevation)
    {
        ArgumentNullException.ThrowIfNull(build);
        // the same distance for all builds up to 10 inch, so that sizes compare
        double distance = Math.Max(0.95, 2.4 * Reach(build));
        Vec3 away = new(Math.Cos(elevation) * Math.Cos(azimuth), Math.Cos(elevation) * Math.Sin(azimuth), -Math.Sin(elevation));
        Vec3 eye = pose.p_WB + (distance * away);
        return new(eye, Quat.FromEuler(0, -elevation, azimuth + Math.PI), 38 * Math.PI / 180, 0);
    }

    /// <summary>Distance of the farthest propeller tip from the centre of gravity, m.</summary>
    internal static double Reach(AssembledBuild build)
    {
        double reach = 0;
        // by index: an enumerator of an interface is an object, and this runs for every picture
        for (int k = 0; k < build.Craft.Rotors.Count; k++)
        {
            Physics.RotorConstants rotor = build.Craft.Rotors[k];
            reach = Math.Max(reach, double.Hypot(rotor.p_BcmR_B.X, rotor.p_BcmR_B.Y) + rotor.Radius);
        }
        return reach;
    }

    private Camera Onboard(AssembledBuild build, in CraftPose pose)
    {
        double tilt = Tilt ?? build.Hardware.CameraTilt;
        CameraSpec spec = build.Build.Camera;
        // the lens stands at the front of the camera's cube
        Vec3 lens = spec.p_OC - build.p_OBcm + (((spec.Size / 2) + 0.004) * new Vec3(Math.Cos(tilt), 0, -Math.Sin(tilt)));
        Quat look = pose.q_WB * Quat.FromAxisAngle(Vec3.UnitY, tilt);
        double field = TrueScale ? 2 * Math.Atan(ScreenHeight / (2 * EyeDistance)) : FieldOfView;
        return new(pose.p_WB + pose.q_WB.Rotate(lens), look, Clamped(field), TrueScale ? 0 : Math.Clamp(Bend, 0, 1));
    }

    private Camera Chase(in CraftPose pose, double elapsed)
    {
        double heading = Heading(pose.q_WB, _heading);
        if (!_started)
        {
            _heading = heading;
            _place = pose.p_WB;
        }
        _heading += Share(elapsed, HeadingTime) * Math.IEEERemainder(heading - _heading, 2 * Math.PI);
        // The eye lags by at most a little: a fast craft must not run away from it.
        Vec3 lag = (1 - Share(elapsed, PlaceTime)) * (_place - pose.p_WB);
        const double most = 0.35;
        if (lag.Length > most) lag = most / lag.Length * lag;
        _place = pose.p_WB + lag;
        Vec3 ahead = new(Math.Cos(_heading), Math.Sin(_heading), 0);
        Vec3 eye = AboveGround(_place - (ChaseBehind * ahead) - (ChaseAbove * Vec3.UnitZ));
        Vec3 to = pose.p_WB - (ChaseLookAbove * Vec3.UnitZ) - eye;
        // looks along the smoothed heading, up and down towards the craft
        double level = Math.Max(0.2, Vec3.Dot(to, ahead));
        return new(eye, Quat.FromEuler(0, -Math.Atan2(to.Z, level), _heading), Clamped(Math.Min(FieldOfView, ChaseField)), 0);
    }

    private Camera FromGround(in CraftPose pose, double elapsed)
    {
        Vec3 to = pose.p_WB - map.PilotEye;
        double distance = Math.Max(to.Length, 0.5);
        double azimuth = Math.Atan2(to.Y, to.X), elevation = Math.Atan2(-to.Z, double.Hypot(to.X, to.Y));
        double zoom = Math.Clamp(2 * Math.Atan(GroundWindow / 2 / distance), 10 * Math.PI / 180, 55 * Math.PI / 180);
        if (!_started) (_azimuth, _elevation, _zoom) = (azimuth, elevation, zoom);
        double head = Share(elapsed, HeadTime);
        _azimuth += head * Math.IEEERemainder(azimuth - _azimuth, 2 * Math.PI);
        _elevation += head * (elevation - _elevation);
        _zoom += Share(elapsed, ZoomTime) * (zoom - _zoom);
        return new(map.PilotEye, Quat.FromEuler(0, _elevation, _azimuth), _zoom, 0);
    }

    /// <summary>Heading of the nose, or of the belly's side where the nose points straight up or down.</summary>
    private static double Heading(Quat q_WB, double before)
    {
        Mat3 r = q_WB.ToMatrix();
        // upside down the nose's projection still tells where the craft goes
        double x = r.M00, y = r.M10;
        return (x * x) + (y * y) < 0.03 ? before : Math.Atan2(y, x);
    }

    private static Vec3 AboveGround(Vec3 eye) => eye.Z > -LeastHeight ? eye with { Z = -LeastHeight } : eye;

    private static double Share(double elapsed, double time) => 1 - Math.Exp(-Math.Max(0, elapsed) / time);

    private static double Clamped(double field) => Math.Clamp(field, LeastFieldOfView, LargestFieldOfView);
}
