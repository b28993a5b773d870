using Simfeel.Builds;
using Simfeel.Cockpit.Graphics;
using Simfeel.Cockpit.Graphics.Aircraft;
using Simfeel.Cockpit.Graphics.Views;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Tests.Graphics;

[Collection(WindowFixture.Collection)]
public class SceneGoldenTests(WindowFixture fixture)
{
    private const double Degree = Math.PI / 180;
    private const double Time = 3;

    private static CraftPose Flying(AssembledBuild build, double rotorSpeed, float opacity = 1) =>
        SceneStage.Pose(build, new(40, 24, -2.2), 8 * Degree, -14 * Degree, 18 * Degree, rotorSpeed, opacity);

    [Theory]
    [InlineData("chase-a", View.Chase, 0)]
    [InlineData("chase-b", View.Chase, 1)]
    [InlineData("onboard", View.Onboard, 0)]
    [InlineData("ground", View.Ground, 0)]
    public void View_LooksAsKept(string name, View view, int slot) => Check(name, Quality.Low, () =>
    {
        AssembledBuild build = slot == 0 ? SceneStage.A : SceneStage.B;
        CraftPose pose = view == View.Ground ? SceneStage.Pose(build, new(6, 3, -2.4), 0.2, -0.15, 0.9, 1100) : Flying(build, 1200);
        CraftPose[] craft = slot == 0 ? [pose, default] : [default, pose];
        return (new ViewRig(SceneStage.Map).Update(view, build, pose, 0), craft, new SceneOptions(Time));
    });

    [Theory]
    [InlineData("quality-medium", Quality.Medium)]
    [InlineData("quality-high", Quality.High)]
    public void Quality_LooksAsKept(string name, Quality quality) => Check(name, quality, () =>
    {
        CraftPose pose = SceneStage.Pose(SceneStage.A, new(60, 30, -0.7), 0.05, -0.1, 0.4, 1000);
        return (new ViewRig(SceneStage.Map).Update(View.Chase, SceneStage.A, pose, 0), [pose, default], new SceneOptions(Time));
    });

    [Fact]
    public void ShadowCraft_IsTranslucent() => Check("shadow-craft", Quality.Low, () =>
    {
        CraftPose pose = Flying(SceneStage.A, 1200), shadow = Flying(SceneStage.B, 900, opacity: 0.45f);
        shadow.p_WB += new Vec3(0.4, 0.45, 0.1);
        return (new ViewRig(SceneStage.Map).Update(View.Chase, SceneStage.A, pose, 0), [pose, shadow], new SceneOptions(Time));
    });

    [Fact]
    public void WideLens_BendsTheHorizon() => Check("wide-lens", Quality.Low, () =>
    {
        CraftPose pose = Flying(SceneStage.A, 1200);
        ViewRig rig = new(SceneStage.Map) { Bend = 1, FieldOfView = 95 * Degree };
        return (rig.Update(View.Onboard, SceneStage.A, pose, 0), [pose, default], new SceneOptions(Time));
    });

    [Fact]
    public void MassView_LooksAsKept() => Check("mass-view", Quality.Low, () =>
    {
        CraftPose pose = SceneStage.Pose(SceneStage.A, new(0, 0, -1.6), 0.1, 0.05, 0, 900);
        return (ViewRig.Orbit(SceneStage.A, pose, 200 * Degree, 24 * Degree), [pose, default], new SceneOptions(Time, MassView: true));
    });

    [Fact]
    public void StruckRotorAndReferencePlane_LookAsKept() => Check("struck", Quality.Low, () =>
    {
        CraftPose pose = SceneStage.Pose(SceneStage.B, new(30, -5, -1.2), 0.2, 0.1, 0.3, 0);
        pose.StruckRotors = 2;
        pose.RotorSpeeds[0] = 60;
        pose.RotorSpeeds[2] = 400;
        return (ViewRig.Orbit(SceneStage.B, pose, 150 * Degree, 28 * Degree), [default, pose], new SceneOptions(Time, ReferencePlane: true));
    });

    private void Check(string name, Quality quality, Func<(Camera Camera, CraftPose[] Craft, SceneOptions Options)> scene)
    {
        byte[] pixels = fixture.Run(() =>
        {
            using SceneStage stage = new(fixture.Gl);
            using SceneRenderer renderer = new(fixture.Gl, SceneStage.Map, quality);
            renderer.SetCraft(0, SceneStage.A);
            renderer.SetCraft(1, SceneStage.B);
            (Camera camera, CraftPose[] craft, SceneOptions options) = scene();
            return stage.Picture(renderer, camera, craft, options);
        });
        GoldenPicture.Check(name, pixels, SceneStage.Width, SceneStage.Height);
    }
}
