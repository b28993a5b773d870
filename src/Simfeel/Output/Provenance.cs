using Simfeel.Builds;

namespace Simfeel.CommandLine.Output;

/// <summary>Says which numbers a build file did not give, and what stands in for them.</summary>
internal static class Provenance
{
    /// <summary>Prints the estimated numbers of some tables of the build file with their rules.</summary>
    public static void Print(AssembledBuild build, params string[] tables)
    {
        List<BuildValue> filled = [.. build.Values.Where(value =>
            value.Source == ValueSource.Rule && tables.Contains(value.Key.Split('.')[0], StringComparer.Ordinal))];
        if (filled.Count == 0) return;
        Console.WriteLine();
        Console.WriteLine("Estimated, since the file does not say:");
        foreach (BuildValue value in filled)
            Console.WriteLine($"  {value.Key} = {(Math.Abs(value.Typical) >= 1e4 ? value.Typical.ToString("F0") : Math.Round(value.Typical, 9).ToString("G4"))}  ({value.Rule})");
    }
}
