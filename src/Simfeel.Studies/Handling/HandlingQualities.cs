using Simfeel.Flight;
using Simfeel.Flight.Drills;

namespace Simfeel.Studies.Handling;

/// <summary>Flies the handling drills and reads them.</summary>
public static class HandlingQualities
{
    /// <summary>Attitude changes over which quickness is read, rad.</summary>
    public static IReadOnlyList<double> Changes { get; } = [Math.PI / 6, Math.PI / 3, Math.PI / 2];

    /// <summary>Readings about roll, pitch and yaw.</summary>
    public static IReadOnlyList<HandlingReading> Of(TunedUnit unit, PilotProfile profile, FieldConditions field) =>
        [.. Enum.GetValues<HandlingAxis>().Select(axis => Of(unit, profile, field, axis))];

    /// <summary>Reading about one axis.</summary>
    public static HandlingReading Of(TunedUnit unit, PilotProfile profile, FieldConditions field, HandlingAxis axis)
    {
        HandlingReading swept = HandlingReading.Of(DrillRunner.Fly(SweepDrills.Chirp(axis), unit, profile, 1, field), axis);
        return swept with
        {
            Quickness =
            [
                .. Changes.Select(angle => SweepFlight.Quickness(
                    DrillRunner.Fly(SweepDrills.AttitudeChange(axis, angle, profile), unit, profile, 1, field), axis)),
            ],
        };
    }
}
