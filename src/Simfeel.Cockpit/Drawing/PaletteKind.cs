namespace Simfeel.Cockpit.Drawing;

/// <summary>Palettes to choose from.</summary>
public enum PaletteKind
{
    /// <summary>Light text on dark.</summary>
    Usual,

    /// <summary>Dark text on light with thicker lines, for a projector in a room that is not dark.</summary>
    Projector,
}
