using System.Xml.Linq;

namespace Simfeel.Studies.Sheet.Writing;

/// <summary>Blocks as HTML elements. Drawings are numbered in their order, so that their ids never meet.</summary>
internal sealed class HtmlBlocks
{
    /// <summary>Rows of a table that is kept on one sheet of paper.</summary>
    private const int ShortTable = 14;

    private int _drawings;

    public XElement Of(Block block) => block switch
    {
        Paragraph paragraph => Classed("p", paragraph.Tone, paragraph.Text),
        BulletList list => new("ul", list.Items.Select(item => new XElement("li", item))),
        Heading heading => new("h3", heading.Text),
        DataTable table => Table(table),
        Figure figure => Drawing(figure),
        Beside beside => new("div", new XAttribute("class", "beside"), beside.Blocks.Select(part => new XElement("div", Of(part)))),
        Fold fold => new("details", new XAttribute("open", "open"), new XElement("summary", fold.Title), fold.Blocks.Select(Of)),
        Plate plate => Nameplate(plate),
        _ => throw new ArgumentOutOfRangeException(nameof(block), block, "A kind of block that is not written yet."),
    };

    private static XElement Classed(string name, Tone tone, params object?[] content)
    {
        XElement element = new(name, content);
        if (tone != Tone.Plain) element.SetAttributeValue("class", Class(tone));
        return element;
    }

    private static string Class(Tone tone) => tone switch
    {
        Tone.BuildA => "a",
        Tone.BuildB => "b",
        _ => tone.ToString().ToLowerInvariant(),
    };

    /// <summary>A table in a frame of its own that scrolls where the page is narrow; the frame takes the keyboard, so that anybody can scroll it.</summary>
    private static XElement Table(DataTable table) =>
        new("div", new XAttribute("class", table.Groups.Sum(group => group.Rows.Count) <= ShortTable ? "scroll short" : "scroll"), new XAttribute("role", "region"), new XAttribute("tabindex", "0"), new XAttribute("aria-label", table.Caption),
            new XElement("table",
                new XElement("caption", new XElement("span", table.Caption)),
                new XElement("thead", new XElement("tr", table.Columns.Select(column =>
                    Classed("th", column.Tone, new XAttribute("scope", "col"), Aligned(column), column.Title)))),
                table.Groups.Select(group => new XElement("tbody",
                    group.Title.Length == 0 ? null : new XElement("tr", new XAttribute("class", "group"),
                        new XElement("th", new XAttribute("scope", "rowgroup"), new XAttribute("colspan", table.Columns.Count), new XElement("span", group.Title))),
                    group.Rows.Select(row => Line(table, row))))));

    private static XElement Line(DataTable table, Row row) =>
        new("tr",
            row.Sum ? new XAttribute("class", "sum") : null,
            row.Cells.Select((cell, n) => Classed(
                n == 0 ? "th" : "td", cell.Tone, n == 0 ? new XAttribute("scope", "row") : null, Aligned(table.Columns[n]), cell.Text)));

    private static XAttribute? Aligned(Column column) => column == Column.Unit ? new("data-words", "short") : column.Words ? new("data-words", "") : null;

    private XElement Drawing(Figure figure) =>
        new("figure",
            figure.Draw($"d{++_drawings}-"),
            new XElement("figcaption", figure.Caption));

    private static XElement Nameplate(Plate plate) =>
        new("div", new XAttribute("class", plate.IsB ? "plate b" : "plate a"),
            new XElement("h2", $"{Signs.Of(plate.IsB)} {plate.Name}"),
            new XElement("p", plate.Text),
            new XElement("dl", plate.Facts.Select(fact => new XElement("div", new XElement("dt", fact.What), new XElement("dd", fact.Value)))));
}
