using Simfeel.Builds.Reading;
using Simfeel.Physics.Mass;
using Simfeel.Physics.Maths;

namespace Simfeel.Builds.Checks;

/// <summary>Whether measurements on the finished craft can be true of these parts.</summary>
internal static class MeasuredChecks
{
    public static void Run(MassProperties parts, Vec3 inertiaShift, Vec3 balanceShift, double wheelbase, BuildSheet sheet, DiagnosticBag bag)
    {
        Balance(parts.p_OBcm_O, balanceShift, wheelbase, sheet, bag);
        Mat3 i = parts.I_BBcm_O;
        double x = i.M00 + inertiaShift.X, y = i.M11 + inertiaShift.Y, z = i.M22 + inertiaShift.Z;
        string? given = ((string[])["measured.ixx_g_m2", "measured.iyy_g_m2", "measured.izz_g_m2"]).LastOrDefault(sheet.Numbers.ContainsKey);
        if (given is null) return;
        GivenNumber number = sheet.Numbers[given];
        if (x > y + z || y > z + x || z > x + y)
        {
            bag.Error(number.At, given, number.Written, $"No body has these inertias: {1e3 * x:G4}, {1e3 * y:G4}, {1e3 * z:G4} g m2; each must be at most the sum of the other two.", "check the swing test, and give all three if you can");
            return;
        }
        Ratio("measured.ixx_g_m2", x, i.M00);
        Ratio("measured.iyy_g_m2", y, i.M11);
        Ratio("measured.izz_g_m2", z, i.M22);

        void Ratio(string key, double measured, double computed)
        {
            if (!sheet.Numbers.TryGetValue(key, out GivenNumber? written) || (measured < 1.6 * computed && computed < 1.6 * measured)) return;
            bag.Warning(written.At, key, written.Written, $"The parts give {1e3 * computed:G4} g m2; usual is 60 to 160 % of that.", "check unit and swing test");
        }
    }

    /// <summary>A balance point far from where the parts put it is more often a slip of sign or origin than the truth.</summary>
    private static void Balance(Vec3 computed, Vec3 shift, double wheelbase, BuildSheet sheet, DiagnosticBag bag)
    {
        double most = 0.08 * wheelbase;
        for (int axis = 0; axis < 3; axis++)
        {
            string key = $"measured.balance_{"xyz"[axis]}_mm";
            if (Math.Abs(shift[axis]) <= most || !sheet.Numbers.TryGetValue(key, out GivenNumber? written)) continue;
            double centre = computed[axis];
            bag.Warning(written.At, key, written.Written, $"The parts balance at {1e3 * centre:F1} mm; usual is {1e3 * (centre - most):F1} to {1e3 * (centre + most):F1} mm.", "x forward, y right, z down, from the centre of the bottom plate");
        }
    }
}
