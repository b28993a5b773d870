using Simfeel.Builds;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Parts;

/// <summary>
/// Lets a change of parts be felt in a build that was weighed whole. Its weighed mass, balance and inertia hold for the parts
/// it had; a heavier motor would only eat into its wiring. So they move along by what the changed parts explain, as if the
/// changed craft had been weighed again.
/// </summary>
internal static class WeighedEdits
{
    private const string Mass = "measured.all_up_mass_g";

    /// <summary>Largest values of the format: no parts exceed this mass, and three equal inertias are those of some body.</summary>
    private const double LargestMass_g = 50000, LargestInertia_g_m2 = 10000;

    private static readonly string[] Inertia = ["measured.ixx_g_m2", "measured.iyy_g_m2", "measured.izz_g_m2"];
    private static readonly string[] Balance = ["measured.balance_x_mm", "measured.balance_y_mm", "measured.balance_z_mm"];

    /// <summary>The edits, followed by those that carry the measurements along; the edits alone where nothing was measured or they are refused.</summary>
    public static IReadOnlyList<KeyValuePair<string, double>> Of(Build file, IReadOnlyList<KeyValuePair<string, double>> edits)
    {
        if (edits.Count == 0 || !file.Values.Any(value => value.Key.StartsWith("measured.", StringComparison.Ordinal))) return edits;
        List<KeyValuePair<string, double>> all = [.. edits];
        if (Measured(file, Mass) is double weighed)
        {
            if (BuildEditor.Edit(file, [.. edits, new(Mass, LargestMass_g)]).Build is not { } heavy) return edits;
            double before = weighed - (1000 * file.Stack.WiringMass), after = LargestMass_g - (1000 * heavy.Stack.WiringMass);
            all.Add(new(Mass, weighed + after - before));
        }
        KeyValuePair<string, double>[] probe = [.. Inertia.Where(key => Measured(file, key) is not null).Select(key => new KeyValuePair<string, double>(key, LargestInertia_g_m2))];
        if (BuildEditor.Edit(file, [.. all, .. probe]).Build is not { } probed) return edits;
        Vec3 turned = file.Measured.InertiaShift - probed.Measured.InertiaShift, moved = file.Measured.BalanceShift - probed.Measured.BalanceShift;
        for (int axis = 0; axis < 3; axis++)
        {
            if (Measured(file, Inertia[axis]) is not null) all.Add(new(Inertia[axis], LargestInertia_g_m2 + (1000 * turned[axis])));
            if (Measured(file, Balance[axis]) is double balance) all.Add(new(Balance[axis], balance + (1000 * moved[axis])));
        }
        return all;
    }

    private static double? Measured(Build build, string key) => build.Values.FirstOrDefault(value => value.Key == key)?.Typical;
}
