using System.Globalization;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>
/// Asserts that a measured difference stays below a bound. With the environment variable SIMFEEL_RESIDUALS set to a file
/// name, every measurement is appended to that file, so that the margins can be read.
/// </summary>
internal static class Bound
{
    private static readonly string? File = Environment.GetEnvironmentVariable("SIMFEEL_RESIDUALS");
    private static readonly Lock Gate = new();

    public static void Check(string what, double measured, double bound)
    {
        Write(what, measured, bound);
        Assert.True(measured <= bound, string.Create(CultureInfo.InvariantCulture, $"{what}: {measured:g4}, above {bound:g4}"));
    }

    public static void Between(string what, double measured, double low, double high)
    {
        Write(what, measured, high);
        Assert.True(measured >= low && measured <= high, string.Create(CultureInfo.InvariantCulture, $"{what}: {measured:g6}, not in {low:g6} to {high:g6}"));
    }

    private static void Write(string what, double measured, double bound)
    {
        if (File is null) return;
        lock (Gate) System.IO.File.AppendAllText(File, string.Create(CultureInfo.InvariantCulture, $"{what}: {measured:g4} (bound {bound:g4})\n"));
    }
}
