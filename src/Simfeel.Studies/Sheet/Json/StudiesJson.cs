using Simfeel.Studies.Blame;
using Simfeel.Studies.Growth;
using Simfeel.Studies.Style;
using Simfeel.Studies.Uncertainty;

namespace Simfeel.Studies.Sheet.Json;

/// <summary>Blame, growth, styles and uncertainty for machines; values of a metric are in its <c>unit</c>, SI.</summary>
public static class StudiesJson
{
    internal static object Of(Band band) => new Dictionary<string, object?>
    {
        ["percentile_5"] = band.Low,
        ["median"] = band.Middle,
        ["percentile_95"] = band.High,
    };

    /// <summary>Ledgers with their shares by group.</summary>
    public static object Blame(IReadOnlyList<BlameLedger> ledgers) => ledgers.Select(ledger => new Dictionary<string, object?>
    {
        ["metric"] = ledger.Metric.Name,
        ["unit"] = ledger.Metric.Unit,
        ["a"] = ledger.A,
        ["b"] = ledger.B,
        ["difference"] = ledger.Difference,
        ["interaction"] = ledger.Gap is null ? ledger.Interaction : double.NaN,
        ["hybrids"] = ledger.Hybrids,
        ["gap"] = ledger.Gap,
        ["shares"] = ledger.Gap is not null ? null : ledger.Shares.Select(share => new Dictionary<string, object?>
        {
            ["group"] = PartGroupNames.Key(share.Group),
            ["share"] = share.Share,
            ["one_at_a_time"] = share.OneAtATime,
            ["last_one_in"] = share.LastOneIn,
        }).ToList(),
    }).ToList();

    /// <summary>Curves with their points, what was switched off, and their sentences.</summary>
    public static object Growth(IReadOnlyList<GrowthCurve> curves) => curves.Select(curve => new Dictionary<string, object?>
    {
        ["build"] = curve.Build,
        ["part"] = curve.Knob.Name,
        ["size_unit"] = curve.Knob.Unit,
        ["metric"] = curve.Metric.Name,
        ["unit"] = curve.Metric.Unit,
        ["points"] = curve.Points.Select(point => new Dictionary<string, object?>
        {
            ["factor"] = point.Factor,
            ["size"] = point.Size,
            ["value"] = point.Value,
            ["refusal"] = point.Refusal.Length == 0 ? null : point.Refusal,
        }).ToList(),
        ["best_factor"] = curve.Best?.Factor,
        ["inner_optimum"] = curve.InnerOptimum,
        ["flat_from"] = curve.FlatRange.From,
        ["flat_to"] = curve.FlatRange.To,
        ["switched_off"] = curve.Variants.Select(variant => new Dictionary<string, object?>
        {
            ["name"] = variant.Name,
            ["best_factor"] = variant.BestFactor,
            ["values"] = variant.Values,
        }).ToList(),
        ["sentences"] = curve.Sentences,
    }).ToList();

    internal static object Styles(IReadOnlyList<StyleFit> styles) => styles.Select(style => new Dictionary<string, object?>
    {
        ["name"] = style.Name,
        ["verdict"] = style.Verdict,
        ["total_percent"] = style.Total,
        ["lines"] = style.Lines.Select(line => new Dictionary<string, object?>
        {
            ["metric"] = line.Asked.Metric.Name,
            ["weight"] = line.Asked.Weight,
            ["more_is_better"] = line.Asked.MoreIsBetter,
            ["points_percent"] = line.Points,
            ["counts_nothing_since"] = line.Why.Length == 0 ? null : line.Why,
        }).ToList(),
    }).ToList();

    internal static object Uncertainty(UncertaintyStudy study) => new Dictionary<string, object?>
    {
        ["draws"] = study.Draws,
        ["seed"] = study.Seed,
        ["refused"] = study.Refused,
        ["inputs"] = study.Inputs.Select(Of).ToList(),
        ["metrics"] = study.Metrics.Select(known => new Dictionary<string, object?>
        {
            ["name"] = known.Metric.Name,
            ["unit"] = known.Metric.Unit,
            ["draws"] = known.Draws,
            ["a"] = Of(known.A),
            ["b"] = Of(known.B),
            ["difference"] = Of(known.Difference),
            ["difference_covers_zero"] = known.Undecided,
            ["tornado"] = known.Tornado.Select(bar => new Dictionary<string, object?>
            {
                ["input"] = Of(bar.Input),
                ["difference_at_low"] = bar.AtLow,
                ["difference_at_high"] = bar.AtHigh,
            }).ToList(),
        }).ToList(),
    };

    private static Dictionary<string, object?> Of(UncertainInput input) => new()
    {
        ["key"] = input.Key,
        ["owner"] = input.Owner.ToString().ToLowerInvariant(),
        ["why"] = input.Why,
    };
}
