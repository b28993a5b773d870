using System.Runtime.InteropServices;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Guards;

/// <summary>What the guard of a batch keeps between steps, one lane for each craft; see <see cref="Guard"/>.</summary>
[StructLayout(LayoutKind.Sequential)]
public struct GuardLanes<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Mass, kg.</summary>
    public T Mass;

    /// <summary>Most power with which energy may rise, W.</summary>
    public T MostPower;

    /// <summary>Energy of motion and height at the last look, J; infinite where that is not known.</summary>
    public T Energy;

    /// <summary>0 in lanes in which all held at the last look, else 1.</summary>
    public T Broken;
}

/// <summary>The bounds of what is looked at after every step.</summary>
/// <remarks>
/// <para>
/// <b>Energy.</b> In the frame of the air, which is steady over a step, air that nothing else drives only takes energy from a
/// craft. What is left to raise its energy E of motion and height, rotors included, is the battery; and whatever is
/// connected to it, a source of voltage V behind a resistance R gives V^2 / 4R at most (the maximum power theorem, see any
/// text on circuits). So a step of h adds at most h V^2 / 4R. Looked at step by step the bound needs no history, holds at any
/// speed, height and wind, and is blind to contact, which acts between steps.
/// </para>
/// <para>
/// <b>Room.</b> A model may be less strict than air: a build may multiply thrust by up to 1.5 and torque by as little as 0.5,
/// and near the ground a rotor lifts up to a third more for the same torque. That makes 1.5 / 0.5 * 4/3 = 4 =
/// <see cref="AirMargin"/>. And the integrator itself is not exact: it may find up to <see cref="GrowthMargin"/> of the energy
/// of motion in a step.
/// </para>
/// </remarks>
public static class Guard
{
    /// <summary>By how much the square of the attitude's length may differ from 1; 1e-15 is usual, and in single precision 1e-6.</summary>
    /// <remarks>One step brings it back to 3/4 e^2 where it was off by e, so this is passed by whatever turns by more than two radians in a step.</remarks>
    public const double AttitudeTolerance = 1e-5;

    /// <summary>Times the battery's most power by which energy may rise.</summary>
    public const double AirMargin = 4;

    /// <summary>Share of the energy of motion by which a step may be wrong.</summary>
    public const double GrowthMargin = 0.01;

    /// <summary>The most power with which the energy of a craft may rise, W.</summary>
    public static double MostPower(BatteryConstants battery)
    {
        ArgumentNullException.ThrowIfNull(battery);
        double highest = 0;
        foreach (double voltage in battery.OpenCircuitVoltage) highest = Math.Max(highest, voltage);
        return AirMargin * highest * highest / (4 * battery.SeriesResistance);
    }
}
