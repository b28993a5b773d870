using Simfeel.Builds;

namespace Simfeel.Studies.Sheet;

/// <summary>A number of the build files in which two builds differ.</summary>
/// <param name="Key">Full key.</param>
/// <param name="Group">Table of the key, such as <c>motor</c>.</param>
/// <param name="A">Of build A; null where it has no such number.</param>
/// <param name="B">Of build B; null where it has no such number.</param>
public sealed record BuildDifference(string Key, string Group, BuildValue? A, BuildValue? B)
{
    /// <summary>Differences no larger are left over from rounding, whatever the unit.</summary>
    private const double Rounding = 1e-9;

    /// <summary>Every number in which two builds differ, in the order of the format.</summary>
    public static IReadOnlyList<BuildDifference> Between(Build a, Build b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        Dictionary<string, BuildValue> ofA = a.Values.ToDictionary(value => value.Key), ofB = b.Values.ToDictionary(value => value.Key);
        // a key that only one build has comes after those of its own file
        IEnumerable<string> keys = a.Values.Select(value => value.Key).Union(b.Values.Select(value => value.Key));
        return
        [
            .. from key in keys
               let x = ofA.GetValueOrDefault(key)
               let y = ofB.GetValueOrDefault(key)
               where x is null || y is null || Math.Abs(x.Typical - y.Typical) > Rounding
               select new BuildDifference(key, key.Split('.')[0], x, y),
        ];
    }
}
