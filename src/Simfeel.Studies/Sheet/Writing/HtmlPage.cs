using System.Text;
using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;

namespace Simfeel.Studies.Sheet.Writing;

/// <summary>Writes a sheet as one page of HTML that is well-formed XML as well and asks for no other file.</summary>
internal static partial class HtmlPage
{
    private static readonly HashSet<string> Void = ["meta", "br", "col"];

    /// <summary>Elements that hold text and no elements.</summary>
    private static readonly HashSet<string> PlainText = ["title", "style", "bdi", "option", "textarea"];

    /// <param name="page">The sheet.</param>
    /// <param name="style">Its style sheet, without any sign of XML's own.</param>
    public static string Write(SheetPage page, string style = PageStyle.Css)
    {
        HtmlBlocks blocks = new();
        XElement html = new("html",
            new XAttribute("lang", "en"),
            new XElement("head",
                new XElement("meta", new XAttribute("charset", "utf-8")),
                new XElement("meta", new XAttribute("name", "viewport"), new XAttribute("content", "width=device-width, initial-scale=1")),
                new XElement("title", page.Title),
                new XElement("style", style)),
            new XElement("body",
                new XElement("main",
                    page.Sections.Select((section, n) => n == 0 ? Head(page, section, blocks) : Body(section, blocks)))));
        Finish(html);
        StringBuilder text = new("<!DOCTYPE html>\n");
        XmlWriterSettings settings = new() { OmitXmlDeclaration = true, NewLineHandling = NewLineHandling.None, Indent = false };
        using (XmlWriter writer = XmlWriter.Create(text, settings)) html.Save(writer);
        return text.Append('\n').ToString();
    }

    private static XElement Head(SheetPage page, Section section, HtmlBlocks blocks) =>
        new("header",
            new XAttribute("id", section.Id),
            new XElement("p", new XAttribute("class", "kind"), section.Title),
            new XElement("h1", page.Title),
            new XElement("p", new XAttribute("class", "line"), page.Line),
            new XElement("div", new XAttribute("class", "plates"), section.Blocks.Select(blocks.Of)));

    private static XElement Body(Section section, HtmlBlocks blocks) =>
        new("section",
            new XAttribute("id", section.Id),
            new XAttribute("aria-labelledby", section.Id + "-title"),
            new XElement("h2", new XAttribute("id", section.Id + "-title"), section.Title),
            section.Blocks.Select(blocks.Of));

    /// <summary>HTML has no short form of an empty element outside of drawings; and build files may name anything.</summary>
    private static void Finish(XElement element, bool drawing = false)
    {
        foreach (XAttribute attribute in element.Attributes()) attribute.Value = Clean(attribute.Value);
        foreach (XText text in element.Nodes().OfType<XText>()) text.Value = Clean(text.Value);
        bool inside = drawing || element.Name == "svg";
        if (!inside && !PlainText.Contains(element.Name.LocalName)) Isolate(element);
        if (!inside && element.IsEmpty && !Void.Contains(element.Name.LocalName)) element.Value = "";
        foreach (XElement child in element.Elements()) Finish(child, inside);
    }

    /// <summary>
    /// Words that run from right to left, such as names of builds, keep their direction to themselves; else they would draw numbers
    /// and signs beside them to their other side.
    /// </summary>
    private static void Isolate(XElement element)
    {
        foreach (XText text in element.Nodes().OfType<XText>().Where(text => RightToLeft().IsMatch(text.Value)).ToList())
        {
            List<object> parts = [];
            int end = 0;
            foreach (Match match in RightToLeft().Matches(text.Value))
            {
                parts.Add(text.Value[end..match.Index]);
                parts.Add(new XElement("bdi", match.Value));
                end = match.Index + match.Length;
            }
            text.ReplaceWith([.. parts, text.Value[end..]]);
        }
    }

    /// <summary>
    /// Letters of scripts from right to left (Unicode's blocks for them) and signs that turn the direction, with their marks, and
    /// blanks and signs of writing between them.
    /// </summary>
    [GeneratedRegex("""(?:[\u0590-\u08FF\u200F\u202A-\u202E\u2066-\u2069\uFB1D-\uFDFF\uFE70-\uFEFF]|[\uD802\uD803\uD83A\uD83B][\uDC00-\uDFFF])+(?:[ \u00A0'".-]+(?:[\u0590-\u08FF\u200F\u202A-\u202E\u2066-\u2069\uFB1D-\uFDFF\uFE70-\uFEFF]|[\uD802\uD803\uD83A\uD83B][\uDC00-\uDFFF])+)*""")]
    private static partial Regex RightToLeft();

    /// <summary>Text with characters that no page may hold replaced.</summary>
    public static string Clean(string text)
    {
        StringBuilder clean = new(text.Length);
        for (int n = 0; n < text.Length; n++)
        {
            if (n + 1 < text.Length && XmlConvert.IsXmlSurrogatePair(text[n + 1], text[n])) clean.Append(text[n]).Append(text[++n]);
            else clean.Append(XmlConvert.IsXmlChar(text[n]) && !char.IsControl(text[n]) ? text[n] : text[n] is '\n' or '\r' or '\t' ? ' ' : '\uFFFD');
        }
        return clean.ToString();
    }
}
