using System.Runtime.InteropServices;
using System.Text.Json;
using Simfeel.Physics;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;

namespace Simfeel.Benchmarks;

/// <summary>
/// Writes what benchmarks/scipy/model.py needs to fly lane 0 of the specimens: its constants and rotor table, the manoeuvres, and
/// the kernel's derivatives at random states to be held against. Numbers as little-endian doubles (.f64) or JSON.
/// </summary>
internal static class ModelExport
{
    /// <summary>Random states that are compared.</summary>
    public const int CheckStates = 2000;

    /// <summary>Writes all files into a folder, which is made where it is missing.</summary>
    public static void Write(string folder, RotorTable table, IReadOnlyList<HeldManoeuvre> manoeuvres)
    {
        Directory.CreateDirectory(folder);
        WriteJson("craft", Craft(Specimen.Craft(0, table)));
        WriteNumbers("table", table.Nodes);
        foreach (HeldManoeuvre manoeuvre in manoeuvres)
        {
            double[] start = new double[StateIndex.Stride];
            StateBlock.Write(HeldManoeuvre.Start(0), HeldManoeuvre.Rotors, start);
            WriteJson(manoeuvre.Name, new() { ["start"] = start[..ScalarModel.States], ["hold"] = manoeuvre.Hold });
            WriteNumbers(manoeuvre.Name, [.. Enumerable.Range(0, manoeuvre.HoldsPerSecond * HeldManoeuvre.Rotors)
                .Select(n => manoeuvre.Duty(n / HeldManoeuvre.Rotors, n % HeldManoeuvre.Rotors, 0))]);
        }
        WriteNumbers("check", Check(table));

        void WriteJson(string name, Dictionary<string, object> what) =>
            File.WriteAllText(Path.Combine(folder, name + ".json"), JsonSerializer.Serialize(what));

        void WriteNumbers(string name, ReadOnlySpan<double> numbers) =>
            File.WriteAllBytes(Path.Combine(folder, name + ".f64"), MemoryMarshal.AsBytes(numbers).ToArray());
    }

    private static Dictionary<string, object> Craft(Craft craft)
    {
        Mat3 i = craft.I_BBcm_B;
        BatteryConstants battery = craft.Battery;
        return new()
        {
            ["mass"] = craft.Mass,
            ["inertia"] = new double[][] { [i.M00, i.M01, i.M02], [i.M10, i.M11, i.M12], [i.M20, i.M21, i.M22] },
            ["drag_area"] = Three(craft.DragArea),
            ["drag_point"] = Three(craft.p_BcmD_B),
            ["density"] = HeldManoeuvre.Density,
            ["gravity"] = HeldManoeuvre.Gravity,
            ["wind"] = Three(HeldManoeuvre.Wind(0)),
            // the speed up to which rubbing fades in, as the motor laws state it
            ["rubbing_speed"] = 20.0,
            ["battery"] = new Dictionary<string, object>
            {
                ["charge_nodes"] = BatteryConstants.ChargeNodes,
                ["open_circuit_voltage"] = battery.OpenCircuitVoltage,
                ["capacity"] = battery.Capacity,
                ["series_resistance"] = battery.SeriesResistance,
                ["pair_resistance"] = battery.PairResistance,
                ["pair_capacitance"] = battery.PairCapacitance,
                ["electronics_power"] = battery.ElectronicsPower,
            },
            ["rotors"] = craft.Rotors.Select(Rotor).ToArray(),
            ["grid"] = new Dictionary<string, object>
            {
                ["in_plane_weight"] = RotorTableGrid.InPlaneWeight,
                ["speed_scale"] = RotorTableGrid.SpeedScale,
                ["angle_knots"] = RotorTableGrid.AngleKnots.ToArray(),
                ["angle_cells"] = RotorTableGrid.AngleCellsPerSpan.ToArray(),
                ["in_plane_knots"] = RotorTableGrid.InPlaneKnots.ToArray(),
                ["in_plane_cells"] = RotorTableGrid.InPlaneCellsPerSpan.ToArray(),
                ["speed_knots"] = RotorTableGrid.SpeedKnots.ToArray(),
                ["speed_cells"] = new int[] { RotorTableGrid.SpeedCells },
            },
        };
    }

    private static Dictionary<string, object> Rotor(RotorConstants rotor) => new()
    {
        ["hub"] = Three(rotor.p_BcmR_B),
        ["spin"] = rotor.Spin,
        ["radius"] = rotor.Radius,
        ["spin_inertia"] = rotor.SpinInertia,
        ["kt"] = rotor.Kt,
        ["resistance"] = rotor.Resistance,
        ["commutation_droop"] = rotor.CommutationDroop,
        ["current_limit"] = rotor.CurrentLimit,
        ["brake_current_limit"] = rotor.BrakeCurrentLimit,
        ["torque_limit"] = rotor.TorqueLimit,
        ["loss_torque"] = rotor.LossTorque,
        ["loss_torque_per_speed"] = rotor.LossTorquePerSpeed,
    };

    private static double[] Three(Vec3 v) => [v.X, v.Y, v.Z];

    /// <summary>Rows of state, duties and the kernel's derivative; states reach from standing rotors to falls and fast turns.</summary>
    private static double[] Check(RotorTable table)
    {
        using ScalarModel model = new(table);
        Random random = new(1);
        List<double> rows = [];
        double[] state = new double[StateIndex.Stride], derivative = new double[StateIndex.Stride];
        for (int n = 0; n < CheckStates; n++)
        {
            Vec3 axis = Spread(1);
            CraftState at = new()
            {
                p_WB = Spread(100),
                v_WB = Spread(40),
                q_WB = Quat.FromAxisAngle(axis / axis.Length, Math.PI * random.NextDouble()),
                w_WB_B = Spread(20),
                Charge = 4680 * random.NextDouble(),
                PairVoltage = 0.3 * random.NextDouble(),
            };
            for (int k = 0; k < HeldManoeuvre.Rotors; k++) at.RotorSpeeds[k] = 3300 * random.NextDouble();
            StateBlock.Write(at, HeldManoeuvre.Rotors, state);
            rows.AddRange(state.AsSpan(0, ScalarModel.States));
            for (int k = 0; k < HeldManoeuvre.Rotors; k++)
            {
                double duty = random.NextDouble();
                model.SetDuty(k, duty);
                rows.Add(duty);
            }
            model.Derivative(state, derivative);
            rows.AddRange(derivative.AsSpan(0, ScalarModel.States));
        }
        return [.. rows];

        Vec3 Spread(double most) => most * new Vec3(Sign(), Sign(), Sign());

        double Sign() => (2 * random.NextDouble()) - 1;
    }
}
