using System.Globalization;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>
/// Started directly (dotnet exec Simfeel.Physics.Tests.dll STEPS) the assembly prints the hashes of
/// <see cref="HashRun"/>; the test host does not use this.
/// </summary>
internal static class Program
{
    private static int Main(string[] args)
    {
        if (args is not [string steps] || !int.TryParse(steps, NumberStyles.None, CultureInfo.InvariantCulture, out int count)) return 2;
        foreach (string line in HashRun.Lines(count)) Console.WriteLine(line);
        return 0;
    }
}
