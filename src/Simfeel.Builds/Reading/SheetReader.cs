using Simfeel.Builds.Format;
using Tomlyn.Syntax;

namespace Simfeel.Builds.Reading;

/// <summary>Turns the text of a build file into a <see cref="BuildSheet"/>, checking every value against the format.</summary>
internal sealed class SheetReader
{
    private const int MaxUnknown = 20;

    private readonly DiagnosticBag _bag;
    private readonly SheetBuilder _sheet;
    private readonly HashSet<string> _tablesSeen = new(StringComparer.Ordinal);
    private int _extras;
    private int _unknown;

    private SheetReader(DiagnosticBag bag, string? folder, string? polarText)
    {
        _bag = bag;
        _sheet = new(bag, folder, polarText);
    }

    /// <summary>The sheet, or null where the text has an error; all findings are in <paramref name="bag"/>.</summary>
    /// <param name="text">The text of a build file.</param>
    /// <param name="folder">Folder of the files that it names; null where there is none.</param>
    /// <param name="bag">Receives the findings.</param>
    /// <param name="polarText">Text of the polar file where it was kept with the build's; null to read the file.</param>
    public static BuildSheet? Read(string text, string? folder, DiagnosticBag bag, string? polarText = null)
    {
        if (TomlText.Read(text, bag, "build file", "start from one of the builds that come with the program", mayBePolar: true) is not DocumentSyntax document) return null;
        SheetReader reader = new(bag, folder, polarText);
        reader.Walk(document);
        return reader._sheet.Finish(text, Math.Min(reader._extras, BuildFormat.MaxExtras));
    }

    private void Walk(DocumentSyntax document)
    {
        foreach (KeyValueSyntax pair in document.KeyValues) Visit([], pair);
        foreach (TableSyntaxBase table in document.Tables)
        {
            string[] path = [.. Names(table.Name)];
            Place at = PlaceOf(table);
            string name = path[0];
            if (path.Length > 1 && Known(name, at))
            {
                Unknown(path, at, "");
                continue;
            }
            if (name == "extra" && path.Length == 1)
            {
                if (table is not TableArraySyntax)
                    _bag.Error(at, "extra", "", "Every extra part is a table of its own.", "write [[extra]] with double brackets");
                else if (++_extras > BuildFormat.MaxExtras)
                {
                    if (_extras == BuildFormat.MaxExtras + 1)
                        _bag.Error(at, "extra", "", $"There are more than {BuildFormat.MaxExtras} extra parts; allowed are 0 to {BuildFormat.MaxExtras}.", "join some of them");
                    continue;
                }
                path = [$"extra[{_extras}]"];
                _sheet.Table(path[0], at);
            }
            else if (table is TableArraySyntax && BuildFormat.Tables.Contains(name))
            {
                _bag.Error(at, name, "", $"There is one {name} table only.", $"write [{name}] with single brackets");
                continue;
            }
            else
            {
                OpenTable(name, at);
            }
            if (Known(path[0], at))
            {
                foreach (KeyValueSyntax pair in table.Items) Visit(path, pair);
            }
        }
    }

    private void Visit(string[] prefix, KeyValueSyntax pair)
    {
        string[] path = [.. prefix, .. Names(pair.Key!)];
        Place at = PlaceOf(pair);
        string key = string.Join('.', path);
        KeySpec? spec = BuildFormat.Find(key);
        if (spec is not null)
        {
            _sheet.Set(key, spec, pair.Value!, at);
            return;
        }
        if (path.Length == 1 && BuildFormat.Tables.Contains(path[0]))
        {
            if (pair.Value is InlineTableSyntax table && path[0] != "extra")
            {
                OpenTable(path[0], at);
                foreach (InlineTableItemSyntax item in table.Items) Visit(path, item.KeyValue!);
            }
            else
            {
                string form = path[0] == "extra" ? "[[extra]]" : $"[{path[0]}]";
                _bag.Error(at, key, pair.Value!.ToString(), $"\"{path[0]}\" is a table.", $"write {form} on a line of its own and its keys below");
            }
            return;
        }
        if (path.Length > 1 && prefix.Length == 0 && !Known(path[0], at)) return;
        Unknown(path, at, pair.Value!.ToString());
    }

    private void OpenTable(string name, Place at)
    {
        if (_tablesSeen.Add(name)) _sheet.Table(name, at);
    }

    /// <summary>False, with one warning per table, where the format has no such table.</summary>
    private bool Known(string table, Place at)
    {
        if (BuildFormat.Find(table + ".x") is not null || BuildFormat.Tables.Contains(table) || table.StartsWith("extra[", StringComparison.Ordinal)) return true;
        if (_tablesSeen.Add("?" + table) && ++_unknown <= MaxUnknown)
        {
            string? near = NearestName.Of(table, BuildFormat.Tables);
            _bag.Warning(at, table, "", "There is no such table; it is ignored.", near is null ? "tables are " + string.Join(", ", BuildFormat.Tables) : $"did you mean [{near}]?");
        }
        return false;
    }

    private void Unknown(string[] path, Place at, string value)
    {
        if (++_unknown > MaxUnknown) return;
        string table = path.Length > 1 ? path[0] : "";
        string plainTable = table.StartsWith("extra[", StringComparison.Ordinal) ? "extra" : table;
        string name = string.Join('.', path.Skip(table.Length > 0 ? 1 : 0));
        string? near = NearestName.Of(name, BuildFormat.Keys.Where(k => k.Table == plainTable).Select(k => k.Key));
        KeySpec? elsewhere = near is null ? BuildFormat.Keys.FirstOrDefault(k => k.Key == name) : null;
        string hint = near is not null ? $"did you mean {near}?"
            : elsewhere is not null ? $"it belongs to {(elsewhere.Table.Length > 0 ? $"[{elsewhere.Table}]" : "the top of the file")}"
            : "";
        _bag.Warning(at, string.Join('.', path), value, "There is no such key; it is ignored.", hint);
    }

    /// <summary>
    /// The parts of a dotted key. A part in quotes stays in them where it could not be written without: <c>"motor.mass_g"</c> is another
    /// key than <c>motor.mass_g</c>, and none that a format knows.
    /// </summary>
    internal static IEnumerable<string> Names(KeySyntax? key)
    {
        if (key?.Key is null) yield break;
        yield return Name(key.Key);
        foreach (DottedKeyItemSyntax item in key.DotKeys) yield return Name(item.Key!);

        static string Name(BareKeyOrStringValueSyntax part) => part switch
        {
            BareKeySyntax bare => bare.Key?.Text ?? "",
            StringValueSyntax { Value: string text } => IsBare(text) ? text : $"\"{text}\"",
            _ => part.ToString().Trim(),
        };
    }

    private static bool IsBare(string part) => part.Length > 0 && part.All(c => char.IsAsciiLetterOrDigit(c) || c is '_' or '-');

    internal static Place PlaceOf(SyntaxNodeBase node) => new(node.Span.Start.Line + 1, node.Span.Start.Column + 1);
}
