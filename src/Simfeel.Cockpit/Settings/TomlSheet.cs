using System.Globalization;
using Simfeel.Builds;
using Simfeel.Builds.Reading;
using Tomlyn.Syntax;

namespace Simfeel.Cockpit.Settings;

/// <summary>
/// The values of a TOML text by their full keys, such as <c>roll.axis</c>. Reading never fails: each mistake is said in
/// one sentence with its line, and the value that was there before is used.
/// </summary>
internal sealed class TomlSheet
{
    /// <summary>Deepest nesting of brackets in the files of a user's folder, whose values are numbers and words; a deeper one is no file of ours.</summary>
    public const int DeepestNesting = 8;

    private readonly Dictionary<string, (object Value, int Line)> _values = new(StringComparer.Ordinal);
    private readonly HashSet<string> _asked = new(StringComparer.Ordinal);
    private readonly string _file;
    private readonly ICollection<string> _wrong;

    /// <summary>Takes a text apart.</summary>
    /// <param name="text">The text.</param>
    /// <param name="file">Name for the messages.</param>
    /// <param name="wrong">Receives one sentence for each mistake.</param>
    public TomlSheet(string text, string file, ICollection<string> wrong)
    {
        _file = file;
        _wrong = wrong;
        if (TomlText.Clean(text, DeepestNesting, out TomlFault fault) is not DocumentSyntax document)
        {
            Tell(fault.Line, $"{fault.Reason}. Defaults are used.");
            return;
        }
        IsReadable = true;
        foreach (KeyValueSyntax pair in document.KeyValues) Add("", pair);
        foreach (TableSyntaxBase table in document.Tables)
        {
            if (table is TableArraySyntax)
            {
                Tell(table.Span.Start.Line + 1, $"there is no list of tables [[{NameOf(table.Name)}]]; it is left out.");
                continue;
            }
            foreach (KeyValueSyntax pair in table.Items) Add(NameOf(table.Name) + ".", pair);
        }
    }

    /// <summary>False where the text is no TOML at all, which is said.</summary>
    public bool IsReadable { get; }

    /// <summary>Line of a key; 1 where the text has no such key.</summary>
    public int LineOf(string key) => _values.TryGetValue(key, out (object Value, int Line) found) ? found.Line : 1;

    /// <summary>A whole number in a range.</summary>
    public int Whole(string key, int low, int high, int otherwise)
    {
        if (!TryTake(key, out object value)) return otherwise;
        if (value is long whole && whole >= low && whole <= high) return (int)whole;
        return Refuse(key, $"a whole number from {low} to {high}", otherwise);
    }

    /// <summary>True or false.</summary>
    public bool Flag(string key, bool otherwise)
    {
        if (!TryTake(key, out object value)) return otherwise;
        return value is bool flag ? flag : Refuse(key, "true or false", otherwise);
    }

    /// <summary>A text.</summary>
    public string Text(string key, string otherwise)
    {
        if (!TryTake(key, out object value)) return otherwise;
        return value is string text ? text : Refuse(key, "a text in double quotes", otherwise);
    }

    /// <summary>One of the words of an enumeration, written in small letters with underscores.</summary>
    public T Choice<T>(string key, T otherwise)
        where T : struct, Enum
    {
        if (!TryTake(key, out object value)) return otherwise;
        foreach (T one in Enum.GetValues<T>())
        {
            if (value is string word && word == WordOf(one.ToString())) return one;
        }
        return Refuse(key, "one of " + string.Join(", ", Enum.GetNames<T>().Select(WordOf)), otherwise);
    }

    /// <summary>Checks the format number.</summary>
    public void CheckFormat(int format)
    {
        if (TryTake("format", out object value) && value is not long known)
            Say("format", $"format is {Show(value)}; it must be {format}. The file is read as format {format}.");
        else if (value is long other && other != format)
            Say("format", $"format is {other}; this version writes {format} and reads what it knows.");
    }

    /// <summary>Says which keys nobody asked for.</summary>
    public void ReportUnknown()
    {
        foreach (string key in _values.Keys)
        {
            if (!_asked.Contains(key)) Say(key, $"there is no key {key}; it is left out.");
        }
    }

    /// <summary>Adds a sentence about a key.</summary>
    public void Say(string key, string sentence) => Tell(LineOf(key), sentence);

    /// <summary>The word of a name in files: SwapInPlace is <c>swap_in_place</c>.</summary>
    public static string WordOf(string name) =>
        string.Concat(name.Select((c, n) => char.IsUpper(c) && n > 0 ? "_" + char.ToLowerInvariant(c) : char.ToLowerInvariant(c).ToString()));

    /// <summary>A text of one line as a TOML value. Control characters, which names of devices may hold, are left out.</summary>
    public static string Quoted(string text) =>
        "\"" + Plain(text).Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal) + "\"";

    /// <summary>A text without its control characters.</summary>
    public static string Plain(string text) => string.Concat(text.Where(c => !char.IsControl(c)));

    private void Tell(int line, string sentence) => _wrong.Add(OneLine.Of(string.Create(CultureInfo.InvariantCulture, $"{_file}:{line}: {sentence}")));

    private T Refuse<T>(string key, string allowed, T otherwise)
    {
        string instead = otherwise switch
        {
            Enum word => WordOf(word.ToString()),
            bool flag => flag ? "true" : "false",
            "" => "nothing",
            _ => Convert.ToString(otherwise, CultureInfo.InvariantCulture) ?? "",
        };
        Say(key, $"{key} is {Show(_values[key].Value)}; it must be {allowed}. The default, {instead}, is used.");
        return otherwise;
    }

    private bool TryTake(string key, out object value)
    {
        _asked.Add(key);
        bool there = _values.TryGetValue(key, out (object Value, int Line) found);
        value = found.Value;
        return there;
    }

    private void Add(string table, KeyValueSyntax pair)
    {
        object value = pair.Value switch
        {
            IntegerValueSyntax whole => whole.Value,
            FloatValueSyntax real => real.Value,
            BooleanValueSyntax flag => flag.Value,
            StringValueSyntax text => text.Value ?? "",
            _ => pair.Value!,
        };
        _values[table + NameOf(pair.Key)] = (value, pair.Span.Start.Line + 1);
    }

    private static string Show(object value) => value switch
    {
        string text => $"\"{text}\"",
        bool flag => flag ? "true" : "false",
        SyntaxNode => "a table or list",
        _ => Convert.ToString(value, CultureInfo.InvariantCulture) ?? "",
    };

    private static string NameOf(KeySyntax? key) => key is null
        ? ""
        : string.Join('.', key.DotKeys.Select(dot => Part(dot.Key)).Prepend(Part(key.Key)));

    private static string Part(BareKeyOrStringValueSyntax? part) => part switch
    {
        BareKeySyntax bare => bare.Key?.Text ?? "",
        // quoted, a key with a dot in it is another key than the dotted one
        StringValueSyntax { Value: string text } => text.Length > 0 && text.All(c => char.IsAsciiLetterOrDigit(c) || c is '_' or '-') ? text : $"\"{text}\"",
        _ => "",
    };
}
