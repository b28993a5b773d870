using System.Collections.Immutable;
using Simfeel.Physics.Maths;

namespace Simfeel.Builds.Reading;

/// <summary>A number as a file gave it, in the unit of its key.</summary>
internal sealed record GivenNumber(double Low, double Typical, double High, ValueSource Source, Place? At, string Written);

/// <summary>A word or text as a file gave it.</summary>
internal sealed record GivenText(string Value, Place? At);

/// <summary>A rotor position as a file gave it, m; spin null where left to the rule.</summary>
internal sealed record GivenPosition(Vec3 p_OM, int? Spin);

/// <summary>
/// What a file said, after every single value was checked against the format and before anything was filled in.
/// Flags are numbers 0 and 1. Keys of extra parts carry their number: <c>extra[1].mass_g</c>.
/// </summary>
internal sealed record BuildSheet
{
    public required string SourceName { get; init; }

    /// <summary>The whole text.</summary>
    public required string Text { get; init; }

    public ImmutableDictionary<string, GivenNumber> Numbers { get; init; } = ImmutableDictionary<string, GivenNumber>.Empty;

    public ImmutableDictionary<string, GivenText> Texts { get; init; } = ImmutableDictionary<string, GivenText>.Empty;

    public ImmutableList<GivenPosition> Positions { get; init; } = [];

    public Place? PositionsAt { get; init; }

    public BladeStations? Stations { get; init; }

    public Place? StationsAt { get; init; }

    public GivenPolar? Polar { get; init; }

    public int ExtraCount { get; init; }

    /// <summary>Where in their bands numbers are taken: -1 low end, 0 typical, 1 high end; typical where a key is missing.</summary>
    public ImmutableDictionary<string, double> Places { get; init; } = ImmutableDictionary<string, double>.Empty;

    /// <summary>Where the tables start, for messages about keys that are missing.</summary>
    public ImmutableDictionary<string, Place> Tables { get; init; } = ImmutableDictionary<string, Place>.Empty;

    /// <summary>Place of a key, else of its table, else null.</summary>
    public Place? PlaceOf(string key)
    {
        if (Numbers.TryGetValue(key, out GivenNumber? number)) return number.At;
        if (Texts.TryGetValue(key, out GivenText? text)) return text.At;
        if (key == "frame.positions_mm") return PositionsAt;
        if (key == "propeller.stations" && StationsAt is not null) return StationsAt;
        if (key == "propeller.polar" && Polar is not null) return Polar.At;
        int dot = key.IndexOf('.', StringComparison.Ordinal);
        return dot > 0 && Tables.TryGetValue(key[..dot], out Place place) ? place : null;
    }
}
