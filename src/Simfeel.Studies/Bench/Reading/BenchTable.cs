using Simfeel.Builds.Format;
using Simfeel.Builds.Reading;
using Simfeel.Studies.Bench.Measuring;
using Simfeel.Studies.Fit;

namespace Simfeel.Studies.Bench.Reading;

/// <summary>One table of a readings file after every value was checked against the format.</summary>
internal sealed class BenchTable(string name, Place at)
{
    private readonly Dictionary<string, IReadOnlyList<double>> _numbers = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Place> _places = new(StringComparer.Ordinal);

    /// <summary>Name of the table; empty for the top of the file.</summary>
    public string Name => name;

    /// <summary>Where it starts.</summary>
    public Place At => at;

    /// <summary>Text of the key <c>build</c>.</summary>
    public string BuildName { get; set; } = "";

    /// <summary>Whether the file gave anything in it.</summary>
    public bool Any => _places.Count > 0;

    /// <summary>Takes numbers in their key's unit.</summary>
    public void Set(KeySpec key, IEnumerable<double> values, Place place)
    {
        _numbers[key.Key] = [.. values.Select(value => value * key.ToSI)];
        _places[key.Key] = place;
    }

    /// <summary>Takes a key without a number, so that it does not count as missing.</summary>
    public void Note(KeySpec key, Place place) => _places[key.Key] = place;

    /// <summary>Whether the file gave the key.</summary>
    public bool Gave(string key) => _places.ContainsKey(key);

    /// <summary>Where a key stands, else where the table does.</summary>
    public Place PlaceOf(string key) => _places.GetValueOrDefault(key, at);

    /// <summary>Repeated readings in SI; empty where the file gave none.</summary>
    public IReadOnlyList<double> Many(string key) => _numbers.GetValueOrDefault(key, []);

    /// <summary>A number in SI; the default where the file gave none.</summary>
    public double this[string key] =>
        _numbers.TryGetValue(key, out IReadOnlyList<double>? values) ? values[0]
        : BenchFormat.Find(name, key) is { Default: double usual } spec ? usual * spec.ToSI
        : double.NaN;

    /// <summary>A number with its standard error, both in SI.</summary>
    public WithSigma With(string key, string sigmaKey) => new(this[key], this[sigmaKey]);

    /// <summary>Standard error of a scale: as given, else that of a <see cref="KitchenScale"/>.</summary>
    public double ScaleSigma(string key, double mass) => Gave(key) ? this[key] : KitchenScale.Sigma(mass);
}
