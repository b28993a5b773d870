using System.Globalization;
using System.Text;
using Simfeel.Builds.Format;
using Simfeel.Fuzz.Running;

namespace Simfeel.Fuzz.Mutation;

/// <summary>Damages a TOML file by its lines: keys, values, tables.</summary>
/// <param name="known">Keys of the format, which say what is just inside and just outside a range.</param>
internal sealed class TomlMutator(IReadOnlyList<KeySpec> known)
{
    /// <summary>One to five changes of the text.</summary>
    public byte[] Mutate(byte[] whole, Dice dice)
    {
        List<string> lines = [.. Encoding.UTF8.GetString(whole).Split('\n')];
        for (int changes = dice.From(1, 5); changes > 0; changes--) Change(lines, dice);
        return Encoding.UTF8.GetBytes(string.Join('\n', lines));
    }

    private void Change(List<string> lines, Dice dice)
    {
        int at = dice.Below(lines.Count);
        switch (dice.Below(16))
        {
            case 0: lines.RemoveAt(at); break;
            case 1: lines.Insert(dice.Below(lines.Count + 1), lines[at]); break;
            case 2: Rename(lines, dice); break;
            case 3 or 4 or 5: Set(lines, dice, Nasty(dice)); break;
            case 6 or 7 or 8: SetInRange(lines, dice); break;
            case 9: Heading(lines, dice); break;
            case 10: SwapSections(lines, dice); break;
            case 11: AddKey(lines, dice); break;
            case 12: ScaleNumber(lines, dice); break;
            case 13: SwapValues(lines, dice); break;
            case 14: Quote(lines, dice); break;
            default: lines.Insert(at, Nonsense(dice)); break;
        }
        if (lines.Count == 0) lines.Add("");
    }

    private static int Line(List<string> lines, Dice dice, Func<string, bool> wanted)
    {
        int from = dice.Below(lines.Count);
        for (int n = 0; n < lines.Count; n++)
        {
            if (wanted(lines[(from + n) % lines.Count])) return (from + n) % lines.Count;
        }
        return -1;
    }

    private static int Pair(List<string> lines, Dice dice) => Line(lines, dice, line => line.Contains('=', StringComparison.Ordinal) && !line.StartsWith('#'));

    private static void Rename(List<string> lines, Dice dice)
    {
        if (Pair(lines, dice) is not (int at and >= 0)) return;
        int letter = dice.Below(Math.Max(1, lines[at].IndexOf('=', StringComparison.Ordinal)));
        string put = dice.Of(["", "x", "_", " ", ".", "-", "e", "m"]);
        lines[at] = lines[at][..letter] + put + lines[at][Math.Min(lines[at].Length, letter + dice.Below(2))..];
    }

    private static void Set(List<string> lines, Dice dice, string value)
    {
        if (Pair(lines, dice) is not (int at and >= 0)) return;
        lines[at] = $"{lines[at][..lines[at].IndexOf('=', StringComparison.Ordinal)]}= {value}";
    }

    /// <summary>A value at, just inside or just outside the ends of the key's range, or a word that it may hold.</summary>
    private void SetInRange(List<string> lines, Dice dice)
    {
        if (Pair(lines, dice) is not (int at and >= 0)) return;
        string name = lines[at][..lines[at].IndexOf('=', StringComparison.Ordinal)].Trim();
        KeySpec? key = known.FirstOrDefault(key => key.Key == name || key.Path == name);
        if (key is not null) lines[at] = $"{name} = {Allowed(key, dice)}";
    }

    private static string Allowed(KeySpec key, Dice dice)
    {
        if (key.Choices.Count > 0) return $"\"{dice.Of(key.Choices)}\"";
        if (key.Kind == KeyKind.Flag) return dice.Of(["true", "false"]);
        if (key.Kind is not (KeyKind.Number or KeyKind.Count)) return $"\"{NastyWords.Word(dice)}\"";
        double between = key.Minimum + ((key.Maximum - key.Minimum) * Math.Pow(dice.Share(), 4));
        double value = dice.Below(8) switch { 0 => key.Minimum, 1 => key.Maximum, 2 => key.Minimum - 1e-9, 3 => key.Maximum * (1 + 1e-12), _ => between };
        if (key.Kind == KeyKind.Count) value = Math.Round(value);
        string text = value.ToString(key.Kind == KeyKind.Count ? "0" : "R", CultureInfo.InvariantCulture);
        if (key.Kind == KeyKind.Number && !text.Contains('.', StringComparison.Ordinal) && text.Contains('E', StringComparison.Ordinal)) text = text.Replace("E", ".0E", StringComparison.Ordinal);
        return dice.Below(8) switch
        {
            0 => $"{{ value = {text}, source = \"measured\" }}",
            1 => $"{{ low = {text}, typical = {text}, high = {text} }}",
            _ => text,
        };
    }

    private static string Nasty(Dice dice) => dice.Below(14) switch
    {
        0 or 1 or 2 or 3 or 4 => NastyWords.Number(dice),
        5 or 6 => $"\"{NastyWords.Word(dice)}\"",
        7 => $"'{NastyWords.Word(dice)}'",
        8 => dice.Of(["true", "false", "1979-05-27T07:32:00Z", "07:32:00", "1979-05-27", "\"\"\"a\nb\"\"\"", "'''a'''", "\"\\e\"", "\"\\x41\"", "\"a", "a", "", "\u201c5\u201d"]),
        9 => $"[{NastyWords.Number(dice)}, {NastyWords.Number(dice)}]",
        10 => $"{{ value = {NastyWords.Number(dice)} }}",
        11 => $"{{ low = {NastyWords.Number(dice)}, typical = {NastyWords.Number(dice)}, high = {NastyWords.Number(dice)}, source = \"{NastyWords.Word(dice)}\" }}",
        12 => Nested(dice),
        _ => dice.Of(["[]", "{}", "[[]]", "[[0, 0, 0], [1, 1, 1], [2, 2]]", "[[100,0,0,1],[-100,0,0,-1],[0,100,0,1],[0,-100,0,-1]]", "[\"a\", 1]", "[nan]", "{ a.b = 1 }", "{ value = 1, value = 2 }", "[1,]", "{a=1,}"]),
    };

