using Simfeel.Physics.Mass;
using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Tests.Mass;

internal static class MassAssert
{
    public static void Equal(Vec3 expected, Vec3 actual, double tolerance)
    {
        Assert.Equal(expected.X, actual.X, tolerance);
        Assert.Equal(expected.Y, actual.Y, tolerance);
        Assert.Equal(expected.Z, actual.Z, tolerance);
    }

    public static void Equal(Mat3 expected, Mat3 actual, double tolerance)
    {
        Equal(expected * Vec3.UnitX, actual * Vec3.UnitX, tolerance);
        Equal(expected * Vec3.UnitY, actual * Vec3.UnitY, tolerance);
        Equal(expected * Vec3.UnitZ, actual * Vec3.UnitZ, tolerance);
    }

    /// <summary>Same mass, centre (m) and tensor (kg m^2) within absolute tolerances; the mass to the rounding of a million-point sum.</summary>
    public static void Equal(MassProperties expected, MassProperties actual, double position, double inertia)
    {
        Assert.Equal(expected.Mass, actual.Mass, 1e-10 * expected.Mass);
        Equal(expected.p_OBcm_O, actual.p_OBcm_O, position);
        Equal(expected.I_BBcm_O, actual.I_BBcm_O, inertia);
    }
}
