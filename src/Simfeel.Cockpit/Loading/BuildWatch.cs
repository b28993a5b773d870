using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Physics.Air;

namespace Simfeel.Cockpit.Loading;

/// <summary>
/// Watches the file of a build, and the polar it names, while the build is flown: what an editor saves is loaded in the
/// background and offered once. Looks at time and length of the files four times a second, which works for every editor and
/// file system, also where the editor writes a new file and renames it over the old one. A file is loaded once it has kept
/// still from one look to the next, so that half a file is not taken for a mistake.
/// </summary>
public sealed class BuildWatch : IDisposable
{
    /// <summary>Time between two looks.</summary>
    public static readonly TimeSpan Pause = TimeSpan.FromSeconds(0.25);

    private readonly string _path;
    private readonly AirState _air;
    private readonly PilotProfile _profile;
    private readonly CancellationTokenSource _stop = new();
    private Offer? _offer;

    /// <summary>Starts to watch.</summary>
    /// <param name="build">The build as it was loaded; a file that has changed since is loaded at once.</param>
    /// <param name="profile">The pilot.</param>
    /// <exception cref="ArgumentException">The build comes from no file.</exception>
    public BuildWatch(FlyableBuild build, PilotProfile profile)
    {
        ArgumentNullException.ThrowIfNull(build);
        _path = build.Path ?? throw new ArgumentException("A build that comes from no file cannot be watched.", nameof(build));
        _air = build.Assembled.Air;
        _profile = profile;
        Thread thread = new(() => Watch(build)) { IsBackground = true, Name = "build watch", Priority = ThreadPriority.BelowNormal };
        thread.Start();
    }

    /// <summary>Whether it is this build's file that is watched, for this pilot and in this air.</summary>
    public bool Watches(FlyableBuild build, PilotProfile profile)
    {
        ArgumentNullException.ThrowIfNull(build);
        return build.Path == _path && build.Assembled.Air == _air && profile == _profile;
    }

    /// <summary>
    /// The outcome of the last change of the file, once: a build to fly at the next restart, or what is wrong with it, in which
    /// case the build before stays. Never waits.
    /// </summary>
    /// <param name="build">The new build; null where the file is wrong.</param>
    /// <param name="error">Everything that is wrong, one finding a line; null where the build flies.</param>
    public bool TryTake(out FlyableBuild? build, out string? error)
    {
        Offer? offer = Interlocked.Exchange(ref _offer, null);
        (build, error) = (offer?.Build, offer?.Error);
        return offer is not null;
    }

    /// <summary>Stops watching; a load under way is thrown away.</summary>
    public void Dispose() => _stop.Cancel();

    private void Watch(FlyableBuild build)
    {
        // always look first and read then: what changes in between shows at the next look
        string[] files = FilesOf(build.Source, []);
        Stamp[] before = Look(files);
        Stamp[] loaded = BuildReader.Read(_path).Build?.Source == build.Source ? before : [];
        while (!_stop.Token.WaitHandle.WaitOne(Pause))
        {
            Stamp[] now = Look(files);
            bool still = now.AsSpan().SequenceEqual(before);
            before = now;
            if (!still || now.AsSpan().SequenceEqual(loaded)) continue;
            (FlyableResult result, files, loaded) = Load(files);
            if (_stop.IsCancellationRequested) return;
            Interlocked.Exchange(ref _offer, new(result.Build, result.Build is null ? result.Message : null));
            before = loaded;
        }
    }

    /// <summary>Loads the build; gives its files and how they looked before they were read.</summary>
    private (FlyableResult Result, string[] Files, Stamp[] Looks) Load(string[] files)
    {
        while (true)
        {
            Stamp[] looks = Look(files);
            FlyableResult result = FlyableBuild.Read(_path, _air, _profile);
            string[] used = result.Build is { } good
                ? FilesOf(good.Source, [])
                : [.. files.Union(FilesOf(null, BuildReader.Read(_path).Diagnostics))];
            if (!used.Except(files).Any()) return (result, used, Array.ConvertAll(used, file => looks[Array.IndexOf(files, file)]));
            // a file that was not looked at before it was read: once more
            files = [.. files.Union(used)];
        }
    }

    /// <summary>The build file first, then its polar; where that cannot be read, whatever the findings name.</summary>
    private string[] FilesOf(BuildSource? source, IReadOnlyList<Diagnostic> found)
    {
        string path = Path.GetFullPath(_path), folder = Path.GetDirectoryName(path)!;
        IEnumerable<string> polars = found.Where(d => d.Key == "propeller.polar").Select(d => d.Value.Trim('"')).Append(source?.PolarFile).OfType<string>();
        return [.. new[] { path }.Concat(polars.Select(name => Path.Combine(folder, name))).Concat(found.Select(d => Path.GetFullPath(d.File))).Distinct()];
    }

    private static Stamp[] Look(string[] files) => Array.ConvertAll(files, file =>
    {
        FileInfo info = new(file);
        return info.Exists ? new Stamp(info.LastWriteTimeUtc, info.Length) : default;
    });

    /// <summary>What a file shows of itself without being opened; default where it is not there.</summary>
    private readonly record struct Stamp(DateTime Written, long Length);

    private sealed record Offer(FlyableBuild? Build, string? Error);
}