    private static string Nested(Dice dice)
    {
        int depth = dice.Once(10) ? 20_000 : dice.From(2, 40);
        return dice.Once(2) ? new string('[', depth) + new string(']', dice.Once(3) ? 0 : depth) : string.Concat(Enumerable.Repeat("{a=", Math.Min(depth, 2000))) + "1" + new string('}', Math.Min(depth, 2000));
    }

    private static void Heading(List<string> lines, Dice dice)
    {
        int at = Line(lines, dice, line => line.StartsWith('['));
        if (at < 0) return;
        string name = lines[at].Trim('[', ']', ' ', '\r');
        lines[at] = dice.Below(10) switch
        {
            0 => $"[[{name}]]",
            1 => $"[{name}]",
            2 => $"[{name}.{name}]",
            3 => $"[\"{name}\"]",
            4 => $"[{name}x]",
            5 => $"[{name}[1]]",
            6 => $"[\"{name}[1]\"]",
            7 => $"{name} = {{ a = 1 }}",
            8 => "",
            _ => $"[{name}",
        };
    }

    private static void SwapSections(List<string> lines, Dice dice)
    {
        int[] starts = [.. Enumerable.Range(0, lines.Count).Where(n => lines[n].StartsWith('['))];
        if (starts.Length < 2) return;
        int one = dice.Below(starts.Length);
        int end = one + 1 < starts.Length ? starts[one + 1] : lines.Count;
        List<string> section = lines.GetRange(starts[one], end - starts[one]);
        // taken out and put elsewhere, or put there as well
        if (!dice.Once(3)) lines.RemoveRange(starts[one], section.Count);
        int[] left = [.. Enumerable.Range(0, lines.Count).Where(n => lines[n].StartsWith('[')), lines.Count];
        lines.InsertRange(dice.Of(left), section);
    }

    private void AddKey(List<string> lines, Dice dice)
    {
        if (known.Count == 0) return;
        KeySpec key = dice.Of(known);
        int heading = Line(lines, dice, line => line.Trim('[', ']', ' ', '\r') == key.Table && line.StartsWith('['));
        if (heading >= 0 && !dice.Once(4)) lines.Insert(heading + 1, $"{key.Key} = {Allowed(key, dice)}");
        else lines.Insert(dice.Once(2) ? 0 : dice.Below(lines.Count), $"{key.Path} = {Allowed(key, dice)}");
    }

    private static void ScaleNumber(List<string> lines, Dice dice)
    {
        if (Pair(lines, dice) is not (int at and >= 0)) return;
        int sign = lines[at].IndexOf('=', StringComparison.Ordinal);
        string value = lines[at][(sign + 1)..].Split('#')[0].Trim();
        if (!double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out double number)) return;
        double scaled = number * dice.Of([-1, 0.01, 0.1, 0.5, 0.9, 0.99, 1.01, 1.1, 1.5, 2, 10, 1000]);
        lines[at] = $"{lines[at][..sign]}= {scaled.ToString("0.0###############", CultureInfo.InvariantCulture)}";
    }

    private static void SwapValues(List<string> lines, Dice dice)
    {
        if (Pair(lines, dice) is not (int a and >= 0) || Pair(lines, dice) is not (int b and >= 0)) return;
        int signA = lines[a].IndexOf('=', StringComparison.Ordinal), signB = lines[b].IndexOf('=', StringComparison.Ordinal);
        (lines[a], lines[b]) = (lines[a][..signA] + lines[b][signB..], lines[b][..signB] + lines[a][signA..]);
    }

    /// <summary>Quoted keys: with a dot inside they are another key than the dotted one.</summary>
    private void Quote(List<string> lines, Dice dice)
    {
        if (known.Count == 0) return;
        KeySpec key = dice.Of(known);
        string quote = dice.Of(["\"", "'"]);
        string line = dice.Below(6) switch
        {
            0 => $"{quote}{key.Path}{quote} = {Allowed(key, dice)}",
            1 => $"{quote}{key.Table}[1]{quote}.{key.Key} = {Allowed(key, dice)}",
            2 => $"{quote}extra[7].mass_g{quote} = 5",
            3 => $"{quote}{quote}.{key.Key} = 1",
            4 => $"{quote}{key.Table}{quote}.{quote}{key.Key}{quote} = {Allowed(key, dice)}",
            _ => $"\"\\u001b[2J\" = {Allowed(key, dice)}",
        };
        lines.Insert(dice.Once(2) ? 0 : dice.Below(lines.Count + 1), line);
    }

    private static string Nonsense(Dice dice) => dice.Of(
    [
        "= 5", "a", "a =", "a = = 5", "[", "[]", "[[]]", "[a", "]", "a.b.c.d.e.f.g.h = 1", "\"\" = 1", "a = \"\u0007\"", "# \u0007", "\u00e4 = 1", "a = 1 b = 2", "a = 5 # c", "[a]]", "[[a]", "a = \"\\q\"",
        "a = \"\\uD800\"", "a = \"\\U00110000\"", "\ufeffa = 1", "[table]\na = 1\na = 2", "a = 2020-13-45", "a = [1, 2", "a = { b = 1", "a = '''", "x = 1e5_0",
    ]);
}
