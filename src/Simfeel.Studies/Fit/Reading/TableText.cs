using System.Text;

namespace Simfeel.Studies.Fit.Reading;

/// <summary>Gets the text out of a table file in whatever encoding a spreadsheet or a stand left it.</summary>
internal static class TableText
{
    private const int MaxSize = 16 * 1024 * 1024;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The text of a file.</summary>
    /// <exception cref="FitException">The file cannot be read or holds no text.</exception>
    public static string ReadFile(string path)
    {
        if (Directory.Exists(path)) throw new FitException(path, null, "This is a folder, not a table.", "name a file, such as stand.csv");
        try
        {
            using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            byte[] buffer = new byte[MaxSize + 1];
            int count = file.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
            if (count > MaxSize) throw new FitException(path, null, "The file has more than 16 MiB.", "is this the right file?");
            return Decode(buffer.AsSpan(0, count), path);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new FitException(path, null, "There is no such file.", "check the path");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new FitException(path, null, "The file cannot be opened: " + e.Message);
        }
    }

    /// <summary>UTF-8 or UTF-16 by their marks, UTF-8 where the bytes are valid, else Latin-1.</summary>
    public static string Decode(ReadOnlySpan<byte> bytes, string source)
    {
        if (bytes.StartsWith<byte>([0xFF, 0xFE])) return Encoding.Unicode.GetString(bytes[2..]);
        if (bytes.StartsWith<byte>([0xFE, 0xFF])) return Encoding.BigEndianUnicode.GetString(bytes[2..]);
        if (bytes.StartsWith<byte>([0xEF, 0xBB, 0xBF])) bytes = bytes[3..];
        if (bytes.Contains((byte)0))
            throw new FitException(source, null, "This is a binary file, not a table of text.", "save the sheet as CSV");
        try
        {
            return Strict.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return Encoding.Latin1.GetString(bytes);
        }
    }
}
