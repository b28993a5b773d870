using System.Text;
using Simfeel.Builds.Format;

namespace Simfeel.Builds.Reading;

/// <summary>Gets the text out of a file, or says in one diagnostic why there is none.</summary>
internal static class SourceText
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The text of the file; null where it cannot be had, with the reason in <paramref name="bag"/>.</summary>
    /// <param name="path">The file.</param>
    /// <param name="bag">Receives the reason.</param>
    /// <param name="kind">What the file should be.</param>
    public static string? ReadFile(string path, DiagnosticBag bag, string kind = "build file")
    {
        byte[] bytes;
        try
        {
            if (Directory.Exists(path))
            {
                bag.Error(null, "", "", $"This is a folder, not a {kind}.", kind == "build file" ? "name a file that ends in .toml" : "");
                return null;
            }
            // Length 0 is normal for a pipe, so only too long is refused up front; the read itself is bounded too.
            using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            if (file.CanSeek && file.Length > BuildFormat.MaxFileSize) return TooLarge(bag, file.Length, kind);
            byte[] buffer = new byte[BuildFormat.MaxFileSize + 1];
            int count = file.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
            if (count > BuildFormat.MaxFileSize) return TooLarge(bag, null, kind);
            bytes = buffer[..count];
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            bag.Error(null, "", "", "There is no such file.", "check the path");
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            bag.Error(null, "", "", "The file cannot be opened: " + e.Message);
            return null;
        }
        return Decode(bytes, bag, kind);
    }

    /// <summary>The text behind the bytes; null where they are no UTF-8 text.</summary>
    public static string? Decode(ReadOnlySpan<byte> bytes, DiagnosticBag bag, string kind = "build file")
    {
        if (bytes.StartsWith<byte>([0xFF, 0xFE]) || bytes.StartsWith<byte>([0xFE, 0xFF]))
        {
            bag.Error(null, "", "", $"The file is stored as UTF-16; a {kind} is UTF-8.", "save it again as UTF-8");
            return null;
        }
        if (bytes.Contains((byte)0))
        {
            bag.Error(null, "", "", "This is a binary file, not text.", kind == "build file" ? "a build file is plain text in TOML" : "");
            return null;
        }
        // editors write a byte order mark before one that is there already
        while (bytes.StartsWith<byte>([0xEF, 0xBB, 0xBF])) bytes = bytes[3..];
        try
        {
            return Strict.GetString(bytes);
        }
        catch (DecoderFallbackException e)
        {
            int line = 1 + bytes[..Math.Min(e.Index, bytes.Length)].Count((byte)'\n');
            bag.Error(new(line, 1), "", "", "This line has bytes that are no UTF-8 text.", "save the file again as UTF-8");
            return null;
        }
    }

    /// <summary>False, with a diagnostic, where the text is empty or too long.</summary>
    /// <param name="text">The text.</param>
    /// <param name="bag">Receives the diagnostic.</param>
    /// <param name="kind">What the text should be.</param>
    /// <param name="start">What to start from where it is empty.</param>
    public static bool Check(string text, DiagnosticBag bag, string kind, string start)
    {
        if (text.Length > BuildFormat.MaxFileSize)
        {
            TooLarge(bag, text.Length, kind);
            return false;
        }
        if (string.IsNullOrWhiteSpace(text))
        {
            bag.Error(null, "", "", "The file is empty.", start);
            return false;
        }
        return true;
    }

    private static string? TooLarge(DiagnosticBag bag, long? size, string kind)
    {
        string much = size is long s ? $"{s / 1024.0 / 1024.0:F1} MiB" : "more than 1 MiB";
        bag.Error(null, "", "", $"The file has {much}; a {kind} may have at most 1 MiB.", "is this the right file?");
        return null;
    }
}
