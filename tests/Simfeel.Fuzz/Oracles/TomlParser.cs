using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Simfeel.Fuzz.Oracles;

/// <summary>
/// A strict reader of TOML 1.0 (toml.io/en/v1.0.0), written for these checks and apart from the library that the program uses.
/// Of TOML 1.1 it takes what that library takes: line ends and a last comma in braces, \e and \x in texts, times without seconds.
/// </summary>
internal sealed partial class TomlParser
{
    private readonly string _text;
    private readonly TomlTree _tree = new();
    private int _at;

    private TomlParser(string text) => _text = text;

    /// <summary>Reads a text.</summary>
    /// <exception cref="NoTomlException">It is no TOML, or gives a key twice.</exception>
    public static TomlReading Read(string text)
    {
        TomlParser parser = new(text);
        parser.Document();
        return parser._tree.Reading();
    }

    private char Here => _at < _text.Length ? _text[_at] : '\0';

    private bool AtEnd => _at >= _text.Length;

    private NoTomlException Wrong(string why) => new(_at, why);

    private void Document()
    {
        while (!AtEnd)
        {
            Blanks();
            if (Here == '[') Heading();
            else if (Here is not ('\n' or '\r' or '#') && !AtEnd)
            {
                List<string> key = Key();
                Need('=');
                Blanks();
                if (!_tree.Set(key, Value())) throw Wrong($"{TomlTree.Joined(key)} is given twice");
            }
            Blanks();
            Comment();
            if (!AtEnd && !LineEnd()) throw Wrong("something stands behind the value");
        }
    }

    private void Heading()
    {
        _at++;
        bool list = Here == '[';
        if (list) _at++;
        Blanks();
        List<string> key = Key();
        Need(']');
        if (list && Here != ']') throw Wrong("a second bracket is missing");
        if (list) _at++;
        if (!_tree.Open(key, list)) throw Wrong($"the table {TomlTree.Joined(key)} is given twice");
    }

    private List<string> Key()
    {
        List<string> parts = [];
        do
        {
            if (parts.Count > 0) _at++;
            Blanks();
            if (Here == '"') parts.Add(Basic());
            else if (Here == '\'') parts.Add(Literal());
            else
            {
                int from = _at;
                while (char.IsAsciiLetterOrDigit(Here) || Here is '_' or '-') _at++;
                if (_at == from) throw Wrong("a key is missing");
                parts.Add(_text[from.._at]);
            }
            Blanks();
        }
        while (Here == '.');
        return parts;
    }

    private object Value()
    {
        if (_text.AsSpan(_at).StartsWith("\"\"\"")) return Long('"');
        if (_text.AsSpan(_at).StartsWith("'''")) return Long('\'');
        switch (Here)
        {
            case '"': return Basic();
            case '\'': return Literal();
            case '[': return List();
            case '{': return Braces();
        }
        int from = _at;
        while (!AtEnd && Here is not (',' or ']' or '}' or '#' or '\n' or '\r' or '\t'))
        {
            // a blank may stand between date and time
            if (Here == ' ' && !(_at - from == 10 && Day().IsMatch(_text.AsSpan(from, 10)) && _at + 1 < _text.Length && char.IsAsciiDigit(_text[_at + 1]))) break;
            _at++;
        }
        return Scalar(_text[from.._at]);
    }

    private object Scalar(string word)
    {
        if (word is "true" or "false") return word == "true";
        if (Special().IsMatch(word)) return word.EndsWith("nan", StringComparison.Ordinal) ? double.NaN : word[0] == '-' ? double.NegativeInfinity : double.PositiveInfinity;
        string plain = word.Replace("_", "", StringComparison.Ordinal);
        if (Whole().IsMatch(word))
            return long.TryParse(plain, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long whole) ? whole : throw Wrong("a whole number has too many digits");
        if (Radix().IsMatch(word))
        {
            int radix = word[1] switch { 'x' => 16, 'o' => 8, _ => 2 };
            try
            {
                long value = Convert.ToInt64(plain[2..], radix);
                // one too large is no number, whatever the library makes of it; where no key wants it, it does no harm
                return value >= 0 ? value : double.NaN;
            }
            catch (OverflowException)
            {
                return double.NaN;
            }
        }
        if (Real().IsMatch(word)) return double.Parse(plain, NumberStyles.Float, CultureInfo.InvariantCulture);
        if (Date().IsMatch(word)) return new TomlDate(word);
        throw Wrong($"'{(word.Length > 40 ? word[..40] : word)}' is no value");
    }

    private List<object> List()
    {
        _at++;
        List<object> items = [];
        while (true)
        {
            Gap();
            if (Here == ']') break;
            items.Add(Value());
            Gap();
            if (Here == ',') _at++;
            else if (Here != ']') throw Wrong("a list does not end");
        }
        _at++;
        return items;
    }

