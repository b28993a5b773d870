using SkiaSharp;

namespace Simfeel.Cockpit.Drawing;

/// <summary>The typefaces of this machine that all texts are set in.</summary>
public sealed class FontSet : IDisposable
{
    /// <summary>Number of <see cref="TextStyle"/>s.</summary>
    internal const int Styles = 6;

    private readonly SKTypeface _sans;
    private readonly SKTypeface _strong;
    private readonly SKTypeface _mono;

    /// <summary>Looks the families up; where one is missing, what the system has instead is taken and said.</summary>
    /// <param name="sans">Family of texts.</param>
    /// <param name="mono">Family of numbers; every figure equally wide.</param>
    public FontSet(string sans = "DejaVu Sans", string mono = "DejaVu Sans Mono")
    {
        List<string> missing = [];
        _sans = Find(sans, SKFontStyle.Normal, missing);
        _strong = Find(sans, SKFontStyle.Bold, []);
        _mono = Find(mono, SKFontStyle.Normal, missing);
        Missing = missing;
    }

    /// <summary>A sentence for each family that is missing; empty when all is there. To be said once.</summary>
    public IReadOnlyList<string> Missing { get; }

    /// <summary>A font of a style.</summary>
    /// <param name="style">Style.</param>
    /// <param name="scale">Text scale.</param>
    internal SKFont Font(TextStyle style, float scale)
    {
        (SKTypeface face, float size) = style switch
        {
            TextStyle.Small => (_sans, 12.5f),
            TextStyle.Heading => (_strong, 16f),
            TextStyle.Title => (_strong, 24f),
            TextStyle.Figures => (_mono, 16f),
            TextStyle.SmallFigures => (_mono, 12f),
            _ => (_sans, 15.5f),
        };
        return new(face, size * scale) { Subpixel = true, Edging = SKFontEdging.Antialias, Hinting = SKFontHinting.Slight };
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _sans.Dispose();
        _strong.Dispose();
        _mono.Dispose();
    }

    private static SKTypeface Find(string family, SKFontStyle style, List<string> missing)
    {
        SKTypeface found = SKTypeface.FromFamilyName(family, style) ?? SKTypeface.Default;
        if (!found.FamilyName.Equals(family, StringComparison.OrdinalIgnoreCase))
            missing.Add($"The font {family} is not on this machine; {Stand(found)} stands in for it.");
        return found;
    }

    private static string Stand(SKTypeface face) => face.FamilyName.Length > 0 ? face.FamilyName : "the system's own";
}
