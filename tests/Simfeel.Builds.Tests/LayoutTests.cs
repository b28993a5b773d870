using Simfeel.Builds.Assembly;
using Simfeel.Physics.Maths;

namespace Simfeel.Builds.Tests;

/// <summary>Where rotors stand and which way they turn.</summary>
public class LayoutTests
{
    public static TheoryData<string, int, double> Layouts => new()
    {
        { "square", 4, 45 }, { "wide", 4, 51.3402 }, { "stretched", 4, 38.6598 }, { "swept", 4, 60 }, { "plus", 4, 0 }, { "six", 6, 30 }, { "eight", 8, 22.5 },
    };

    [Theory]
    [MemberData(nameof(Layouts))]
    public void NamedLayoutIsSymmetricAndBalanced(string layout, int count, double firstAzimuth)
    {
        // Wide enough that eight 5.1 inch discs clear each other: 600 sin(22.5 deg) = 230 mm.
        Build build = Read($"layout = \"{layout}\"\nwheelbase_mm = 600");
        IReadOnlyList<MotorMount> mounts = build.Frame.Mounts;
        Assert.Equal(count, mounts.Count);
        Assert.Equal(0, mounts.Sum(m => m.Spin));
        Assert.Equal(firstAzimuth, Azimuth(mounts[0].p_OM), 3);
        for (int i = 0; i < count; i++)
        {
            Assert.Equal(0.3, mounts[i].p_OM.Length, 12);
            Assert.Equal(0, mounts[i].p_OM.Z);
            Assert.Equal(-mounts[i].Spin, mounts[(i + 1) % count].Spin);
            // Mirror image about the x-z plane, turning the other way (plus: the rotors on the axis mirror themselves).
            MotorMount mirror = Assert.Single(mounts, m => (m.p_OM - (mounts[i].p_OM with { Y = -mounts[i].p_OM.Y })).Length < 1e-12);
            if (layout != "plus") Assert.Equal(-mounts[i].Spin, mirror.Spin);
        }
    }

    [Fact]
    public void WideAndStretchedKeepTheirAspect()
    {
        foreach ((string layout, double aspect) in (ReadOnlySpan<(string, double)>)[("wide", 1.25), ("stretched", 0.8), ("wide", 1.1)])
        {
            Vec3 first = Read($"layout = \"{layout}\"\nwheelbase_mm = 400\naspect = {aspect}").Frame.Mounts[0].p_OM;
            Assert.Equal(aspect, first.Y / first.X, 9);
        }
    }

    [Fact]
    public void SweptMovesTheFrontArmsOnly()
    {
        IReadOnlyList<MotorMount> square = Read("wheelbase_mm = 300").Frame.Mounts;
        IReadOnlyList<MotorMount> swept = Read("layout = \"swept\"\nsweep_deg = 20\nwheelbase_mm = 300").Frame.Mounts;
        Assert.Equal(65, Azimuth(swept[0].p_OM), 6);
        Assert.Equal(295, Azimuth(swept[3].p_OM), 6);
        Assert.Equal(square[1], swept[1]);
        Assert.Equal(square[2], swept[2]);
    }

    [Fact]
    public void InwardMeansFrontRightTurnsCounterClockwise()
    {
        Assert.Equal([-1, 1, -1, 1], Read("wheelbase_mm = 225").Frame.Mounts.Select(m => m.Spin));
        Assert.Equal([1, -1, 1, -1], Read("wheelbase_mm = 225\nspin = \"outward\"").Frame.Mounts.Select(m => m.Spin));
    }

    [Fact]
    public void ExplicitPositionsKeepTheirOrderAndGetSpins()
    {
        // Rear left, front right, front left, rear right: order of the file, spins by neighbourhood.
        Build build = Read("positions_mm = [[-80, -80, 0], [80, 80, 5], [80, -80, 5], [-80, 80, 0]]");
        Assert.Equal(new Vec3(0.08, 0.08, 0.005), build.Frame.Mounts[1].p_OM);
        Assert.Equal([-1, -1, 1, 1], build.Frame.Mounts.Select(m => m.Spin));
        Assert.Equal(2 * 0.08 * Math.Sqrt(2), build.Frame.Wheelbase, 12);
    }

    [Fact]
    public void ExplicitSpinsAreKept()
    {
        Build build = Read("positions_mm = [[80, 80, 0, 1], [-80, 80, 0, 1], [-80, -80, 0, -1], [80, -80, 0, -1]]");
        Assert.Equal([1, 1, -1, -1], build.Frame.Mounts.Select(m => m.Spin));
    }

    [Fact]
    public void RotorsAboveEachOtherTurnOppositeWays()
    {
        Build build = Read("positions_mm = [[80,80,-30],[80,80,30],[-80,80,-30],[-80,80,30],[-80,-80,-30],[-80,-80,30],[80,-80,-30],[80,-80,30]]");
        IReadOnlyList<MotorMount> mounts = build.Frame.Mounts;
        for (int i = 0; i < 8; i += 2) Assert.Equal(-mounts[i].Spin, mounts[i + 1].Spin);
        for (int i = 0; i < 8; i += 2) Assert.Equal(-mounts[i].Spin, mounts[(i + 2) % 8].Spin);
    }

    [Fact]
    public void RotorsInOneLineAreRefused()
    {
        string text = BuildText.Minimal.Replace("wheelbase_mm = 225", "positions_mm = [[100,0,0],[-100,0,0],[300,0,0],[-300,0,0]]", StringComparison.Ordinal);
        BuildResult result = BuildReader.Parse(text, "test.toml");
        Assert.Null(result.Build);
        Assert.Contains(result.Diagnostics, d => d.Message.Contains("in one line", StringComparison.Ordinal));
    }

    [Fact]
    public void ArmRunsFromThePlatesEdgeToTheShaft()
    {
        Build build = Read("wheelbase_mm = 300\nplate_length_mm = 100\nplate_width_mm = 40\narm_width_mm = 12\narm_thickness_mm = 5");
        PartShape arm = PartPlacer.ArmShape(build.Frame, build.Frame.Mounts[0].p_OM)!;
        // At 45 degrees the plate's side is left at 20 mm x sqrt 2.
        double edge = 0.020 * Math.Sqrt(2);
        Assert.Equal(0.150 - edge, arm.Size.X, 12);
        Assert.Equal((edge + 0.150) / 2, arm.p_OC.Length, 12);
        Vec3 tip = arm.p_OC + (arm.R_OP * new Vec3(arm.Size.X / 2, 0, 0));
        Assert.Equal(0, (tip - build.Frame.Mounts[0].p_OM).Length, 12);
    }

    private static double Azimuth(Vec3 p) => (Math.Atan2(p.Y, p.X) * 180 / Math.PI) + (p.Y < 0 ? 360 : 0);

    private static Build Read(string frame) => BuildText.Read(BuildText.Minimal.Replace("wheelbase_mm = 225", frame, StringComparison.Ordinal));
}
