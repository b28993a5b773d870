using System.Collections;
using Simfeel.Physics;

namespace Simfeel.Flight.Drills;

/// <summary>The samples of a log in their order. A sample is large, so rows are handed out in place, not as copies.</summary>
public readonly struct SampleRows : IReadOnlyList<Sample>
{
    private readonly ArraySegment<Sample> _rows;

    /// <summary>Rows in an array, or in part of one.</summary>
    public SampleRows(ArraySegment<Sample> rows) => _rows = rows;

    /// <inheritdoc/>
    public int Count => _rows.Count;

    /// <summary>A row in place.</summary>
    /// <exception cref="IndexOutOfRangeException">There is no such row.</exception>
    public ref readonly Sample this[int row] => ref _rows.AsSpan()[row];

    /// <inheritdoc/>
    Sample IReadOnlyList<Sample>.this[int index] => this[index];

    /// <summary>All rows of an array.</summary>
    public static implicit operator SampleRows(Sample[] rows) => new(rows);

    /// <summary>Rows one after the other, in place.</summary>
    public ReadOnlySpan<Sample>.Enumerator GetEnumerator() => ((ReadOnlySpan<Sample>)_rows.AsSpan()).GetEnumerator();

    /// <inheritdoc/>
    IEnumerator<Sample> IEnumerable<Sample>.GetEnumerator() => ((IEnumerable<Sample>)_rows).GetEnumerator();

    /// <inheritdoc/>
    IEnumerator IEnumerable.GetEnumerator() => ((IEnumerable<Sample>)this).GetEnumerator();
}

/// <summary>A number read off a sample.</summary>
public delegate double Signal(in Sample sample);
