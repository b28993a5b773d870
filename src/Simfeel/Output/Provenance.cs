using Simfeel.Builds;

namespace Simfeel.CommandLine.Output;

/// <summary>Says which numbers a build file did not give, and what stands in for them.</summary>
internal static class Provenance
{
    /// <summary>Prints the filled-in numbers with their rules.</summary>
    public static void Print(AssembledBuild build)
    {
        List<BuildValue> filled = [.. build.Values.Where(value => value.Source == ValueSource.Rule)];
        if (filled.Count == 0) return;
        Console.WriteLine();
        Console.WriteLine("Estimated, since the file does not say:");
        foreach (BuildValue value in filled)
            Console.WriteLine($"  {value.Key} = {value.Typical:G4}  ({value.Rule})");
    }
}
