using Simfeel.Physics.Maths;

namespace Simfeel.Studies.Fit.Reading;

/// <summary>
/// Reads real-life thrust tables: any order and naming of the usual quantities, several units, decimal comma, titles,
/// blanks, several blocks. Says how it read each column; what could be read in two ways is refused, not guessed.
/// </summary>
public static class StandTableReader
{
    /// <summary>Reads a file.</summary>
    /// <param name="path">Text in UTF-8, UTF-16 with its mark, or Latin-1; at most 16 MiB.</param>
    /// <param name="model">The stand of the build, which tells units that a heading leaves out.</param>
    /// <param name="options">What the user says beyond the file.</param>
    /// <exception cref="FitException">The file cannot be read, or in more than one way.</exception>
    public static StandTable Read(string path, StandModel model, StandReadingOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(path);
        return Parse(TableText.ReadFile(path), path, model, options);
    }

    /// <summary>Reads a table from bytes as a file would hold them.</summary>
    /// <exception cref="FitException">As <see cref="Read"/>.</exception>
    public static StandTable Parse(ReadOnlySpan<byte> bytes, string source, StandModel model, StandReadingOptions? options = null) =>
        Parse(TableText.Decode(bytes, source), source, model, options);

    /// <summary>Reads a table from text.</summary>
    /// <exception cref="FitException">As <see cref="Read"/>.</exception>
    public static StandTable Parse(string text, string source, StandModel model, StandReadingOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(source);
        ArgumentNullException.ThrowIfNull(model);
        options ??= new();
        string[] lines = text.Split(["\r\n", "\n", "\r"], StringSplitOptions.None);
        if (lines.All(string.IsNullOrWhiteSpace)) throw new FitException(source, null, "The file is empty.");
        char delimiter = Dialect.Detect(lines);
        IReadOnlyList<CellRow> rows = Dialect.Cut(lines, delimiter, source);
        IReadOnlyList<RawBlock> raw = BlockFinder.Find(rows, source);
        if (raw.Count == 0) throw new FitException(source, null, "There is no row of numbers below a heading.", "is this a stand table?");
        if (delimiter == ',') CheckCommas(raw, source);
        NumberMarks marks = options.DecimalMark is char mark
            ? new(mark, true)
            : NumberText.Detect(raw.SelectMany(block => block.Rows), source);
        foreach (ColumnOverride said in options.Columns.Where(c => !raw.Any(block => block.Heading.Any(c.IsAbout))))
            throw new FitException(source, raw[0].HeadingLine, $"There is no column '{said.Name}'; columns are {string.Join(", ", raw[0].Heading.Where(c => c.Label.Length > 0).Select(c => $"'{c.Label}'"))}.");
        (List<int> used, List<string> skipped) = Choose(raw, model, options, source);
        List<StandBlock> blocks = [.. used.Select(n => new BlockReader(raw[n], n + 1, model, options, marks, source).Read())];
        string groups = marks.Grouped ? $", '{marks.Other}' between thousands" : "";
        return new(source, $"cells divided by {Dialect.Name(delimiter)}, decimal {(marks.Decimal == ',' ? "comma" : "point")}{groups}", blocks, skipped);
    }

    /// <summary>Numbers beyond the heading mean that commas are decimal marks as well, and that columns would be read shifted.</summary>
    private static void CheckCommas(IReadOnlyList<RawBlock> raw, string source)
    {
        foreach (RawBlock block in raw)
        {
            List<CellRow> wide = [.. block.Rows.Where(row => row.Cells.Skip(block.Heading.Count).Any(NumberText.LooksNumeric))];
            if (wide.Count == 0 || 2 * wide.Count < block.Rows.Count) continue;
            throw new FitException(source, wide[0].Line, $"This row has {wide[0].Cells.Count} cells below {block.Heading.Count} names: commas seem to divide cells and be decimal marks as well.", "store the table with semicolons or tabs between its cells");
        }
    }

    /// <summary>The blocks to use: the one asked for, else all whose title names no other propeller.</summary>
    private static (List<int> Used, List<string> Skipped) Choose(IReadOnlyList<RawBlock> raw, StandModel model, StandReadingOptions options, string source)
    {
        double diameter = model.Rotor.Radius * 2 / TradeUnits.Inch;
        if (options.Block is int asked)
        {
            if (asked < 1 || asked > raw.Count) throw new FitException(source, null, $"There is no block {asked}; the file has {raw.Count}.");
            return ([asked - 1], [.. Enumerable.Range(1, raw.Count).Where(n => n != asked).Select(n => $"block {n} (line {raw[n - 1].HeadingLine}{Titled(raw[n - 1])}) is left out: --block {asked}")]);
        }
        List<int> used = [];
        List<string> skipped = [];
        for (int n = 0; n < raw.Count; n++)
        {
            if (PropellerNames.Fits(raw[n].Title, diameter)) used.Add(n);
            else skipped.Add($"block {n + 1} (line {raw[n].HeadingLine}{Titled(raw[n])}) is left out: it is about a propeller of {PropellerNames.DiameterIn(raw[n].Title)} in, the build has {diameter:G3} in");
        }
        if (used.Count == 0)
            throw new FitException(source, raw[0].HeadingLine, $"No block is about the build's propeller of {diameter:G3} in: {string.Join("; ", raw.Select(block => $"'{block.Title}'"))}.", "choose one with --block N if it is the same propeller after all");
        return (used, skipped);
    }

    private static string Titled(RawBlock block) => block.Title.Length > 0 ? $", \"{block.Title}\"" : "";
}
