using System.Collections.Immutable;
using Simfeel.Builds.Format;
using Simfeel.Physics.Rotors;
using Tomlyn.Syntax;

namespace Simfeel.Builds.Reading;

/// <summary>Reads the stations of a blade: <c>[[0.15, 0.13, 41.5], [0.5, 0.18, 25.9], [1, 0.02, 15.5]]</c>.</summary>
internal static class StationReader
{
    private const int Fewest = 2, Most = 60;
    private const double Innermost = 0.02, LastRoot = 0.5, FirstTip = 0.9;
    private const double Degree = Math.PI / 180;

    /// <summary>The stations, or null with a diagnostic.</summary>
    public static BladeStations? Read(string key, KeySpec spec, ValueSyntax value, Place at, DiagnosticBag bag)
    {
        if (value is not ArraySyntax list)
        {
            bag.Error(at, key, value.ToString(), $"Allowed are {spec.Range}.", "write [[0.15, 0.13, 41.5], ..., [1, 0.02, 15.5]]");
            return null;
        }
        ImmutableArray<BladeStation>.Builder stations = ImmutableArray.CreateBuilder<BladeStation>();
        foreach (ArrayItemSyntax item in list.Items)
        {
            double[] numbers = item.Value is ArraySyntax inner ? [.. inner.Items.Select(i => NumberReader.Plain(i.Value))] : [];
            if (Fault(numbers, stations.Count > 0 ? stations[^1].Radius : 0) is string fault)
            {
                bag.Error(SheetReader.PlaceOf(item), key, item.Value?.ToString() ?? "", $"{fault} Allowed are {spec.Range}.", "radius over R, chord over R, twist in degrees");
                return null;
            }
            stations.Add(new(numbers[0], numbers[1], numbers[2] * Degree));
        }
        string? whole =
            stations.Count == 1 ? "There is only one blade station."
            : stations.Count is < Fewest or > Most ? $"There are {stations.Count} blade stations."
            : stations[0].Radius > LastRoot ? $"The first blade station stands at {stations[0].Radius:G6} of the radius."
            : stations[^1].Radius < FirstTip ? $"The last blade station stands at {stations[^1].Radius:G6} of the radius."
            : null;
        if (whole is null) return new(stations.ToImmutable());
        bag.Error(at, key, "", $"{whole} Allowed are {spec.Range}.", "measure the blade from root to tip");
        return null;
    }

    private static string? Fault(double[] numbers, double before) =>
        numbers.Length != 3 || numbers.Any(n => !double.IsFinite(n)) ? "A blade station has three numbers."
        : numbers[0] is < Innermost or > 1 ? $"The radius {numbers[0]:G6} is out of range."
        : numbers[0] <= before ? $"The radius {numbers[0]:G6} does not rise; the station before stands at {before:G6}."
        : numbers[1] is < 0.005 or > 1 ? $"The chord {numbers[1]:G6} is out of range."
        : numbers[2] is < -45 or > 90 ? $"The twist {numbers[2]:G6} is out of range."
        : null;
}
