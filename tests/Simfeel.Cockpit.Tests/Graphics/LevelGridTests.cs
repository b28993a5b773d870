using Simfeel.Cockpit.Graphics;
using Simfeel.Cockpit.Graphics.Aircraft;
using Simfeel.Cockpit.Graphics.Views;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Tests.Graphics;

[Collection(WindowFixture.Collection)]
public class LevelGridTests(WindowFixture fixture)
{
    private const double Time = 3;

    [Fact]
    public void The_grid_looks_as_kept()
    {
        byte[] pixels = Picture(Eye(height: 6), new(Time, LevelGrid: 4), new(36.2, 21.2, -5.6));
        GoldenPicture.Check("level-grid", pixels, SceneStage.Width, SceneStage.Height);
    }

    [Fact]
    public void It_lies_between_horizon_and_near_edge_when_seen_from_above_and_from_below()
    {
        foreach (double height in (double[])[6, 2])
        {
            byte[] without = Picture(Eye(height), new(Time)), with = Picture(Eye(height), new(Time, LevelGrid: 4));
            (int above, int below) = (0, 0);
            for (int y = 0; y < SceneStage.Height; y++)
            {
                for (int x = 0; x < SceneStage.Width; x++)
                {
                    if (!Differs(with, without, x, y)) continue;
                    if (y < (SceneStage.Height / 2) - 1) above++;
                    else if (y > SceneStage.Height / 2) below++;
                }
            }
            // a level eye sees a plane below it under the horizon, in the middle of the picture, and one above it over it
            Assert.Equal(height > 4, below > 20000);
            Assert.Equal(height < 4, above > 20000);
            Assert.Equal(0, height > 4 ? above : below);
        }
    }

    [Fact]
    public void Its_lines_stay_at_whole_metres_of_the_world_wherever_the_craft_is()
    {
        // straight down from 8 m above the grid; what is drawn goes along with the craft, the lines do not
        Camera down = new(new(40.5, 20.5, -12), Quat.FromEuler(0, -Math.PI / 2, 0), 0.9, 0);
        byte[] near = Picture(down, new(Time, LevelGrid: 4), new(40, 20, -0.2)), far = Picture(down, new(Time, LevelGrid: 4), new(46.3, 24.7, -0.2));
        byte[] none = Picture(down, new(Time), new(46.3, 24.7, -0.2));
        // 8 m below a lens of 0.9 rad over 360 pixels a metre is 46.6 pixels
        double metre = SceneStage.Height / 2 / (8 * Math.Tan(0.45));
        int east = (SceneStage.Width / 2) + (int)Math.Round(2.5 * metre), half = (int)Math.Round(metre / 2);
        // 23 m east is a line, half a metre beside it is none; dark lines, pale between
        for (int y = 20; y < 60; y++)
        {
            if (y % (int)metre is < 3 or > 40) continue;
            Assert.True(Light(near, east, y) + 60 < Light(near, east + half, y), $"row {y}");
            Assert.Equal((double)Light(near, east, y), Light(far, east, y), 25.0);
            Assert.NotEqual(Light(none, east + half, y), Light(far, east + half, y));
        }
    }

    private static Camera Eye(double height) => new(new(34, 20, -height), Quat.FromEuler(0, 0, 0.4), 0.9, 0);

    private static int Light(byte[] pixels, int x, int y)
    {
        int i = 4 * ((y * SceneStage.Width) + x);
        return pixels[i] + pixels[i + 1] + pixels[i + 2];
    }

    private static bool Differs(byte[] a, byte[] b, int x, int y)
    {
        int i = 4 * ((y * SceneStage.Width) + x);
        return Math.Abs(a[i] - b[i]) + Math.Abs(a[i + 1] - b[i + 1]) + Math.Abs(a[i + 2] - b[i + 2]) > 12;
    }

    private byte[] Picture(Camera camera, SceneOptions options, Vec3? craft = null) => fixture.Run(() =>
    {
        using SceneStage stage = new(fixture.Gl);
        using SceneRenderer renderer = new(fixture.Gl, SceneStage.Map, Quality.Low);
        renderer.SetCraft(0, SceneStage.A);
        CraftPose[] poses = [SceneStage.Pose(SceneStage.A, craft ?? new(37, 21.5, -3.2), 0, 0, 0.4, 900)];
        return stage.Picture(renderer, camera, poses, options);
    });
}
