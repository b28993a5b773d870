using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Simfeel.Studies.Fit.Reading;

/// <summary>Tells from a heading what its column holds. English words and the usual German, French and Spanish ones.</summary>
internal static partial class QuantityNames
{
    // letter by letter: with one culture everywhere string.Normalize leaves accents where they are
    private const string Accented = "\u00e0\u00e1\u00e2\u00e4\u00e7\u00e8\u00e9\u00ea\u00eb\u00ec\u00ed\u00ee\u00ef\u00f1\u00f2\u00f3\u00f4\u00f6\u00f9\u00fa\u00fb\u00fc";
    private const string Bare = "aaaaceeeeiiiinoooouuuu";

    /// <summary>In order: the first that fits wins, so that "motor efficiency" is no motor and "eRPM" no plain rpm.</summary>
    private static readonly (StandQuantity Quantity, Regex Words)[] Names =
    [
        (StandQuantity.Ignored, Unused()),
        (StandQuantity.Efficiency, Efficiency()),
        (StandQuantity.ElectricalSpeed, ElectricalSpeed()),
        (StandQuantity.MechanicalPower, MechanicalPower()),
        (StandQuantity.ElectricalPower, ElectricalPower()),
        (StandQuantity.Throttle, Throttle()),
        (StandQuantity.Thrust, Thrust()),
        (StandQuantity.Torque, Torque()),
        (StandQuantity.Voltage, Voltage()),
        (StandQuantity.Current, Current()),
        (StandQuantity.Speed, Speed()),
        (StandQuantity.Propeller, Propeller()),
    ];

    /// <summary>The quantity that a heading names, and whether it names one that fits never use, such as temperature.</summary>
    public static (StandQuantity Quantity, bool Known) Find(string heading)
    {
        string plain = Plain(heading);
        foreach ((StandQuantity quantity, Regex words) in Names)
        {
            if (words.IsMatch(plain)) return (quantity, true);
        }
        return (StandQuantity.Ignored, false);
    }

    /// <summary>True where a heading says that the column is a mean, which is preferred over least and largest values.</summary>
    public static bool IsMean(string heading) => Mean().IsMatch(Plain(heading));

    /// <summary>True where a heading says that the column is a least or largest value, or a scatter.</summary>
    public static bool IsExtreme(string heading) => Extreme().IsMatch(Plain(heading));

    /// <summary>True where the first cell of a row says that the row sums up others.</summary>
    public static bool IsSummary(string cell) => Summary().IsMatch(Plain(cell));

    /// <summary>True where a title says that the motor ran without a propeller.</summary>
    public static bool IsNoLoad(string title) => NoLoad().IsMatch(Plain(title));

    /// <summary>Lower case without accents; underscores and dots are blanks.</summary>
    private static string Plain(string text)
    {
        StringBuilder plain = new();
        foreach (char c in text)
        {
            // an accent that stands by itself
            if (CharUnicodeInfo.GetUnicodeCategory(c) == UnicodeCategory.NonSpacingMark) continue;
            char lower = c is '_' or '.' or '\u00a0' ? ' ' : char.ToLowerInvariant(c);
            int at = Accented.IndexOf(lower, StringComparison.Ordinal);
            plain.Append(at < 0 ? lower : Bare[at]);
        }
        return plain.ToString();
    }

    [GeneratedRegex(@"temp|\btime\b|\bzeit\b|\btemps\b|\btiempo\b|vibration|humid|pressure|druck|weight of|\bremark|\bnote|resistance|\bkv\b|noise|\bdb\b")]
    private static partial Regex Unused();

    [GeneratedRegex(@"efficien|effizienz|wirkungsgrad|rendement|eficiencia|rendimiento|g ?f? ?/ ?w|\bn ?/ ?w\b|thrust ?/ ?(power|w)|specific thrust|figure of merit")]
    private static partial Regex Efficiency();

    [GeneratedRegex(@"\be-? ?rpm\b|electric\w* (rpm|speed|rotation)|elektr\w* drehzahl|feldfrequenz|field (speed|frequency)|regime electrique|velocidad electrica")]
    private static partial Regex ElectricalSpeed();

    [GeneratedRegex(@"(mech\w*|shaft|output|propeller|prop)[ -]*(power|leistung)|power (out|mech)|(wellen|abtriebs)leistung|mech\w* leistung|puissance mec|potencia mec|\bp ?mech")]
    private static partial Regex MechanicalPower();

    [GeneratedRegex(@"power|leistung|puissance|potencia|\bwatts?\b|\bp ?(el|in)\b")]
    private static partial Regex ElectricalPower();

    [GeneratedRegex(@"throttle|\bthr\b|\bgas\b|\bgaz\b|acelerador|\bduty\b|\bpwm\b|\besc\b(?! (volt|curr|amp|power))|\bpulse?\b|impuls|stellgrad|drossel|commande|\bsignal\b")]
    private static partial Regex Throttle();

    [GeneratedRegex(@"thrust|schub|pouss|empuje|\bpull\b|\bzug|\blift\b|\bforce\b|\bkraft\b")]
    private static partial Regex Thrust();

    [GeneratedRegex(@"torque|drehmoment|moment|\bcouple\b|\bpar\b")]
    private static partial Regex Torque();

    [GeneratedRegex(@"volt|spannung|\btension\b|\bvbat\b|\bu\b(?!/)")]
    private static partial Regex Voltage();

    [GeneratedRegex(@"current|\bamps?\b|amper|strom|courant|corriente|intensi|\bi\b")]
    private static partial Regex Current();

    [GeneratedRegex(@"\bk?rpm\b|drehzahl|\bspeed\b|\bregime\b|tours|\btr/min|velocidad|\brevs?\b|revolution|rotation")]
    private static partial Regex Speed();

    [GeneratedRegex(@"\bprop|helice|luftschraube")]
    private static partial Regex Propeller();

    [GeneratedRegex(@"\b(mean|avg|average|mittel\w*|moy\w*|medi[ao]|promedio)\b")]
    private static partial Regex Mean();

    [GeneratedRegex(@"\b(min|max|minimum|maximum|peak|std|sd|sigma|spitze)\b(?!-1)")]
    private static partial Regex Extreme();

    [GeneratedRegex(@"^\W*(mean|avg|average|max|min|maximum|minimum|sum|total|summary|peak|mittel\w*|summe|moyenne|somme|promedio|media)\b")]
    private static partial Regex Summary();

    [GeneratedRegex(@"\b(no|without|ohne|sans|sin)[ -](prop|luftschraube|load|helice|last|charge|carga)|no-?load|leerlauf|\bbare motor")]
    private static partial Regex NoLoad();
}
