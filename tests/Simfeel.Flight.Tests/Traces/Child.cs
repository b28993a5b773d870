using System.Diagnostics;
using System.Globalization;

namespace Simfeel.Flight.Tests.Traces;

/// <summary>A process that records: this assembly, started directly.</summary>
internal static class Child
{
    /// <summary>Starts it.</summary>
    /// <param name="seconds">Time to record, s.</param>
    /// <param name="files">Files to record into.</param>
    /// <param name="limit">Largest file that it may write, blocks of 512 bytes; null for no limit.</param>
    public static Process Start(double seconds, IEnumerable<string> files, int? limit = null)
    {
        ProcessStartInfo start = new("sh") { RedirectStandardOutput = true };
        start.ArgumentList.Add("-c");
        // a process that writes beyond the limit is told by a signal that would end it, unless it is ignored
        start.ArgumentList.Add(limit is null ? "exec \"$@\"" : $"trap '' XFSZ; ulimit -f {limit}; exec \"$@\"");
        start.ArgumentList.Add("sh");
        start.ArgumentList.Add(Environment.ProcessPath!);
        start.ArgumentList.Add("exec");
        start.ArgumentList.Add(typeof(Child).Assembly.Location);
        start.ArgumentList.Add(seconds.ToString(CultureInfo.InvariantCulture));
        foreach (string file in files) start.ArgumentList.Add(file);
        // no large code needed: what starts fast is killed often
        start.Environment["DOTNET_TieredPGO"] = "0";
        // else a file of shared code would meet the limit
        start.Environment["DOTNET_EnableWriteXorExecute"] = "0";
        return Process.Start(start)!;
    }
}
