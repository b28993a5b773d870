using Simfeel.Physics.Maths;

namespace Simfeel.Studies.Bench;

/// <summary>A body axis: x forward, y right, z down.</summary>
public enum BenchAxis
{
    /// <summary>Forward; a turn about it is a roll.</summary>
    X,

    /// <summary>To the right; a turn about it is a pitch.</summary>
    Y,

    /// <summary>Down; a turn about it is a yaw.</summary>
    Z,
}

/// <summary>Names of the axes in files and sentences.</summary>
internal static class BenchAxes
{
    public static IReadOnlyList<BenchAxis> All { get; } = [BenchAxis.X, BenchAxis.Y, BenchAxis.Z];

    /// <summary>The turn about it, and the name of its swing test's table.</summary>
    public static string Turn(this BenchAxis axis) => axis switch { BenchAxis.X => "roll", BenchAxis.Y => "pitch", _ => "yaw" };

    /// <summary>Name of its balance test's table.</summary>
    public static string BalanceTable(this BenchAxis axis) => "balance_" + axis.Letter();

    /// <summary>x, y or z.</summary>
    public static char Letter(this BenchAxis axis) => "xyz"[(int)axis];

    /// <summary>Its key of a build's measured inertia.</summary>
    public static string InertiaKey(this BenchAxis axis) => $"measured.i{axis.Letter()}{axis.Letter()}_g_m2";

    /// <summary>Its key of a build's measured balance point.</summary>
    public static string BalanceKey(this BenchAxis axis) => $"measured.balance_{axis.Letter()}_mm";

    /// <summary>Moment of inertia about it, in the tensor's unit.</summary>
    public static double Moment(this BenchAxis axis, Mat3 tensor) => axis switch { BenchAxis.X => tensor.M00, BenchAxis.Y => tensor.M11, _ => tensor.M22 };
}
