using System.Text.RegularExpressions;

namespace Simfeel.Benchmarks;

/// <summary>What the results are filed under.</summary>
internal static partial class Machine
{
    /// <summary>Model name of the processor, with family and model number where the system tells them.</summary>
    public static string CpuName { get; } = ReadCpuName();

    /// <summary>The name as a file name.</summary>
    public static string FileName => NotPlain().Replace(CpuName.ToLowerInvariant(), "-").Trim('-') + ".md";

    private static string ReadCpuName()
    {
        const string file = "/proc/cpuinfo";
        if (!File.Exists(file)) return Environment.GetEnvironmentVariable("PROCESSOR_IDENTIFIER") ?? "unknown processor";
        Dictionary<string, string> first = [];
        foreach (string line in File.ReadLines(file).TakeWhile(line => line.Length > 0))
        {
            string[] parts = line.Split(':', 2, StringSplitOptions.TrimEntries);
            if (parts.Length == 2) first[parts[0]] = parts[1];
        }
        string name = first.GetValueOrDefault("model name", "unknown processor");
        return first.TryGetValue("cpu family", out string? family) && first.TryGetValue("model", out string? model)
            ? $"{name} family {family} model {model}"
            : name;
    }

    [GeneratedRegex("[^a-z0-9]+")]
    private static partial Regex NotPlain();
}
