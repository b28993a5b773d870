using System.Globalization;

namespace Simfeel.Builds.Checks;

/// <summary>What is suspicious about two builds that each are right by themselves.</summary>
public static class PairChecks
{
    /// <summary>Differences of the wires' mass that two finished craft of the same parts may well have, kg (common practice).</summary>
    private const double WiringScatter = 0.002;

    private const string Weighed = "measured.all_up_mass_g";

    /// <summary>
    /// A sentence where both builds carry the same weighed mass although their parts differ in mass, so that the wiring swallows
    /// what the parts gained or lost: the mark of a copied file whose <c>[measured]</c> was kept. Null elsewhere.
    /// </summary>
    public static string? SwallowedChange(Build a, Build b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        double difference = b.Stack.WiringMass - a.Stack.WiringMass;
        if (MassOf(a) is not double mass || mass != MassOf(b) || Math.Abs(difference) <= WiringScatter) return null;
        return string.Create(CultureInfo.InvariantCulture, $"Both builds are said to weigh {mass:F1} g ({Weighed}) though their parts differ by {Math.Abs(1000 * difference):F1} g; wiring near the centre takes up the difference, so it is not felt. In a file whose parts were changed, delete [measured] or weigh again.");
    }

    private static double? MassOf(Build build) => build.Values.FirstOrDefault(value => value.Key == Weighed)?.Typical;
}
