using Simfeel.Physics.Maths;

namespace Simfeel.Studies.Fit;

/// <summary>
/// Whether a row of a stand table can be true: signs, the momentum-theory bound on thrust, the balance of power, and the
/// no-load speed. Tolerances leave room for an accuracy of a few percent in every column.
/// </summary>
public static class RowChecks
{
    /// <summary>Rows that can be true, and the others with their reasons.</summary>
    /// <param name="rows">Rows of one block, in the order of the file.</param>
    /// <param name="model">The stand of the build.</param>
    public static (IReadOnlyList<StandRow> Good, IReadOnlyList<RefusedRow> Refused) Run(IReadOnlyList<StandRow> rows, StandModel model)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(model);
        Scale scale = Scale.Of(rows);
        List<StandRow> good = [];
        List<RefusedRow> refused = [];
        for (int n = 0; n < rows.Count; n++)
        {
            if ((Fault(rows[n], model, scale) ?? OutOfOrder(rows, n)) is string reason) refused.Add(new(rows[n].Line, reason));
            else good.Add(Completed(rows[n], model, scale));
        }
        return (good, refused);
    }

    /// <summary>What is wrong with a row; null where nothing is.</summary>
    private static string? Fault(StandRow row, StandModel model, Scale most)
    {
        double electrical = Electrical(row), mechanical = Mechanical(row);
        if (row.Throttle is < -0.02 or > 1.02) return $"throttle of {100 * row.Throttle:F0} %; allowed is 0 to 100 %";
        if (row.Thrust < -0.02 * most.Thrust) return $"negative thrust, {row.Thrust / TradeUnits.GramForce:F0} gf";
        if (row.Torque < -0.02 * most.Torque) return $"negative torque, {row.Torque:G3} N m";
        if (row.Voltage < 0 || (row.Voltage == 0 && row.Speed > 0)) return $"voltage of {row.Voltage:G3} V while the rotor turns";
        if (row.Current < -0.02 * most.Current) return $"negative current, {row.Current:G3} A";
        if (row.Speed < 0) return $"negative rotor speed, {Rpm(row.Speed):F0} rpm";
        if (row.Speed == 0 && row.Thrust > 0.03 * most.Thrust) return $"{row.Thrust / TradeUnits.GramForce:F0} gf of thrust while the rotor stands still";
        if (row.Voltage * row.Current is double product && Math.Abs(product - row.ElectricalPower) > (0.08 * product) + (0.01 * most.Power))
            return $"voltage times current is {product:F1} W, but the power column says {row.ElectricalPower:F1} W";
        // 15 % above the build's KV times the voltage: a wrong KV in the build is then still found out
        double noLoad = row.Voltage / model.Rotor.Kt;
        if (row.Speed > 1.15 * noLoad) return $"{Rpm(row.Speed):F0} rpm at {row.Voltage:F1} V, above the no-load speed of {Rpm(noLoad):F0} rpm that the motor's KV allows";
        if (mechanical > (1.03 * electrical) + (0.005 * most.Power))
            return $"the shaft gives {mechanical:F1} W, more than the {electrical:F1} W that go in";
        double ideal = model.IdealPower(row.Thrust);
        double power = double.IsNaN(mechanical) ? electrical : mechanical;
        if (ideal > (1.06 * power) + (0.01 * most.Power))
            return $"{row.Thrust / TradeUnits.GramForce:F0} gf from {power:F1} W{(double.IsNaN(mechanical) ? "" : " on the shaft")}: with this disc at least {ideal:F1} W are needed (momentum theory)";
        return OffTheModel(row, model, most);
    }

    /// <summary>Build files allow half to one and a half times the model; three times it or a third is another propeller, or a speed misread.</summary>
    private static string? OffTheModel(StandRow row, StandModel model, Scale most)
    {
        if (!(row.Speed > 0) || row.NoPropeller) return null;
        double expected = model.Air(row.Speed).Thrust;
        bool tooMuch = row.Thrust > 3 * expected && row.Thrust > 0.1 * most.Thrust;
        // hardly any thrust at all is a motor without a propeller
        bool tooLittle = row.Thrust < expected / 3 && row.Thrust > 0.03 * expected && expected > 0.1 * most.Thrust;
        return tooMuch || tooLittle
            ? $"{row.Thrust / TradeUnits.GramForce:F0} gf at {Rpm(row.Speed):F0} rpm, where the build's propeller lifts about {expected / TradeUnits.GramForce:F0} gf"
            : null;
    }

    /// <summary>A row whose speed or thrust falls while the throttle rises, with both neighbours in order.</summary>
    private static string? OutOfOrder(IReadOnlyList<StandRow> rows, int n)
    {
        if (n == 0 || n == rows.Count - 1) return null;
        StandRow before = rows[n - 1], here = rows[n], after = rows[n + 1];
        if (here.NoPropeller || !(before.Throttle < here.Throttle && here.Throttle < after.Throttle)) return null;
        if (here.Speed < 0.9 * before.Speed && before.Speed < after.Speed)
            return $"the rotor slows from {Rpm(before.Speed):F0} to {Rpm(here.Speed):F0} rpm while the throttle rises";
        if (here.Thrust < 0.85 * before.Thrust && before.Thrust < after.Thrust)
            return $"thrust falls from {before.Thrust / TradeUnits.GramForce:F0} to {here.Thrust / TradeUnits.GramForce:F0} gf while the throttle rises";
        return null;
    }

    /// <summary>The row with current, voltage and torque worked out from powers where they are not given; marked where it turns without thrust.</summary>
    private static StandRow Completed(StandRow row, StandModel model, Scale most)
    {
        StandRow full = row with
        {
            Current = double.IsNaN(row.Current) ? row.ElectricalPower / row.Voltage : row.Current,
            Voltage = double.IsNaN(row.Voltage) ? row.ElectricalPower / row.Current : row.Voltage,
            Torque = double.IsNaN(row.Torque) && row.Speed > 0 ? row.MechanicalPower / row.Speed : row.Torque,
        };
        if (row.NoPropeller || !(row.Speed > 0)) return full;
        (double thrust, double torque) = model.Air(row.Speed);
        bool lifts = row.Thrust > 0.03 * thrust || double.IsNaN(row.Thrust);
        // without a torque column the power tells: half of what the propeller would take is more than losses need
        bool turnsAir = double.IsNaN(full.Torque) ? Electrical(full) > 0.5 * torque * row.Speed : full.Torque > 0.05 * torque;
        return full with { NoPropeller = !lifts && !turnsAir && thrust > 0.02 * most.Thrust };
    }

    private static double Electrical(StandRow row)
    {
        double product = row.Voltage * row.Current;
        return double.IsNaN(product) ? row.ElectricalPower : product;
    }

    private static double Mechanical(StandRow row)
    {
        double product = row.Torque * row.Speed;
        return double.IsNaN(product) ? row.MechanicalPower : product;
    }

    private static double Rpm(double speed) => speed * 30 / Math.PI;

    /// <summary>Largest values of a block, against which small offsets are measured.</summary>
    private readonly record struct Scale(double Thrust, double Torque, double Current, double Power)
    {
        public static Scale Of(IReadOnlyList<StandRow> rows) => new(
            Most(rows.Select(row => row.Thrust)), Most(rows.Select(row => row.Torque)),
            Most(rows.Select(row => row.Current)), Most(rows.Select(Electrical)));

        private static double Most(IEnumerable<double> values) => values.Where(double.IsFinite).DefaultIfEmpty(0).Max();
    }
}
