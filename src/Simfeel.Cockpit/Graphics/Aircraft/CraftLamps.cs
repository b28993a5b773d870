using Simfeel.Builds;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Graphics.Aircraft;

/// <summary>A lamp of a craft.</summary>
/// <param name="p_BL">Place in body axes from the centre of gravity, m.</param>
/// <param name="Front">White and shining ahead, else red-orange and shining back.</param>
internal readonly record struct CraftLamp(Vec3 p_BL, bool Front);

/// <summary>Where lamps stand: white ones under the front motors, red-orange ones under the rear motors and one more at the tail.</summary>
internal static class CraftLamps
{
    /// <summary>The lamps of a build. Front and back differ in colour and in number.</summary>
    public static CraftLamp[] Of(AssembledBuild build)
    {
        List<CraftLamp> lamps = [];
        double reach = build.Build.Frame.Mounts.Max(m => Math.Abs(m.p_OM.X));
        foreach (MotorMount mount in build.Build.Frame.Mounts)
        {
            if (Math.Abs(mount.p_OM.X) < 0.3 * reach) continue;
            bool front = mount.p_OM.X > 0;
            Vec3 outward = (front ? 0.6 : -0.6) * build.Build.Motor.Body.OuterDiameter * Vec3.UnitX;
            lamps.Add(new(mount.p_OM + outward - build.p_OBcm, front));
        }
        lamps.Add(new(new Vec3(-build.Build.Frame.PlateLength / 2, 0, 0) - build.p_OBcm, false));
        return [.. lamps];
    }
}
