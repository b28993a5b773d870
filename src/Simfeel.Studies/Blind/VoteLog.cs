using System.Text;
using Simfeel.Builds.Writing;

namespace Simfeel.Studies.Blind;

/// <summary>
/// Votes on disk: comma-separated values after RFC 4180 in UTF-8, one line for each vote, numbers with a point. Every vote is written in one
/// piece and down to the disk, while the file is held alone, so several programs may share it. What a killed program left half-written
/// stays in the file, closed and marked.
/// </summary>
/// <param name="path">The file; made with its folder at the first vote.</param>
public sealed class VoteLog(string path)
{
    /// <summary>Its usual name.</summary>
    public const string UsualName = "votes.csv";

    private const string LineEnd = "\r\n";
    private const int LongestLine = 64 * 1024;

    /// <summary>Adds a vote.</summary>
    /// <param name="vote">The vote.</param>
    /// <param name="subject">What was compared.</param>
    /// <param name="time">When it was given.</param>
    /// <exception cref="VoteLogException">The file is no vote log, or cannot be written. The vote can be added again.</exception>
    public void Append(CastVote vote, VoteSubject subject, DateTimeOffset time)
    {
        ArgumentNullException.ThrowIfNull(vote);
        ArgumentNullException.ThrowIfNull(subject);
        Append(new VoteRow(time, vote.Test, vote.Open(), subject));
    }

    /// <summary>All votes of a file.</summary>
    /// <exception cref="VoteLogException">The file cannot be read or is no vote log, or lines of it are wrong: all of them are named.</exception>
    public static VoteLogContent Read(string path) => VoteLogReader.Read(path);

    /// <summary>Adds a line.</summary>
    internal void Append(VoteRow row)
    {
        string line = Checked(row);
        try
        {
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(path))!);
            using FileStream file = LoneFile.OpenToAdd(path);
            LoneFile.Add(file, Encoding.UTF8.GetBytes(Joint(file) + line + LineEnd));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw new VoteLogException(path, null, "The vote cannot be stored: " + e.Message);
        }
    }

    /// <summary>The line of a vote, refused before it is written where it could not be read again.</summary>
    private static string Checked(VoteRow row)
    {
        string line = VoteRowFormat.Write(row);
        CsvLine.TrySplit(line, out IReadOnlyList<CsvField> fields);
        if (VoteRowFormat.TryRead(fields, out _, out (int Column, string Allowed) wrong)) return line;
        throw new ArgumentException($"{VoteRowFormat.Columns[wrong.Column]} is '{fields[wrong.Column].Text}'; it must be {wrong.Allowed}.", nameof(row));
    }

    /// <summary>What must stand between the end of the file and a new line: mostly nothing, at the start the header.</summary>
    private string Joint(FileStream file)
    {
        byte[] header = Encoding.UTF8.GetBytes(VoteRowFormat.Header + LineEnd);
        ReadOnlySpan<byte> start = Bytes(file, 0, header.Length + 3);
        if (start.StartsWith<byte>([0xEF, 0xBB, 0xBF])) start = start[3..];
        // nothing yet, or a header that was cut short
        if (start.Length < header.Length && header.AsSpan().StartsWith(start)) return Encoding.UTF8.GetString(header.AsSpan(start.Length));
        int end = header.Length - LineEnd.Length;
        if (start.Length <= end || !start.StartsWith(header.AsSpan(0, end)) || start[end] is not ((byte)'\r' or (byte)'\n'))
            throw new VoteLogException(path, 1, "This is no vote log of this program, so nothing is added to it.", "choose another file");

        ReadOnlySpan<byte> tail = Bytes(file, Math.Max(0, file.Length - LongestLine), LongestLine);
        tail = tail[(tail.LastIndexOf((byte)'\n') + 1)..];
        if (tail.Length == 0) return "";
        if (VoteLogReader.IsWhole(tail.TrimEnd((byte)'\r'))) return tail[^1] == '\r' ? "\n" : LineEnd;
        bool open = tail.Count((byte)'"') % 2 == 1;
        return (open ? "\"" : "") + VoteLogReader.CutMark + LineEnd;
    }

    private static byte[] Bytes(FileStream file, long from, int most)
    {
        byte[] bytes = new byte[most];
        file.Seek(from, SeekOrigin.Begin);
        int count = file.ReadAtLeast(bytes, most, throwOnEndOfStream: false);
        return bytes[..count];
    }
}
