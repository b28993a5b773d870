using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Bench.Pages;

/// <summary>Words that the terminal and the pages of the bench share.</summary>
public static class BenchWords
{
    /// <summary>The caution in short.</summary>
    public const string Caution =
        "Propellers stay on, for the inertia, and must not turn: pack strapped in and UNPLUGGED, something soft below, hands away while it swings, nobody under it.";

    /// <summary>Cautions for the bench.</summary>
    public static IReadOnlyList<string> Cautions { get; } =
    [
        "UNPLUG the pack before you touch the craft, and leave it unplugged until everything is put away. Strap it in all the same: its mass belongs to the result.",
        "Propellers stay on, for the inertia, but must not turn. No test here needs a motor to run: never measure, hang or balance a craft with spinning propellers.",
        "Hang it low over something soft: a bed, a thick cushion. Try the knots with twice the craft's weight first. Nothing may hang or swing above people, animals or a way that somebody walks.",
        "Turn it a little, let go, hands and face away while it swings. Propeller edges are sharp even when they stand still.",
        "Never drop, squeeze, bend or pierce a lithium pack, and hang nothing on it or its leads. A pack that fell, is dented, swollen or warm, or smells, is not used any more: if you can do so safely, bring it outside to a fire-safe place away from people and anything that burns, and go by its maker's advice.",
        "Keep pets away, and children unless a grown-up stands by. House rules and local rules go before this sheet.",
    ];

    /// <summary>Name of a turn: roll, pitch or yaw.</summary>
    public static string Turn(BenchAxis axis) => axis.Turn();

    /// <summary>The result in one sentence.</summary>
    public static string Headline(BenchReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        BenchQuantity[] measured = [.. report.Measured];
        string[] off = [.. measured.Where(quantity => !quantity.Agrees).Select(quantity => quantity.Title)];
        string name = report.Build.Build.Name;
        return off.Length == 0
            ? $"{name}: {Count(measured.Length, "measured number")} {(measured.Length == 1 ? "agrees" : "agree")} with the model within the 95 % band."
            : $"{name}: {measured.Length - off.Length} of {Count(measured.Length, "measured number")} agree with the model within the 95 % band. Not so: {string.Join("; ", off)}.";
    }

    /// <summary>Cells of a quantity: name, unit, model, measured, band, difference, verdict.</summary>
    public static IReadOnlyList<string> Cells(BenchQuantity quantity)
    {
        ArgumentNullException.ThrowIfNull(quantity);
        string model = quantity.Text(quantity.Model) + (quantity.ModelMeasured ? " *" : "");
        if (quantity.Measured is null) return [quantity.Title, quantity.Unit, model, Numbers.Missing, Numbers.Missing, Numbers.Missing, BenchVerdicts.Short(quantity)];
        string band = quantity.Kind == BenchKind.Inertia ? $"{quantity.BandPercent:F1} %" : $"{BenchQuantity.PerSi * quantity.Measured.HalfBand:F1}";
        string difference = quantity.Kind == BenchKind.Balance
            ? Numbers.Signed(BenchQuantity.PerSi * quantity.Difference, 1) + " mm"
            : Numbers.Signed(quantity.Percent, 1) + " %";
        return [quantity.Title, quantity.Unit, model, quantity.Text(quantity.Measured.Value), band, difference, BenchVerdicts.Short(quantity)];
    }

    /// <summary>A sentence for each number that disagrees.</summary>
    public static IReadOnlyList<string> Disagreements(BenchReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return [.. report.Measured.Where(quantity => !quantity.Agrees).Select(quantity => BenchVerdicts.Of(report, quantity))];
    }

    /// <summary>What the reader of a result has to know.</summary>
    public static IReadOnlyList<string> Notes(BenchReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        List<string> notes = [];
        if (report.Quantities.Any(quantity => quantity.ModelMeasured && quantity.Measured is not null))
            notes.Add("* The build has this number from an earlier measurement, in its table [measured]: agreement there says nothing of the parts.");
        if (report.MassFromBuild)
            notes.Add($"The readings have no mass: the swing tests are worked out with the build's weighed {1e3 * report.Build.Craft.Mass:F0} g.");
        BenchQuantity[] swung = [.. report.Measured.Where(quantity => quantity.Kind == BenchKind.Inertia)];
        if (swung.Length > 0)
        {
            notes.Add("Where the bands of the inertias come from: " + string.Join("; ", swung.Select(quantity =>
                $"{quantity.Axis.Turn()}: " + string.Join(", ", quantity.Measured!.Shares().Take(3).Select(share => $"{share.Name} {100 * share.Share:F0} %")))) + ".");
            notes.Add("Not in the bands: an axis out of plumb, wires that are not parallel, a balance point off their middle, a stick that bends. The worksheet says what they cost.");
        }
        return notes;
    }

    private static string Count(int number, string what) => $"{number} {what}{(number == 1 ? "" : "s")}";
}
