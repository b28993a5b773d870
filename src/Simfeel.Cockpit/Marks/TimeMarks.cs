namespace Simfeel.Cockpit.Marks;

/// <summary>The marks of one recording, in the order of their times. Looking for one allocates nothing.</summary>
public sealed class TimeMarks
{
    // two marks closer than this are one, s; files have times to the microsecond
    private const double Same = 1e-6;

    private readonly List<TimeMark> _marks = [];

    /// <summary>Number of marks.</summary>
    public int Count => _marks.Count;

    /// <summary>Grows with every change.</summary>
    public int Version { get; private set; }

    /// <summary>A mark, counted from 0.</summary>
    public TimeMark this[int index] => _marks[index];

    /// <summary>Adds a mark; false where there is one at this time already, which stays as it is.</summary>
    /// <param name="mark">The mark.</param>
    /// <param name="index">Where it stands, or the one that was there.</param>
    public bool TryAdd(TimeMark mark, out int index)
    {
        index = 0;
        while (index < _marks.Count && _marks[index].Time < mark.Time - Same) index++;
        if (index < _marks.Count && _marks[index].Time < mark.Time + Same) return false;
        _marks.Insert(index, mark);
        Version++;
        return true;
    }

    /// <summary>Gives a mark another note.</summary>
    public void SetNote(int index, string note)
    {
        _marks[index] = _marks[index] with { Note = note };
        Version++;
    }

    /// <summary>Takes a mark out.</summary>
    public void RemoveAt(int index)
    {
        _marks.RemoveAt(index);
        Version++;
    }

    /// <summary>The last mark before a time (s); -1 where there is none.</summary>
    public int Before(double time)
    {
        int index = _marks.Count - 1;
        while (index >= 0 && _marks[index].Time > time - Same) index--;
        return index;
    }

    /// <summary>The first mark after a time (s); -1 where there is none.</summary>
    public int After(double time)
    {
        for (int index = 0; index < _marks.Count; index++)
        {
            if (_marks[index].Time > time + Same) return index;
        }
        return -1;
    }
}
