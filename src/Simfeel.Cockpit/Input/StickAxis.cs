namespace Simfeel.Cockpit.Input;

/// <summary>
/// How one raw axis of a device becomes a stick: where it ends, where it rests, which way it goes. Raw numbers are SDL's,
/// -32768 to 32767, whatever the device sends.
/// </summary>
public sealed record StickAxis
{
    /// <summary>Axis of the device, from 0.</summary>
    public required int Axis { get; init; }

    /// <summary>Lowest raw number that counts.</summary>
    public int Low { get; init; } = short.MinValue;

    /// <summary>Raw number at rest, between <see cref="Low"/> and <see cref="High"/>.</summary>
    public int Centre { get; init; }

    /// <summary>Highest raw number that counts.</summary>
    public int High { get; init; } = short.MaxValue;

    /// <summary>The highest raw number is left, nose down or lowest throttle.</summary>
    public bool Inverted { get; init; }

    /// <summary>Raw numbers around the rest position that count as rest: just above the noise that was measured.</summary>
    public int Deadband { get; init; }

    /// <summary>
    /// Deflection from the rest position, -1 to 1. Each side has its own scale, and the scale begins at the edge of the
    /// deadband, so that nothing jumps there.
    /// </summary>
    public double FromCentre(int raw)
    {
        int away = raw - Centre;
        double room = (away < 0 ? Centre - Low : High - Centre) - Deadband;
        double beyond = Math.Abs(away) - Deadband;
        if (beyond <= 0 || room <= 0) return 0;
        double deflection = Math.Min(beyond / room, 1);
        return away < 0 == Inverted ? deflection : -deflection;
    }

    /// <summary>Position between the ends, 0 to 1; the deadband lies at the lower end.</summary>
    public double FromEnd(int raw)
    {
        double way = (Inverted ? High - raw : raw - Low) - Deadband;
        double room = High - Low - Deadband;
        return room <= 0 ? 0 : Math.Clamp(way / room, 0, 1);
    }
}
