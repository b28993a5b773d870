using SkiaSharp;

namespace Simfeel.Cockpit.Drawing;

/// <summary>The colours of one palette.</summary>
public sealed class PaletteColours
{
    /// <summary>Light text on dark.</summary>
    public static PaletteColours Usual { get; } = new()
    {
        Night = new(0x13, 0x1A, 0x20),
        Veil = new(0x13, 0x1A, 0x20, 0xF0),
        Plate = new(0x10, 0x17, 0x1C, 0xD0),
        Panel = new(0x20, 0x2A, 0x32),
        Raised = new(0x2C, 0x39, 0x43),
        Ink = new(0xEE, 0xF2, 0xF3),
        Quiet = new(0xBA, 0xC6, 0xCD),
        Focus = new(0xFF, 0xE0, 0x9A),
        Line = new(0x84, 0x94, 0x9E),
        BuildA = new(0xA8, 0xD8, 0xF6),
        BuildB = new(0xE0, 0x8E, 0x35),
        Warning = new(0xFF, 0xC9, 0x6B),
        Command = new(0xF2, 0xC1, 0x78),
        Rotors = [new(0xEE, 0xF2, 0xF3), new(0x7F, 0xC4, 0xEE), new(0xF0, 0xB0, 0x4F), new(0x9C, 0xA8, 0xB0)],
    };

    /// <summary>
    /// Dark text on light. A projector cannot draw black: whatever light falls on the screen is its darkest tone, which eats dark
    /// backgrounds first. Every mark has the contrast of text.
    /// </summary>
    public static PaletteColours Projector { get; } = new()
    {
        Night = new(0xFA, 0xFB, 0xFC),
        Veil = new(0xFA, 0xFB, 0xFC, 0xF8),
        Plate = new(0xFA, 0xFB, 0xFC, 0xF0),
        Panel = new(0xE9, 0xED, 0xF0),
        Raised = new(0xD8, 0xE6, 0xF0),
        Ink = new(0x08, 0x0C, 0x10),
        Quiet = new(0x2E, 0x3A, 0x44),
        Focus = new(0x7A, 0x2E, 0x00),
        Line = new(0x4B, 0x57, 0x60),
        BuildA = new(0x00, 0x3F, 0x8A),
        BuildB = new(0x9A, 0x48, 0x00),
        Warning = new(0x8C, 0x12, 0x12),
        Command = new(0x82, 0x4E, 0x00),
        Rotors = [new(0x08, 0x0C, 0x10), new(0x00, 0x55, 0xB0), new(0x90, 0x48, 0x00), new(0x55, 0x62, 0x6C)],
        LineWeight = 1.6f,
        LeastOfMarks = 4.5,
    };

    /// <summary>Behind a whole page.</summary>
    public required SKColor Night { get; init; }

    /// <summary>Behind a page that lies over a flight.</summary>
    public required SKColor Veil { get; init; }

    /// <summary>Behind plates and graphs in flight.</summary>
    public required SKColor Plate { get; init; }

    /// <summary>A widget at rest.</summary>
    public required SKColor Panel { get; init; }

    /// <summary>A widget that has the focus.</summary>
    public required SKColor Raised { get; init; }

    /// <summary>Text.</summary>
    public required SKColor Ink { get; init; }

    /// <summary>Text that stands back: units, hints, help.</summary>
    public required SKColor Quiet { get; init; }

    /// <summary>Frame of the widget that has the focus.</summary>
    public required SKColor Focus { get; init; }

    /// <summary>Rules, empty tracks, frames of boxes.</summary>
    public required SKColor Line { get; init; }

    /// <summary>Build A.</summary>
    public required SKColor BuildA { get; init; }

    /// <summary>Build B.</summary>
    public required SKColor BuildB { get; init; }

    /// <summary>Words that ask for attention; always beside an exclamation mark or in a banner.</summary>
    public required SKColor Warning { get; init; }

    /// <summary>What was commanded, in graphs; dashed.</summary>
    public required SKColor Command { get; init; }

    /// <summary>Series of four rotors, in graphs; each has dashes of its own.</summary>
    public required IReadOnlyList<SKColor> Rotors { get; init; }

    /// <summary>Width of lines and frames against the usual.</summary>
    public float LineWeight { get; init; } = 1;

    /// <summary>Least contrast ratio of marks and frames: 3 after WCAG 2.2 (1.4.11), or more.</summary>
    public double LeastOfMarks { get; init; } = 3;

    /// <summary>The colours of a kind.</summary>
    public static PaletteColours Of(PaletteKind kind) => kind == PaletteKind.Projector ? Projector : Usual;

    /// <summary>Every text and mark with what is behind it.</summary>
    public IReadOnlyList<PalettePair> Pairs =>
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
        new("focus frame on a page", Focus, Night, LeastOfMarks),
        new("focus frame on a page over a flight", Focus, Veil, LeastOfMarks),
        new("focus frame around a widget", Focus, Raised, LeastOfMarks),
        new("frame on a page", Line, Night, LeastOfMarks),
        new("frame on a widget", Line, Panel, LeastOfMarks),
        new("filled track on a widget", BuildA, Panel, LeastOfMarks),
        new("filled track on the focused widget", BuildA, Raised, LeastOfMarks),
        new("build A on a page", BuildA, Night, LeastOfMarks),
        new("build B on a page", BuildB, Night, LeastOfMarks),
        new("build A on a plate", BuildA, Plate, LeastOfMarks),
        new("build B on a plate", BuildB, Plate, LeastOfMarks),
        new("build B on a widget", BuildB, Panel, LeastOfMarks),
        new("command in a graph", Command, Plate, LeastOfMarks),
        .. Rotors.Select((colour, k) => new PalettePair($"rotor {k + 1} in a graph", colour, Plate, LeastOfMarks)),
    ];

    /// <summary>Colours that are told apart from each other.</summary>
    public IReadOnlyList<PaletteContrast> Contrasts =>
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
