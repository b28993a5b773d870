using Simfeel.Builds.Format;
using Simfeel.Builds.Reading;

namespace Simfeel.Builds.Estimates;

/// <summary>
/// Hands out the numbers of a sheet in SI units, fills in what is missing, and keeps the books: every number handed
/// out is listed with its provenance.
/// </summary>
internal sealed class ValueLedger(BuildSheet sheet)
{
    private readonly Dictionary<string, BuildValue> _values = new(StringComparer.Ordinal);

    /// <summary>What was handed out, in the order of the format; extra parts one after the other.</summary>
    public IReadOnlyList<BuildValue> Values()
    {
        Dictionary<string, int> order = [], tables = [];
        foreach (KeySpec key in BuildFormat.Keys)
        {
            order.Add(key.Path, order.Count);
            tables.TryAdd(key.Table, tables.Count);
        }
        return [.. _values.Values
            .OrderBy(v => tables[BuildFormat.Find(v.Key)!.Table])
            .ThenBy(v => BuildFormat.ExtraNumber(v.Key))
            .ThenBy(v => order[BuildFormat.Find(v.Key)!.Path])];
    }

    public bool Has(string key) => sheet.Numbers.ContainsKey(key);

    /// <summary>A number that the file gave (required, or asked for with <see cref="Has"/>).</summary>
    public double Given(string key)
    {
        KeySpec spec = BuildFormat.Find(key)!;
        GivenNumber given = sheet.Numbers[key];
        return Keep(spec, key, given.Low, given.Typical, given.High, given.Source, "") * spec.ToSI;
    }

    /// <summary>The file's number, else the format's default.</summary>
    /// <param name="key">Full key.</param>
    /// <param name="spread">How far the truth may lie from the default, relative.</param>
    public double OrDefault(string key, double spread = 0)
    {
        if (Has(key)) return Given(key);
        KeySpec spec = BuildFormat.Find(key)!;
        double value = spec.Default!.Value, wide = Math.Abs(value) * spread;
        return Keep(spec, key, value - wide, value, value + wide, ValueSource.Default, "") * spec.ToSI;
    }

    /// <summary>The file's number, else an estimate.</summary>
    /// <param name="key">Full key.</param>
    /// <param name="estimate">What the rule gives, SI.</param>
    /// <param name="spread">How far the truth may lie from it, relative: 0.2 is 20 % down and up.</param>
    /// <param name="rule">The rule in words; the format's wording where null.</param>
    public double OrRule(string key, double estimate, double spread, string? rule = null)
    {
        if (Has(key)) return Given(key);
        KeySpec spec = BuildFormat.Find(key)!;
        double value = estimate / spec.ToSI, wide = Math.Abs(value) * spread;
        string words = rule ?? spec.WhenMissing["estimated: ".Length..];
        double kept = Keep(spec, key, value - wide, value, value + wide, ValueSource.Rule, words);
        return kept == value ? estimate : kept * spec.ToSI;
    }

    /// <summary>Lists a number and gives what it is taken as, in the key's unit: typical, unless the sheet wants it elsewhere in its band.</summary>
    private double Keep(KeySpec spec, string key, double low, double typical, double high, ValueSource source, string rule)
    {
        double place = sheet.Places.GetValueOrDefault(key);
        double taken = place == 0 ? typical : typical + (place * (place < 0 ? typical - low : high - typical));
        // a rule's band may reach beyond what the format allows
        if (place != 0) taken = Math.Clamp(taken, Math.Min(spec.Minimum, typical), Math.Max(spec.Maximum, typical));
        _values[key] = new(key, low, taken, high, spec.Unit, source, rule);
        return taken;
    }

    /// <summary>The file's word, else the key's first choice; empty for free text.</summary>
    public string Word(string key)
    {
        if (sheet.Texts.TryGetValue(key, out GivenText? text)) return text.Value;
        IReadOnlyList<string> choices = BuildFormat.Find(key)!.Choices;
        return choices.Count > 0 ? choices[0] : "";
    }
}
