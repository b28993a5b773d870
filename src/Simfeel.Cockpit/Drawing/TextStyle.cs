namespace Simfeel.Cockpit.Drawing;

/// <summary>How a text is set.</summary>
public enum TextStyle
{
    /// <summary>Running text and widgets.</summary>
    Body,

    /// <summary>Units, hints.</summary>
    Small,

    /// <summary>Heading of a part of a page, name of a build.</summary>
    Heading,

    /// <summary>Heading of a page.</summary>
    Title,

    /// <summary>Numbers that change in place.</summary>
    Figures,

    /// <summary>Small numbers that change in place.</summary>
    SmallFigures,
}
