using Simfeel.Flight;

namespace Simfeel.Cockpit.Parts;

/// <summary>How the changes on a part bench stand.</summary>
public enum PartBenchState
{
    /// <summary>All changes are worked out.</summary>
    Ready,

    /// <summary>The last change is being worked out.</summary>
    Working,

    /// <summary>The changes do not go together; see <see cref="PartBench.Message"/>.</summary>
    Refused,
}

/// <summary>
/// A build whose parts are changed number by number while it is flown. Changes are worked out in the background, the latest
/// first: what comes in meanwhile is taken together. The window's thread makes the changes and reads the outcome; it never
/// waits.
/// </summary>
public sealed class PartBench
{
    private readonly PilotProfile _profile;
    private readonly Lock _gate = new();
    private readonly IReadOnlyList<PartBenchItem> _items;
    private readonly Dictionary<string, double> _changed = new(StringComparer.Ordinal);
    private volatile Outcome _outcome;
    private Outcome _shown;
    private int _version;
    private Task _work = Task.CompletedTask;

    /// <summary>A bench for a build as its file has it.</summary>
    /// <param name="file">The build, without edits.</param>
    /// <param name="profile">The pilot.</param>
    /// <param name="edits">Changes made already, such as before the file was read anew; those of other keys than the bench's are left out.</param>
    /// <exception cref="ArgumentException">The build has edits in it.</exception>
    public PartBench(FlyableBuild file, PilotProfile profile, IEnumerable<KeyValuePair<string, double>>? edits = null)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(profile);
        if (file.Edits.Count > 0) throw new ArgumentException("A bench starts from the build as its file has it.", nameof(file));
        File = file;
        _profile = profile;
        _items = PartBenchList.Of(file.Assembled.Build);
        _outcome = _shown = new(PartBenchState.Ready, "", PartBenchDifferences.Between(file.Unit, file.Unit, profile.StateOfCharge), file);
        foreach ((string key, double value) in edits ?? []) Change(key, value);
    }

    /// <summary>The build as its file has it.</summary>
    public FlyableBuild File { get; }

    /// <summary>
    /// The numbers that can be changed, always the same list. Those that are not changed but follow from others, such as an
    /// estimated mass, take their new values here; so read it on the thread that makes the changes.
    /// </summary>
    public IReadOnlyList<PartBenchItem> Items
    {
        get
        {
            if (!ReferenceEquals(_shown, _outcome)) Follow();
            return _items;
        }
    }

    /// <summary>How the changes stand.</summary>
    public PartBenchState State => _outcome.State;

    /// <summary>Why the changes are refused, one finding a line with the allowed range and its unit; empty otherwise.</summary>
    public string Message => _outcome.Message;

    /// <summary>What the last accepted changes change.</summary>
    public IReadOnlyList<PartBenchDifference> Differences => _outcome.Differences;

    /// <summary>
    /// What to fly at the next restart: the build with its changes, the last accepted ones where the present ones are refused;
    /// null while they are being worked out.
    /// </summary>
    public FlyableBuild? Result => _outcome.State == PartBenchState.Working ? null : _outcome.Accepted;

    /// <summary>What was changed, key and value; what only followed is not among them.</summary>
    public IReadOnlyList<KeyValuePair<string, double>> Edits
    {
        get
        {
            lock (_gate) return [.. _changed];
        }
    }

    /// <summary>Ends when all changes made so far are worked out.</summary>
    public Task Settled
    {
        get
        {
            lock (_gate) return _work;
        }
    }

    /// <summary>An item's value was changed.</summary>
    public void Changed(PartBenchItem item)
    {
        ArgumentNullException.ThrowIfNull(item);
        lock (_gate)
        {
            // back at the file's value a number is as if it had never been touched, so that estimates follow again
            if (item.Value == item.Original) _changed.Remove(item.Key);
            else _changed[item.Key] = item.Value;
            Start();
        }
    }

    /// <summary>Called before changes are worked out, on the thread that does it; a test holds it there.</summary>
    internal Action? WorkBegins { get; init; }

    /// <summary>Changes an item by its key; keys that are not on the bench are left alone.</summary>
    public void Change(string key, double value)
    {
        if (_items.FirstOrDefault(item => item.Key == key) is not { } item) return;
        item.Value = value;
        Changed(item);
    }

    /// <summary>Puts every number back to what the file gives.</summary>
    public void Reset()
    {
        lock (_gate)
        {
            _changed.Clear();
            foreach (PartBenchItem item in _items) item.Value = item.Original;
            Start();
        }
    }

    /// <summary>Call with the gate held.</summary>
    private void Start()
    {
        _version++;
        bool running = _outcome.State == PartBenchState.Working;
        _outcome = _outcome with { State = PartBenchState.Working, Message = "" };
        if (!running) _work = Task.Run(Work);
    }

    private void Work()
    {
        WorkBegins?.Invoke();
        while (true)
        {
            int version;
            KeyValuePair<string, double>[] edits;
            Outcome before;
            lock (_gate)
            {
                version = _version;
                before = _outcome;
                edits = [.. _items.Where(item => _changed.ContainsKey(item.Key)).Select(item => KeyValuePair.Create(item.Key, _changed[item.Key]))];
            }
            Outcome outcome = WorkOut(edits, before);
            lock (_gate)
            {
                if (version != _version) continue;
                _outcome = outcome;
                return;
            }
        }
    }

    private Outcome WorkOut(KeyValuePair<string, double>[] edits, Outcome before)
    {
        if (edits.Length == 0) return Accepted(File);
        IReadOnlyList<KeyValuePair<string, double>> all = WeighedEdits.Of(File.Assembled.Build, edits);
        FlyableResult result = FlyableBuild.Of(File.Source, File.Name, all, File.Assembled.Air, _profile);
        return result.Build is { } changed
            ? Accepted(changed with { Path = File.Path })
            : before with { State = PartBenchState.Refused, Message = result.Message };
    }

    private Outcome Accepted(FlyableBuild build) =>
        new(PartBenchState.Ready, "", PartBenchDifferences.Between(File.Unit, build.Unit, _profile.StateOfCharge), build);

    private void Follow()
    {
        lock (_gate)
        {
            _shown = _outcome;
            if (_shown.State != PartBenchState.Ready) return;
            Dictionary<string, double> values = _shown.Accepted.Assembled.Values.ToDictionary(value => value.Key, value => value.Typical);
            foreach (PartBenchItem item in _items)
                if (!_changed.ContainsKey(item.Key) && values.TryGetValue(item.Key, out double value)) item.Value = value;
        }
    }

    private sealed record Outcome(PartBenchState State, string Message, IReadOnlyList<PartBenchDifference> Differences, FlyableBuild Accepted);
}
