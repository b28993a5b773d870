namespace Simfeel.Builds;

/// <summary>
/// Text out of files on its way into a message. A file may hold anything; a message is one line of moderate length that moves no
/// terminal's cursor and turns nothing round that stands behind it.
/// </summary>
public static class OneLine
{
    /// <summary>Characters of a whole message at most.</summary>
    public const int Longest = 1500;

    /// <summary>The text in one line; what cannot be printed becomes a blank, what is too long is cut.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="most">Characters at most, 4 or more.</param>
    public static string Of(string text, int most = Longest)
    {
        ArgumentNullException.ThrowIfNull(text);
        string cut = text.Length <= most ? text : text[..(most - 3)] + "...";
        return cut.AsSpan().IndexOfAnyExceptInRange(' ', '~') < 0 ? cut : string.Concat(cut.Select(c => IsPrintable(c) ? c : ' '));
    }

    /// <summary>False for control characters, separators of lines, and marks that turn the direction of writing.</summary>
    internal static bool IsPrintable(char c) =>
        !char.IsControl(c) && c is not ('\u2028' or '\u2029' or (>= '\u202a' and <= '\u202e') or (>= '\u2066' and <= '\u2069'));

    /// <summary>Whether a text of a file has signs that no page and no terminal can show; line ends and tabs are none.</summary>
    internal static bool HasControls(string text) => text.Any(c => char.IsControl(c) && c is not ('\n' or '\r' or '\t'));
}
