namespace Simfeel.Cockpit.Drawing;

/// <summary>Size of texts and of all that goes with them, against the usual size.</summary>
public static class TextScale
{
    /// <summary>Smallest.</summary>
    public const double Low = 0.75;

    /// <summary>Largest.</summary>
    public const double High = 2;

    /// <summary>One press of a key.</summary>
    public const double Step = 0.05;
}
