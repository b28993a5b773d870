using System.Diagnostics;
using System.Globalization;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>The determinism contract: the same bits whatever the instruction set, threads and lane width.</summary>
public class DeterminismTests
{
    // Short: without vector hardware the wide lanes run in software.
    private const int Steps = 300;

    private static readonly string[] Here = [.. HashRun.Lines(Steps)];

    // names of the runtime's own settings, .NET 10; the first printed line proves that each took effect
    [Theory]
    [InlineData("DOTNET_EnableAVX512", "avx512 False, avx2 True")]
    [InlineData("DOTNET_EnableAVX2", "avx512 False, avx2 False")]
    [InlineData("DOTNET_EnableHWIntrinsic", "avx512 False, avx2 False, sse4.2 False")]
    public void Hashes_are_the_same_with_instruction_sets_switched_off(string setting, string expected)
    {
        string[] there = RunWith(setting);
        if (Here[0].StartsWith("avx512 True", StringComparison.Ordinal)) Assert.StartsWith(expected, there[0]);
        else if (setting == "DOTNET_EnableHWIntrinsic") Assert.StartsWith(expected, there[0]);
        Assert.Equal(Here[1..], there[1..]);
    }

    [Fact]
    public void Every_double_lane_type_and_thread_count_prints_one_hash()
    {
        foreach (string way in new[] { "Midpoint", "RungeKutta", "Polynomials" })
        {
            string[] hashes = [.. Here.Where(l => l.Contains(way) && !l.StartsWith("LaneF", StringComparison.Ordinal)).Select(l => l[^16..]).Distinct()];
            Assert.Single(hashes);
        }
        Assert.Equal(6, Here[1..].Select(l => l[^16..]).Distinct().Count());
    }

    private static string[] RunWith(string setting)
    {
        ProcessStartInfo start = new(Environment.ProcessPath ?? "dotnet")
        {
            RedirectStandardOutput = true,
            ArgumentList = { "exec", typeof(DeterminismTests).Assembly.Location, Steps.ToString(CultureInfo.InvariantCulture) },
        };
        start.Environment[setting] = "0";
        using Process process = Process.Start(start) ?? throw new InvalidOperationException("The process did not start.");
        string[] lines = process.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
        return lines;
    }
}
