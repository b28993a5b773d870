using Simfeel.Builds;
using Simfeel.CommandLine.Commands;
using Simfeel.Flight;
using Simfeel.Flight.Tuning;
using Simfeel.Physics;
using Simfeel.Studies.Compare;
using Spectre.Console;

namespace Simfeel.CommandLine.Output;

/// <summary>A comparison for people and for machines.</summary>
internal static class ComparisonOutput
{
    /// <summary>Prints JSON.</summary>
    public static void PrintJson(Comparison comparison) =>
        JsonOutput.Print(new()
        {
            ["a"] = comparison.A.Unit.Name,
            ["b"] = comparison.B.Unit.Name,
            ["policy"] = comparison.Policy,
            ["seed"] = comparison.Field.Seed,
            ["effort"] = comparison.Effort,
            ["effects"] = SiteSettings.Describe(comparison.Field.Effects),
            ["start_height_m"] = comparison.Field.StartHeight,
            ["sentences"] = TellingSentences.Of(comparison),
            ["cautions"] = Cautions.Of(comparison),
            ["metrics"] = comparison.Metrics.Select(ComparisonJson.Metric).ToList(),
            ["work"] = comparison.Work.Select(work => new Dictionary<string, object?>
            {
                ["drill"] = work.Drill.Name,
                ["duty_movement_a"] = work.A.DutyMovement,
                ["duty_movement_b"] = work.B.DutyMovement,
                ["saturated_share_a"] = work.A.SaturatedShare,
                ["saturated_share_b"] = work.B.SaturatedShare,
            }).ToList(),
            ["tuning"] = new[] { comparison.A, comparison.B }.Select(unit =>
                new Dictionary<string, object?>(ComparisonJson.Tuning(unit).Prepend(new("name", unit.Unit.Name)))).ToList(),
            ["delays_s"] = ComparisonJson.Delays(comparison),
        });

    /// <summary>Prints what is known before anything has flown.</summary>
    public static void PrintMasses(AssembledBuild a, AssembledBuild b)
    {
        (string nameA, string nameB) = Comparison.ToldApart(a.Build.Name, b.Build.Name);
        Console.WriteLine($"{nameA} weighs {Mass(a)} and resists rolling with {Roll(a)}, {nameB} weighs {Mass(b)} and resists with {Roll(b)}.");
        Console.Out.Flush();

        static string Mass(AssembledBuild build) => $"{1000 * build.Craft.Mass:F0} g";

        static string Roll(AssembledBuild build) => $"{1000 * build.Craft.I_BBcm_B.M00:F2} g m2";
    }

    /// <summary>Prints sentences, table and what lies behind them.</summary>
    public static void PrintTable(Comparison comparison)
    {
        TunedUnit a = comparison.A, b = comparison.B;
        (string nameA, string nameB) = comparison.Names;
        foreach (string sentence in TellingSentences.Of(comparison)) Console.WriteLine(sentence);
        Console.WriteLine();

        Table table = Tables.New("drill", "what", "unit", nameA, nameB, "difference %", "felt?", "at limits %");
        table.Columns[1].Alignment = Justify.Left;
        table.Columns[2].Alignment = Justify.Left;
        string last = "";
        foreach (MetricPair pair in comparison.Metrics)
        {
            string drill = pair.Metric.Drill.Name;
            string percent = double.IsNaN(pair.DifferencePercent) ? "-" : pair.DifferencePercent.ToString("+0.0;-0.0;0.0");
            table.AddRow(
                drill == last ? "" : drill, pair.Metric.Title, pair.Metric.Display.Symbol,
                pair.Metric.Display.Number(pair.A), pair.Metric.Display.Number(pair.B), percent, FeelBands.Word(pair.Feel),
                drill == last ? "" : Limits(comparison.Work.First(work => work.Drill == pair.Metric.Drill)));
            last = drill;
        }
        Tables.Print(table);
        PilotProfile profile = comparison.Profile;
        Console.WriteLine($"Difference: {nameB} less {nameA}, in percent of their mean. Felt: our inference, above {comparison.Bands.FeltAbove_Percent:G4} %; perhaps: {comparison.Bands.NotFeltBelow_Percent:G4} to {comparison.Bands.FeltAbove_Percent:G4} %; a reading: an instrument's figure.");
        Console.WriteLine("How sure a difference is, the sheet says (--sheet): what is felt here may be undecided there.");
        Console.WriteLine("At limits: share of each drill's time in which a rotor stood at idle or at full duty.");
        if (comparison.Metrics.Any(pair => pair.Feel == Feel.Unknown))
            Console.WriteLine("Unknown: the craft did not get there within the drill (shown as -), or touched the ground in it.");
        Console.WriteLine($"Tuning policy {comparison.Policy}: {TuningPolicies.Describe(b.Policy)}");
        Console.WriteLine($"(roll {Hz(a.Roll.Crossover)} and {Hz(b.Roll.Crossover)} Hz, yaw {Hz(a.Yaw.Crossover)} and {Hz(b.Yaw.Crossover)} Hz). Stick effort {comparison.Effort:F2}, seed {comparison.Field.Seed}.");
        Console.WriteLine($"The same for both: sticks read every {profile.StickPeriod * 1000:F0} ms, thumb {profile.ThumbTime * 1000:F0} ms to full stick, radio {profile.RadioDelay * 1000:F0} ms, loop {1 / profile.LoopPeriod:F0} Hz, pack at {100 * profile.StateOfCharge:F0} %.");
        Console.WriteLine($"Air: {Air(comparison.Field)} Start {comparison.Field.StartHeight:G4} m above the ground.");
        Console.WriteLine($"Speed controllers: {a.Unit.CommandDelay * 1000:F2} and {b.Unit.CommandDelay * 1000:F2} ms.");
        foreach (string caution in Cautions.Of(comparison)) Console.WriteLine(caution);

        static string Limits(DrillWork work) => $"{100 * work.A.SaturatedShare:F0}, {100 * work.B.SaturatedShare:F0}";

        static string Air(FieldConditions field) =>
            field.Effects == AirEffects.None
                ? "steady loads of the rotors only."
                : $"steady loads of the rotors and {SiteSettings.Describe(field.Effects)}"
                    + (field.Effects.HasFlag(AirEffects.Wake) ? "; the shaking in wakes is an estimate." : ".");

        static string Hz(double crossover) => double.IsNaN(crossover) ? "-" : (crossover / (2 * Math.PI)).ToString("F1");
    }
}
