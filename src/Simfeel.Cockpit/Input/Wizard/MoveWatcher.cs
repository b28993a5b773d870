using Simfeel.Cockpit.Input.Wizard;

namespace Simfeel.Cockpit.Input;

/// <summary>What a <see cref="MoveWatcher"/> waits for or has found.</summary>
internal enum MoveState
{
    /// <summary>For the first move.</summary>
    First,

    /// <summary>For the move to the other end and the letting go.</summary>
    Second,

    /// <summary>For nothing: the control is measured.</summary>
    Done,
}

/// <summary>
/// Watches one control being moved to one end, to the other, and let go. From this come the axis, its direction, its ends
/// and where it stands when let go.
/// </summary>
/// <param name="rest">The untouched device.</param>
/// <param name="now">Where its axes stand now, before the first move.</param>
/// <param name="names">For each axis the control that has it already; null for a free one.</param>
/// <param name="isThrottle">Moves to one side only are enough.</param>
internal sealed class MoveWatcher(RestMeter rest, ReadOnlySpan<short> now, StickControl?[] names, bool isThrottle)
{
    // A fifth of the way from the middle to an end is a move; half of it on a second axis is a doubt.
    private const int Move = 6500;

    // The shortest way from end to end that a device may send, a third of all raw numbers.
    private const int Shortest = 20_000;
    private const double AtEnd_s = 0.2, AtRest_s = 0.5, Silence_s = 5, Forgotten_s = 3, Doubt_s = 0.3;

    // The same two axes three times: the device sends one stick twice.
    private const int Twins = 3;

    // a throttle or a switch may stand elsewhere by now; all others are taken to rest where they did
    private readonly int[] _start = Starts(rest, now);
    private readonly Stillness _still = new();
    private double _silent, _doubt;
    private int _first, _doubts;
    private (int, int) _pair;
    private bool _isReleased = true;

    /// <summary>What it waits for.</summary>
    public MoveState State { get; private set; }

    /// <summary>What went wrong, in a sentence that helps; empty while all goes well.</summary>
    public string Trouble { get; private set; } = "";

    /// <summary>The axis; -1 while unknown.</summary>
    public int Axis { get; private set; } = -1;

    /// <summary>Ends that were reached, raw.</summary>
    public int Low { get; private set; }

    /// <summary>Ends that were reached, raw.</summary>
    public int High { get; private set; }

    /// <summary>Where it stood after it was let go, raw.</summary>
    public int End { get; private set; }

    /// <summary>Where it stood before the first move, raw.</summary>
    public int Start => _start[Axis];

    /// <summary>The positive move goes to lower raw numbers.</summary>
    public bool IsInverted => _first < Start;

    /// <summary>It moved to one side of where it rests only.</summary>
    public bool IsOneSided => Math.Min(High - Start, Start - Low) < Move / 2;

    /// <summary>It came to stand near the middle of its way.</summary>
    public bool IsCentring => Math.Abs(End - ((Low + High) / 2)) < (High - Low) / 5;

    /// <summary>Takes a look.</summary>
    public void Look(ReadOnlySpan<short> raw, double seconds)
    {
        if (State == MoveState.First) LookForFirst(raw, seconds);
        else if (State == MoveState.Second) LookForSecond(raw, seconds);
    }

    /// <summary>Whether it sprang back to the middle after all, while the pilot was being asked about it.</summary>
    public bool SpringsBackLate(ReadOnlySpan<short> raw, double seconds)
    {
        if (IsOneSided || IsCentring || !_still.Look(raw[Axis], Slack(Axis), seconds, AtRest_s)) return false;
        End = raw[Axis];
        return IsCentring;
    }

