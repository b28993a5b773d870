using Simfeel.Flight;
using Simfeel.Physics.Stand;

namespace Simfeel.Studies.Sheet.Sections;

/// <summary>The working points of a craft's first rotor in still air, all motors on the pack.</summary>
/// <param name="Name">Name of the build.</param>
/// <param name="IsB">Whether it is build B.</param>
/// <param name="Points">From a <see cref="Steps"/>th of the speed at full throttle to all of it.</param>
/// <param name="Hover">Hover, every rotor lifting the same share.</param>
/// <param name="Full">Full throttle.</param>
/// <param name="Together">Reserve up in hover when all motors open at once and the pack sags, N m.</param>
internal sealed record ReserveCurve(
    string Name, bool IsB, IReadOnlyList<OperatingPoint> Points, OperatingPoint Hover, OperatingPoint Full, double Together)
{
    public const int Steps = 40;

    public static ReserveCurve Of(TunedUnit unit, PilotProfile profile, string name, bool isB)
    {
        VirtualStand stand = new(unit.Unit.Craft, unit.Density, profile.StateOfCharge, unit.Unit.Craft.Rotors.Count);
        OperatingPoint full = stand.AtDuty(1), hover = unit.Hover.Rotor;
        return new(
            name, isB, [.. Enumerable.Range(1, Steps).Select(n => stand.AtSpeed(full.Speed * n / Steps))], hover, full, stand.ReserveUpTogether(hover));
    }
}
