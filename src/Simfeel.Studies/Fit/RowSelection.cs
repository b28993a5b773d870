using Simfeel.Physics.Maths;

namespace Simfeel.Studies.Fit;

/// <summary>Chooses the rows of a table that a fit can rest on, and notes what else the table shows.</summary>
internal static class RowSelection
{
    /// <summary>Rows that can be true and tell something; the others with their reasons; findings.</summary>
    /// <exception cref="FitException">Most rows of a block fail for the same reason: the column was misread or the test went wrong.</exception>
    public static (List<StandRow> Rows, List<RefusedRow> Refused, List<string> Notes) Run(StandTable table, StandModel model)
    {
        List<StandRow> rows = [];
        List<RefusedRow> refused = [];
        List<string> notes = [];
        foreach (StandBlock block in table.Blocks)
        {
            (IReadOnlyList<StandRow> good, IReadOnlyList<RefusedRow> bad) = RowChecks.Run(block.Rows, model);
            WholeColumn(block, bad, table.Source);
            refused.AddRange([.. block.Refused, .. bad]);
            foreach (StandRow row in good)
            {
                if (Estimation.RowEquationsFactory.IsUseful(row)) rows.Add(row);
                else refused.Add(new(row.Line, "the rotor stands still"));
            }
            notes.AddRange(block.Notes);
            if (Efficiency(block, good) is string check) notes.Add(check);
            if (AtRest(good) is string rest) notes.Add(rest);
            if (Supply(good) is string supply) notes.Add(supply);
        }
        int bare = rows.Count(row => row.NoPropeller);
        if (bare > 0) notes.Add($"{bare} {(bare == 1 ? "row is" : "rows are")} read as the motor without a propeller: what it takes is losses");
        if (Demand(rows, model) is string demand) notes.Add(demand);
        return (rows, refused, notes);
    }

    /// <summary>One voltage for all rows is rarely a measured one.</summary>
    private static string? Supply(IReadOnlyList<StandRow> rows)
    {
        double[] volts = [.. rows.Where(row => row.Current > 0).Select(row => row.Voltage).Where(double.IsFinite)];
        return volts.Length >= 3 && volts.Max() == volts.Min()
            ? $"the voltage is {volts[0]:G4} V in every row: if that is the pack's name and not a reading, KV comes out low by its sag"
            : null;
    }

    /// <summary>Power for the same thrust, which needs neither speed nor torque.</summary>
    private static string? Demand(IReadOnlyList<StandRow> rows, StandModel model)
    {
        double most = rows.Select(row => row.Thrust).Where(double.IsFinite).DefaultIfEmpty(0).Max();
        double[] ratios = [.. rows.Where(row => row.Thrust > 0.2 * most && row.Voltage * row.Current > 0).Select(row => row.Voltage * row.Current / model.PowerFor(row.Thrust)).Order()];
        if (ratios.Length < 3) return null;
        double more = 100 * (ratios[ratios.Length / 2] - 1);
        return Math.Abs(more) < 0.5
            ? "for the same thrust the stand takes the power that the build before would"
            : $"for the same thrust the stand takes {Math.Abs(more):F0} % {(more > 0 ? "more" : "less")} power than the build before would";
    }

    /// <summary>One reason for more than half of the rows is no slip of a reading.</summary>
    private static void WholeColumn(StandBlock block, IReadOnlyList<RefusedRow> bad, string source)
    {
        if (bad.Count < 3 || 2 * bad.Count <= block.Rows.Count) return;
        RefusedRow first = bad[0];
        throw new FitException(source, first.Line, $"{bad.Count} of {block.Rows.Count} rows cannot be true; the first: {first.Reason}.", "a column may be read wrong: say it with --column \"Name=quantity:unit\", or --poles for an electrical speed; or the build is not the one on the stand");
    }

    private static string? Efficiency(StandBlock block, IReadOnlyList<StandRow> rows)
    {
        double[] ratios = [.. rows.Select(row => row.Efficiency * (row.Voltage * row.Current) / row.Thrust).Where(ratio => double.IsFinite(ratio) && ratio > 0).Order()];
        if (ratios.Length < 3) return null;
        double middle = ratios[ratios.Length / 2];
        string name = block.Columns.First(column => column.Quantity == StandQuantity.Efficiency).Name;
        return Math.Abs(middle - 1) < 0.03
            ? $"column \"{name}\" agrees with thrust over power to {100 * Math.Abs(middle - 1):F1} %"
            : $"column \"{name}\" is {100 * middle:F0} % of thrust over power: check the units of thrust, voltage and current";
    }

    private static string? AtRest(IReadOnlyList<StandRow> rows)
    {
        double most = rows.Select(row => row.Thrust).Where(double.IsFinite).DefaultIfEmpty(0).Max();
        double[] rest = [.. rows.Where(row => row.Speed == 0 && double.IsFinite(row.Thrust)).Select(row => row.Thrust)];
        if (rest.Length == 0 || Math.Abs(rest.Average()) < 0.003 * most) return null;
        return $"at rest the stand reads {rest.Average() / TradeUnits.GramForce:F1} gf of thrust: tare it; the offset is not taken off";
    }
}
