namespace Simfeel.Studies;

/// <summary>Small work on words that are shown to people.</summary>
public static class Words
{
    /// <summary>A text with a capital letter first.</summary>
    public static string Capital(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
    }
}
