using System.Text;
using Simfeel.Builds;
using Simfeel.Builds.Writing;

namespace Simfeel.Studies.Blind;

/// <summary>What a vote log holds.</summary>
/// <param name="Rows">The votes in the order of the file.</param>
/// <param name="Remarks">Lines that were cut short and are left out.</param>
public sealed record VoteLogContent(IReadOnlyList<VoteRow> Rows, IReadOnlyList<Diagnostic> Remarks);

/// <summary>
/// Reads a vote log. A last line that was cut short is left out with a remark, and so is one that <see cref="VoteLog"/> has marked as cut
/// short when it went on behind it. Any other bad line is an error: a result without it would be another result.
/// </summary>
internal static class VoteLogReader
{
    /// <summary>What is put behind a line that a killed program left half-written.</summary>
    public const string CutMark = ",#cut short";

    // some 500 000 votes
    private const int MaxSize = 64 * 1024 * 1024;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads a file.</summary>
    /// <exception cref="VoteLogException">The file cannot be read or is no vote log, or lines of it are wrong: all of them are named.</exception>
    public static VoteLogContent Read(string path)
    {
        ReadOnlySpan<byte> bytes = Bytes(path);
        if (bytes.StartsWith<byte>([0xEF, 0xBB, 0xBF])) bytes = bytes[3..];
        List<VoteRow> rows = [];
        List<Diagnostic> remarks = [], errors = [];
        for (int number = 1; bytes.Length > 0; number++)
        {
            int end = bytes.IndexOf((byte)'\n');
            ReadOnlySpan<byte> line = (end < 0 ? bytes : bytes[..end]).TrimEnd((byte)'\r');
            bytes = end < 0 ? [] : bytes[(end + 1)..];
            if (number == 1) CheckHeader(line, end < 0, path, remarks);
            else if (line.Length > 0) Take(line, number, end < 0);
        }
        return errors.Count == 0 ? new(rows, remarks) : throw new VoteLogException(errors);

        void Take(ReadOnlySpan<byte> line, int number, bool last)
        {
            bool whole = TryFields(line, out IReadOnlyList<CsvField> fields, out string problem);
            if (line.EndsWith(Encoding.UTF8.GetBytes(CutMark)) || (last && !whole))
                remarks.Add(Cut(path, number));
            else if (!whole)
                errors.Add(new(Severity.Error, path, number, null, "", "", problem, ""));
            else if (VoteRowFormat.TryRead(fields, out VoteRow? row, out (int Column, string Allowed) wrong))
                rows.Add(row);
            else
                errors.Add(Wrong(path, number, fields[wrong.Column], VoteRowFormat.Columns[wrong.Column], wrong.Allowed));
        }
    }

    /// <summary>Whether a line is one record with all its fields.</summary>
    public static bool IsWhole(ReadOnlySpan<byte> line) => TryFields(line, out _, out _);

    /// <summary>Opens a file that another program may be writing, reads it, and says in one sentence what is in the way.</summary>
    private static byte[] Bytes(string path)
    {
        if (Directory.Exists(path)) throw new VoteLogException(path, null, "This is a folder, not a vote log.", "name a file, such as votes.csv");
        try
        {
            using FileStream file = LoneFile.OpenToRead(path);
            if (file.Length > MaxSize) throw new VoteLogException(path, null, "The file has more than 64 MiB.", "is this the right file?");
            byte[] bytes = new byte[file.Length];
            int count = file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            return bytes[..count];
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new VoteLogException(path, null, "There is no such file.", "blind flights write one, vote by vote");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new VoteLogException(path, null, "The file cannot be opened: " + e.Message);
        }
    }

    private static void CheckHeader(ReadOnlySpan<byte> line, bool last, string path, List<Diagnostic> remarks)
    {
        ReadOnlySpan<byte> header = Encoding.UTF8.GetBytes(VoteRowFormat.Header);
        if (line.SequenceEqual(header)) return;
        if (!last || !header.StartsWith(line))
            throw new VoteLogException(path, 1, "This is no vote log of this program.", $"the first line must be {VoteRowFormat.Header}");
        remarks.Add(Cut(path, 1));
    }

    private static bool TryFields(ReadOnlySpan<byte> line, out IReadOnlyList<CsvField> fields, out string problem)
    {
        fields = [];
        problem = "";
        try
        {
            // a lost supply may leave zeros where a line should be
            if (line.Contains((byte)0)) problem = "The line holds zero bytes.";
            else if (!CsvLine.TrySplit(Strict.GetString(line), out fields)) problem = "A quote is opened and never closed.";
            else if (fields.Count != VoteRowFormat.Columns.Count) problem = $"The line has {fields.Count} fields; it must have {VoteRowFormat.Columns.Count}.";
        }
        catch (DecoderFallbackException)
        {
            problem = "The line is no UTF-8 text.";
        }
        return problem.Length == 0;
    }

    private static Diagnostic Cut(string path, int line) =>
        new(Severity.Warning, path, line, null, "", "", "The line was cut short while it was written; it is left out.", "");

    private static Diagnostic Wrong(string path, int line, CsvField field, string column, string allowed) =>
        new(Severity.Error, path, line, field.Column, column, field.Text.Length == 0 ? "(nothing)" : field.Text, $"It must be {allowed}.", "");
}
