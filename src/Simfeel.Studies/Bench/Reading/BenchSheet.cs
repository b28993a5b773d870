using Simfeel.Builds;
using Simfeel.Builds.Format;
using Simfeel.Builds.Reading;
using Tomlyn.Syntax;

namespace Simfeel.Studies.Bench.Reading;

/// <summary>Turns the text of a readings file into tables of checked values.</summary>
internal sealed class BenchSheet(DiagnosticBag bag)
{
    private const int MaxUnknown = 20, MaxText = 2000;
    private const string Kind = "readings file";

    private readonly Dictionary<string, BenchTable> _tables = new(StringComparer.Ordinal);
    private int _unknown;

    /// <summary>The tables by name, or null where it is no TOML; all findings are in <paramref name="bag"/>.</summary>
    public static IReadOnlyDictionary<string, BenchTable>? Read(string text, DiagnosticBag bag)
    {
        if (TomlText.Read(text, bag, Kind, "start from the one that bench --template writes") is not DocumentSyntax document) return null;
        BenchSheet sheet = new(bag);
        sheet.Walk(document);
        return sheet._tables;
    }

    private void Walk(DocumentSyntax document)
    {
        BenchTable top = new("", new(1, 1));
        _tables[""] = top;
        foreach (KeyValueSyntax pair in document.KeyValues) Visit(top, pair);
        foreach (TableSyntaxBase syntax in document.Tables)
        {
            string name = string.Join('.', SheetReader.Names(syntax.Name));
            Place at = SheetReader.PlaceOf(syntax);
            if (!BenchFormat.Tables.Contains(name))
            {
                if (++_unknown > MaxUnknown) continue;
                string? near = NearestName.Of(name, BenchFormat.Tables);
                bag.Warning(at, name, "", "There is no such table; it is ignored.", near is null ? "tables are " + string.Join(", ", BenchFormat.Tables) : $"did you mean [{near}]?");
                continue;
            }
            if (syntax is TableArraySyntax)
            {
                bag.Error(at, name, "", $"There is one {name} table only.", $"write [{name}] with single brackets");
                continue;
            }
            BenchTable table = Table(name, at);
            foreach (KeyValueSyntax pair in syntax.Items) Visit(table, pair);
        }
        if (!top.Gave("format"))
            bag.Warning(new(1, 1), "format", "", $"The file does not say its format; it is read as format {BenchFormat.Version}.", $"put format = {BenchFormat.Version} in the first line");
    }

    private BenchTable Table(string name, Place at)
    {
        if (!_tables.TryGetValue(name, out BenchTable? table)) _tables[name] = table = new(name, at);
        return table;
    }

    private void Visit(BenchTable table, KeyValueSyntax pair)
    {
        string name = string.Join('.', SheetReader.Names(pair.Key));
        string path = table.Name.Length > 0 ? $"{table.Name}.{name}" : name;
        Place at = SheetReader.PlaceOf(pair);
        ValueSyntax value = pair.Value!;
        int dot = name.IndexOf('.');
        if (table.Name.Length == 0 && dot > 0 && BenchFormat.Tables.Contains(name[..dot]))
        {
            // roll.spacing_mm at the top is spacing_mm of [roll]
            table = Table(name[..dot], at);
            name = name[(dot + 1)..];
        }
        if (BenchFormat.Find(table.Name, name) is not KeySpec key)
        {
            Unknown(table, name, path, value, at);
            return;
        }
        table.Note(key, at);
        if (key.Kind == KeyKind.Text) ReadText(table, key, path, value, at);
        else ReadNumbers(table, key, path, value, at);
    }

    private void Unknown(BenchTable table, string name, string path, ValueSyntax value, Place at)
    {
        if (table.Name.Length == 0 && BenchFormat.Tables.Contains(name))
        {
            bag.Error(at, path, value.ToString(), $"\"{name}\" is a table.", $"write [{name}] on a line of its own and its keys below");
            return;
        }
        if (++_unknown > MaxUnknown) return;
        string? near = NearestName.Of(name, BenchFormat.Keys.Where(key => key.Table == table.Name).Select(key => key.Key));
        KeySpec? elsewhere = near is null ? BenchFormat.Keys.FirstOrDefault(key => key.Key == name) : null;
        string hint = near is not null ? $"did you mean {near}?" : elsewhere is not null ? $"it belongs to [{elsewhere.Table}]" : "";
        bag.Warning(at, path, value.ToString(), "There is no such key; it is ignored.", hint);
    }

    private void ReadText(BenchTable table, KeySpec key, string path, ValueSyntax value, Place at)
    {
        if (value is StringValueSyntax { Value: string { Length: <= MaxText } text } && !OneLine.HasControls(text)) table.BuildName = text;
        else bag.Error(at, path, value.ToString(), $"Allowed is {key.Range}.", "put text in double quotes");
    }

    private void ReadNumbers(BenchTable table, KeySpec key, string path, ValueSyntax value, Place at)
    {
        ValueSyntax[] items = [value];
        if (value is ArraySyntax list)
        {
            if (!BenchFormat.MayRepeat(key))
            {
                bag.Error(at, path, value.ToString(), $"This key holds one number, not a list; allowed is {key.Range}.");
                return;
            }
            items = [.. list.Items.Select(item => item.Value!)];
            if (items.Length is 0 or > BenchFormat.MostReadings)
            {
                bag.Error(at, path, value.ToString(), $"There are {items.Length} readings; allowed are {BenchFormat.Range(key)}.", items.Length == 0 ? "leave the key out where nothing was read" : "leave some out");
                return;
            }
        }
        foreach (ValueSyntax item in items)
        {
            if (item is not (IntegerValueSyntax or FloatValueSyntax))
                bag.Error(at, path, item.ToString(), $"This is no number; allowed is {BenchFormat.Range(key)}.", item is StringValueSyntax ? "write the number without quotes and without its unit" : "");
            else if (NumberReader.RangeFault(key, NumberReader.Plain(item)) is string fault)
                bag.Error(at, path, item.ToString(), fault, path == "mass.mass_g" ? "in grams" : "");
            else
                continue;
            return;
        }
        if (key.Path == "format" && NumberReader.Plain(value) > BenchFormat.Version)
            bag.Warning(at, path, value.ToString(), $"This program knows version {BenchFormat.Version}; what it does not know is ignored.");
        table.Set(key, items.Select(NumberReader.Plain), at);
    }
}
