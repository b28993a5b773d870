using System.Globalization;

namespace Simfeel.Builds.Writing;

/// <summary>Where a text may be cut: never within a character of two halves, nor between a letter and its marks.</summary>
public static class TextCut
{
    /// <summary>The nearest such place at or before another, 0 to the length.</summary>
    public static int Before(string text, int at)
    {
        ArgumentNullException.ThrowIfNull(text);
        while (at > 0 && at < text.Length && (char.IsLowSurrogate(text[at]) || IsBound(text, at))) at--;
        return at;
    }

    /// <summary>A text, or its beginning with an ellipsis, of at most so many letters.</summary>
    public static string Short(string text, int letters)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length <= letters ? text : text[..Before(text, letters - 1)] + "\u2026";
    }

    /// <summary>Whether a character belongs to the one before it.</summary>
    private static bool IsBound(string text, int at) =>
        CharUnicodeInfo.GetUnicodeCategory(text, at) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.SpacingCombiningMark;
}
