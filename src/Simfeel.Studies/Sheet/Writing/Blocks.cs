using System.Xml.Linq;

namespace Simfeel.Studies.Sheet.Writing;

/// <summary>A piece of a sheet; the same pieces become a page or Markdown.</summary>
internal abstract record Block;

/// <summary>Whose a number is, or what it says of itself; becomes a colour beside the sign that the text carries.</summary>
internal enum Tone
{
    Plain,
    BuildA,
    BuildB,
    Felt,
    Perhaps,
    Quiet,
    Undecided,
    Warning,

    /// <summary>Room for a number written by hand.</summary>
    Blank,
}

/// <summary>A paragraph.</summary>
internal sealed record Paragraph(string Text, Tone Tone = Tone.Plain) : Block;

/// <summary>Sentences, one to a line.</summary>
internal sealed record BulletList(IReadOnlyList<string> Items) : Block;

/// <summary>A heading within a section.</summary>
internal sealed record Heading(string Text) : Block;

/// <summary>A column: words to the left, numbers to the right.</summary>
internal sealed record Column(string Title, bool Words = false, Tone Tone = Tone.Plain)
{
    /// <summary>Units: words too short to be broken.</summary>
    public static Column Unit { get; } = new("unit", true);
}

/// <summary>A cell.</summary>
internal sealed record Cell(string Text, Tone Tone = Tone.Plain)
{
    public static implicit operator Cell(string text) => new(text);
}

/// <summary>A row; the first cell names it.</summary>
internal sealed record Row(IReadOnlyList<Cell> Cells, bool Sum = false);

/// <summary>Rows under a common heading; no heading where it is empty.</summary>
internal sealed record RowGroup(string Title, IReadOnlyList<Row> Rows);

/// <summary>A table; every row has as many cells as there are columns.</summary>
internal sealed record DataTable(string Caption, IReadOnlyList<Column> Columns, IReadOnlyList<RowGroup> Groups) : Block
{
    public DataTable(string caption, IReadOnlyList<Column> columns, IReadOnlyList<Row> rows)
        : this(caption, columns, [new RowGroup("", rows)])
    {
    }
}

/// <summary>A drawing.</summary>
/// <param name="Label">What it shows, for people who do not see it.</param>
/// <param name="Caption">The line under it.</param>
/// <param name="Axes">Labels of its axes, each with a unit.</param>
/// <param name="Draw">Draws it as an SVG element; given the start of all its ids.</param>
/// <param name="Numbers">The numbers behind it, for a medium that cannot draw; null where a table beside it has them.</param>
internal sealed record Figure(
    string Label, string Caption, IReadOnlyList<string> Axes, Func<string, XElement> Draw, DataTable? Numbers = null) : Block;

/// <summary>Blocks side by side where there is room.</summary>
internal sealed record Beside(IReadOnlyList<Block> Blocks) : Block;

/// <summary>Blocks that a reader may fold away; printed in full.</summary>
internal sealed record Fold(string Title, IReadOnlyList<Block> Blocks) : Block;

/// <summary>A nameplate of a build.</summary>
internal sealed record Plate(string Name, string Text, IReadOnlyList<(string What, string Value)> Facts, bool IsB) : Block;

/// <summary>A section of a sheet.</summary>
internal sealed record Section(string Id, string Title, IReadOnlyList<Block> Blocks);

/// <summary>A whole sheet.</summary>
internal sealed record SheetPage(string Title, string Line, IReadOnlyList<Section> Sections);
