using Simfeel.Builds.Format;
using Simfeel.Builds.Reading;

namespace Simfeel.Studies.Bench.Reading;

/// <summary>Makes a balance test out of its table: an edge, two scales or a hook.</summary>
internal sealed class BalanceBuilder(DiagnosticBag bag)
{
    private const double LeastApart = 0.02;

    /// <summary>The test; null where there is none or, with a diagnostic, where it is not whole.</summary>
    public BalanceReadings? Make(BenchAxis axis, BenchTable table)
    {
        if (!table.Any) return null;
        string[] other = axis switch
        {
            BenchAxis.X => ["front_g", "rear_g", "front_at_mm", "rear_at_mm"],
            BenchAxis.Y => ["right_g", "left_g", "right_at_mm", "left_at_mm"],
            _ => ["hook_x_mm", "hook_z_mm", "hook_angle_deg"],
        };
        bool edge = table.Gave("edge_mm");
        string? also = other.FirstOrDefault(table.Gave);
        if (edge && also is not null)
        {
            bag.Error(table.PlaceOf(also), $"{table.Name}.{also}", "", $"There is a reading of an edge as well; allowed is one way: edge_mm, or {string.Join(", ", other)}.", "keep the better one");
            return null;
        }
        if (edge) return new EdgeReadings(table.Many("edge_mm"), table["edge_pm_mm"], table.At.Line);
        if (!Complete(table, also is null ? ["edge_mm"] : other, bag)) return null;
        return axis == BenchAxis.Z ? Hook(table) : Scales(table, other);
    }

    /// <summary>False, with a diagnostic for each key that is missing.</summary>
    public static bool Complete(BenchTable table, string[] keys, DiagnosticBag bag)
    {
        foreach (string name in keys.Where(name => !table.Gave(name)))
        {
            KeySpec key = BenchFormat.Find(table.Name, name)!;
            bag.Error(table.At, key.Path, "", $"The key is missing; it is the {key.Meaning}. Allowed is {BenchFormat.Range(key)}.", $"add {name} = ...");
        }
        return keys.All(table.Gave);
    }

    private ScaleReadings? Scales(BenchTable table, string[] keys)
    {
        double first = table[keys[0]], second = table[keys[1]], firstAt = table[keys[2]], secondAt = table[keys[3]];
        if (firstAt - secondAt < LeastApart)
        {
            bag.Error(table.PlaceOf(keys[2]), $"{table.Name}.{keys[2]}", $"{1e3 * firstAt:G6}", $"This support must stand at least {1e3 * LeastApart:G3} mm ahead of the other (or to its right); allowed is {1e3 * (secondAt + LeastApart):G6} to 1000 mm.", "behind and left of the middle are negative");
            return null;
        }
        if (first + second <= 0)
        {
            bag.Error(table.PlaceOf(keys[0]), $"{table.Name}.{keys[0]}", $"{1e3 * first:G6}", "Both scales show nothing; allowed is more than 0 g on one of them.");
            return null;
        }
        double scale = table.ScaleSigma("scale_pm_g", first + second), at = table["at_pm_mm"];
        return new(new(first, scale), new(second, scale), new(firstAt, at), new(secondAt, at), table.At.Line);
    }

    private static HookReadings Hook(BenchTable table) =>
        new(table.With("hook_x_mm", "hook_pm_mm"), table.With("hook_z_mm", "hook_pm_mm"), table.With("hook_angle_deg", "hook_angle_pm_deg"), table.At.Line);
}
