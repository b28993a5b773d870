namespace Simfeel.Studies.Fit;

/// <summary>What a column of a stand table holds.</summary>
public enum StandQuantity
{
    /// <summary>Nothing that a fit uses.</summary>
    Ignored,

    /// <summary>Throttle command, 0 to 1.</summary>
    Throttle,

    /// <summary>Thrust, N.</summary>
    Thrust,

    /// <summary>Torque on the propeller's shaft, N m.</summary>
    Torque,

    /// <summary>Voltage at the speed controller, V.</summary>
    Voltage,

    /// <summary>Current into the speed controller, A.</summary>
    Current,

    /// <summary>Power into the speed controller, W.</summary>
    ElectricalPower,

    /// <summary>Power on the shaft, W.</summary>
    MechanicalPower,

    /// <summary>Rotor speed, rad/s.</summary>
    Speed,

    /// <summary>Speed of the electrical field, rad/s: pole pairs times the rotor's.</summary>
    ElectricalSpeed,

    /// <summary>Thrust over electrical power, N/W; a cross-check only.</summary>
    Efficiency,

    /// <summary>Name of the propeller.</summary>
    Propeller,
}
