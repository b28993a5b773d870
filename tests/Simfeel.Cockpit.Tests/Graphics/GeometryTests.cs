using System.Numerics;
using Simfeel.Cockpit.Graphics;
using Simfeel.Cockpit.Graphics.Aircraft;
using Simfeel.Cockpit.Graphics.Landscape;
using Simfeel.Cockpit.Graphics.Meshes;
using Simfeel.Cockpit.Graphics.Views;
using Simfeel.Physics;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Tests.Graphics;

public class GeometryTests
{
    [Fact]
    public void GraphicsFrame_IsARotationOfTheWorld()
    {
        Vec3 a = new(1, 2, 3), b = new(-2, 0.5, 4);
        Vector3 turned = Vector3.Cross(GraphicsFrame.Of(a), GraphicsFrame.Of(b));
        Assert.True(Vector3.Distance(turned, GraphicsFrame.Of(Vec3.Cross(a, b))) < 1e-5);
        Assert.Equal(Vector3.UnitX, GraphicsFrame.Of(Vec3.UnitY));
    }

    [Fact]
    public void Camera_SeesAheadInTheMiddleRightOnTheRightAndUpAbove()
    {
        Vec3 eye = new(3, -4, -5);
        Quat look = Quat.FromEuler(0.3, -0.2, 2.1);
        Matrix4x4 clip = GraphicsFrame.View(eye, look) * GraphicsFrame.Perspective(-1, 1, -1, 1, 0.1f, 100);
        Vector4 At(double x, double y, double z)
        {
            Vector4 p = Vector4.Transform(new Vector4(GraphicsFrame.Of(eye + look.Rotate(new(x, y, z))), 1), clip);
            return p / p.W;
        }
        Assert.True(new Vector2(At(10, 0, 0).X, At(10, 0, 0).Y).Length() < 1e-5);
        Assert.Equal(0.5f, At(10, 5, 0).X, 1e-5f);
        Assert.Equal(0.5f, At(10, 0, -5).Y, 1e-5f);
        Assert.Equal(-1, At(0.1, 0, 0).Z, 1e-3f);
        Assert.Equal(1, At(100, 0, 0).Z, 1e-3f);
    }

    [Fact]
    public void Triangles_FillAPolygonThatIsNotConvex()
    {
        // a U of area 16 - 4, given clockwise
        Vector2[] corners = [new(0, 0), new(0, 4), new(1, 4), new(1, 1), new(2, 1), new(2, 4), new(4, 4), new(4, 0)];
        double area = Math.Abs(Polygon.TwiceArea(corners)) / 2;
        Assert.Equal(13, area, 9);
        List<ushort> triangles = Polygon.Triangles(corners);
        Assert.Equal(3 * (corners.Length - 2), triangles.Count);
        double sum = 0;
        for (int i = 0; i < triangles.Count; i += 3)
        {
            double part = Polygon.TwiceArea([corners[triangles[i]], corners[triangles[i + 1]], corners[triangles[i + 2]]]) / 2;
            Assert.True(part >= 0);
            sum += part;
        }
        // no overlap and no gap: the parts add up, none is turned over
        Assert.Equal(area, sum, 9);
        Assert.False(Polygon.Contains(corners, new(1.5f, 3)));
        Assert.True(Polygon.Contains(corners, new(3, 3)));
    }

    [Fact]
    public void UnitMeshes_AreClosedAndLookOutwards()
    {
        foreach (MeshShape shape in Enum.GetValues<MeshShape>())
        {
            Mesh mesh = Mesh.Of(shape, 24);
            double volume = 0;
            for (int i = 0; i < mesh.Indices.Count; i += 3)
            {
                (Vector3 a, Vector3 b, Vector3 c) = (Corner(i), Corner(i + 1), Corner(i + 2));
                volume += Vector3.Dot(a, Vector3.Cross(b, c)) / 6;
            }
            // volumes of a cube, a cylinder, a frustum, a cone, a ball, a half cube, a pipe of the unit size; 24 sides lose about 2 %
            double expected = shape switch
            {
                MeshShape.Box => 1,
                MeshShape.Cylinder => Math.PI / 4,
                MeshShape.Tower => Math.PI / 12 * (1 + 0.64 + (0.64 * 0.64)),
                MeshShape.Cone => Math.PI / 12,
                MeshShape.Ball => Math.PI / 6,
                MeshShape.Roof => 0.5,
                MeshShape.Pipe => Math.PI / 4 * (1 - 0.64),
                _ => double.NaN,
            };
            if (double.IsNaN(expected)) Assert.InRange(volume, 0.15, 0.6);
            else Assert.InRange(volume / expected, 0.95, 1.0001);

            Vector3 Corner(int i) => new(mesh.Vertices[6 * mesh.Indices[i]], mesh.Vertices[(6 * mesh.Indices[i]) + 1], mesh.Vertices[(6 * mesh.Indices[i]) + 2]);
        }
    }

