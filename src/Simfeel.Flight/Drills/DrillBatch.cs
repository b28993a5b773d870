using System.Runtime.Intrinsics;
using Simfeel.Physics.Lanes;

namespace Simfeel.Flight.Drills;

/// <summary>
/// Flies a drill with many craft, as many at a time as this processor steps together. Lane width changes no bit of a flight, so
/// neither does the machine.
/// </summary>
public static class DrillBatch
{
    /// <summary>Craft that fly side by side at best, in double precision.</summary>
    public static int Width { get; } = Vector512.IsHardwareAccelerated ? Lane8.Width : Vector256.IsHardwareAccelerated ? Lane4.Width : 1;

    /// <summary>Craft that fly side by side at best.</summary>
    public static int WidthOf(Precision precision) => precision == Precision.Single ? LaneF16.Width : Width;

    /// <summary>Flies a drill with 1 to <see cref="WidthOf"/> craft, all with the same number of rotors; logs in their order.</summary>
    /// <param name="drill">The drill.</param>
    /// <param name="units">The craft and their gains.</param>
    /// <param name="profile">The pilot.</param>
    /// <param name="effort">Share of full stick, 0.25 to 1.</param>
    /// <param name="field">The field.</param>
    /// <param name="buffers">Where the logs go; memory of their own if null.</param>
    /// <param name="loadsFrom">Time from which the logs hold loads, s, as for <see cref="DrillRunner.FlyLanes{T}"/>.</param>
    /// <param name="precision">How exactly.</param>
    public static FlightLog[] Fly(
        Drill drill,
        IReadOnlyList<TunedUnit> units,
        PilotProfile profile,
        double effort,
        FieldConditions field,
        LogBuffers? buffers = null,
        double loadsFrom = 0,
        Precision precision = Precision.Double)
    {
        ArgumentNullException.ThrowIfNull(units);
        // one kernel for all but the single craft: compiling another width costs more than a few idle lanes
        return (units.Count, WidthOf(precision)) switch
        {
            // the same on all machines, since its bits are not those of the others
            (_, 16) => DrillRunner.FlyLanes<LaneF16>(drill, units, profile, effort, field, buffers, loadsFrom: loadsFrom),
            (1, _) => DrillRunner.FlyLanes<Lane1>(drill, units, profile, effort, field, buffers, loadsFrom: loadsFrom),
            (_, 4) => DrillRunner.FlyLanes<Lane4>(drill, units, profile, effort, field, buffers, loadsFrom: loadsFrom),
            _ => DrillRunner.FlyLanes<Lane8>(drill, units, profile, effort, field, buffers, loadsFrom: loadsFrom),
        };
    }
}
