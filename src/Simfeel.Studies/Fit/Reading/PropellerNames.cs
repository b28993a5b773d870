using System.Globalization;
using System.Text.RegularExpressions;

namespace Simfeel.Studies.Fit.Reading;

/// <summary>Reads the size of a propeller out of a title or a name.</summary>
internal static partial class PropellerNames
{
    /// <summary>Nominal sizes are rounded: a 5 inch propeller may have 5.1 inch (common practice).</summary>
    private const double Tolerance = 0.06;

    /// <summary>Diameter in inch, as in <c>5.1x4.3x3</c> or <c>5"</c>; null where none is named.</summary>
    public static double? DiameterIn(string text)
    {
        Match match = Size().Match(text);
        if (!match.Success) return null;
        string number = match.Groups[1].Success ? match.Groups[1].Value : match.Groups[2].Value;
        double size = double.Parse(number.Replace(',', '.'), CultureInfo.InvariantCulture);
        return size is >= 0.8 and <= 20 ? size : null;
    }

    /// <summary>True unless the text names a diameter that is not the build's.</summary>
    public static bool Fits(string text, double diameterIn) =>
        DiameterIn(text) is not double named || Math.Abs(named - diameterIn) <= Tolerance * diameterIn;

    [GeneratedRegex(@"(?<![0-9.,])([0-9]{1,2}(?:[.,][0-9]{1,2})?)\s*[xX\u00d7*]\s*[0-9]|(?<![0-9.,x])([0-9]{1,2}(?:[.,][0-9]{1,2})?)\s*(?:""|''|\u2033|inch|-inch|in\b|zoll)")]
    private static partial Regex Size();
}
