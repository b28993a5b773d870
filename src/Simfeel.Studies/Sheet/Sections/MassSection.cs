using Simfeel.Builds;
using Simfeel.Physics.Maths;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Sheet.Sections;

/// <summary>Where mass and resistance to turning come from.</summary>
internal static class MassSection
{
    /// <summary>What is summed up: mass and the three moments of inertia about the craft's centre of gravity.</summary>
    private static readonly (string Title, string Unit, double PerSi, int Decimals, Func<PartMass, AssembledBuild, double> Of, Func<AssembledBuild, double> Whole)[] Sums =
    [
        ("mass", "g", 1e3, 0, (part, _) => part.Mass.Mass, build => build.Craft.Mass),
        ("Ixx, resists rolling", "g m2", 1e3, 3, (part, build) => About(part, build).M00, build => build.Craft.I_BBcm_B.M00),
        ("Iyy, resists pitching", "g m2", 1e3, 3, (part, build) => About(part, build).M11, build => build.Craft.I_BBcm_B.M11),
        ("Izz, resists yawing", "g m2", 1e3, 3, (part, build) => About(part, build).M22, build => build.Craft.I_BBcm_B.M22),
    ];

    public static Section Of(FeelSheet sheet)
    {
        PartKind[] kinds = [.. Enum.GetValues<PartKind>().Where(kind => Has(sheet.A, kind) || Has(sheet.B, kind))];
        return new("mass", "Mass and inertia",
        [
            new Paragraph(
                "Resistance to turning grows with mass and with the square of its distance from the axis, so what sits at the arms' ends counts most. "
                    + "Axes: x forward, y right, z down, through the centre of gravity. Rotors are counted as if they stood still."),
            new Beside([Drawing(sheet, kinds), Totals(sheet)]),
            Table(sheet, kinds),
        ]);
    }

    private static bool Has(AssembledBuild build, PartKind kind) => build.Parts.Any(part => part.Group == kind && part.Mass.Mass > 0);

    private static Mat3 About(PartMass part, AssembledBuild build) => part.Mass.InertiaAbout(build.p_OBcm);

    private static double Sum(AssembledBuild build, PartKind kind, Func<PartMass, AssembledBuild, double> of) =>
        build.Parts.Where(part => part.Group == kind).Sum(part => of(part, build));

    private static Figure Drawing(FeelSheet sheet, PartKind[] kinds)
    {
        (string a, string b) = sheet.Comparison.Names;
        const string axis = "length of a bar: share of the larger build's total, ratio";
        string label = $"Mass and moments of inertia of {a} and {b} by kind of part";
        List<StackedBar> bars = [];
        foreach ((string title, string unit, double perSi, int decimals, Func<PartMass, AssembledBuild, double> of, _) in Sums)
        {
            double[] ofA = [.. kinds.Select(kind => Sum(sheet.A, kind, of))], ofB = [.. kinds.Select(kind => Sum(sheet.B, kind, of))];
            double full = Math.Max(ofA.Sum(), ofB.Sum());
            bars.Add(new($"{title}: {Signs.Of(false)} {a}", ofA, full, $"{Numbers.Fixed(ofA.Sum() * perSi, decimals)} {unit}"));
            bars.Add(new($"{Signs.Of(true)} {b}", ofB, full, $"{Numbers.Fixed(ofB.Sum() * perSi, decimals)} {unit}", true));
        }
        string[] words = [.. kinds.Select(Word)];
        return new(
            label, "Each pair of bars to one scale; patterns tell the kinds of part.", [axis], prefix => StackedBars.Draw(label, axis, words, bars, prefix));
    }

    private static DataTable Table(FeelSheet sheet, PartKind[] kinds)
    {
        (string a, string b) = sheet.Comparison.Names;
        return new(
            $"By kind of part: mass in g, moments of inertia in g m2; {Signs.Of(false)} {a}, {Signs.Of(true)} {b}",
            [new("part"), .. Sums.SelectMany(sum => new[] { new Column($"{Short(sum.Title)} \u25CF A"), new Column($"{Short(sum.Title)} \u25B2 B") })],
            [
                new RowGroup("", [.. kinds.Select(kind => new Row([Word(kind), .. Both(sum => build => Sum(build, kind, sum))]))]),
                new RowGroup("", [new Row(["all parts", .. Both(sum => build => kinds.Sum(kind => Sum(build, kind, sum)))], true)]),
            ]);

        IEnumerable<Cell> Both(Func<Func<PartMass, AssembledBuild, double>, Func<AssembledBuild, double>> of) =>
            Sums.SelectMany(sum => new[] { sheet.A, sheet.B }.Select(build => new Cell(Numbers.Fixed(of(sum.Of)(build) * sum.PerSi, sum.Decimals))));

        static string Short(string title) => title.Split(',')[0];
    }

    private static DataTable Totals(FeelSheet sheet)
    {
        (string a, string b) = sheet.Comparison.Names;
        return new(
            "As flown: weighed, balanced or swung numbers of the build file go before the sum of the parts",
            [new("what"), new($"{Signs.Of(false)} {a}", Tone: Tone.BuildA), new($"{Signs.Of(true)} {b}", Tone: Tone.BuildB), Column.Unit],
            [
                .. Sums.Select(sum => Line(sum.Title, sum.Unit, build => Numbers.Fixed(sum.Whole(build) * sum.PerSi, sum.Decimals))),
                Line("centre of gravity, x / y / z from the bottom plate's centre", "mm", build =>
                    $"{Numbers.Fixed(build.p_OBcm.X * 1e3, 1)} / {Numbers.Fixed(build.p_OBcm.Y * 1e3, 1)} / {Numbers.Fixed(build.p_OBcm.Z * 1e3, 1)}"),
                Line("spin inertia of a rotor: propeller and bell", "g mm2", build => Numbers.Fixed(build.Craft.Rotors[0].SpinInertia * 1e9, 0)),
            ]);

        Row Line(string what, string unit, Func<AssembledBuild, string> number) => new([what, number(sheet.A), number(sheet.B), unit]);
    }

    private static string Word(PartKind kind) => kind.ToString().ToLowerInvariant();
}
