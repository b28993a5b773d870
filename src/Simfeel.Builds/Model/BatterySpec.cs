using Simfeel.Physics.Maths;

namespace Simfeel.Builds;

/// <summary>The battery pack.</summary>
public sealed record BatterySpec
{
    /// <summary>Cells in series; 1 to 14.</summary>
    public required int Cells { get; init; }

    /// <summary>Charge of the full pack at its age, A s; 86.4 to 216000 (30 to 60000 mAh of a new one).</summary>
    public required double Capacity { get; init; }

    /// <summary>Age of the pack, 0 new to 1 worn out; capacity and resistances are those at this age.</summary>
    public required double Wear { get; init; }

    /// <summary>Open-circuit voltage of one cell at the charge nodes of the flight kernel, V; rising.</summary>
    public required IReadOnlyList<double> CellVoltage { get; init; }

    /// <summary>Mass with wires and plug, kg; 0.0005 to 10; estimated from the energy.</summary>
    public required double Mass { get; init; }

    /// <summary>Length along x, width along y, height along z, m; estimated from the mass.</summary>
    public required Vec3 Size { get; init; }

    /// <summary>Centre from the build's origin, body axes, m.</summary>
    public required Vec3 p_OC { get; init; }

    /// <summary>Series resistance of the whole pack with leads and plug at its age, ohm.</summary>
    public required double SeriesResistance { get; init; }

    /// <summary>Resistance of the RC pair of the whole pack at its age, ohm.</summary>
    public required double PairResistance { get; init; }

    /// <summary>Time constant of the RC pair, s; 0.2 to 600, default 15.</summary>
    public required double PairTime { get; init; }

    /// <summary>Current that the pack stands for some seconds, A; above it a warning is due.</summary>
    public required double CurrentRating { get; init; }

    /// <summary>Nominal energy of the new pack, J: capacity at 3.7 V per cell for pouch and 3.6 V for cylindrical cells.</summary>
    public required double NominalEnergy { get; init; }
}
