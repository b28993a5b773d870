namespace Simfeel.Flight;

/// <summary>Switches beside the sticks.</summary>
[Flags]
public enum PilotSwitches
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>Held: rotors may turn. A craft does not arm while the throttle stands above hover, nor after a crash.</summary>
    Armed = 1,

    /// <summary>Held: the other craft flies along with the same sticks.</summary>
    Shadow = 2,

    /// <summary>Held: self-levelling; roll and pitch sticks command attitude.</summary>
    Level = 4,

    /// <summary>Held: the throttle stick commands climb; hover at the hover stick. For keyboards.</summary>
    Climb = 8,

    /// <summary>At this reading: both craft back to their start.</summary>
    Restart = 16,

    /// <summary>At this reading: the other craft is flown, both back at their start.</summary>
    SwapFromStart = 32,

    /// <summary>At this reading: the other craft is flown from where this one is.</summary>
    SwapInPlace = 64,
}

/// <summary>
/// All that a pilot hands to a flight at one reading of the sticks, in the steps of a 16 bit link: what is recorded is what
/// was flown.
/// </summary>
/// <param name="Roll">-32767 (left) to 32767 (right).</param>
/// <param name="Pitch">-32767 (nose down) to 32767 (nose up).</param>
/// <param name="Yaw">-32767 (left) to 32767 (right).</param>
/// <param name="Throttle">0 to 65535.</param>
/// <param name="Switches">Switches.</param>
public readonly record struct PilotInput(short Roll, short Pitch, short Yaw, ushort Throttle, PilotSwitches Switches)
{
    /// <summary>The nearest steps; deflections beyond the ends count as full, what is not a number as centre and lowest throttle.</summary>
    public static PilotInput Of(Sticks sticks, PilotSwitches switches)
    {
        return new(Axis(sticks.Roll), Axis(sticks.Pitch), Axis(sticks.Yaw), (ushort)Step(sticks.Throttle, 0, ushort.MaxValue), switches);

        static short Axis(double deflection) => (short)Step(deflection, -1, short.MaxValue);

        static double Step(double value, double least, double steps) =>
            double.IsNaN(value) ? 0 : Math.Round(Math.Clamp(value, least, 1) * steps);
    }

    /// <summary>Where the sticks stand.</summary>
    public Sticks Sticks => new(
        Roll / (double)short.MaxValue, Pitch / (double)short.MaxValue, Yaw / (double)short.MaxValue, Throttle / (double)ushort.MaxValue);

    /// <summary>Whether a switch is on.</summary>
    public bool Has(PilotSwitches one) => (Switches & one) != 0;
}
