using System.Text.RegularExpressions;

namespace Simfeel.Studies.Fit.Reading;

/// <summary>The heading of one column: what stands above it, in it and below it.</summary>
/// <param name="Column">Counted from 1.</param>
/// <param name="Upper">The merged title above; may be empty.</param>
/// <param name="Name">The heading itself; may be empty.</param>
/// <param name="Unit">The cell of the unit row; may be empty.</param>
internal sealed partial record HeadingCell(int Column, string Upper, string Name, string Unit)
{
    /// <summary>The heading in one line, as shown to people.</summary>
    public string Label => string.Join(" ", ((string[])[Upper, Name, Unit]).Where(part => part.Length > 0));

    /// <summary>The name without what stands in brackets.</summary>
    public string Bare => Bracket().Replace(Name, " ").Trim();

    /// <summary>Quantity that the heading names: by the name itself, else with the title above, else by its unit.</summary>
    public (StandQuantity Quantity, bool Known) Find()
    {
        (StandQuantity quantity, bool known) = QuantityNames.Find(Bare);
        if (!known) (quantity, known) = QuantityNames.Find(Name);
        if (!known) (quantity, known) = QuantityNames.Find(Upper + " " + Name);
        if (!known)
        {
            quantity = UnitTexts().Select(UnitNames.QuantityOf).FirstOrDefault(q => q != StandQuantity.Ignored);
            known = quantity != StandQuantity.Ignored;
        }
        // thrust over shaft power says nothing about the power that a battery gives
        if (quantity == StandQuantity.Efficiency && (Label.Contains("mech", StringComparison.OrdinalIgnoreCase) || UnitOf(quantity) is null))
            return (StandQuantity.Ignored, true);
        return (quantity, known);
    }

    /// <summary>The unit that the heading gives for a quantity; null where it gives none.</summary>
    public StandUnit? UnitOf(StandQuantity quantity) =>
        UnitTexts().Select(text => UnitNames.Find(quantity, text)).FirstOrDefault(unit => unit is not null);

    /// <summary>A unit in brackets that no quantity of this kind has; empty where there is none.</summary>
    public string UnknownUnit(StandQuantity quantity) =>
        UnitOf(quantity) is null ? Bracket().Match(Name + " " + Unit).Groups[1].Value.Trim() : "";

    private IEnumerable<string> UnitTexts()
    {
        if (Unit.Length > 0) yield return Unit;
        foreach (string text in (string[])[Name, Upper])
        {
            foreach (Match match in Bracket().Matches(text)) yield return match.Groups[1].Value;
            yield return text;
            int comma = text.LastIndexOf(',');
            if (comma >= 0) yield return text[(comma + 1)..];
            string[] words = text.Split([' ', '_', '\u00a0'], StringSplitOptions.RemoveEmptyEntries);
            if (words.Length > 1) yield return words[^1];
            if (words.Length > 2) yield return words[^2] + words[^1];
            int slash = text.IndexOf('/', StringComparison.Ordinal);
            if (slash >= 0 && words.Length > 0) yield return text[(slash + 1)..];
        }
    }

    [GeneratedRegex(@"[\[({]([^\])}]*)[\])}]")]
    private static partial Regex Bracket();
}
