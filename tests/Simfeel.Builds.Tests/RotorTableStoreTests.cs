using System.Collections.Immutable;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using Simfeel.Builds.Assembly;
using Simfeel.Physics.Air;
using Simfeel.Physics.Rotors;

namespace Simfeel.Builds.Tests;

/// <summary>Tables on disk: the same bits as computed, or none, whatever happened to the files.</summary>
public sealed class RotorTableStoreTests : IDisposable
{
    private static readonly AirState Air = StandardAtmosphere.At(0);
    private static readonly RotorGeometry Geometry = RotorGeometry.FromPitch(0.127, 0.1, 2);
    private static readonly byte[] Key = RotorTableKey.Of(Geometry, Air)!;

    // magic text, version, fingerprint
    private const int HeaderLength = 8 + 4 + 32;

    // any finite numbers will do where only the file matters
    private static readonly RotorTable Sample = Numbered(1);

    private readonly TempFolder _folder = new();

    private RotorTableStore Store => new(_folder.Path);

    public void Dispose()
    {
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(_folder.Path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        _folder.Dispose();
    }

    [Fact]
    public void StoredBitsAreThoseOfAFreshTable()
    {
        RotorTable fresh = RotorTableBuilder.Build(Geometry, Air);
        RotorTable first = RotorTableCache.Compute(Geometry, Air, Store);
        Assert.Equal((1, 1), (Store.Contents().Tables, Directory.GetFiles(_folder.Path).Length));
        RotorTable second = RotorTableCache.Compute(Geometry, Air, Store);
        Assert.NotSame(first, second);
        Same(fresh, first);
        Same(fresh, second);
        Same(fresh, Store.Load(Key)!);
    }

    [Fact]
    public void AStoredTableIsTakenInsteadOfComputed()
    {
        Store.Save(Key, Sample);
        Same(Sample, RotorTableCache.Compute(Geometry, Air, Store));
    }

    /// <summary>What a file may have gone through.</summary>
    public static TheoryData<string> Damages => ["cut", "empty", "longer", "bit of a number", "bit of the key", "bit of the sum", "version", "magic", "foreign", "not finite", "directory"];

    [Theory]
    [MemberData(nameof(Damages))]
    public void ADamagedFileIsReplacedInSilence(string damage)
    {
        Store.Save(Key, Sample);
        string path = Assert.Single(Directory.GetFiles(_folder.Path));
        byte[] bytes = File.ReadAllBytes(path);
        switch (damage)
        {
            case "cut": bytes = bytes[..^1]; break;
            case "empty": bytes = []; break;
            case "longer": bytes = [.. bytes, 0]; break;
            case "bit of a number": bytes[5000] ^= 1; break;
            case "bit of the key": bytes[20] ^= 1; break;
            case "bit of the sum": bytes[^1] ^= 1; break;
            case "version": bytes[8]++; Sign(bytes); break;
            case "magic": bytes[0]++; Sign(bytes); break;
            case "foreign": new Random(1).NextBytes(bytes); break;
            case "not finite": BitConverter.TryWriteBytes(bytes.AsSpan(HeaderLength + 80), double.NaN); Sign(bytes); break;
            default: break;
        }
        File.Delete(path);
        if (damage == "directory") Directory.CreateDirectory(path);
        else File.WriteAllBytes(path, bytes);

        Assert.Null(Store.Load(Key));
        Store.Save(Key, Sample);
        if (damage == "directory") Assert.Null(Store.Load(Key));
        else Same(Sample, Store.Load(Key)!);
        Assert.True(Directory.GetFiles(_folder.Path).All(file => file == path));

        static void Sign(byte[] all) => SHA256.HashData(all.AsSpan(..^32), all.AsSpan(^32));
    }

    /// <summary>A file renamed to another key's name holds the wrong table and must not be taken.</summary>
    [Fact]
    public void ATableUnderAnothersNameIsNotTaken()
    {
        byte[] other = RotorTableKey.Of(Geometry, StandardAtmosphere.At(1000))!;
        Store.Save(Key, Sample);
        string path = Assert.Single(Directory.GetFiles(_folder.Path));
        File.Move(path, Path.Combine(_folder.Path, Convert.ToHexStringLower(other) + ".rotor"));
        Assert.Null(Store.Load(other));
    }

    [Fact]
    public void WhereNothingCanBeKeptTablesAreComputed()
    {
        string file = _folder.File("file");
        File.WriteAllText(file, "");
        foreach (string folder in (string[])[file, Path.Combine(file, "below"), "/proc/none/rotors", "a\0b"])
        {
            RotorTableStore store = new(folder);
            store.Save(Key, Sample);
            Assert.Null(store.Load(Key));
            Assert.Equal((0, 0), store.Contents());
        }
        Same(RotorTableBuilder.Build(Geometry, Air), RotorTableCache.Compute(Geometry, Air, new(file)));
    }

    [Fact]
    public void AFolderThatCanBeReadOnlyStillServes()
    {
        Store.Save(Key, Sample);
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(_folder.Path, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        Same(Sample, Store.Load(Key)!);
        Store.Save(Key, Sample);
        Same(Sample, Store.Load(Key)!);
    }

    [Fact]
    public void TheLeastRecentlyUsedGoFirst()
    {
        RotorTableStore small = new(_folder.Path, 3);
        byte[][] keys = [.. Enumerable.Range(0, 5).Select(i => RotorTableKey.Of(Geometry, StandardAtmosphere.At(100 * i))!)];
        for (int n = 0; n < 3; n++)
        {
            small.Save(keys[n], Sample);
            File.SetLastWriteTimeUtc(PathOf(keys[n]), DateTime.UtcNow.AddDays(n - 10));
        }
        File.WriteAllText(_folder.File("notes.txt"), "not ours");
        Assert.NotNull(small.Load(keys[0]));
        small.Save(keys[3], Sample);
        small.Save(keys[4], Sample);
        Assert.Equal([true, false, false, true, true], keys.Select(key => small.Load(key) is not null));
        Assert.Equal(3, small.Contents().Tables);
        Assert.True(File.Exists(_folder.File("notes.txt")));

        string PathOf(byte[] key) => Path.Combine(_folder.Path, Convert.ToHexStringLower(key) + ".rotor");
    }

    /// <summary>A clock that ran a year ahead and was put right: what it dated goes first, what is written now stays.</summary>
    [Fact]
    public void TablesOfAClockThatRanAheadDoNotKeepNewOnesOut()
    {
        RotorTableStore small = new(_folder.Path, 2);
        byte[][] keys = [.. Enumerable.Range(0, 4).Select(i => RotorTableKey.Of(Geometry, StandardAtmosphere.At(100 * i))!)];
        foreach (byte[] key in keys[..2])
        {
            small.Save(key, Sample);
            File.SetLastWriteTimeUtc(Assert.Single(Directory.GetFiles(_folder.Path), file => file.Contains(Convert.ToHexStringLower(key), StringComparison.Ordinal)), DateTime.UtcNow.AddYears(1));
        }
        small.Save(keys[2], Sample);
        small.Save(keys[3], Sample);
        Assert.Equal([false, false, true, true], keys.Select(key => small.Load(key) is not null));
    }

    /// <summary>Two stores on one folder, threads saving, loading and pruning at once: always the right table or none.</summary>
    [Fact]
    public void ManyMayShareAFolder()
    {
        RotorTableStore[] stores = [new(_folder.Path, 4), new(_folder.Path, 4)];
        byte[][] keys = [.. Enumerable.Range(0, 6).Select(i => RotorTableKey.Of(Geometry, StandardAtmosphere.At(100 * i))!)];
        RotorTable[] tables = [.. Enumerable.Range(0, 6).Select(Numbered)];
        int found = 0;
        Parallel.For(0, 200, new ParallelOptions { MaxDegreeOfParallelism = 4 }, n =>
        {
            RotorTableStore store = stores[n % 2];
            int i = n / 4 % 6; // each is asked for again before it is pruned
            if (store.Load(keys[i]) is RotorTable table)
            {
                Same(tables[i], table);
                Interlocked.Increment(ref found);
            }
            else
            {
                store.Save(keys[i], tables[i]);
            }
        });
        Assert.True(found > 0);
        Assert.InRange(stores[0].Contents().Tables, 1, 6);
    }

    [Fact]
    public void EverythingThatCountsIsInTheKey()
    {
        ImmutableArray<double> lift = [0, 0.5], drag = [0.02, 0.03];
        TabulatedPolar polar = new([0, 0.1], [5e4], [lift], [drag]);
        ImmutableArray<BladeStation> stations = [new(0.15, 0.12, 0.7), new(1, 0.05, 0.3)];
        byte[][] keys =
        [
            Of(new(0.127, 2, stations, 0.15, polar)),
            Of(new(0.128, 2, stations, 0.15, polar)),
            Of(new(0.127, 3, stations, 0.15, polar)),
            Of(new(0.127, 2, stations, 0.16, polar)),
            Of(new(0.127, 2, [stations[0], new(1, 0.05, 0.31)], 0.15, polar)),
            Of(new(0.127, 2, [stations[0], new(1, 0.051, 0.3)], 0.15, polar)),
            Of(new(0.127, 2, stations, 0.15, LowReynoldsPolar.Instance)),
            Of(new(0.127, 2, stations, 0.15, new TabulatedPolar([0, 0.1], [6e4], [lift], [drag]))),
            Of(new(0.127, 2, stations, 0.15, new TabulatedPolar([0, 0.2], [5e4], [lift], [drag]))),
            Of(new(0.127, 2, stations, 0.15, new TabulatedPolar([0, 0.1], [5e4], [drag], [drag]))),
            Of(new(0.127, 2, stations, 0.15, new TabulatedPolar([0, 0.1], [5e4], [lift], [lift]))),
            RotorTableKey.Of(new(0.127, 2, stations, 0.15, polar), StandardAtmosphere.At(1))!,
        ];
        Assert.Equal(keys.Length, keys.Select(Convert.ToHexString).Distinct().Count());
        Assert.Equal(keys[0], Of(new(0.127, 2, [.. stations], 0.15, new TabulatedPolar([0, 0.1], [5e4], [lift], [drag]))));
        Assert.Null(RotorTableKey.Of(new(0.127, 2, stations, 0.15, new LinearPolar(6, 0.01, 0)), Air));

        static byte[] Of(RotorGeometry geometry) => RotorTableKey.Of(geometry, Air)!;
    }

    [Theory]
    [InlineData("off", "/x", "/h", null)]
    [InlineData("/c", "/x", "/h", "/c/rotors")]
    [InlineData(null, "/x", "/h", "/x/simfeel/rotors")]
    [InlineData("", "relative", "/h", "/h/.cache/simfeel/rotors")]
    [InlineData(null, "", "/h", "/h/.cache/simfeel/rotors")]
    [InlineData(null, null, null, null)]
    [InlineData(null, null, "", null)]
    [InlineData("a\0b", null, "/h", null)]
    public void TheEnvironmentSaysWhere(string? variable, string? cache, string? home, string? folder)
    {
        RotorTableStore? store = RotorTableStore.Of(name => name switch
        {
            "SIMFEEL_CACHE" => variable,
            "XDG_CACHE_HOME" => cache,
            "HOME" => home,
            _ => null,
        });
        Assert.Equal(folder, store?.Folder);
    }

    [Fact]
    public void TestsLeaveTheUsersCacheAlone() => Assert.Null(RotorTableStore.Default);

    private static RotorTable Numbered(int seed)
    {
        Random random = new(seed);
        double[] nodes = new double[RotorTable.NodeCount];
        for (int i = 0; i < nodes.Length; i++) nodes[i] = random.NextDouble();
        return new(nodes);
    }

    private static void Same(RotorTable expected, RotorTable actual) =>
        Assert.True(MemoryMarshal.AsBytes(expected.Nodes).SequenceEqual(MemoryMarshal.AsBytes(actual.Nodes)));
}