    [Fact]
    public void InertiaEllipsoid_GivesTheMomentsBack()
    {
        Craft craft = SceneStage.B.Craft;
        Vec3 a = MassInstances.HalfAxes(craft);
        Vec3 moments = Physics.Mass.PrincipalInertia.Of(craft.I_BBcm_B).Moments;
        // solid ellipsoid: I_x = m (b^2 + c^2)/5
        Assert.Equal(moments.X, craft.Mass / 5 * ((a.Y * a.Y) + (a.Z * a.Z)), 12);
        Assert.Equal(moments.Y, craft.Mass / 5 * ((a.X * a.X) + (a.Z * a.Z)), 12);
        Assert.Equal(moments.Z, craft.Mass / 5 * ((a.X * a.X) + (a.Y * a.Y)), 12);
    }

    [Theory]
    [InlineData(60, 1)]
    [InlineData(100, 1)]
    [InlineData(120, 0.6)]
    public void WideLens_SidePicturesReachEveryPointOfTheWhole(double degrees, double bend)
    {
        WideLens lens = new(degrees * Math.PI / 180, bend, 1280, 720);
        (double sin, double cos) = Math.SinCos(lens.Turn);
        for (double x = 0; x <= lens.Aspect; x += lens.Aspect / 40)
        {
            for (double y = -1; y <= 1; y += 0.05)
            {
                double r = Math.Max(double.Hypot(x, y), 1e-9), angle = lens.Angle(r), ahead = Math.Cos(angle);
                double across = Math.Sin(angle) * x / r, up = Math.Sin(angle) * y / r, depth = (ahead * cos) + (across * sin);
                Assert.True(depth > 0.05);
                Assert.InRange(((across * cos) - (ahead * sin)) / depth, lens.Left, lens.Right);
                Assert.InRange(up / depth, -lens.Top, lens.Top);
            }
        }
    }

    [Fact]
    public void WideLens_BendOneHasEqualAnglesPerDistance()
    {
        WideLens lens = new(1.6, 1, 640, 360);
        Assert.Equal(0.8, lens.Angle(1), 12);
        Assert.Equal(0.4, lens.Angle(0.5), 12);
        Assert.Equal(Math.Atan(0.5 * Math.Tan(0.8)), new WideLens(1.6, 0, 640, 360).Angle(0.5), 12);
    }

    [Fact]
    public void RotorBlur_TurnsBladesIntoADisc()
    {
        Assert.Equal(new(1, 0, RotorBlur.Of(0, 3).Ghosts), RotorBlur.Of(0, 3));
        RotorBlur hover = RotorBlur.Of(1000, 3), idle = RotorBlur.Of(120, 3);
        Assert.Equal((0, 1), (hover.Blades, hover.Disc));
        Assert.True(hover.Ghosts < idle.Ghosts && idle.Disc > 0);
        Assert.Equal(RotorBlur.Of(150, 3), RotorBlur.Of(-150, 3));
    }

    [Fact]
    public void EveryPartOfTheStarterBuilds_IsDrawnWithinItsReach()
    {
        foreach (Builds.AssembledBuild build in (Builds.AssembledBuild[])[SceneStage.A, SceneStage.B])
        {
            int drawn = 0;
            foreach ((_, Instance[] instances) in new CraftInstances(build, Livery.BySlot[0]).All)
            {
                drawn += instances.Length;
                foreach (Instance instance in instances) Assert.True(new Vector3(instance.Row0.W, instance.Row1.W, instance.Row2.W).Length() < ViewRig.Reach(build));
            }
            Assert.True(drawn > build.Parts.Count);
        }
    }
}
