using System.Collections.Immutable;

namespace Simfeel.Physics.Rotors;

/// <summary>
/// A section known by a table of angle of attack and Reynolds number at low Mach number: linear in angle and in the
/// logarithm of Reynolds, held beyond the first and last Reynolds number. Outside the table's angles it fades to
/// <see cref="FlatPlate"/> within <see cref="FadeWidth"/>, sooner where the table leaves less than twice that of the
/// turn open. Lift inside the table takes Prandtl-Glauert's factor. Two polars of equal numbers are equal.
/// </summary>
public sealed class TabulatedPolar : SectionPolar, IEquatable<TabulatedPolar>
{
    /// <summary>Angle over which the table's last value fades to the flat plate, rad.</summary>
    public const double FadeWidth = 8 * Math.PI / 180;

    private readonly double[] _angles;
    private readonly double[] _reynolds;
    private readonly double[] _logReynolds;
    private readonly SectionCoefficients[,] _values;
    private readonly double[] _leastDrag;

    /// <summary>A polar from its table.</summary>
    /// <param name="angles">Angles of attack, rad, rising, within [-pi, pi]; at least two.</param>
    /// <param name="reynolds">Reynolds numbers, rising, positive; at least one.</param>
    /// <param name="lift">Lift coefficients, one row per Reynolds number, one number per angle.</param>
    /// <param name="drag">Drag coefficients, shaped like <paramref name="lift"/>.</param>
    /// <exception cref="ArgumentException">Shapes differ, an axis does not rise, or a number is not finite.</exception>
    public TabulatedPolar(
        IReadOnlyList<double> angles,
        IReadOnlyList<double> reynolds,
        IReadOnlyList<ImmutableArray<double>> lift,
        IReadOnlyList<ImmutableArray<double>> drag)
    {
        ArgumentNullException.ThrowIfNull(angles);
        ArgumentNullException.ThrowIfNull(reynolds);
        ArgumentNullException.ThrowIfNull(lift);
        ArgumentNullException.ThrowIfNull(drag);
        if (angles.Count < 2 || !Rises(angles) || angles[0] < -Math.PI || angles[^1] > Math.PI)
            throw new ArgumentException("A polar table needs two or more rising angles inside a turn.", nameof(angles));
        if (reynolds.Count < 1 || !Rises(reynolds) || !(reynolds[0] > 0))
            throw new ArgumentException("A polar table needs rising positive Reynolds numbers.", nameof(reynolds));
        if (lift.Count != reynolds.Count || drag.Count != reynolds.Count)
            throw new ArgumentException($"A polar table of {reynolds.Count} Reynolds numbers needs as many rows.", nameof(lift));

        _angles = [.. angles];
        _reynolds = [.. reynolds];
        _logReynolds = [.. reynolds.Select(re => Math.Log(re))];
        _values = new SectionCoefficients[reynolds.Count, angles.Count];
        _leastDrag = [.. Enumerable.Repeat(double.MaxValue, reynolds.Count)];
        for (int row = 0; row < reynolds.Count; row++)
        {
            if (lift[row].Length != angles.Count || drag[row].Length != angles.Count)
                throw new ArgumentException($"Row {row} of the polar table needs {angles.Count} numbers.", nameof(lift));
            for (int i = 0; i < angles.Count; i++)
            {
                if (!double.IsFinite(lift[row][i]) || !double.IsFinite(drag[row][i]))
                    throw new ArgumentException($"Row {row}, angle {i} of the polar table is not finite.", nameof(lift));
                _values[row, i] = new(lift[row][i], drag[row][i]);
                _leastDrag[row] = Math.Min(_leastDrag[row], drag[row][i]);
            }
        }
    }

    /// <summary>Angles of attack of the table, rad, rising.</summary>
    public IReadOnlyList<double> Angles => _angles;

    /// <summary>Reynolds numbers of the table, rising.</summary>
    public IReadOnlyList<double> Reynolds => _reynolds;

    /// <summary>The table's own numbers at Reynolds number <paramref name="row"/> and angle <paramref name="angle"/>, both counted from 0.</summary>
    public SectionCoefficients Node(int row, int angle) => _values[row, angle];

