using Simfeel.Builds.Format;
using Tomlyn.Syntax;

namespace Simfeel.Builds.Reading;

/// <summary>
/// Reads a number in one of its forms: <c>33</c>; <c>{ value = 33, source = "measured" }</c>;
/// <c>{ low = 31, typical = 33, high = 36 }</c>, also with a source.
/// </summary>
internal static class NumberReader
{
    private static readonly string[] Members = ["value", "low", "typical", "high", "source"];

    /// <summary>The number, or null with a diagnostic.</summary>
    public static GivenNumber? Read(string key, KeySpec spec, ValueSyntax value, Place at, DiagnosticBag bag)
    {
        if (value is InlineTableSyntax table) return ReadTable(key, spec, table, at, bag);
        double number = Checked(key, spec, value, at, bag);
        return double.IsNaN(number) ? null : new(number, number, number, ValueSource.Stated, at, value.ToString());
    }

    /// <summary>The number that the syntax holds; NaN where it is none.</summary>
    public static double Plain(ValueSyntax? value) => value switch
    {
        // the parser takes 0xFFFFFFFFFFFFFFFF for -1, though no whole number written so is below 0
        IntegerValueSyntax whole => whole.Value < 0 && !whole.ToString().TrimStart().StartsWith('-') ? double.NaN : whole.Value,
        FloatValueSyntax real => real.Value,
        _ => double.NaN,
    };

    private static GivenNumber? ReadTable(string key, KeySpec spec, InlineTableSyntax table, Place at, DiagnosticBag bag)
    {
        Dictionary<string, ValueSyntax> given = new(StringComparer.Ordinal);
        foreach (InlineTableItemSyntax item in table.Items)
        {
            string name = item.KeyValue!.Key!.ToString().Trim();
            if (!Members.Contains(name))
            {
                string? near = NearestName.Of(name, Members);
                bag.Error(at, key, table.ToString(), $"\"{name}\" has no meaning here; a number is written plain, as {{ value, source }} or as {{ low, typical, high, source }}; allowed is {spec.Range}.", near is null ? "" : $"did you mean {near}?");
                return null;
            }
            given[name] = item.KeyValue.Value!;
        }
        ValueSource source = ValueSource.Stated;
        if (given.Remove("source", out ValueSyntax? word))
        {
            switch ((word as StringValueSyntax)?.Value)
            {
                case "measured": source = ValueSource.Measured; break;
                case "datasheet": source = ValueSource.Datasheet; break;
                case "estimated": source = ValueSource.Estimated; break;
                default:
                    bag.Error(at, key, word.ToString(), "The source is one of \"measured\", \"datasheet\", \"estimated\".");
                    return null;
            }
        }
        bool single = given.Count == 1 && given.ContainsKey("value");
        bool range = given.Count == 3 && !given.ContainsKey("value");
        if (!single && !range)
        {
            bag.Error(at, key, table.ToString(), $"A table of a number holds value, or low, typical and high; allowed is {spec.Range}.", "write { value = 33 } or { low = 31, typical = 33, high = 36 }");
            return null;
        }
        double low = Checked(key, spec, given[single ? "value" : "low"], at, bag);
        double typical = single ? low : Checked(key, spec, given["typical"], at, bag);
        double high = single ? low : Checked(key, spec, given["high"], at, bag);
        if (double.IsNaN(low + typical + high)) return null;
        if (low > typical || typical > high)
        {
            bag.Error(at, key, table.ToString(), $"low, typical and high must rise; allowed is {spec.Range}.", "swap them");
            return null;
        }
        return new(low, typical, high, source, at, table.ToString());
    }

    /// <summary>The number, if it is one and inside the key's range; else NaN, with a diagnostic.</summary>
    private static double Checked(string key, KeySpec spec, ValueSyntax value, Place at, DiagnosticBag bag)
    {
        if (value is not (IntegerValueSyntax or FloatValueSyntax))
        {
            string hint = value is StringValueSyntax ? "write the number without quotes and without its unit" : "";
            bag.Error(at, key, value.ToString(), $"This is no number; allowed is {spec.Range}.", hint);
            return double.NaN;
        }
        double number = Plain(value);
        if (RangeFault(spec, number) is not string fault) return number;
        bag.Error(at, key, value.ToString(), fault);
        return double.NaN;
    }

    /// <summary>What is wrong with a number of a key, or null.</summary>
    public static string? RangeFault(KeySpec spec, double number)
    {
        if (!double.IsFinite(number)) return $"This is not a finite number; allowed is {spec.Range}.";
        if (spec.Kind == KeyKind.Flag) return number is 0 or 1 ? null : $"Allowed is {spec.Range}.";
        if (spec.Kind == KeyKind.Count && number != Math.Floor(number)) return $"This is not a whole number; allowed is {spec.Range}.";
        if (number < spec.Minimum) return $"This is too small; allowed is {spec.Range}.";
        return number > spec.Maximum ? $"This is too large; allowed is {spec.Range}." : null;
    }
}