    private Dictionary<string, object> Braces()
    {
        _at++;
        TomlTree tree = new();
        while (true)
        {
            Gap();
            if (Here == '}') break;
            List<string> key = Key();
            Need('=');
            Blanks();
            if (!tree.Set(key, Value())) throw Wrong($"{TomlTree.Joined(key)} is given twice");
            Gap();
            if (Here == ',') _at++;
            else if (Here != '}') throw Wrong("a table in braces does not end");
        }
        _at++;
        return tree.Reading().Values.ToDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal);
    }

    private string Literal()
    {
        int end = _text.IndexOf('\'', _at + 1);
        string text = end < 0 ? throw Wrong("a text does not end") : _text[(_at + 1)..end];
        if (text.Any(IsControl)) throw Wrong("a text holds a control character");
        _at = end + 1;
        return text;
    }

    private string Basic()
    {
        StringBuilder text = new();
        for (_at++; Here != '"'; _at++)
        {
            if (AtEnd || IsControl(Here)) throw Wrong("a text does not end or holds a control character");
            if (Here == '\\') Escape(text);
            else text.Append(Here);
        }
        _at++;
        return text.ToString();
    }

    private string Long(char quote)
    {
        string three = new(quote, 3);
        _at += 3;
        if (Here == '\r' && _at + 1 < _text.Length && _text[_at + 1] == '\n') _at++;
        if (Here == '\n') _at++;
        StringBuilder text = new();
        while (!_text.AsSpan(_at).StartsWith(three))
        {
            if (AtEnd) throw Wrong("a text does not end");
            if (Here is '\n' || (Here == '\r' && _at + 1 < _text.Length && _text[_at + 1] == '\n')) text.Append(Here);
            else if (IsControl(Here)) throw Wrong("a text holds a control character");
            else if (Here == '\\' && quote == '"' && !Joined()) Escape(text);
            else if (Here != '\\' || quote == '\'') text.Append(Here);
            _at++;
        }
        _at += 3;
        // up to two quotes may stand before the three
        for (int more = 0; more < 2 && Here == quote; more++, _at++) text.Append(quote);
        return text.ToString();
    }

    /// <summary>Whether a backslash at the end of a line joins it with the next; leaves the place on its last blank.</summary>
    private bool Joined()
    {
        int at = _at + 1;
        while (at < _text.Length && _text[at] is ' ' or '\t') at++;
        if (at >= _text.Length || _text[at] is not ('\n' or '\r')) return false;
        while (at < _text.Length && _text[at] is ' ' or '\t' or '\n' or '\r') at++;
        _at = at - 1;
        return true;
    }

    private void Escape(StringBuilder text)
    {
        _at++;
        int digits = Here switch { 'u' => 4, 'U' => 8, 'x' => 2, _ => 0 };
        if (digits == 0)
        {
            int known = "btnfr\"\\e".IndexOf(Here, StringComparison.Ordinal);
            if (known < 0 || AtEnd) throw Wrong("an escape is unknown");
            text.Append("\b\t\n\f\r\"\\\u001b"[known]);
            return;
        }
        string hex = _at + digits < _text.Length ? _text.Substring(_at + 1, digits) : "";
        if (!hex.All(char.IsAsciiHexDigit) || hex.Length == 0 || !Rune.TryCreate(uint.Parse(hex, NumberStyles.HexNumber, CultureInfo.InvariantCulture), out Rune rune)) throw Wrong("an escape is no character");
        text.Append(rune.ToString());
        _at += digits;
    }

    private void Need(char sign)
    {
        if (Here != sign) throw Wrong($"'{sign}' is missing");
        _at++;
    }

    private void Blanks()
    {
        while (Here is ' ' or '\t') _at++;
    }

    /// <summary>Blanks, line ends and comments.</summary>
    private void Gap()
    {
        do
        {
            Blanks();
            Comment();
        }
        while (LineEnd());
    }

    private void Comment()
    {
        if (Here != '#' || AtEnd) return;
        while (!AtEnd && Here != '\n')
        {
            if (Here == '\r' && _at + 1 < _text.Length && _text[_at + 1] == '\n') return;
            if (IsControl(Here)) throw Wrong("a comment holds a control character");
            _at++;
        }
    }

    private bool LineEnd()
    {
        if (Here == '\r' && _at + 1 < _text.Length && _text[_at + 1] == '\n') _at++;
        if (Here != '\n') return false;
        _at++;
        return true;
    }

    private static bool IsControl(char c) => c is (< ' ' and not '\t') or '\u007f';

    [GeneratedRegex(@"\A[+-]?(inf|nan)\z")]
    private static partial Regex Special();

    [GeneratedRegex(@"\A[+-]?(0|[1-9](_?[0-9])*)\z")]
    private static partial Regex Whole();

    [GeneratedRegex(@"\A0(x[0-9A-Fa-f](_?[0-9A-Fa-f])*|o[0-7](_?[0-7])*|b[01](_?[01])*)\z")]
    private static partial Regex Radix();

    [GeneratedRegex(@"\A[+-]?(0|[1-9](_?[0-9])*)(\.[0-9](_?[0-9])*)?([eE][+-]?[0-9](_?[0-9])*)?\z")]
    private static partial Regex Real();

    [GeneratedRegex(@"\A[0-9]{4}-[0-9]{2}-[0-9]{2}\z")]
    private static partial Regex Day();

    [GeneratedRegex(@"\A([0-9]{4}-[0-9]{2}-[0-9]{2}([Tt ][0-9]{2}:[0-9]{2}(:[0-9]{2}(\.[0-9]+)?)?([Zz]|[+-][0-9]{2}:[0-9]{2})?)?|[0-9]{2}:[0-9]{2}(:[0-9]{2}(\.[0-9]+)?)?)\z")]
    private static partial Regex Date();
}
