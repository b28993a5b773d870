using System.Text;
using Simfeel.Fuzz.Running;

namespace Simfeel.Fuzz.Mutation;

/// <summary>Damages a table of text: columns, delimiters, units, decimal marks, quotes.</summary>
/// <param name="headings">Headings of the format or of its neighbours.</param>
internal sealed class TableMutator(IReadOnlyList<string> headings)
{
    private static readonly char[] Delimiters = [',', ';', '\t', '|'];

    /// <summary>One to four changes.</summary>
    public byte[] Mutate(byte[] whole, Dice dice)
    {
        string text = Encoding.UTF8.GetString(whole);
        string end = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        List<string> lines = [.. text.Split(end)];
        char delimiter = Delimiters.MaxBy(mark => lines.Sum(line => line.Count(c => c == mark)));
        for (int changes = dice.From(1, 4); changes > 0; changes--) Change(lines, ref delimiter, dice);
        string joined = string.Join(end, lines);
        return dice.Once(30) ? [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(joined)] : dice.Once(30) ? Encoding.Latin1.GetBytes(joined) : Encoding.UTF8.GetBytes(joined);
    }

    private void Change(List<string> lines, ref char delimiter, Dice dice)
    {
        if (lines.Count == 0) lines.Add("");
        int at = dice.Below(lines.Count);
        char mark = delimiter;
        switch (dice.Below(15))
        {
            case 0: lines.RemoveAt(at); break;
            case 1: lines.Insert(dice.Below(lines.Count), lines[at]); break;
            case 2 or 3 or 4: Cell(lines, at, mark, _ => Nasty(dice), dice); break;
            case 5: Cell(lines, Math.Min(dice.Below(6), lines.Count - 1), mark, _ => dice.Of(headings), dice); break;
            case 6: SwapColumns(lines, mark, dice); break;
            case 7:
                delimiter = dice.Of(Delimiters);
                for (int n = 0; n < lines.Count; n++) lines[n] = lines[n].Replace(mark, delimiter);
                break;
            case 8:
                for (int n = 0; n < lines.Count; n++) lines[n] = lines[n].Replace('.', dice.Of([',', ',', '.']));
                break;
            case 9: Cell(lines, at, mark, cell => $"\"{cell}\"", dice); break;
            case 10: Cell(lines, at, mark, cell => $"\"{cell}", dice); break;
            case 11: Cell(lines, at, mark, cell => cell + dice.Of([" g", " kgf", " N", "%", " V", " rpm", " \u00b5s", " mN m", "  ", "\u00a0"]), dice); break;
            case 12: Factor(lines, mark, dice); break;
            case 13: lines.Insert(at, dice.Of(["", "# comment", ",,,", ";;;", "mean;1;2;3", "Propeller 5x3", "7 in", "sep=;", "\"", new string(mark, dice.From(1, 300)), new string('1', 3000), "1" + new string(' ', 30_000) + "!"])); break;
            default: Cell(lines, at, mark, cell => cell + mark + NastyWords.Number(dice), dice); break;
        }
    }

    private static string Nasty(Dice dice) => dice.Below(4) switch
    {
        0 => NastyWords.Word(dice),
        1 => dice.Of(["1.234,5", "1,234.5", "1'000", "1 000", "1.000", "1,000", "12:30", "-", "n/a", "--", "1e5", "\u0665", "\u0665x\u0663", "5\u00d7\u0663", "\u0665\"", "1/2", "=1+1", "@SUM(A1)", "1" + new string(' ', 3000) + "!"]),
        _ => NastyWords.Number(dice),
    };

    private static void Cell(List<string> lines, int line, char delimiter, Func<string, string> changed, Dice dice)
    {
        string[] cells = lines[line].Split(delimiter);
        int at = dice.Below(cells.Length);
        cells[at] = changed(cells[at]);
        lines[line] = string.Join(delimiter, cells);
    }

    private static void SwapColumns(List<string> lines, char delimiter, Dice dice)
    {
        int width = lines.Max(line => line.Split(delimiter).Length), a = dice.Below(width), b = dice.Below(width);
        // now and then in the rows alone, so that headings and numbers part
        int from = dice.Once(2) ? 0 : dice.Below(lines.Count);
        for (int n = from; n < lines.Count; n++)
        {
            string[] cells = lines[n].Split(delimiter);
            if (a < cells.Length && b < cells.Length) (cells[a], cells[b]) = (cells[b], cells[a]);
            lines[n] = string.Join(delimiter, cells);
        }
    }

    /// <summary>A column in another unit, with the heading left as it is.</summary>
    private static void Factor(List<string> lines, char delimiter, Dice dice)
    {
        int width = lines.Max(line => line.Split(delimiter).Length), column = dice.Below(width);
        double factor = dice.Of([0.001, 0.0098, 0.1, -1, 0, 9.81, 10, 60, 1000, 1e300]);
        for (int n = 0; n < lines.Count; n++)
        {
            string[] cells = lines[n].Split(delimiter);
            if (column >= cells.Length || !double.TryParse(cells[column].Replace(',', '.'), out double value)) continue;
            cells[column] = Oracles.Reasons.Shown(value * factor);
            lines[n] = string.Join(delimiter, cells);
        }
    }
}
