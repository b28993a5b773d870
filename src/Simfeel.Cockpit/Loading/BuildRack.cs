using System.Collections.Concurrent;
using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Physics.Air;

namespace Simfeel.Cockpit.Loading;

/// <summary>
/// The builds that the start page offers, put together in the background: those asked for first, then the others. Asked by
/// the window's thread, which never waits.
/// </summary>
public sealed class BuildRack : IDisposable
{
    private readonly BuildShelf _shelf;
    private readonly string[] _paths;
    private readonly AirState _air;
    private readonly PilotProfile _profile;
    private readonly FlyableResult?[] _results;
    private readonly ConcurrentStack<int> _wanted = new();
    private readonly CancellationTokenSource _stop = new();
    private Task _work = Task.CompletedTask;
    private int _done;
    private bool _resting;
    private bool _started;

    /// <summary>A rack whose builds wait for <see cref="Start"/>.</summary>
    /// <param name="shelf">Builds known by their names.</param>
    /// <param name="more">Further files or names; the first ones are loaded first.</param>
    /// <param name="air">The air they fly in.</param>
    /// <param name="profile">The pilot they are tuned for.</param>
    public BuildRack(BuildShelf shelf, IEnumerable<string> more, AirState air, PilotProfile profile)
    {
        ArgumentNullException.ThrowIfNull(shelf);
        _shelf = shelf;
        _air = air;
        _profile = profile;
        string[] first = [.. more.Select(name => shelf.PathOf(name) ?? name)];
        _paths = [.. first.Concat(shelf.Names.Select(name => shelf.PathOf(name)!)).Distinct(StringComparer.Ordinal)];
        Names = [.. _paths.Select(path => Path.GetFileNameWithoutExtension(path))];
        _results = new FlyableResult?[_paths.Length];
    }

    /// <summary>Begins to load; once, when the first picture stands, so that it does not have to share the processor.</summary>
    public void Start()
    {
        if (_started) return;
        _started = true;
        _work = Task.Run(Load);
    }

    /// <summary>Names of all builds, by which they are picked.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>Loads only what is asked for, so that a flight has the processor to itself.</summary>
    public bool Resting
    {
        get => Volatile.Read(ref _resting);
        set => Volatile.Write(ref _resting, value);
    }

    /// <summary>How many are loaded; changes when there is something new to show.</summary>
    public int Done => Volatile.Read(ref _done);

    /// <summary>Index of a build by name or file; -1 where there is none.</summary>
    public int IndexOf(string nameOrPath)
    {
        for (int n = 0; n < _paths.Length; n++)
        {
            if (string.Equals(Names[n], nameOrPath, StringComparison.OrdinalIgnoreCase) || _paths[n] == nameOrPath) return n;
        }
        return -1;
    }

    /// <summary>File of a build.</summary>
    public string PathOf(int index) => _paths[index];

    /// <summary>What came of a build; null while it is not loaded.</summary>
    public FlyableResult? Peek(int index) => Volatile.Read(ref _results[index]);

    /// <summary>What came of a build; null while it is being loaded, which it then is next.</summary>
    public FlyableResult? Get(int index)
    {
        FlyableResult? result = Peek(index);
        if (result is null) _wanted.Push(index);
        return result;
    }

    /// <summary>Waits for a build.</summary>
    public FlyableResult Wait(int index)
    {
        Start();
        while (Get(index) is null && !_work.IsCompleted) Thread.Sleep(5);
        return Get(index) ?? new(null, $"{_paths[index]} was not loaded.");
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _stop.Cancel();
        _work.Wait();
        _stop.Dispose();
    }

    private void Load()
    {
        int next = 0;
        while (!_stop.IsCancellationRequested)
        {
            if (!_wanted.TryPop(out int index))
            {
                if (Resting)
                {
                    Thread.Sleep(20);
                    continue;
                }
                while (next < _paths.Length && _results[next] is not null) next++;
                if (next == _paths.Length) return;
                index = next;
            }
            if (_results[index] is not null) continue;
            Volatile.Write(ref _results[index], BuildLoader.Load(_paths[index], _shelf, _air, _profile));
            Interlocked.Increment(ref _done);
        }
    }
}
