using SkiaSharp;

namespace Simfeel.Cockpit.Drawing;

/// <summary>A colour that is read against another one.</summary>
/// <param name="Use">Where the two stand.</param>
/// <param name="Front">Text, line or mark.</param>
/// <param name="Back">What is behind it; may be translucent, then it must do over black and over white.</param>
/// <param name="LeastContrast">Least contrast ratio after WCAG 2.2: 4.5 for text (1.4.3), 3 for marks and frames (1.4.11).</param>
public sealed record PalettePair(string Use, SKColor Front, SKColor Back, double LeastContrast);

/// <summary>Two colours that mean different things side by side.</summary>
/// <param name="Use">Where the two stand.</param>
/// <param name="One">One of them.</param>
/// <param name="Other">The other.</param>
/// <param name="AlsoBy">What else than colour tells them apart.</param>
public sealed record PaletteContrast(string Use, SKColor One, SKColor Other, string AlsoBy);

/// <summary>
/// Colours of everything two-dimensional, as the thread that draws has chosen them. Few, calm, and never the only sign: build A
/// is a disc and a solid line, build B a triangle and a dashed line. Tests look at every pair of both palettes through the eyes
/// of the colour-blind.
/// </summary>
public static class Palette
{
    // one window has one thread; tests that draw beside it keep their own
    [ThreadStatic]
    private static PaletteColours? _now;

    /// <summary>The colours in use on this thread.</summary>
    public static PaletteColours Now => _now ?? PaletteColours.Usual;

    /// <summary>Draws in other colours on this thread from here on.</summary>
    public static void Use(PaletteColours colours) => _now = colours;

    /// <inheritdoc cref="PaletteColours.Night"/>
    public static SKColor Night => Now.Night;

    /// <inheritdoc cref="PaletteColours.Veil"/>
    public static SKColor Veil => Now.Veil;

    /// <inheritdoc cref="PaletteColours.Plate"/>
    public static SKColor Plate => Now.Plate;

    /// <inheritdoc cref="PaletteColours.Panel"/>
    public static SKColor Panel => Now.Panel;

    /// <inheritdoc cref="PaletteColours.Raised"/>
    public static SKColor Raised => Now.Raised;

    /// <inheritdoc cref="PaletteColours.Ink"/>
    public static SKColor Ink => Now.Ink;

    /// <inheritdoc cref="PaletteColours.Quiet"/>
    public static SKColor Quiet => Now.Quiet;

    /// <inheritdoc cref="PaletteColours.Focus"/>
    public static SKColor Focus => Now.Focus;

    /// <inheritdoc cref="PaletteColours.Line"/>
    public static SKColor Line => Now.Line;

    /// <inheritdoc cref="PaletteColours.BuildA"/>
    public static SKColor BuildA => Now.BuildA;

    /// <inheritdoc cref="PaletteColours.BuildB"/>
    public static SKColor BuildB => Now.BuildB;

    /// <inheritdoc cref="PaletteColours.Warning"/>
    public static SKColor Warning => Now.Warning;

    /// <inheritdoc cref="PaletteColours.Command"/>
    public static SKColor Command => Now.Command;

    /// <inheritdoc cref="PaletteColours.Rotors"/>
    public static IReadOnlyList<SKColor> Rotors => Now.Rotors;

    /// <inheritdoc cref="PaletteColours.LineWeight"/>
    public static float LineWeight => Now.LineWeight;

    /// <summary>Colour of a build, 0 for A and 1 for B.</summary>
    public static SKColor Build(int index) => index == 0 ? BuildA : BuildB;
}
