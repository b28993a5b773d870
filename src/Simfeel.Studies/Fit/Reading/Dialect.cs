using System.Text;

namespace Simfeel.Studies.Fit.Reading;

/// <summary>One line of a table, cut into cells.</summary>
/// <param name="Line">Line in the file, counted from 1.</param>
/// <param name="Cells">Cells without quotes and outer blanks.</param>
internal sealed record CellRow(int Line, IReadOnlyList<string> Cells)
{
    public bool IsBlank => Cells.All(cell => cell.Length == 0);

    public int Filled => Cells.Count(cell => cell.Length > 0);

    public string this[int column] => column < Cells.Count ? Cells[column] : "";
}

/// <summary>Which mark stands between the cells of a table. Found by trying each on every line.</summary>
internal static class Dialect
{
    /// <summary>Two blanks or more between columns, as in a listing.</summary>
    public const char Gap = ' ';

    private const string Declaration = "sep=";

    // a heading with line ends inside its quotes has some lines, an unbalanced quote goes on for ever
    private const int MostLinesOfACell = 6;

    // no number, name or remark of a table is as long; what is costs time in every rule that looks at it
    private const int LongestCell = 1000;

    private static readonly char[] Candidates = ['\t', ';', '|', ','];

    /// <summary>The mark in words.</summary>
    public static string Name(char delimiter) => delimiter switch
    {
        '\t' => "tab",
        ';' => "semicolon",
        ',' => "comma",
        '|' => "bar",
        _ => "two blanks or more",
    };

    /// <summary>
    /// The delimiter that cuts most lines with numbers into the same number of cells, two at least. A comma counts only
    /// where no other mark does: it may be the decimal mark.
    /// </summary>
    public static char Detect(IReadOnlyList<string> lines)
    {
        // some spreadsheets write the delimiter into the first line
        if (IsDeclaration(lines[0]) && lines[0].Trim().Length == Declaration.Length + 1) return lines[0].Trim()[^1];
        List<string> numbers = [.. lines.Where(line => line.Any(char.IsDigit) && !NumberText.IsComment(line))];
        foreach (char candidate in Candidates)
        {
            int[] counts = [.. numbers.Select(line => Filled(line, candidate)).Where(count => count >= 2)];
            if (counts.Length > 0 && 2 * counts.Length >= numbers.Count) return candidate;
        }
        return Gap;
    }

    /// <summary>The rows of a text; a quoted cell may hold the delimiter and, within a few lines, line ends.</summary>
    /// <exception cref="FitException">A cell is too long for any table.</exception>
    public static IReadOnlyList<CellRow> Cut(IReadOnlyList<string> lines, char delimiter, string source)
    {
        List<CellRow> rows = [];
        for (int n = IsDeclaration(lines[0]) ? 1 : 0; n < lines.Count; n++)
        {
            int last = n;
            string text = lines[n];
            while (IsOpen(text, delimiter) && last - n < MostLinesOfACell && last + 1 < lines.Count) text += " " + lines[++last];
            if (IsOpen(text, delimiter)) (text, last) = (lines[n], n);
            List<string> cells = Cells(text, delimiter, out _);
            if (cells.Find(cell => cell.Length > LongestCell) is string tooLong)
                throw new FitException(source, n + 1, $"A cell has {tooLong.Length} characters; allowed are 0 to {LongestCell}.", "is this the right file?");
            rows.Add(new(n + 1, cells));
            n = last;
        }
        return rows;
    }

    private static bool IsDeclaration(string line) => line.StartsWith(Declaration, StringComparison.OrdinalIgnoreCase);

    private static bool IsOpen(string text, char delimiter)
    {
        Cells(text, delimiter, out bool open);
        return open;
    }

    private static int Filled(string line, char delimiter) => Cells(line, delimiter, out _).Count(cell => cell.Length > 0);

    private static List<string> Cells(string line, char delimiter, out bool open)
    {
        open = false;
        if (delimiter == Gap) return [.. line.Split("  ", StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
        List<string> cells = [];
        StringBuilder cell = new();
        bool quoted = false, blank = true;
        for (int n = 0; n < line.Length; n++)
        {
            char c = line[n];
            if (c == '"' && quoted && n + 1 < line.Length && line[n + 1] == '"')
            {
                cell.Append(c);
                blank = false;
                n++;
            }
            else if (c == '"' && (quoted || blank))
            {
                quoted = !quoted;
            }
            else if (c == delimiter && !quoted)
            {
                Add();
            }
            else
            {
                cell.Append(c);
                blank &= char.IsWhiteSpace(c);
            }
        }
        Add();
        open = quoted;
        return cells;

        void Add()
        {
            cells.Add(cell.ToString().Trim().Trim('\u00a0', '\ufeff'));
            cell.Clear();
            blank = true;
        }
    }
}
