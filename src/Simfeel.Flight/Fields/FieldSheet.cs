using Simfeel.Builds;
using Simfeel.Builds.Format;
using Simfeel.Builds.Reading;
using Tomlyn.Syntax;

namespace Simfeel.Flight.Fields;

/// <summary>Turns the text of a field file into tables of checked values.</summary>
internal sealed class FieldSheet(DiagnosticBag bag)
{
    private const int MaxUnknown = 20;
    private const int MaxText = 2000;

    private readonly List<FieldTable> _tables = [];
    private int _unknown;

    /// <summary>The tables in the order of the file, or null where it is no TOML; all findings are in <paramref name="bag"/>.</summary>
    public static IReadOnlyList<FieldTable>? Read(string text, DiagnosticBag bag)
    {
        if (TomlText.Read(text, bag, "field file", "start from the field that comes with the program") is not DocumentSyntax document) return null;
        FieldSheet sheet = new(bag);
        sheet.Walk(document);
        return sheet._tables;
    }

    private void Walk(DocumentSyntax document)
    {
        FieldTable top = new("", new(1, 1));
        foreach (KeyValueSyntax pair in document.KeyValues) Visit(top, pair);
        _tables.Add(top);
        bool misshaped = false;
        foreach (TableSyntaxBase syntax in document.Tables)
        {
            string name = string.Join('.', SheetReader.Names(syntax.Name));
            Place at = SheetReader.PlaceOf(syntax);
            if (!FieldFormat.Tables.Contains(name))
            {
                if (++_unknown > MaxUnknown) continue;
                string? near = NearestName.Of(name, FieldFormat.Tables);
                bag.Warning(at, name, "", "There is no such table; it is ignored.", near is null ? "tables are " + string.Join(", ", FieldFormat.Tables) : $"did you mean {Form(near)}?");
                continue;
            }
            bool many = name != "field";
            if (many != syntax is TableArraySyntax)
            {
                misshaped |= !many;
                bag.Error(at, name, "", many ? $"Every {name} is a table of its own." : "There is one field table only.", many ? $"write [[{name}]] with double brackets" : "write [field] with single brackets");
                continue;
            }
            FieldTable table = new(name, at);
            foreach (KeyValueSyntax pair in syntax.Items) Visit(table, pair);
            Missing(table);
            _tables.Add(table);
        }
        foreach (IGrouping<string, FieldTable> kind in _tables.GroupBy(table => table.Kind))
        {
            if (kind.Count() > FieldFormat.MostOfAKind)
                bag.Error(kind.ElementAt(FieldFormat.MostOfAKind).At, kind.Key, "", $"There are {kind.Count()} tables [[{kind.Key}]]; allowed are 0 to {FieldFormat.MostOfAKind}.", "leave some out");
        }
        if (!top.Gave("format"))
            bag.Warning(new(1, 1), "format", "", $"The file does not say its format; it is read as format {FieldFormat.Version}.", $"put format = {FieldFormat.Version} in the first line");
        if (!misshaped && !_tables.Any(table => table.Kind == "field"))
            bag.Error(new(1, 1), "field", "", "The table [field] is missing; it holds name, sea_depth_m, pilot_north_m and pilot_east_m.", "write [field] on a line of its own and its keys below");
    }

    private void Visit(FieldTable table, KeyValueSyntax pair)
    {
        string name = string.Join('.', SheetReader.Names(pair.Key));
        string path = table.Kind.Length > 0 ? $"{table.Kind}.{name}" : name;
        Place at = SheetReader.PlaceOf(pair);
        ValueSyntax value = pair.Value!;
        KeySpec? key = FieldFormat.Find(table.Kind, name);
        if (key is null)
        {
            if (table.Kind.Length == 0 && FieldFormat.Tables.Contains(name.Split('.')[0]))
            {
                string form = Form(name.Split('.')[0]);
                bag.Error(at, path, value.ToString(), $"{form} is a table.", $"write {form} on a line of its own and its keys below");
                return;
            }
            if (++_unknown > MaxUnknown) return;
            string? near = NearestName.Of(name, FieldFormat.Keys.Where(k => k.Table == table.Kind).Select(k => k.Key));
            bag.Warning(at, path, value.ToString(), "There is no such key; it is ignored.", near is null ? "" : $"did you mean {near}?");
            return;
        }
        table.Refuse(key, at);
        if (key.Kind == KeyKind.Text) ReadText(table, key, path, value, at);
        else ReadNumber(table, key, path, value, at);
    }

    private void ReadText(FieldTable table, KeySpec key, string path, ValueSyntax value, Place at)
    {
        if (value is not StringValueSyntax { Value: string text })
            bag.Error(at, path, value.ToString(), $"Allowed is {key.Range}.", "put text in double quotes");
        else if (string.IsNullOrWhiteSpace(text) || text.Length > MaxText)
            bag.Error(at, path, $"\"{text}\"", $"The text has {text.Trim().Length} characters; allowed is {key.Range}, not empty.");
        else if (OneLine.HasControls(text))
            bag.Error(at, path, $"\"{text}\"", $"The text has control characters; allowed is {key.Range}.", "write it without them");
        else
            table.Set(key, text, at);
    }

    private void ReadNumber(FieldTable table, KeySpec key, string path, ValueSyntax value, Place at)
    {
        double number = NumberReader.Plain(value);
        if (value is not (IntegerValueSyntax or FloatValueSyntax))
            bag.Error(at, path, value.ToString(), $"This is no number; allowed is {key.Range}.", value is StringValueSyntax ? "write the number without quotes and without its unit" : "");
        else if (NumberReader.RangeFault(key, number) is string fault)
            bag.Error(at, path, value.ToString(), fault);
        else if (key.Path == "format" && number > FieldFormat.Version)
            bag.Warning(at, path, value.ToString(), $"This program knows version {FieldFormat.Version}; what it does not know is ignored.");
        else
            table.Set(key, number, at);
    }

    private static string Form(string table) => table == "field" ? "[field]" : $"[[{table}]]";

    private void Missing(FieldTable table)
    {
        foreach (KeySpec key in FieldFormat.Keys.Where(key => key.Table == table.Kind && key.Required && !table.Gave(key.Key)))
            bag.Error(table.At, key.Path, "", $"The key is missing: {key.Meaning}. Allowed is {key.Range}.", $"add {key.Key} = ...");
    }
}
