using Simfeel.Builds;
using Simfeel.Studies.Sheet.Writing;
using Simfeel.Studies.Uncertainty;

namespace Simfeel.Studies.Sheet.Sections;

/// <summary>What too little is known of, and what that does to the differences.</summary>
internal static class UncertaintySection
{
    public static Section Of(FeelSheet sheet)
    {
        UncertaintyStudy study = sheet.Uncertainty;
        UncertainMetric[] tornados = [.. study.Metrics.Where(known => known.Tornado.Count > 0)];
        return new("uncertainty", "How sure the numbers are",
        [
            new Paragraph(
                $"{study.Draws} pairs of builds were drawn (seed {study.Seed}), each number with a band moved within it, and flown. "
                    + "In every draw both builds meet the same errors where they share a part or a rule of estimate. "
                    + "So the difference between two builds is steadier than either build's own numbers."
                    + (study.Refused > 0 ? $" {study.Refused} draws were left out: a build could not be made or could not hover with those numbers." : "")),
            .. tornados.Select(known => Drawing(sheet, known)) is var drawn && drawn.Any()
                ? (Block[])[new Paragraph("Which input moves a difference most, each moved alone from one end of its band to the other:"), new Beside([.. drawn])]
                : [],
            Bands(study),
            new Fold("Inputs that were drawn, and their bands", [Inputs(sheet)]),
        ]);
    }

    private static Figure Drawing(FeelSheet sheet, UncertainMetric known)
    {
        (string a, string b) = sheet.Comparison.Names;
        double unit = known.Metric.Display.PerSi;
        double typical = sheet.Comparison.Metrics.First(pair => pair.Metric.Name == known.Metric.Name).Difference * unit;
        string axis = Numbers.Axis($"difference B less A: {known.Metric.Title}", known.Metric.Display.Symbol);
        string label = $"What moves the difference in {known.Metric.Title} between {a} and {b}";
        SignedBar[] bars =
        [
            .. known.Tornado.Select(bar => new SignedBar(
                $"{bar.Input.Key} ({Whose(bar.Input.Owner)})", bar.AtLow * unit, bar.AtHigh * unit,
                $"\u00B1{Numbers.Fixed(bar.Swing * unit / 2, known.Metric.Display.Decimals + (known.Metric.Display.Decimals == 0 ? 1 : 0))}")
            {
                Middle = typical,
            }),
        ];
        DataTable numbers = new(
            label,
            [new("input"), new("whose", true), new("at its low end"), new("at its high end")],
            [
                .. known.Tornado.Select(bar => new Row(
                    [bar.Input.Key, Whose(bar.Input.Owner), Numbers.Difference(known.Metric, bar.AtLow), Numbers.Difference(known.Metric, bar.AtHigh)])),
            ]);
        return new(
            label,
            $"{Words.Capital(known.Metric.Title)}. Hatched: input towards its low end; plain: towards its high end. Dashed line: all inputs typical. Solid line: no difference.",
            [axis], prefix => SignedBars.Draw(label, axis, bars, prefix, typical), numbers);
    }

    private static DataTable Bands(UncertaintyStudy study) => new(
        "5th percentile, median and 95th percentile of each build and of the difference of the same draw",
        [new("what"), new("\u25CF A"), new("\u25B2 B"), new("difference"), Column.Unit, new("draws")],
        [
            .. study.Metrics.Select(known => new Row(
            [
                known.Metric.Title, Absolute(known, known.A), Absolute(known, known.B),
                $"{Numbers.Difference(known.Metric, known.Difference.Low)} / {Numbers.Difference(known.Metric, known.Difference.Middle)} / {Numbers.Difference(known.Metric, known.Difference.High)}",
                known.Metric.Display.Symbol, known.Draws.ToString(),
            ])),
        ]);

    private static string Absolute(UncertainMetric known, Band band) =>
        $"{known.Metric.Display.Number(band.Low)} / {known.Metric.Display.Number(band.Middle)} / {known.Metric.Display.Number(band.High)}";

    private static DataTable Inputs(FeelSheet sheet)
    {
        Dictionary<string, BuildValue> ofA = Bands(sheet.A.Build), ofB = Bands(sheet.B.Build);
        return new(
            "Low / typical / high; drawn from a triangle over the band, together for both builds or apart. Half of the variance of two estimates by one rule is common to both builds",
            [new("number in the build file"), new("\u25CF A"), new("\u25B2 B"), Column.Unit, new("moved", true), new("band from", true)],
            [
                .. sheet.Uncertainty.Inputs.GroupBy(input => input.Key).Select(inputs =>
                {
                    BuildValue? a = inputs.Any(input => input.Owner != InputOwner.B) ? ofA.GetValueOrDefault(inputs.Key) : null;
                    BuildValue? b = inputs.Any(input => input.Owner != InputOwner.A) ? ofB.GetValueOrDefault(inputs.Key) : null;
                    return new Row(
                    [
                        inputs.Key, Of(a), Of(b), (a ?? b)?.Unit ?? "",
                        inputs.Any(input => input.Owner == InputOwner.Both) ? "together" : "apart",
                        string.Join("; ", inputs.Select(input => input.Why).Distinct()),
                    ]);
                }),
            ]);

        static string Of(BuildValue? value) =>
            value is null ? Numbers.Missing : $"{Numbers.Plain(value.Low)} / {Numbers.Plain(value.Typical)} / {Numbers.Plain(value.High)}";

        static Dictionary<string, BuildValue> Bands(Build build) => BuildVariation.Uncertain(build).ToDictionary(value => value.Key);
    }

    private static string Whose(InputOwner owner) => owner switch
    {
        InputOwner.A => Signs.Of(false),
        InputOwner.B => Signs.Of(true),
        _ => "both",
    };
}
