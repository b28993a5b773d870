using System.Collections.Immutable;

namespace Simfeel.Physics.Rotors;

/// <summary>
/// A section known by a table of angle of attack and Reynolds number at low Mach number: linear in angle and in the
/// logarithm of Reynolds, held beyond the first and last Reynolds number. Outside the table's angles it fades to
/// <see cref="FlatPlate"/> within <see cref="FadeWidth"/>. Lift inside the table takes Prandtl-Glauert's factor.
/// </summary>
public sealed class TabulatedPolar : SectionPolar
{
    /// <summary>Angle over which the table's last value fades to the flat plate, rad.</summary>
    public const double FadeWidth = 8 * Math.PI / 180;

    private readonly double[] _angles;
    private readonly double[] _logReynolds;
    private readonly SectionCoefficients[,] _values;

    /// <summary>A polar from its table.</summary>
    /// <param name="angles">Angles of attack, rad, rising, within (-pi/2, pi/2); at least two.</param>
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
        if (angles.Count < 2 || !Rises(angles) || angles[0] <= -Math.PI / 2 || angles[^1] >= Math.PI / 2)
            throw new ArgumentException("A polar table needs two or more rising angles inside a quarter turn.", nameof(angles));
        if (reynolds.Count < 1 || !Rises(reynolds) || !(reynolds[0] > 0))
            throw new ArgumentException("A polar table needs rising positive Reynolds numbers.", nameof(reynolds));
        if (lift.Count != reynolds.Count || drag.Count != reynolds.Count)
            throw new ArgumentException($"A polar table of {reynolds.Count} Reynolds numbers needs as many rows.", nameof(lift));

        _angles = [.. angles];
        _logReynolds = [.. reynolds.Select(re => Math.Log(re))];
        _values = new SectionCoefficients[reynolds.Count, angles.Count];
        for (int row = 0; row < reynolds.Count; row++)
        {
            if (lift[row].Length != angles.Count || drag[row].Length != angles.Count)
                throw new ArgumentException($"Row {row} of the polar table needs {angles.Count} numbers.", nameof(lift));
            for (int i = 0; i < angles.Count; i++)
            {
                if (!double.IsFinite(lift[row][i]) || !double.IsFinite(drag[row][i]))
                    throw new ArgumentException($"Row {row}, angle {i} of the polar table is not finite.", nameof(lift));
                _values[row, i] = new(lift[row][i], drag[row][i]);
            }
        }
    }

    /// <inheritdoc/>
    public override SectionCoefficients At(double angle, double reynolds, double mach)
    {
        double clamped = Math.Clamp(angle, _angles[0], _angles[^1]);
        SectionCoefficients inside = Interpolate(clamped, Math.Log(Math.Max(reynolds, 1)));
        double wave = CompressibleFlow.WaveDrag(mach);
        SectionCoefficients attached = new(inside.Lift * CompressibleFlow.LiftFactor(mach), inside.Drag + wave);
        double beyond = Math.Abs(angle - clamped);
        if (beyond == 0) return attached;

        double t = Math.Min(beyond / FadeWidth, 1);
        double weight = t * t * (3 - (2 * t));
        SectionCoefficients plate = FlatPlate.At(angle, LeastDrag(Math.Log(Math.Max(reynolds, 1))) + wave);
        return new(
            attached.Lift + (weight * (plate.Lift - attached.Lift)),
            attached.Drag + (weight * (plate.Drag - attached.Drag)));
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
        int next = Math.Min(row + 1, _logReynolds.Length - 1);
        double low = double.MaxValue, high = double.MaxValue;
        for (int i = 0; i < _angles.Length; i++)
        {
            low = Math.Min(low, _values[row, i].Drag);
            high = Math.Min(high, _values[next, i].Drag);
        }
        return low + (y * (high - low));
    }

    private static SectionCoefficients Blend(SectionCoefficients a, SectionCoefficients b, double t) =>
        new(a.Lift + (t * (b.Lift - a.Lift)), a.Drag + (t * (b.Drag - a.Drag)));

    private static (int Index, double Fraction) Locate(double[] axis, double value)
    {
        if (axis.Length == 1) return (0, 0);
        int i = 0;
        while (i < axis.Length - 2 && value >= axis[i + 1]) i++;
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
