using System.Diagnostics;

namespace Simfeel.CommandLine.Output;

/// <summary>
/// Tells on standard error how far long work has come and about how long it will still take; nothing where standard error is not
/// a terminal, so that logs stay clean.
/// </summary>
internal sealed class WorkProgress : IProgress<double>
{
    private static readonly TimeSpan Quiet = TimeSpan.FromSeconds(0.7), Interval = TimeSpan.FromSeconds(0.2);

    private readonly Lock _gate = new();
    private readonly Stopwatch _watch = Stopwatch.StartNew();
    private string _what;
    private TimeSpan _begun;
    private TimeSpan _next = Quiet;
    private int _length;

    private WorkProgress(string what) => _what = what;

    /// <summary>Does work under a progress line and clears the line afterwards.</summary>
    /// <param name="what">What is being done, such as "Flying every hybrid".</param>
    /// <param name="work">The work; null for its progress where nobody looks.</param>
    public static T Run<T>(string what, Func<WorkProgress?, T> work)
    {
        if (Console.IsErrorRedirected) return work(null);
        WorkProgress progress = new(what);
        try
        {
            return work(progress);
        }
        finally
        {
            progress.Clear();
        }
    }

    /// <summary>Tells how far one of several pieces of work has come.</summary>
    /// <param name="what">The piece; another than before starts its time anew.</param>
    /// <param name="value">Share done, 0 to 1.</param>
    public void Report(string what, double value)
    {
        lock (_gate)
        {
            if (what != _what) (_what, _begun) = (what, _watch.Elapsed);
        }
        Report(value);
    }

    /// <inheritdoc/>
    public void Report(double value)
    {
        lock (_gate)
        {
            TimeSpan now = _watch.Elapsed;
            if (now < _next) return;
            _next = now + Interval;
            string left = value > 0.02 ? $", about {Words((now - _begun) * ((1 - value) / value))} left" : "";
            string text = $"{_what}: {100 * value:F0} %{left}";
            Console.Error.Write("\r" + text.PadRight(_length));
            _length = text.Length;
        }
    }

    private static string Words(TimeSpan time) =>
        time.TotalSeconds < 100 ? $"{Math.Ceiling(time.TotalSeconds):F0} s" : time.TotalMinutes < 100 ? $"{time.TotalMinutes:F0} min" : $"{time.TotalHours:F1} h";

    private void Clear()
    {
        lock (_gate)
        {
            if (_length > 0) Console.Error.Write("\r" + new string(' ', _length) + "\r");
        }
    }
}
