using Simfeel.Builds;
using Simfeel.Builds.Format;

namespace Simfeel.Studies.Sheet;

/// <summary>A number of the build files in which two builds differ.</summary>
/// <param name="Key">Full key; extra parts by their names, <c>extra[video antenna].mass_g</c>, since their numbers mean nothing in another build.</param>
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
        Dictionary<string, BuildValue> ofA = ByName(a), ofB = ByName(b);
        // a key that only one build has comes after those of its own file
        IEnumerable<string> keys = ofA.Keys.Union(ofB.Keys);
        return
        [
            .. from key in keys
               let x = ofA.GetValueOrDefault(key)
               let y = ofB.GetValueOrDefault(key)
               where x is null || y is null || Math.Abs(x.Typical - y.Typical) > Rounding
               select new BuildDifference(key, TableOf(key), x, y),
        ];
    }

    /// <summary>
    /// The numbers of a build in their order, extra parts by their names; of two with one name the second is <c>extra[name 2]</c>, and one
    /// without a name keeps its number.
    /// </summary>
    public static Dictionary<string, BuildValue> ByName(Build build)
    {
        ArgumentNullException.ThrowIfNull(build);
        string[] names = [.. build.Extras.Select((extra, n) => Unique(build.Extras, n, extra.Name))];
        return build.Values.ToDictionary(value => BuildFormat.ExtraNumber(value.Key) is > 0 and int n ? $"extra[{names[n - 1]}]{value.Key[value.Key.LastIndexOf('.')..]}" : value.Key);
    }

    /// <summary>Table of a full key: what stands before its last dot, since an extra part's name may hold dots.</summary>
    public static string TableOf(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return key[..key.LastIndexOf('.')];
    }

    private static string Unique(IReadOnlyList<ExtraSpec> extras, int n, string name)
    {
        int before = extras.Take(n).Count(extra => extra.Name == name);
        return name.Length == 0 ? (n + 1).ToString() : before == 0 ? name : $"{name} {before + 1}";
    }
}
