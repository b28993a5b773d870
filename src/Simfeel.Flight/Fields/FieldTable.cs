using Simfeel.Builds.Format;
using Simfeel.Builds.Reading;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Fields;

/// <summary>One table of a field file after every value was checked against the format.</summary>
internal sealed class FieldTable(string kind, Place at)
{
    private readonly Dictionary<string, double> _numbers = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _texts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Place> _places = new(StringComparer.Ordinal);

    /// <summary>Name of the table.</summary>
    public string Kind => kind;

    /// <summary>Where it starts.</summary>
    public Place At => at;

    /// <summary>Takes a number in its key's unit.</summary>
    public void Set(KeySpec key, double value, Place place) => (_numbers[key.Key], _places[key.Key]) = (value * key.ToSI, place);

    /// <summary>Takes a text.</summary>
    public void Set(KeySpec key, string text, Place place) => (_texts[key.Key], _places[key.Key]) = (text, place);

    /// <summary>Takes a key whose value was refused, so that it does not count as missing.</summary>
    public void Refuse(KeySpec key, Place place) => _places[key.Key] = place;

    /// <summary>Whether the file gave the key.</summary>
    public bool Gave(string key) => _places.ContainsKey(key);

    /// <summary>Where a key stands, else where the table does.</summary>
    public Place PlaceOf(string key) => _places.GetValueOrDefault(key, at);

    /// <summary>A text.</summary>
    public string Text(string key) => _texts.GetValueOrDefault(key, "");

    /// <summary>Where it stands: north and east, m, z 0.</summary>
    public Vec3 Foot => new(this["north_m"], this["east_m"], 0);

    /// <summary>First end of a wall or a line, m, z 0.</summary>
    public Vec3 From => new(this["from_north_m"], this["from_east_m"], 0);

    /// <summary>Other end of a wall or a line, m, z 0.</summary>
    public Vec3 To => new(this["to_north_m"], this["to_east_m"], 0);

    /// <summary>How many of it stand in a row; 1 where its format knows no rows.</summary>
    public int Count => FieldFormat.Find(kind, "count") is null ? 1 : (int)this["count"];

    /// <summary>From one of the row to the next, m, z 0.</summary>
    public Vec3 Step => new(this["step_north_m"], this["step_east_m"], 0);

    /// <summary>A number in SI; the default where the file gave none, 0 where there is no default or no such key.</summary>
    public double this[string key] =>
        _numbers.TryGetValue(key, out double value) ? value
        : FieldFormat.Find(kind, key) is { Default: double missing } spec ? missing * spec.ToSI
        : 0;
}
