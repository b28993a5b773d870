namespace Simfeel.Physics.Rotors;

/// <summary>
/// The polar of a rotor's sections tabulated for building a rotor table: for every annulus a ladder of section speeds
/// (which set Reynolds and Mach number together), on each rung lift and drag over the angle of attack.
/// <para>
/// No arctangent is needed to look up: with (S, C) along (sin, cos) of the angle of attack, p = S / (|S| + |C|)
/// rises with the angle through the front half turn and 2 - p through the back half; a row has equal steps of it in
/// [-1, 3], about 0.5 degrees near zero lift, lift and drag side by side.
/// </para>
/// </summary>
internal sealed class PolarRows
{
    /// <summary>Steps of a row.</summary>
    public const int Steps = 512;

    /// <summary>Numbers in a row: lift and drag at each end of each step.</summary>
    public const int RowLength = 2 * (Steps + 1);

    private const int Rungs = 24;
    private const double LadderScale = 60;

    private readonly double[] _rows;
    private readonly double[] _friction;
    private readonly double _first;
    private readonly double _last;

    /// <summary>Tabulates a polar on annuli for section speeds from <paramref name="slowest"/> to <paramref name="fastest"/>, m/s.</summary>
    public PolarRows(SectionPolar polar, RotorAnnulus[] annuli, double radius, Air.AirState air, double slowest, double fastest, ParallelOptions threads)
    {
        _first = slowest / (slowest + LadderScale);
        _last = fastest / (fastest + LadderScale);
        _rows = GC.AllocateUninitializedArray<double>(annuli.Length * Rungs * RowLength);
        _friction = new double[annuli.Length * Rungs];
        double[] angles = Angles();
        Parallel.For(0, annuli.Length * Rungs, threads, row =>
        {
            double z = _first + ((_last - _first) * (row % Rungs) / (Rungs - 1));
            double speed = LadderScale * z / (1 - z);
            double reynolds = speed * annuli[row / Rungs].Chord * radius / air.KinematicViscosity;
            double mach = speed / air.SoundSpeed;
            _friction[row] = polar.At(0, reynolds, mach).Drag;
            Span<double> target = _rows.AsSpan(row * RowLength, RowLength);
            for (int i = 0; i <= Steps; i++)
            {
                SectionCoefficients c = polar.At(angles[i], reynolds, mach);
                target[2 * i] = c.Lift;
                target[(2 * i) + 1] = c.Drag;
            }
        });
    }

    /// <summary>
    /// Where the rows that a section speed (m/s) lies between begin in <see cref="Numbers"/>, one after the other, its place
    /// between them, and its skin friction: drag at zero angle.
    /// </summary>
    public (int Start, double Share, double Friction) Between(int annulus, double speed)
    {
        double z = speed / (speed + LadderScale);
        double at = Math.Clamp((z - _first) / (_last - _first), 0, 1) * (Rungs - 1);
        int rung = Math.Min((int)at, Rungs - 2);
        double share = at - rung;
        int index = (annulus * Rungs) + rung;
        return (index * RowLength, share, _friction[index] + (share * (_friction[index + 1] - _friction[index])));
    }

    /// <summary>All rows.</summary>
    public ReadOnlySpan<double> Numbers => _rows;

    private static double[] Angles()
    {
        double[] angles = new double[Steps + 1];
        for (int i = 0; i <= Steps; i++)
        {
            double q = -1 + (4.0 * i / Steps);
            double p = q <= 1 ? q : 2 - q;
            double cosine = q <= 1 ? 1 - Math.Abs(p) : Math.Abs(p) - 1;
            angles[i] = Math.Atan2(p, cosine);
        }
        return angles;
    }
}
