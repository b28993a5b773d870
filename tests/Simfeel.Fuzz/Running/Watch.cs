using System.Globalization;
using System.Runtime.InteropServices;

namespace Simfeel.Fuzz.Running;

/// <summary>
/// Looks at the processor time that the fuzzing thread spends on one input. Wall time would count what other programs do on
/// the machine. A second thread looks on, so that an input that never ends is reported and not only waited for.
/// </summary>
internal sealed partial class Watch : IDisposable
{
    /// <summary>Processor time from which an input counts as a hang, s.</summary>
    public const double Limit = 2;

    /// <summary>Processor time after which the campaign is given up, s: nothing can stop a thread in managed code.</summary>
    private const double GiveUp = 30;

    private const int ThreadTime = 3, ThreadId = 186;

    private readonly Action _gaveUp;
    private readonly Thread _thread;
    private readonly string _file;
    private double _began = double.NaN;
    private volatile bool _stop;

    /// <summary>Watches the thread that makes it.</summary>
    /// <param name="gaveUp">Called from another thread where an input does not end.</param>
    public Watch(Action gaveUp)
    {
        _gaveUp = gaveUp;
        _file = string.Create(CultureInfo.InvariantCulture, $"/proc/self/task/{Syscall(ThreadId)}/schedstat");
        _thread = new(Look) { IsBackground = true, Name = "watch" };
        _thread.Start();
    }

    /// <summary>An input begins.</summary>
    public void Begin() => Volatile.Write(ref _began, Now());

    /// <summary>It has ended; the processor time that it took, s.</summary>
    public double End()
    {
        double took = Now() - Volatile.Read(ref _began);
        Volatile.Write(ref _began, double.NaN);
        return took;
    }

    public void Dispose()
    {
        _stop = true;
        _thread.Join();
    }

    private void Look()
    {
        while (!_stop)
        {
            Thread.Sleep(200);
            double began = Volatile.Read(ref _began);
            if (double.IsNaN(began)) continue;
            double spent = double.Parse(File.ReadAllText(_file).Split(' ')[0], CultureInfo.InvariantCulture) * 1e-9;
            // the input may have ended between the two looks
            if (spent - began > GiveUp && Volatile.Read(ref _began) == began) _gaveUp();
        }
    }

    private static double Now()
    {
        _ = ClockGetTime(ThreadTime, out Time time);
        return time.Seconds + (1e-9 * time.Nanoseconds);
    }

    [StructLayout(LayoutKind.Sequential)]
    private struct Time
    {
        public long Seconds, Nanoseconds;
    }

    [LibraryImport("libc", EntryPoint = "clock_gettime")]
    private static partial int ClockGetTime(int clock, out Time time);

    [LibraryImport("libc", EntryPoint = "syscall")]
    private static partial long Syscall(long number);
}
