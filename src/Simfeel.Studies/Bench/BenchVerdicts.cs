using Simfeel.Builds;

namespace Simfeel.Studies.Bench;

/// <summary>What a difference between model and measurement means, in words.</summary>
public static class BenchVerdicts
{
    /// <summary>A part that would have to change by more than this to close a gap alone is an unlikely cause.</summary>
    private const double LikelyChange = 0.5;

    /// <summary>In a few words, for a table.</summary>
    public static string Short(BenchQuantity quantity)
    {
        ArgumentNullException.ThrowIfNull(quantity);
        if (quantity.Measured is null) return "not measured";
        if (quantity.Agrees) return "agrees within the band";
        return quantity.Kind == BenchKind.Balance
            ? $"the model is {Side(quantity)}"
            : $"the model is {(quantity.Difference < 0 ? "low" : "high")}";
    }

    /// <summary>A sentence, with the part to look at where model and measurement disagree.</summary>
    public static string Of(BenchReport report, BenchQuantity quantity)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(quantity);
        string start = Words.Capital(quantity.Title) + ": ";
        if (quantity.Measured is null) return start + "not measured.";
        string model = quantity.ModelMeasured ? $"the build's earlier measurement ({quantity.Key})" : "the model";
        if (quantity.Agrees) return $"{start}{model} agrees within the band.";
        if (quantity.ModelMeasured)
        {
            string off = quantity.Kind == BenchKind.Balance ? Side(quantity) : Off(quantity);
            return $"{start}{model} is {off}. Was something changed on the craft since?";
        }
        IReadOnlyList<PartShare> parts = PartShare.Of(report.Build);
        return start + quantity.Kind switch
        {
            BenchKind.Mass => MassWords(quantity, parts),
            BenchKind.Balance => BalanceWords(quantity, parts, report.Build),
            _ => InertiaWords(quantity, parts, report.Build),
        };
    }

    private static string MassWords(BenchQuantity quantity, IReadOnlyList<PartShare> parts)
    {
        PartShare[] guessed = [.. parts.Where(part => part.Estimated).OrderByDescending(part => part.Whole.Mass).Take(3)];
        PartShare heaviest = parts.MaxBy(part => part.Whole.Mass)!;
        string look = guessed.Length > 0
            ? $"look at what is only estimated: {string.Join(", ", guessed.Select(part => $"{part.Name} ({Keys(part)})"))}"
            : $"look at the {heaviest.Name}, the heaviest ({Keys(heaviest)})";
        string missing = quantity.Difference < 0 ? "missing" : "too much";
        return $"the model is {Off(quantity)}, {quantity.Text(Math.Abs(quantity.Difference))} g {missing}: {look}.";
    }

    private static string BalanceWords(BenchQuantity quantity, IReadOnlyList<PartShare> parts, AssembledBuild build)
    {
        PartShare part = parts.Where(part => part.Single && part.PlaceTable.Length > 0).MaxBy(part => part.Whole.Mass)!;
        double share = part.Whole.Mass / build.Craft.Mass, way = Math.Abs(quantity.Difference) / share;
        return $"the model is {Side(quantity)}: look at {part.PlaceTable}.{quantity.Axis.Letter()}_mm, which moves it most. "
            + $"10 mm of the {part.Name} move it by {10 * share:F1} mm, so {1e3 * way:F0} mm would explain it.";
    }

    private static string InertiaWords(BenchQuantity quantity, IReadOnlyList<PartShare> parts, AssembledBuild build)
    {
        (PartShare Part, double Inertia)[] ranked =
        [
            .. parts.Select(part => (Part: part, Inertia: part.InertiaIn(build, quantity.Axis))).OrderByDescending(pair => pair.Inertia).Take(2),
        ];
        double change = -quantity.Difference / ranked[0].Inertia;
        string words = string.Join(", then at the ", ranked.Select(pair =>
            $"{pair.Part.Name} ({100 * pair.Inertia / quantity.Model:F0} % of it: {Keys(pair.Part)}{(pair.Part.Single ? "" : " and where they sit")}{(pair.Part.Estimated ? ", estimated" : "")})"));
        string close = Math.Abs(change) <= LikelyChange
            ? $"The {ranked[0].Part.Name} alone would have to weigh {100 * Math.Abs(change):F0} % {(change > 0 ? "more" : "less")}."
            : "No part alone explains that: check the axis, the number of swings, the wires and the stick first.";
        return $"the model is {Off(quantity)}: look at the {words}. {close}";
    }

    private static string Off(BenchQuantity quantity)
    {
        double percent = Math.Abs(quantity.Percent);
        return $"{percent.ToString(percent < 10 ? "F1" : "F0")} % {(quantity.Difference < 0 ? "low" : "high")}";
    }

    /// <summary>Which way the model's balance point lies from the measured one.</summary>
    private static string Side(BenchQuantity quantity)
    {
        bool plus = quantity.Difference > 0;
        string way = quantity.Axis switch
        {
            BenchAxis.X => plus ? "far forward" : "far back",
            BenchAxis.Y => plus ? "far to the right" : "far to the left",
            _ => plus ? "low" : "high",
        };
        return $"{1e3 * Math.Abs(quantity.Difference):F1} mm too {way}";
    }

    private static string Keys(PartShare part) => string.Join(", ", part.MassKeys);
}
