using System.Text;

namespace Simfeel.Studies.Sheet.Writing;

/// <summary>Writes a sheet as Markdown (CommonMark with tables); drawings become the tables of their numbers.</summary>
internal static class MarkdownPage
{
    public static string Write(SheetPage page)
    {
        StringBuilder text = new();
        foreach ((Section section, int n) in page.Sections.Select((section, n) => (section, n)))
        {
            if (n == 0) text.Append("# ").Append(Plain(page.Title)).Append("\n\n").Append(Plain(page.Line)).Append("\n\n");
            else text.Append("## ").Append(Plain(section.Title)).Append("\n\n");
            foreach (Block block in section.Blocks) Add(text, block);
        }
        return text.ToString().TrimEnd('\n') + "\n";
    }

    private static void Add(StringBuilder text, Block block)
    {
        switch (block)
        {
            case Paragraph paragraph:
                text.Append(Line(paragraph.Text)).Append("\n\n");
                break;
            case BulletList list:
                foreach (string item in list.Items) text.Append("- ").Append(Line(item)).Append('\n');
                text.Append('\n');
                break;
            case Heading heading:
                text.Append("### ").Append(Plain(heading.Text)).Append("\n\n");
                break;
            case DataTable table:
                Add(text, table);
                break;
            case Figure figure:
                text.Append(Line(figure.Caption)).Append("\n\n");
                if (figure.Numbers is not null) Add(text, figure.Numbers);
                break;
            case Beside beside:
                foreach (Block part in beside.Blocks) Add(text, part);
                break;
            case Fold fold:
                text.Append("### ").Append(Plain(fold.Title)).Append("\n\n");
                foreach (Block part in fold.Blocks) Add(text, part);
                break;
            case Plate plate:
                text.Append("**").Append(Signs.Of(plate.IsB)).Append(' ').Append(Plain(plate.Name)).Append("**: ").Append(Plain(plate.Text)).Append("\n\n");
                foreach ((string what, string value) in plate.Facts) text.Append("- ").Append(Line($"{what}: {value}")).Append('\n');
                text.Append('\n');
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block, "A kind of block that is not written yet.");
        }
    }

    private static void Add(StringBuilder text, DataTable table)
    {
        text.Append('*').Append(Plain(table.Caption)).Append("*\n\n");
        Cells(table.Columns.Select(column => Plain(column.Title)));
        Cells(table.Columns.Select((column, n) => n == 0 || column.Words ? "---" : "---:"));
        foreach (RowGroup group in table.Groups)
        {
            if (group.Title.Length > 0) Cells(table.Columns.Select((_, n) => n == 0 ? $"**{Plain(group.Title)}**" : ""));
            foreach (Row row in group.Rows) Cells(row.Cells.Select((cell, n) => n == 0 && row.Sum ? $"**{Plain(cell.Text)}**" : Plain(cell.Text)));
        }
        text.Append('\n');

        void Cells(IEnumerable<string> cells) => text.Append("| ").AppendJoin(" | ", cells).Append(" |\n");
    }

    /// <summary>Text at the start of a line, where a sign or a number with a full stop would start a list.</summary>
    private static string Line(string text)
    {
        string plain = Plain(text);
        if (plain.Length > 0 && plain[0] is '-' or '+' or '#' or '=') return "\\" + plain;
        int digits = plain.TakeWhile(char.IsAsciiDigit).Count();
        return digits > 0 && digits < plain.Length && plain[digits] is '.' or ')' ? $"{plain[..digits]}\\{plain[digits..]}" : plain;
    }

    /// <summary>Text in which nothing is a command of Markdown or HTML; an underscore within a word is none.</summary>
    private static string Plain(string text)
    {
        string clean = HtmlPage.Clean(text);
        StringBuilder plain = new(clean.Length);
        for (int n = 0; n < clean.Length; n++)
        {
            bool within = n > 0 && n < clean.Length - 1 && char.IsLetterOrDigit(clean[n - 1]) && char.IsLetterOrDigit(clean[n + 1]);
            if (clean[n] is '\\' or '|' or '*' or '<' or '>' or '`' or '[' or ']' or '&' or '~' || (clean[n] == '_' && !within)) plain.Append('\\');
            plain.Append(clean[n]);
        }
        return plain.ToString();
    }
}
