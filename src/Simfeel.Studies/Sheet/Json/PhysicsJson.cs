using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Stand;
using Simfeel.Studies.Compare;
using Simfeel.Studies.Sheet.Sections;

namespace Simfeel.Studies.Sheet.Json;

/// <summary>Torque reserves, mass budgets and traces for machines.</summary>
internal static class PhysicsJson
{
    public static object Reserve(TunedUnit unit, PilotProfile profile)
    {
        ReserveCurve curve = ReserveCurve.Of(unit, profile, unit.Unit.Name, false);
        return new Dictionary<string, object?>
        {
            ["hover"] = Of(curve.Hover),
            ["full_throttle"] = Of(curve.Full),
            ["hover_reserve_up_all_motors_at_once_Nm"] = curve.Together,
            ["points"] = curve.Points.Select(Of).ToList(),
        };
    }

    public static object Mass(AssembledBuild build) => new Dictionary<string, object?>
    {
        ["mass_kg"] = build.Craft.Mass,
        ["cg_m"] = new[] { build.p_OBcm.X, build.p_OBcm.Y, build.p_OBcm.Z },
        ["inertia_xx_yy_zz_kg_m2"] = Diagonal(build.Craft.I_BBcm_B),
        ["rotor_spin_inertia_kg_m2"] = build.Craft.Rotors[0].SpinInertia,
        ["kinds"] = build.Parts.GroupBy(part => part.Group).OrderBy(kind => kind.Key).Select(kind => new Dictionary<string, object?>
        {
            ["kind"] = kind.Key.ToString().ToLowerInvariant(),
            ["mass_kg"] = kind.Sum(part => part.Mass.Mass),
            ["inertia_xx_yy_zz_kg_m2"] = Diagonal(kind.Aggregate(default(Mat3), (sum, part) => sum + part.Mass.InertiaAbout(build.p_OBcm))),
        }).ToList(),
    };

    public static object Traces(Comparison comparison) => TraceSection.Views.Select(view =>
    {
        (FlightLog a, FlightLog b) = comparison.Logs.First(pair => pair.A.Drill == view.Drill.Name);
        int[] rows = [.. TraceSection.Rows(a)];
        return new Dictionary<string, object?>
        {
            ["drill"] = view.Drill.Name,
            ["what"] = view.What,
            ["unit"] = view.SiUnit,
            ["time_from_first_stick_movement_s"] = rows.Select(row => a.TimeOf(row) - Drill.LeadIn).ToList(),
            ["a"] = rows.Select(row => view.Read(a.Samples[row])).ToList(),
            ["b"] = rows.Select(row => view.Read(b.Samples[row])).ToList(),
        };
    }).ToList();

    private static double[] Diagonal(Mat3 inertia) => [inertia.M00, inertia.M11, inertia.M22];

    private static Dictionary<string, object?> Of(OperatingPoint point) => new()
    {
        ["rotor_speed_rad_s"] = point.Speed,
        ["torque_Nm"] = point.Torque,
        ["reserve_up_Nm"] = point.ReserveUp,
        ["reserve_down_Nm"] = point.ReserveDown,
        ["pack_voltage_V"] = point.PackVoltage,
        ["pack_current_A"] = point.PackCurrent,
    };
}
