using Simfeel.Builds.Reading;
using Tomlyn.Syntax;

namespace Simfeel.Builds.Writing;

/// <summary>Where a key stands in a text, or where it would have to be added.</summary>
/// <param name="Value">Where its value starts and ends; null where the key is missing.</param>
/// <param name="InlineEnd">Closing brace of an inline table that stands for the key's table.</param>
/// <param name="LastLine">A place in the line after which the key belongs.</param>
/// <param name="Prefix">What the key has to be preceded with there: the table and a point where the file writes it so.</param>
internal readonly record struct Spot((int Start, int End)? Value, int? InlineEnd, int? LastLine, string Prefix);

/// <summary>Finds keys in the syntax tree of a build file, in any of the ways that TOML allows to write a table.</summary>
internal static class TomlSpots
{
    public static Spot Find(DocumentSyntax document, string table, string key)
    {
        Spot missing = default;
        foreach (KeyValueSyntax pair in document.KeyValues)
        {
            string[] names = [.. SheetReader.Names(pair.Key)];
            if (names[0] != table) continue;
            if (names.Length == 1 && pair.Value is InlineTableSyntax inline)
            {
                foreach (KeyValueSyntax item in inline.Items.Select(item => item.KeyValue!))
                {
                    if (SheetReader.Names(item.Key).SequenceEqual([key])) return Here(item);
                }
                missing = new(null, inline.CloseBrace!.Span.Start.Offset, null, "");
            }
            else if (names.Length > 1)
            {
                if (names.Skip(1).SequenceEqual([key])) return Here(pair);
                missing = new(null, null, pair.Value!.Span.End.Offset, table + ".");
            }
        }
        foreach (TableSyntaxBase block in document.Tables.Where(t => t is not TableArraySyntax && SheetReader.Names(t.Name).SequenceEqual([table])))
        {
            missing = new(null, null, block.Name!.Span.End.Offset, "");
            foreach (KeyValueSyntax pair in block.Items)
            {
                if (SheetReader.Names(pair.Key).SequenceEqual([key])) return Here(pair);
                missing = missing with { LastLine = pair.Value!.Span.End.Offset };
            }
        }
        return missing;
    }

    private static Spot Here(KeyValueSyntax pair) => new((pair.Value!.Span.Start.Offset, pair.Value.Span.End.Offset + 1), null, null, "");
}
