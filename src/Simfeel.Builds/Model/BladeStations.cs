using System.Collections;
using System.Collections.Immutable;
using Simfeel.Physics.Rotors;

namespace Simfeel.Builds;

/// <summary>Stations of one blade from root to tip. Two lists of equal stations are equal, so that records with them are.</summary>
/// <param name="stations">Radius over R rising, chord over R, twist in rad.</param>
public sealed class BladeStations(ImmutableArray<BladeStation> stations) : IReadOnlyList<BladeStation>, IEquatable<BladeStations>
{
    /// <summary>The stations as the rotor geometry takes them.</summary>
    public ImmutableArray<BladeStation> Items => stations;

    /// <inheritdoc/>
    public int Count => stations.Length;

    /// <inheritdoc/>
    public BladeStation this[int index] => stations[index];

    /// <inheritdoc/>
    public bool Equals(BladeStations? other) => other is not null && stations.SequenceEqual(other.Items);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as BladeStations);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        HashCode hash = new();
        foreach (BladeStation station in stations) hash.Add(station);
        return hash.ToHashCode();
    }

    /// <inheritdoc/>
    public IEnumerator<BladeStation> GetEnumerator() => ((IEnumerable<BladeStation>)stations).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
