using SkiaSharp;

namespace Simfeel.Cockpit.Overlay;

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
/// Colours of everything two-dimensional. Few, calm, and never the only sign: build A is a disc and a solid line, build B a
/// triangle and a dashed line. Tests look at every pair through the eyes of the colour-blind.
/// </summary>
public static class Palette
{
    /// <summary>Behind a whole page.</summary>
    public static readonly SKColor Night = new(0x13, 0x1A, 0x20);

    /// <summary>Behind a page that lies over a flight.</summary>
    public static readonly SKColor Veil = new(0x13, 0x1A, 0x20, 0xF0);

    /// <summary>Behind plates and graphs in flight.</summary>
    public static readonly SKColor Plate = new(0x10, 0x17, 0x1C, 0xD0);

    /// <summary>A widget at rest.</summary>
    public static readonly SKColor Panel = new(0x20, 0x2A, 0x32);

    /// <summary>A widget that has the focus.</summary>
    public static readonly SKColor Raised = new(0x2C, 0x39, 0x43);

    /// <summary>Text.</summary>
    public static readonly SKColor Ink = new(0xEE, 0xF2, 0xF3);

    /// <summary>Text that stands back: units, hints, help.</summary>
    public static readonly SKColor Quiet = new(0xBA, 0xC6, 0xCD);

    /// <summary>Frame of the widget that has the focus.</summary>
    public static readonly SKColor Focus = new(0xFF, 0xE0, 0x9A);

    /// <summary>Rules, empty tracks, frames of boxes.</summary>
    public static readonly SKColor Line = new(0x84, 0x94, 0x9E);

    /// <summary>Build A.</summary>
    public static readonly SKColor BuildA = new(0xA8, 0xD8, 0xF6);

    /// <summary>Build B.</summary>
    public static readonly SKColor BuildB = new(0xE0, 0x8E, 0x35);

    /// <summary>Words that ask for attention; always beside an exclamation mark or in a banner.</summary>
    public static readonly SKColor Warning = new(0xFF, 0xC9, 0x6B);

    /// <summary>What was commanded, in graphs; dashed.</summary>
    public static readonly SKColor Command = new(0xF2, 0xC1, 0x78);

    /// <summary>Series of four rotors, in graphs; each has dashes of its own.</summary>
    public static readonly SKColor[] Rotors =
    [
        new(0xEE, 0xF2, 0xF3), new(0x7F, 0xC4, 0xEE), new(0xF0, 0xB0, 0x4F), new(0x9C, 0xA8, 0xB0),
    ];

    /// <summary>Colour of a build, 0 for A and 1 for B.</summary>
    public static SKColor Build(int index) => index == 0 ? BuildA : BuildB;

    /// <summary>Every text and mark with what is behind it.</summary>
    public static IReadOnlyList<PalettePair> Pairs { get; } =
    [
        new("text on a page", Ink, Night, 4.5),
        new("text on a page over a flight", Ink, Veil, 4.5),
        new("text on a plate in flight", Ink, Plate, 4.5),
        new("text on a widget", Ink, Panel, 4.5),
        new("text on the focused widget", Ink, Raised, 4.5),
        new("quiet text on a page", Quiet, Night, 4.5),
        new("quiet text on a page over a flight", Quiet, Veil, 4.5),
        new("quiet text on a plate in flight", Quiet, Plate, 4.5),
        new("quiet text on a widget", Quiet, Panel, 4.5),
        new("quiet text on the focused widget", Quiet, Raised, 4.5),
        new("warning on a page", Warning, Night, 4.5),
        new("warning on a page over a flight", Warning, Veil, 4.5),
        new("warning on a widget", Warning, Panel, 4.5),
        new("warning on the focused widget", Warning, Raised, 4.5),
        new("warning on a plate in flight", Warning, Plate, 4.5),
        new("focus frame on a page", Focus, Night, 3),
        new("focus frame on a page over a flight", Focus, Veil, 3),
        new("focus frame around a widget", Focus, Raised, 3),
        new("frame on a page", Line, Night, 3),
        new("frame on a widget", Line, Panel, 3),
        new("filled track on a widget", BuildA, Panel, 3),
        new("filled track on the focused widget", BuildA, Raised, 3),
        new("build A on a page", BuildA, Night, 3),
        new("build B on a page", BuildB, Night, 3),
        new("build A on a plate", BuildA, Plate, 3),
        new("build B on a plate", BuildB, Plate, 3),
        new("build B on a widget", BuildB, Panel, 3),
        new("command in a graph", Command, Plate, 3),
        .. Rotors.Select((colour, k) => new PalettePair($"rotor {k + 1} in a graph", colour, Plate, 3)),
    ];

    /// <summary>Colours that are told apart from each other.</summary>
    public static IReadOnlyList<PaletteContrast> Contrasts { get; } =
    [
        new("builds", BuildA, BuildB, "disc and triangle, letters A and B"),
        new("rate and command of build A", BuildA, Command, "solid and dashed line"),
        new("rate and command of build B", BuildB, Command, "solid and dashed line"),
        new("rotors 1 and 2", Rotors[0], Rotors[1], "dashes"),
        new("rotors 1 and 3", Rotors[0], Rotors[2], "dashes"),
        new("rotors 1 and 4", Rotors[0], Rotors[3], "dashes"),
        new("rotors 2 and 3", Rotors[1], Rotors[2], "dashes"),
        new("rotors 2 and 4", Rotors[1], Rotors[3], "dashes"),
        new("rotors 3 and 4", Rotors[2], Rotors[3], "dashes"),
        new("focused and other frames", Focus, Line, "width of the frame"),
    ];
}
