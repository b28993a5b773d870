namespace Simfeel.Studies.Fit.Reading;

/// <summary>A heading and the rows of cells below it.</summary>
internal sealed record RawBlock(string Title, int HeadingLine, IReadOnlyList<HeadingCell> Heading)
{
    public List<CellRow> Rows { get; } = [];

    public List<RefusedRow> Refused { get; } = [];

    public List<string> Notes { get; } = [];
}

/// <summary>Finds headings and blocks among the rows of a file.</summary>
internal sealed class BlockFinder(string source)
{
    private readonly List<RawBlock> _blocks = [];
    private readonly List<CellRow> _pending = [];

    /// <summary>The blocks in the order of the file.</summary>
    /// <exception cref="FitException">There are numbers but no heading says what they are.</exception>
    public static IReadOnlyList<RawBlock> Find(IReadOnlyList<CellRow> rows, string source)
    {
        BlockFinder finder = new(source);
        foreach (CellRow row in rows) finder.Take(row);
        return [.. finder._blocks.Where(block => block.Rows.Count + block.Refused.Count > 0)];
    }

    private void Take(CellRow row)
    {
        if (row.IsBlank) return;
        if (NumberText.IsComment(row.Cells.First(cell => cell.Length > 0)))
        {
            CellRow bare = row with { Cells = [.. row.Cells.Select((cell, n) => n == 0 ? cell.TrimStart('#', '/', '!', ' ', '\t') : cell)] };
            // some tools put a mark in front of the heading
            if (Score(bare) >= 2) _pending.Add(bare);
            return;
        }
        int numeric = row.Cells.Count(NumberText.LooksNumeric);
        bool summary = QuantityNames.IsSummary(row.Cells.First(cell => cell.Length > 0));
        int filled = row.Cells.Count(cell => cell.Length > 0 && !NumberText.IsMissing(cell));
        // below a heading half of the cells may be spoilt; above it, words with a number or two are a title
        bool below = _blocks.Count > 0 && _pending.Count == 0;
        bool data = below ? numeric >= 1 && 2 * numeric >= filled : numeric >= 2 && 2 * numeric > filled;
        if (!data)
        {
            _pending.Add(row);
            return;
        }
        Open(row);
        RawBlock block = _blocks[^1];
        if (summary) block.Notes.Add($"line {row.Line} \"{row.Cells.First(cell => cell.Length > 0)}\" sums up other rows and is left out");
        else block.Rows.Add(row);
    }

    /// <summary>Starts a block where text stood above this first row of numbers.</summary>
    private void Open(CellRow row)
    {
        if (_pending.Count == 0 && _blocks.Count > 0) return;
        List<CellRow> texts = [.. _pending];
        _pending.Clear();
        // names that nobody knows are a heading still, which the user may explain
        if ((Heading(texts, 2) ?? (_blocks.Count == 0 ? Heading(texts, 0) : null)) is { } found)
        {
            string title = string.Join(" / ", texts[..found.First].Select(Join));
            _blocks.Add(new(title, found.Line, found.Cells));
        }
        else if (_blocks.Count > 0)
        {
            RawBlock last = _blocks[^1];
            // a line of words between rows of numbers: a row that went wrong where it holds a number, else the title of more
            foreach (CellRow broken in texts.Where(text => text.Cells.Any(NumberText.LooksNumeric) && text.Filled > 1))
                last.Refused.Add(new(broken.Line, $"holds too few numbers: {Join(broken)}"));
            List<CellRow> titles = [.. texts.Where(text => text.Filled == 1)];
            if (titles.Count > 0) _blocks.Add(new(string.Join(" / ", titles.Select(Join)), last.HeadingLine, last.Heading));
        }
        else
        {
            throw new FitException(source, row.Line, "These numbers have no heading that says what they are.", "put a row of names above them, such as Throttle [%];Thrust [gf];Voltage [V];Current [A];RPM");
        }
    }

    private static (IReadOnlyList<HeadingCell> Cells, int First, int Line)? Heading(List<CellRow> texts, int least)
    {
        int names = -1, best = least - 1;
        for (int n = 0; n < texts.Count; n++)
        {
            if (texts[n].Filled > 1 && Score(texts[n]) is int score && score > best) (names, best) = (n, score);
        }
        if (names < 0) return null;
        CellRow? units = names + 1 < texts.Count && IsUnitRow(texts[names + 1]) ? texts[names + 1] : null;
        CellRow? upper = names > 0 && IsMergedTitle(texts[names - 1]) ? texts[names - 1] : null;
        // names may stand in the upper row and units alone in the lower one, or a title may span columns with names of their own
        if (units is null && upper is null && names + 1 < texts.Count && texts[names + 1].Filled > 1) (upper, names) = (texts[names], names + 1);
        int width = Math.Max(texts[names].Cells.Count, Math.Max(units?.Cells.Count ?? 0, upper?.Cells.Count ?? 0));
        List<HeadingCell> cells = [];
        string above = "";
        for (int c = 0; c < width; c++)
        {
            if (upper is not null && upper[c].Length > 0) above = upper[c];
            string name = texts[names][c], unit = units?[c] ?? "";
            cells.Add(new(c + 1, name.Length + unit.Length > 0 || upper?[c].Length > 0 ? above : "", name, unit));
        }
        return (cells, names, texts[names].Line);
    }

    /// <summary>How many cells of a row name a quantity.</summary>
    private static int Score(CellRow row) =>
        row.Cells.Select((cell, n) => new HeadingCell(n + 1, "", cell, "")).Count(cell => cell.Name.Length is > 0 and < 60 && cell.Find().Known);

    private static bool IsUnitRow(CellRow row) => row.Filled > 0 && 2 * row.Cells.Count(UnitNames.IsUnit) > row.Filled;

    private static bool IsMergedTitle(CellRow row) => row.Filled > 1 || (row.Filled == 1 && row.Cells[0].Length == 0);

    private static string Join(CellRow row) => string.Join(", ", row.Cells.Where(cell => cell.Length > 0));
}
