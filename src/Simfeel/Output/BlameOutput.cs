using Simfeel.Builds;
using Simfeel.Studies;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Blame;
using Simfeel.Studies.Compare;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Sheet.Json;
using Spectre.Console;

namespace Simfeel.CommandLine.Output;

/// <summary>Blame ledgers for people and for machines.</summary>
internal static class BlameOutput
{
    private const int BarWidth = 24;

    /// <summary>Prints JSON.</summary>
    public static void PrintJson(AssembledBuild a, AssembledBuild b, IReadOnlyList<BlameLedger> ledgers, StudyConditions conditions) =>
        JsonOutput.Print(new()
        {
            ["a"] = a.Build.Name,
            ["b"] = b.Build.Name,
            ["policy"] = conditions.Policy,
            ["seed"] = conditions.Field.Seed,
            ["effort"] = conditions.Effort,
            ["ledgers"] = StudiesJson.Blame(ledgers),
        });

    /// <summary>Prints each ledger as bars about a zero line.</summary>
    public static void Print(AssembledBuild a, AssembledBuild b, IReadOnlyList<BlameLedger> ledgers, StudyConditions conditions, bool order)
    {
        (string nameA, string nameB) = Comparison.ToldApart(a.Build.Name, b.Build.Name);
        foreach (BlameLedger ledger in ledgers) Print(nameA, nameB, ledger, order);
        Console.WriteLine($"Shares: Shapley values over {ledgers[0].Hybrids} {(ledgers[0].Hybrids == 1 ? "hybrid" : "hybrids")} of the two builds, each put together, tuned ({conditions.Policy}) and flown as a craft of its own;");
        Console.WriteLine("they add up to the difference. A group in which the builds do not differ is left out, its share is 0.");
        if (order)
            Console.WriteLine("Alone: what the group does to the first build by itself. Last: what it does when all others are changed already.");
        Console.WriteLine($"Stick effort {conditions.Effort:F2}, seed {conditions.Field.Seed}.");
    }

    private static void Print(string a, string b, BlameLedger ledger, bool order)
    {
        DisplayUnit display = ledger.Metric.Display;
        Console.WriteLine($"{Words.Capital(ledger.Metric.Title)} ({ledger.Metric.Drill.Name}): {a} {display.WithSymbol(ledger.A)}, {b} {display.WithSymbol(ledger.B)}.");
        if (ledger.Gap is string gap)
        {
            Console.WriteLine($"No blame can be shared out: {gap}");
            Console.WriteLine();
            return;
        }
        BlameShare[] shares = [.. ledger.Ranked];
        if (shares.Length == 0)
        {
            Console.WriteLine("The builds do not differ in any part.");
            Console.WriteLine();
            return;
        }
        Table table = Tables.New(["group of parts", "share", "", .. order ? (string[])["alone", "last"] : []]);
        table.Columns[2].Alignment = Justify.Left;
        double largest = shares.Max(share => Math.Abs(share.Share));
        foreach (BlameShare share in shares)
        {
            table.AddRow([
                PartGroupNames.Title(share.Group), Number(share.Share), Bar(share.Share, largest),
                .. order ? (string[])[Number(share.OneAtATime), Number(share.LastOneIn)] : []]);
        }
        table.AddRow(["together" + (display.Symbol.Length == 0 ? "" : ", " + display.Symbol), Number(ledger.Difference), "", .. order ? (string[])["", ""] : []]);
        Tables.Print(table);
        if (FeelBands.Usual.Of(ledger.Metric, ledger.A, ledger.B, MetricPair.Percent(ledger.A, ledger.B)) == Feel.NotFelt)
            Console.WriteLine($"Nobody would feel this difference (less than {FeelBands.Usual.NotFeltBelow_Percent:G4} %, or than {display.WithSymbol(Number(ledger.Metric.Floor).TrimStart('+'))}): its shares are of next to nothing.");
        double interaction = ledger.Interaction, size = Math.Abs(ledger.Difference);
        Console.WriteLine(Math.Abs(interaction) < 0.1 * size
            ? $"Each alone, the groups would make {display.WithSymbol(Number(ledger.Difference - interaction))}: they hardly depend on each other."
            : $"Each alone, the groups would make {display.WithSymbol(Number(ledger.Difference - interaction))}; {display.WithSymbol(Number(interaction))} comes of what they do together.");
        Console.WriteLine();

        string Number(double value) => Tables.Signed(value * display.PerSi, display.Decimals + (display.Decimals == 0 ? 1 : 0));
    }

    /// <summary>A bar to the left or right of a zero line.</summary>
    private static string Bar(double value, double largest)
    {
        const int half = BarWidth / 2;
        int length = largest > 0 ? (int)Math.Round(half * Math.Abs(value) / largest) : 0;
        string bar = new('#', length);
        return value < 0 ? bar.PadLeft(half) + "|" : new string(' ', half) + "|" + bar;
    }
}
