using System.Collections.Immutable;

namespace Simfeel.Physics.Rotors;

/// <summary>One station of a blade.</summary>
/// <param name="Radius">Radius over the tip radius R.</param>
/// <param name="Chord">Chord over R.</param>
/// <param name="Twist">Angle of the chord to the disc plane, rad.</param>
public readonly record struct BladeStation(double Radius, double Chord, double Twist);

/// <summary>Shape of a propeller with equal blades, as the aerodynamics needs it. Immutable.</summary>
public sealed record RotorGeometry
{
    private const double DefaultRootCutOut = 0.15;

    /// <summary>
    /// Default planform, r/R and c/R: a broad-bladed small propeller of our own, widest (0.20) at two fifths of the
    /// radius and round at the tip. Among the propellers measured at UIUC (Deters, Ananda and Selig, AIAA 2014-2151)
    /// the widest chord is 0.15 to 0.24 R.
    /// </summary>
    private static readonly (double Radius, double Chord)[] DefaultPlanform =
    [
        (0.10, 0.130), (0.15, 0.148), (0.20, 0.165), (0.25, 0.180), (0.30, 0.191), (0.35, 0.198), (0.40, 0.200),
        (0.45, 0.200), (0.50, 0.198), (0.55, 0.194), (0.60, 0.189), (0.65, 0.183), (0.70, 0.176), (0.75, 0.168),
        (0.80, 0.157), (0.85, 0.143), (0.90, 0.125), (0.95, 0.098), (0.98, 0.068), (1.00, 0.030),
    ];

    /// <summary>A propeller from its stations.</summary>
    /// <param name="diameter">Tip diameter, m.</param>
    /// <param name="blades">Number of blades, at least 1.</param>
    /// <param name="stations">Stations of one blade, radius rising within (0, 1], at least two; held beyond the ends, linear between.</param>
    /// <param name="rootCutOut">Radius over R where the aerodynamic part of the blade begins, 0 to 0.9 (0 excluded).</param>
    /// <param name="polar">Section of the blade.</param>
    /// <exception cref="ArgumentException">A number is out of its range.</exception>
    public RotorGeometry(double diameter, int blades, ImmutableArray<BladeStation> stations, double rootCutOut, SectionPolar polar)
    {
        ArgumentNullException.ThrowIfNull(polar);
        if (!(diameter > 0) || !double.IsFinite(diameter))
            throw new ArgumentException($"A rotor's diameter is positive, not {diameter} m.", nameof(diameter));
        if (blades < 1) throw new ArgumentException($"A rotor has one blade or more, not {blades}.", nameof(blades));
        if (!(rootCutOut > 0 && rootCutOut <= 0.9))
            throw new ArgumentException($"The root cut-out lies in (0, 0.9] of R, not at {rootCutOut}.", nameof(rootCutOut));
        if (stations.IsDefault || stations.Length < 2)
            throw new ArgumentException("A blade has two stations or more.", nameof(stations));
        for (int i = 0; i < stations.Length; i++)
        {
            BladeStation s = stations[i];
            bool rises = i == 0 ? s.Radius > 0 : s.Radius > stations[i - 1].Radius;
            if (!rises || s.Radius > 1 || !(s.Chord > 0) || !double.IsFinite(s.Chord) || !(Math.Abs(s.Twist) <= Math.PI / 2))
                throw new ArgumentException($"Blade station {i} ({s}) is out of order or out of range.", nameof(stations));
        }
        Diameter = diameter;
        Blades = blades;
        Stations = stations;
        RootCutOut = rootCutOut;
        Polar = polar;
    }

    /// <summary>Tip diameter, m.</summary>
    public double Diameter { get; }

    /// <summary>Number of blades.</summary>
    public int Blades { get; }

    /// <summary>Stations of one blade, radius rising.</summary>
    public ImmutableArray<BladeStation> Stations { get; }

    /// <summary>Radius over R where the aerodynamic part of the blade begins.</summary>
    public double RootCutOut { get; }

    /// <summary>Section of the blade.</summary>
    public SectionPolar Polar { get; }

    /// <summary>Tip radius R, m.</summary>
    public double Radius => Diameter / 2;

    /// <summary>Area of the disc, m^2.</summary>
    public double DiscArea => Math.PI * Radius * Radius;

    /// <summary>
    /// k^2 of I = k^2 m R^2 for the mass m of the blades about the shaft, hub apart: from the planform with section area
    /// in proportion to chord squared (thickness in proportion to chord).
    /// </summary>
    public double GyrationRadiusSquared
    {
        get
        {
            const int steps = 400;
            double mass = 0, inertia = 0;
            for (int i = 0; i < steps; i++)
            {
                double x = RootCutOut + ((1 - RootCutOut) * (i + 0.5) / steps);
                double chord = At(x).Chord;
                mass += chord * chord;
                inertia += chord * chord * x * x;
            }
            return inertia / mass;
        }
    }

    /// <summary>
    /// A propeller known only by its size: helical twist atan(pitch / (2 pi r)) and a default planform. The chord
    /// does not depend on the number of blades: of one published family of 5-inch propellers the three-bladed has
    /// the wider chord (DA4022, 0.23 R, against DA4002, 0.18 R), of another both have the same (NR640).
    /// </summary>
    /// <param name="diameter">Tip diameter, m.</param>
    /// <param name="pitch">Geometric pitch, m per turn.</param>
    /// <param name="blades">Number of blades.</param>
    /// <param name="chordScale">Factor on the chord of the default planform.</param>
    /// <param name="polar">Section of the blade; <see cref="LowReynoldsPolar"/> if null.</param>
    /// <exception cref="ArgumentException">A number is out of its range.</exception>
    public static RotorGeometry FromPitch(double diameter, double pitch, int blades, double chordScale = 1, SectionPolar? polar = null)
    {
        if (!(pitch >= 0) || !double.IsFinite(pitch))
            throw new ArgumentException($"A propeller's pitch is at least 0, not {pitch} m.", nameof(pitch));
        if (!(chordScale > 0) || !double.IsFinite(chordScale))
            throw new ArgumentException($"A chord scale is positive, not {chordScale}.", nameof(chordScale));
        ImmutableArray<BladeStation> stations =
        [
            .. DefaultPlanform.Select(p =>
                new BladeStation(p.Radius, chordScale * p.Chord, Math.Atan2(pitch, Math.PI * diameter * p.Radius))),
        ];
        return new(diameter, blades, stations, DefaultRootCutOut, polar ?? LowReynoldsPolar.Instance);
    }

    /// <summary>Chord and twist at a radius over R, linear between stations.</summary>
    public BladeStation At(double radius)
    {
        int i = 0;
        while (i < Stations.Length - 2 && radius >= Stations[i + 1].Radius) i++;
        BladeStation a = Stations[i], b = Stations[i + 1];
        double t = Math.Clamp((radius - a.Radius) / (b.Radius - a.Radius), 0, 1);
        return new(radius, a.Chord + (t * (b.Chord - a.Chord)), a.Twist + (t * (b.Twist - a.Twist)));
    }
}