    private void LookForFirst(ReadOnlySpan<short> raw, double seconds)
    {
        (int main, int way) = Furthest(raw, except: -1);
        if (way < Move)
        {
            _isReleased = true;
            Axis = -1;
            _doubt = 0;
            _silent += seconds;
            if (_silent > Silence_s) Trouble = "Nothing moved yet. Move it as far as it goes; if nothing shows, the device does not send this control.";
            return;
        }
        if (!_isReleased) return;
        _silent = 0;
        (int second, int secondWay) = Furthest(raw, except: main);
        bool isTogether = secondWay > Math.Max(way / 2, Move);
        if (isTogether && _doubts >= Twins - 1 && _pair == InOrder(main, second))
        {
            main = _pair.Item1;
        }
        else if (isTogether)
        {
            Axis = -1;
            _doubt += seconds;
            if (_doubt > Doubt_s) Refuse($"Axes {Math.Min(main, second)} and {Math.Max(main, second)} moved together. Let go, then move only the one that is asked for.", main, second);
            return;
        }
        if (names[main] is StickControl taken)
        {
            Axis = -1;
            _doubt += seconds;
            if (_doubt > Doubt_s) Refuse($"That is axis {main}, which is {taken.ToString().ToLowerInvariant()} already. Let go, then move the one that is asked for.", main, main);
            return;
        }
        if (Axis != main) _still.Begin(raw[main]);
        Axis = main;
        if (!_still.Look(raw[main], Slack(main), seconds, AtEnd_s)) return;
        _first = raw[main];
        Low = Math.Min(_start[main], _first);
        High = Math.Max(_start[main], _first);
        Trouble = "";
        _still.Begin(_first);
        State = MoveState.Second;
    }

    private void LookForSecond(ReadOnlySpan<short> raw, double seconds)
    {
        int at = raw[Axis];
        Low = Math.Min(Low, at);
        High = Math.Max(High, at);
        if (!_still.Look(at, Slack(Axis), seconds, AtRest_s)) return;
        _silent += seconds;
        int way = Math.Abs(_first - Start);
        bool isBack = Math.Abs(at - Start) < Math.Max(way / 5, Slack(Axis));
        bool hasLeft = Math.Abs(at - _first) > way / 2;
        if (isThrottle ? hasLeft : isBack && !IsOneSided)
        {
            End = at;
            if (High - Low < (IsOneSided ? Shortest / 2 : Shortest)) StartOver("That was a small part of its way only. Move it as far as it goes.");
            else State = MoveState.Done;
        }
        else if (isBack)
        {
            StartOver("It moved to one side only. Move it to one end, hold it, then to the other.");
        }
        else if (_silent > Forgotten_s)
        {
            Trouble = hasLeft ? "Now let go of it." : "Now move it to the other end, then let go.";
        }
    }

    private void Refuse(string why, int main, int second)
    {
        (int, int) pair = InOrder(main, second);
        _doubts = main != second && pair == _pair ? _doubts + 1 : main != second ? 1 : 0;
        _pair = pair;
        _doubt = 0;
        _isReleased = false;
        Trouble = _doubts == Twins - 1 ? why + " Should they always move together, move it once more." : why;
    }

    private static (int, int) InOrder(int one, int other) => (Math.Min(one, other), Math.Max(one, other));

    private void StartOver(string why)
    {
        State = MoveState.First;
        Axis = -1;
        _silent = _doubt = 0;
        _isReleased = false;
        Trouble = why;
    }

    private (int Axis, int Way) Furthest(ReadOnlySpan<short> raw, int except)
    {
        int axis = -1, way = -1;
        for (int n = 0; n < _start.Length; n++)
        {
            if (n == except || rest.IsRestless(n)) continue;
            int far = Math.Abs(raw[n] - _start[n]);
            if (far > way) (axis, way) = (n, far);
        }
        return (axis, way);
    }

    private static int[] Starts(RestMeter rest, ReadOnlySpan<short> now)
    {
        int[] starts = new int[now.Length];
        for (int n = 0; n < now.Length; n++) starts[n] = Math.Abs(now[n] - rest.Rest(n)) < Move / 2 ? rest.Rest(n) : now[n];
        return starts;
    }

    private int Slack(int axis) => 400 + (2 * rest.Noise(axis));

    /// <summary>How long a number has stayed near where it was.</summary>
    private sealed class Stillness
    {
        private int _near;
        private double _seconds;

        public void Begin(int raw) => (_near, _seconds) = (raw, 0);

        public bool Look(int raw, int slack, double seconds, double needed)
        {
            if (Math.Abs(raw - _near) > slack) Begin(raw);
            else _seconds += seconds;
            return _seconds >= needed;
        }
    }
}
