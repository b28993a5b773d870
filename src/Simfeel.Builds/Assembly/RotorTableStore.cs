using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Security;
using System.Security.Cryptography;
using Simfeel.Builds.Writing;
using Simfeel.Physics.Rotors;

namespace Simfeel.Builds;

/// <summary>
/// Rotor tables on disk, so that the next start need not compute them again. A convenience and no more: what cannot be
/// read, is cut, foreign or damaged, counts as not there, what cannot be written is not kept, and neither is an error. A
/// file is written beside its place and then renamed, so several processes may share a folder. The least recently used
/// go first when there are too many.
/// <para>
/// A file holds the magic text, the format's version, the fingerprint of all that the table depends on, the bits of its
/// nodes, and the SHA-256 sum of all that; numbers little-endian.
/// </para>
/// Safe for threads.
/// </summary>
public sealed class RotorTableStore
{
    /// <summary>Environment variable: <c>off</c>, or the folder to keep caches in.</summary>
    public const string Variable = "SIMFEEL_CACHE";

    private const int DefaultCapacity = 256;
    private const int Version = 1;
    private const string Extension = ".rotor";

    private static ReadOnlySpan<byte> Magic => "SIMFEELR"u8;

    private const int HeaderLength = 8 + sizeof(int) + Assembly.RotorTableKey.Length;
    private const int ContentLength = HeaderLength + (RotorTable.NodeCount * sizeof(double));
    private const int FileLength = ContentLength + SHA256.HashSizeInBytes;

    private readonly int _capacity;

    internal RotorTableStore(string folder, int capacity = DefaultCapacity)
    {
        Folder = folder;
        _capacity = capacity;
    }

    /// <summary>The store of this process; null where <see cref="Variable"/> is <c>off</c> or no place for it is known.</summary>
    public static RotorTableStore? Default { get; } = Of(Environment.GetEnvironmentVariable);

    /// <summary>Where the tables are; the folder need not exist.</summary>
    public string Folder { get; }

    /// <summary>How many tables there are, and their size in bytes.</summary>
    public (int Tables, long Bytes) Contents()
    {
        try
        {
            FileInfo[] files = Files();
            return (files.Length, files.Sum(file => file.Length));
        }
        catch (Exception e) when (OfTheDisk(e))
        {
            return (0, 0);
        }
    }

    /// <summary>
    /// The store that an environment asks for: <see cref="Variable"/>, else <c>XDG_CACHE_HOME</c>, else <c>.cache</c> in
    /// the home folder (XDG Base Directory Specification, which ignores relative paths).
    /// </summary>
    internal static RotorTableStore? Of(Func<string, string?> environment)
    {
        string? asked = environment(Variable);
        if (asked == "off") return null;
        string root;
        if (!string.IsNullOrEmpty(asked)) root = asked;
        else if (environment("XDG_CACHE_HOME") is string cache && Path.IsPathRooted(cache)) root = Path.Combine(cache, "simfeel");
        else if (environment("HOME") is string home && Path.IsPathRooted(home)) root = Path.Combine(home, ".cache", "simfeel");
        else return null;
        try
        {
            return new(Path.Combine(Path.GetFullPath(root), "rotors"));
        }
        catch (Exception e) when (OfTheDisk(e))
        {
            return null;
        }
    }

    /// <summary>The table of a fingerprint, bit for bit as it was saved; null where there is none.</summary>
    internal RotorTable? Load(ReadOnlySpan<byte> key)
    {
        try
        {
            string path = PathOf(key);
            // the length of what is no plain file is 0 or throws; opening a pipe would wait for ever
            if (!File.Exists(path) || new FileInfo(path).Length != FileLength) return null;
            byte[] bytes = File.ReadAllBytes(path);
            if (bytes.Length != FileLength
                || !bytes.AsSpan(0, HeaderLength).SequenceEqual(Header(key))
                || !bytes.AsSpan(ContentLength).SequenceEqual(SHA256.HashData(bytes.AsSpan(0, ContentLength))))
            {
                return null;
            }
            RotorTable table = new(MemoryMarshal.Cast<byte, double>(bytes.AsSpan(HeaderLength, ContentLength - HeaderLength)).ToArray());
            Touch(path);
            return table;
        }
        catch (Exception e) when (OfTheDisk(e))
        {
            return null;
        }
    }

    /// <summary>Keeps a table under a fingerprint.</summary>
    internal void Save(ReadOnlySpan<byte> key, RotorTable table)
    {
        try
        {
            Directory.CreateDirectory(Folder);
            byte[] bytes = new byte[FileLength];
            Header(key).CopyTo(bytes, 0);
            MemoryMarshal.AsBytes(table.Nodes).CopyTo(bytes.AsSpan(HeaderLength));
            SHA256.HashData(bytes.AsSpan(0, ContentLength), bytes.AsSpan(ContentLength));
            // the sum tells a table that a lost supply took
            WholeFile.Write(PathOf(key), file => file.Write(bytes), lasting: false);
            Prune();
        }
        catch (Exception e) when (OfTheDisk(e))
        {
            // a folder that is full or can be read only
        }
    }

    private static byte[] Header(ReadOnlySpan<byte> key)
    {
        byte[] header = new byte[HeaderLength];
        Magic.CopyTo(header);
        BinaryPrimitives.WriteInt32LittleEndian(header.AsSpan(Magic.Length), Version);
        key.CopyTo(header.AsSpan(Magic.Length + sizeof(int)));
        return header;
    }

    private string PathOf(ReadOnlySpan<byte> key) => Path.Combine(Folder, Convert.ToHexStringLower(key) + Extension);

    private FileInfo[] Files() =>
        Directory.Exists(Folder) ? [.. new DirectoryInfo(Folder).GetFiles("*" + Extension)] : [];

    /// <summary>The time of the last use, from which the oldest is known.</summary>
    private static void Touch(string path)
    {
        try
        {
            File.SetLastWriteTimeUtc(path, DateTime.UtcNow);
        }
        catch (Exception e) when (OfTheDisk(e))
        {
            // a folder that can be read only
        }
    }

    private void Prune()
    {
        // what a clock dated that ran ahead would else stay for good, and every new table go at once;
        // an hour is for clocks of other machines that share the folder
        DateTime ahead = DateTime.UtcNow.AddHours(1);
        FileInfo[] tables = Files();
        IEnumerable<FileInfo> oldest = tables.OrderBy(file => file.LastWriteTimeUtc < ahead).ThenBy(file => file.LastWriteTimeUtc);
        foreach (FileInfo file in oldest.Take(Math.Max(0, tables.Length - _capacity))) Delete(file.FullName);
    }

    private static void Delete(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception e) when (OfTheDisk(e))
        {
            // another process was first, or the folder can be read only
        }
    }

    private static bool OfTheDisk(Exception e) =>
        e is IOException or UnauthorizedAccessException or SecurityException or NotSupportedException or ArgumentException;
}
