using System.Diagnostics;
using Simfeel.Cockpit.Platform;

namespace Simfeel.Cockpit.Input;

/// <summary>
/// Time from the arrival of a stick event in the program to the end of the swap of the frame that shows it. The oldest
/// event of a frame counts. What lies before (the device, its cable, up to one frame until the events are polled) and after
/// (the screen) is not seen from here. Nothing is allocated after construction.
/// </summary>
public sealed class StickDelayMeter
{
    private long _arrived;

    /// <summary>The measured delays.</summary>
    public TimeRing Delays { get; } = new();

    /// <summary>A stick event was polled just now.</summary>
    public void Arrived() => Arrived(Stopwatch.GetTimestamp());

    /// <summary>The swap of the frame that was made of these events is over just now.</summary>
    public void Shown() => Shown(Stopwatch.GetTimestamp());

    internal void Arrived(long ticks)
    {
        if (_arrived == 0) _arrived = ticks;
    }

    internal void Shown(long ticks)
    {
        if (_arrived == 0) return;
        Delays.Add((ticks - _arrived) / (double)Stopwatch.Frequency);
        _arrived = 0;
    }
}
