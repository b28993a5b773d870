using System.Globalization;
using Simfeel.Builds.Reading;
using Simfeel.Studies.Metrics;
using Tomlyn.Syntax;

namespace Simfeel.Studies.Lessons;

/// <summary>Reads lesson files. Nothing a user can write makes it throw; whatever is wrong is in the diagnostics, with line and allowed range.</summary>
public static class LessonReader
{
    private const string Kind = "lesson file";

    /// <summary>Reads a lesson file.</summary>
    /// <param name="path">The file; at most 1 MiB of UTF-8 text in TOML.</param>
    public static LessonReading Read(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        DiagnosticBag bag = new(path);
        string? text = SourceText.ReadFile(path, bag, Kind);
        return text is null ? new(null, bag.InOrder()) : Make(text, Path.GetFileNameWithoutExtension(path), bag);
    }

    /// <summary>Reads a lesson from text.</summary>
    /// <param name="text">The text of a lesson file.</param>
    /// <param name="sourceName">Name that diagnostics give as the file.</param>
    public static LessonReading Parse(string text, string sourceName)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(sourceName);
        return Make(text, Path.GetFileNameWithoutExtension(sourceName), new(sourceName));
    }

    private static LessonReading Make(string text, string name, DiagnosticBag bag)
    {
        IReadOnlyList<LessonTable>? tables = Tables(text, bag);
        Lesson? lesson = tables is null || bag.HasErrors ? null : LessonBuilder.Make(name, tables, bag);
        return new(bag.HasErrors ? null : lesson, bag.InOrder());
    }

    /// <summary>The tables in the order of the file, top included; null where it is no TOML.</summary>
    private static List<LessonTable>? Tables(string text, DiagnosticBag bag)
    {
        if (TomlText.Read(text, bag, Kind, "start from one of the lessons that come with the program") is not DocumentSyntax document) return null;
        List<LessonTable> tables = [new("", new(1, 1))];
        foreach (KeyValueSyntax pair in document.KeyValues) Take(tables[0], "", pair, bag);
        foreach (TableSyntaxBase syntax in document.Tables) Take(tables, syntax, bag);
        foreach (string needed in LessonFormat.Needed.Where(needed => !tables.Any(table => table.Kind == needed) && !bag.Concerns(needed)))
            bag.Error(new(1, 1), needed, "", $"The table {Form(needed)} is missing.", $"write {Form(needed)} on a line of its own and its keys below");
        return tables;
    }

    private static void Take(List<LessonTable> tables, TableSyntaxBase syntax, DiagnosticBag bag)
    {
        string[] names = [.. SheetReader.Names(syntax.Name)];
        Place at = SheetReader.PlaceOf(syntax);
        string written = string.Join('.', names);
        if (!LessonFormat.Tables.Contains(names[0]) || (names.Length > 1 && names[0] is not ("same" or "change")))
        {
            string? near = NearestName.Of(written, LessonFormat.Tables);
            // what was meant is not missing as well
            if (near is not null && !tables.Exists(table => table.Kind == near)) tables.Add(new(near, at));
            bag.Error(at, written, "", "There is no such table.", near is null ? "tables are " + string.Join(", ", LessonFormat.Tables.Select(Form)) : $"did you mean {Form(near)}?");
            return;
        }
        bool many = names[0] == "choice";
        if (many != syntax is TableArraySyntax)
        {
            bag.Error(at, names[0], "", many ? "Every answer is a table of its own." : $"There is one table {Form(names[0])} only.", $"write {Form(names[0])}");
            return;
        }
        // [same.drill] continues [same]
        LessonTable? known = many ? null : tables.Find(table => table.Kind == names[0]);
        LessonTable target = known ?? new(names[0], at);
        if (known is null) tables.Add(target);
        foreach (KeyValueSyntax pair in syntax.Items) Take(target, string.Concat(names.Skip(1).Select(part => part + ".")), pair, bag);
    }

    private static void Take(LessonTable table, string before, KeyValueSyntax pair, DiagnosticBag bag)
    {
        string name = before + string.Join('.', SheetReader.Names(pair.Key));
        Place at = SheetReader.PlaceOf(pair);
        if (table.Kind is not ("same" or "change") && LessonFormat.Find(table.Kind, name) is null)
        {
            string? near = NearestName.Of(name, LessonFormat.Keys.Where(key => key.Table == table.Kind).Select(key => key.Key));
            bag.Error(at, table.Kind.Length > 0 ? $"{table.Kind}.{name}" : name, pair.Value!.ToString(), "There is no such key.", near is null ? "" : $"did you mean {near}?");
            return;
        }
        table.Items.Add((name, pair.Value!, at));
    }

    private static string Form(string table) => table == "choice" ? "[[choice]]" : $"[{table}]";

    /// <summary>A value of [same] or [change]: a number, a word, or a factor written as "x 2".</summary>
    internal static LessonValue? Value(LessonKey key, ValueSyntax? syntax)
    {
        double number = NumberReader.Plain(syntax);
        if (!double.IsNaN(number)) return new(number, "", key.Kind == LessonKeyKind.Part);
        if (syntax is not StringValueSyntax { Value: string word }) return null;
        return TryFactor(word, out double factor) ? new(factor, "", true) : key.Words.Count > 0 || word.Length > 0 ? new(double.NaN, word.Trim()) : null;
    }

    /// <summary>A value as a user writes it on the command line: a number, a word, or a factor such as x2.</summary>
    /// <param name="key">Whose value it is.</param>
    /// <param name="text">What was written.</param>
    public static LessonValue ValueOf(LessonKey key, string text)
    {
        ArgumentNullException.ThrowIfNull(key);
        ArgumentNullException.ThrowIfNull(text);
        if (key.Words.Count == 0 && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number))
            return new(number, "", key.Kind == LessonKeyKind.Part);
        return TryFactor(text, out double factor) ? new(factor, "", true) : new(double.NaN, text.Trim());
    }

    private static bool TryFactor(string text, out double factor)
    {
        factor = 0;
        string trimmed = text.Trim();
        return trimmed.StartsWith('x') && double.TryParse(trimmed.AsSpan(1), NumberStyles.Float, CultureInfo.InvariantCulture, out factor);
    }

    /// <summary>The metric of a name.</summary>
    internal static Metric? MetricOf(string name) => MetricCatalogue.All.FirstOrDefault(metric => metric.Name == name);
}
