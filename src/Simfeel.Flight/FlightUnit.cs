using Simfeel.Builds;
using Simfeel.Flight.Contact;
using Simfeel.Physics;

namespace Simfeel.Flight;

/// <summary>A craft as the flight loop needs it: its physics and the traits of its electronics.</summary>
/// <param name="Name">Shown to users.</param>
/// <param name="Craft">Its constants.</param>
/// <param name="GyroLowPass_Hz">Cut-off of the gyro's first-order low-pass filter, Hz.</param>
/// <param name="CommandDelay">From the controller's output to the speed controller's duty, s.</param>
/// <param name="IdleDuty">Smallest duty that the mixer asks of a rotor, so that it keeps turning; 0 to 1.</param>
public sealed record FlightUnit(
    string Name,
    Craft Craft,
    double GyroLowPass_Hz,
    double CommandDelay,
    double IdleDuty)
{
    /// <summary>Current above which the pack is overloaded, A.</summary>
    public double PackCurrentRating { get; init; } = double.PositiveInfinity;

    /// <summary>What of it can touch things; null for a craft that flies through everything.</summary>
    public ContactBody? Body { get; init; }

    /// <summary>The unit of an assembled build.</summary>
    public static FlightUnit Of(AssembledBuild build)
    {
        ArgumentNullException.ThrowIfNull(build);
        FlightHardware hardware = build.Hardware;
        return new(build.Build.Name, build.Craft, hardware.GyroLowPass_Hz, hardware.CommandDelay, hardware.IdleDuty)
        {
            PackCurrentRating = hardware.BatteryCurrentRating,
            Body = ContactBody.Of(build),
        };
    }
}
