using System.Diagnostics;

namespace Simfeel.Cockpit.Platform;

/// <summary>Time as the frame pacer sees it; tests put their own in its place.</summary>
internal abstract class FrameClock
{
    /// <summary>The machine's own clock.</summary>
    public static FrameClock OfMachine { get; } = new StopwatchClock();

    /// <summary>Ticks a second.</summary>
    public abstract long Frequency { get; }

    /// <summary>Ticks since some moment.</summary>
    public abstract long Now { get; }

    /// <summary>Gives the processor away for about a millisecond; the system may take longer.</summary>
    public abstract void Sleep();

    /// <summary>Passes a few tens of nanoseconds.</summary>
    public abstract void Spin();

    private sealed class StopwatchClock : FrameClock
    {
        public override long Frequency => Stopwatch.Frequency;

        public override long Now => Stopwatch.GetTimestamp();

        public override void Sleep() => Thread.Sleep(1);

        public override void Spin() => Thread.SpinWait(20);
    }
}
