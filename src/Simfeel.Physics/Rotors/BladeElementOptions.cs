namespace Simfeel.Physics.Rotors;

/// <summary>What a <see cref="BladeElementSolver"/> resolves. The default is what tables are built with.</summary>
public sealed record BladeElementOptions
{
    /// <summary>The options tables are built with.</summary>
    public static BladeElementOptions Default { get; } = new();

    /// <summary>Annuli between root cut-out and tip.</summary>
    public int Annuli { get; init; } = 16;

    /// <summary>Blade positions in a turn, evenly spaced; a multiple of 4.</summary>
    public int Azimuths { get; init; } = 16;

    /// <summary>Annuli of equal width (closed forms) instead of annuli that narrow toward the tip.</summary>
    public bool EqualAnnuli { get; init; }

    /// <summary>Prandtl's tip loss.</summary>
    public bool TipLoss { get; init; } = true;

    /// <summary>Rotation of the wake.</summary>
    public bool Swirl { get; init; } = true;

    /// <summary>
    /// The small-angle form of the closed solutions: alpha = twist - uP/uT, W = uT, dT along the lift. For checks only;
    /// needs a rotor that turns.
    /// </summary>
    public bool SmallAngles { get; init; }
}