    /// <inheritdoc/>
    public override SectionCoefficients At(double angle, double reynolds, double mach)
    {
        double logReynolds = Math.Log(Math.Max(reynolds, 1));
        double wave = CompressibleFlow.WaveDrag(mach);
        (double nearest, double beyond) = Beyond(angle);
        SectionCoefficients inside = Interpolate(nearest, logReynolds);
        SectionCoefficients attached = new(inside.Lift * CompressibleFlow.LiftFactor(mach), inside.Drag + wave);
        if (beyond == 0) return attached;

        double t = Math.Min(beyond / Math.Min(FadeWidth, Gap / 2), 1);
        double weight = t * t * (3 - (2 * t));
        SectionCoefficients plate = FlatPlate.At(angle, LeastDrag(logReynolds) + wave);
        return new(
            attached.Lift + (weight * (plate.Lift - attached.Lift)),
            attached.Drag + (weight * (plate.Drag - attached.Drag)));
    }

    /// <inheritdoc/>
    public bool Equals(TabulatedPolar? other) =>
        ReferenceEquals(this, other)
        || (other is not null
            && _angles.AsSpan().SequenceEqual(other._angles)
            && _reynolds.AsSpan().SequenceEqual(other._reynolds)
            && _values.Cast<SectionCoefficients>().SequenceEqual(other._values.Cast<SectionCoefficients>()));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as TabulatedPolar);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        HashCode hash = new();
        foreach (double angle in _angles) hash.Add(angle);
        foreach (double reynolds in _reynolds) hash.Add(reynolds);
        foreach (SectionCoefficients value in _values) hash.Add(value);
        return hash.ToHashCode();
    }

    /// <summary>The part of a turn that the table leaves open, rad.</summary>
    private double Gap => (2 * Math.PI) - (_angles[^1] - _angles[0]);

    /// <summary>The end of the table that an angle lies nearest to, and how far beyond; the angle itself and 0 inside.</summary>
    private (double Nearest, double Beyond) Beyond(double angle)
    {
        double first = _angles[0], last = _angles[^1];
        if (angle >= first && angle <= last) return (angle, 0);
        double above = angle > last ? angle - last : angle + (2 * Math.PI) - last;
        double below = angle < first ? first - angle : first + (2 * Math.PI) - angle;
        return above < below ? (last, Math.Max(above, 0)) : (first, Math.Max(below, 0));
    }

    private SectionCoefficients Interpolate(double angle, double logReynolds)
    {
        (int i, double x) = Locate(_angles, angle);
        (int row, double y) = Locate(_logReynolds, logReynolds);
        int next = Math.Min(row + 1, _logReynolds.Length - 1);
        SectionCoefficients low = Blend(_values[row, i], _values[row, i + 1], x);
        SectionCoefficients high = Blend(_values[next, i], _values[next, i + 1], x);
        return Blend(low, high, y);
    }

    private double LeastDrag(double logReynolds)
    {
        (int row, double y) = Locate(_logReynolds, logReynolds);
        double low = _leastDrag[row], high = _leastDrag[Math.Min(row + 1, _logReynolds.Length - 1)];
        return low + (y * (high - low));
    }

    private static SectionCoefficients Blend(SectionCoefficients a, SectionCoefficients b, double t) =>
        new(a.Lift + (t * (b.Lift - a.Lift)), a.Drag + (t * (b.Drag - a.Drag)));

    private static (int Index, double Fraction) Locate(double[] axis, double value)
    {
        if (axis.Length == 1) return (0, 0);
        int found = Array.BinarySearch(axis, value);
        int i = Math.Clamp(found >= 0 ? found : ~found - 1, 0, axis.Length - 2);
        return (i, Math.Clamp((value - axis[i]) / (axis[i + 1] - axis[i]), 0, 1));
    }

    private static bool Rises(IReadOnlyList<double> axis)
    {
        for (int i = 0; i < axis.Count; i++)
        {
            if (!double.IsFinite(axis[i]) || (i > 0 && axis[i] <= axis[i - 1])) return false;
        }
        return true;
    }
}
