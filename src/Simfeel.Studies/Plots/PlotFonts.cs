using ScottPlot;
using SkiaSharp;

namespace Simfeel.Studies.Plots;

/// <summary>A font or library that pictures need is not on this machine. The message says which and what to do.</summary>
public sealed class PlotFontException(string message, Exception? inner = null) : Exception(message, inner);

/// <summary>
/// The font of all pictures, DejaVu Sans, found through fontconfig in its regular and bold face. A family that is not
/// there would be replaced by another, or by none, without a word; here it is an error.
/// </summary>
public static class PlotFonts
{
    /// <summary>The family.</summary>
    public const string Family = "DejaVu Sans";

    private const string Remedy = "Pictures need it; on Debian and Ubuntu: sudo apt-get install fontconfig fonts-dejavu-core";

    private static readonly Lazy<(SKTypeface Regular, SKTypeface Bold)> Faces = new(Find);

    /// <summary>Makes the font known to the plotting library; may be called again.</summary>
    /// <exception cref="PlotFontException">The family or fontconfig is missing.</exception>
    public static void Register() => _ = Faces.Value;

    private static (SKTypeface Regular, SKTypeface Bold) Find()
    {
        SKTypeface regular, bold;
        try
        {
            regular = Match(SKFontStyle.Normal);
            bold = Match(SKFontStyle.Bold);
        }
        catch (Exception error) when (error is DllNotFoundException or TypeInitializationException)
        {
            throw new PlotFontException("Fontconfig, which the drawing library loads, is missing. " + Remedy, error);
        }
        Fonts.FontResolvers.Insert(0, new Resolver(regular, bold));
        Fonts.Default = Fonts.Sans = Family;
        return (regular, bold);
    }

    private static SKTypeface Match(SKFontStyle style)
    {
        SKTypeface? face = SKFontManager.Default.MatchFamily(Family, style);
        return face is not null && face.FamilyName == Family && face.FontWeight >= style.Weight
            ? face
            : throw new PlotFontException($"The font {Family}{(style.Weight > 400 ? " Bold" : "")} is missing. " + Remedy);
    }

    private sealed class Resolver(SKTypeface regularFace, SKTypeface boldFace) : IFontResolver
    {
        public SKTypeface? CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) =>
            CreateTypeface(fontName, weight >= FontWeight.SemiBold, slant != FontSlant.Upright);

        public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) =>
            fontName != Family ? null : bold ? boldFace : regularFace;
    }
}
