using Simfeel.Cockpit.Graphics.Aircraft;
using Simfeel.Cockpit.Graphics.Views;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Tests.Graphics;

public class ViewRigTests
{
    private const double Degree = Math.PI / 180;

    [Fact]
    public void Onboard_LooksUpByTheTiltOfTheBuildOrTheOneSet()
    {
        CraftPose pose = SceneStage.Pose(SceneStage.A, new(3, 4, -5), 0, 0, 90 * Degree, 0);
        ViewRig rig = new(SceneStage.Map);
        Vec3 ahead = rig.Update(View.Onboard, SceneStage.A, pose, 0).Look.Rotate(Vec3.UnitX);
        Assert.Equal(SceneStage.A.Hardware.CameraTilt, Math.Asin(-ahead.Z), 9);
        Assert.Equal(1, ahead.Y / Math.Cos(SceneStage.A.Hardware.CameraTilt), 9);
        rig.Tilt = 10 * Degree;
        ahead = rig.Update(View.Onboard, SceneStage.A, pose, 0).Look.Rotate(Vec3.UnitX);
        Assert.Equal(10 * Degree, Math.Asin(-ahead.Z), 9);
    }

    [Fact]
    public void Onboard_EyeStandsAtTheCameraOfTheBuild()
    {
        CraftPose pose = SceneStage.Pose(SceneStage.A, new(3, 4, -5), 0.3, 0.2, 1, 0);
        Camera camera = new ViewRig(SceneStage.Map).Update(View.Onboard, SceneStage.A, pose, 0);
        Vec3 box = pose.p_WB + pose.q_WB.Rotate(SceneStage.A.Build.Camera.p_OC - SceneStage.A.p_OBcm);
        Assert.InRange((camera.Eye - box).Length, SceneStage.A.Build.Camera.Size / 2, (SceneStage.A.Build.Camera.Size / 2) + 0.005);
    }

    [Fact]
    public void TrueScale_FieldOfViewIsTheAngleOfTheScreen()
    {
        ViewRig rig = new(SceneStage.Map) { TrueScale = true, ScreenHeight = 0.34, EyeDistance = 0.7, Bend = 1 };
        Camera camera = rig.Update(View.Onboard, SceneStage.A, SceneStage.Pose(SceneStage.A, default, 0, 0, 0, 0), 0);
        // a screen 0.34 m high seen from 0.7 m: 2 atan(0.17/0.7) = 27.3 degrees
        Assert.Equal(27.3, camera.VerticalFieldOfView / Degree, 1);
        Assert.Equal(0, camera.Bend);
    }

    [Fact]
    public void Chase_DoesNotDependOnTheFrameRate()
    {
        Camera slow = Flown(30), fast = Flown(240);
        Assert.True((slow.Eye - fast.Eye).Length < 0.08, $"{slow.Eye} and {fast.Eye}");

        // a turn at 90 degrees a second and 8 m/s
        static Camera Flown(int rate)
        {
            ViewRig rig = new(SceneStage.Map);
            Camera camera = default;
            for (int i = 0; i <= 2 * rate; i++)
            {
                double t = (double)i / rate, yaw = 90 * Degree * t;
                Vec3 p = new(8 / (90 * Degree) * Math.Sin(yaw), 8 / (90 * Degree) * (1 - Math.Cos(yaw)), -4);
                camera = rig.Update(View.Chase, SceneStage.A, SceneStage.Pose(SceneStage.A, p, 0, 0, yaw, 0), i == 0 ? 0 : 1.0 / rate);
            }
            return camera;
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(60)]
    [InlineData(85)]
    public void Chase_NeverGoesUnderGround(double pitch)
    {
        CraftPose pose = SceneStage.Pose(SceneStage.A, new(0, 0, -0.03), 0, pitch * Degree, 0, 0);
        Camera camera = new ViewRig(SceneStage.Map).Update(View.Chase, SceneStage.A, pose, 0);
        Assert.True(camera.Eye.Z <= -0.15, $"{camera.Eye}");
    }

    [Fact]
    public void Chase_KeepsTheSameDistanceForAllBuilds()
    {
        Vec3 p = new(0, 0, -5);
        Camera a = new ViewRig(SceneStage.Map).Update(View.Chase, SceneStage.A, SceneStage.Pose(SceneStage.A, p, 0, 0, 0, 0), 0);
        Camera b = new ViewRig(SceneStage.Map).Update(View.Chase, SceneStage.B, SceneStage.Pose(SceneStage.B, p, 0, 0, 0, 0), 0);
        Assert.Equal(a, b);
    }

    [Fact]
    public void Ground_StandsAtThePilotAndLooksAtTheCraft()
    {
        CraftPose pose = SceneStage.Pose(SceneStage.A, new(30, -12, -8), 0, 0, 0, 0);
        Camera camera = new ViewRig(SceneStage.Map).Update(View.Ground, SceneStage.A, pose, 0);
        Assert.Equal(SceneStage.Map.PilotEye, camera.Eye);
        Vec3 to = pose.p_WB - camera.Eye;
        Assert.Equal(1, Vec3.Dot(to / to.Length, camera.Look.Rotate(Vec3.UnitX)), 9);
        // and never rolls its head
        Assert.Equal(0, camera.Look.Rotate(Vec3.UnitY).Z, 9);
    }
}
