using Simfeel.Builds;
using Simfeel.Builds.Format;
using Simfeel.Builds.Reading;
using Tomlyn.Syntax;

namespace Simfeel.Studies.Lessons;

/// <summary>A table of a lesson file as it was written: keys with their values and places.</summary>
internal sealed class LessonTable(string kind, Place at)
{
    private const int LongestText = 4000;

    /// <summary>Name of the table.</summary>
    public string Kind => kind;

    /// <summary>Where it starts.</summary>
    public Place At => at;

    /// <summary>Keys in their order, dotted keys joined.</summary>
    public List<(string Key, ValueSyntax Value, Place At)> Items { get; } = [];

    /// <summary>Where a key stands, else where the table does.</summary>
    public Place PlaceOf(string key) => Item(key)?.At ?? at;

    /// <summary>The written value of a key.</summary>
    public (string Key, ValueSyntax Value, Place At)? Item(string key)
    {
        foreach ((string Key, ValueSyntax Value, Place At) item in Items)
        {
            if (item.Key == key) return item;
        }
        return null;
    }

    /// <summary>A text; empty where there is none, with a diagnostic where it is required or wrong.</summary>
    public string Text(string key, DiagnosticBag bag)
    {
        KeySpec spec = LessonFormat.Find(kind, key)!;
        if (Item(key) is not { } item)
        {
            if (spec.Required) bag.Error(at, spec.Path, "", $"The key is missing; {(spec.Meaning.StartsWith("what ", StringComparison.Ordinal) ? "it says" : "it is the")} {spec.Meaning}.", $"add {key} = \"...\"");
            return "";
        }
        if (item.Value is StringValueSyntax { Value: string text } && !string.IsNullOrWhiteSpace(text) && text.Length <= LongestText && !OneLine.HasControls(text))
        {
            string joined = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
            if (spec.Kind != KeyKind.Choice || spec.Choices.Contains(joined)) return joined;
            string? near = NearestName.Of(joined, spec.Choices);
            bag.Error(item.At, spec.Path, item.Value.ToString(), $"Allowed is {spec.Range}.", near is null ? "" : $"did you mean {near}?");
            return "";
        }
        bag.Error(item.At, spec.Path, item.Value.ToString(), $"Allowed is text in double quotes, not empty, at most {LongestText} characters, no control characters.");
        return "";
    }

    /// <summary>A number in its key's unit; NaN where there is none, with a diagnostic where it is wrong.</summary>
    public double Number(string key, DiagnosticBag bag)
    {
        if (Item(key) is not { } item) return double.NaN;
        KeySpec spec = LessonFormat.Find(kind, key)!;
        double number = NumberReader.Plain(item.Value);
        string? fault = item.Value is IntegerValueSyntax or FloatValueSyntax ? NumberReader.RangeFault(spec, number) : $"This is no number; allowed is {spec.Range}.";
        if (fault is null) return number;
        bag.Error(item.At, spec.Path, item.Value.ToString(), fault);
        return double.NaN;
    }

    /// <summary>Whether a flag is on.</summary>
    public bool Flag(string key, DiagnosticBag bag)
    {
        if (Item(key) is not { } item) return false;
        if (item.Value is BooleanValueSyntax flag) return flag.Value;
        bag.Error(item.At, $"{kind}.{key}", item.Value.ToString(), "Allowed is true or false.");
        return false;
    }

    /// <summary>The range of outcomes of the table; null with a diagnostic where there is none or it is wrong.</summary>
    public LessonRange? Range(DiagnosticBag bag)
    {
        bool percent = Item("percent") is not null;
        if (percent == Item("difference") is not null)
        {
            bag.Error(at, kind, "", percent ? "Give percent or difference, not both." : "The outcomes are missing.", "write percent = [low, high], such as percent = [10, inf]");
            return null;
        }
        (string key, ValueSyntax value, Place place) = Item(percent ? "percent" : "difference")!.Value;
        double[] ends = value is ArraySyntax array ? [.. array.Items.Select(item => NumberReader.Plain(item.Value))] : [];
        if (ends.Length == 2 && ends[0] < ends[1]) return new(ends[0], ends[1], percent);
        bag.Error(place, $"{kind}.{key}", value.ToString(), "Allowed are two numbers [low, high], the first one smaller; inf and -inf leave an end open.");
        return null;
    }
}
