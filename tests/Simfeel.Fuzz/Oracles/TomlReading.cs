namespace Simfeel.Fuzz.Oracles;

/// <summary>What a strict reading of a TOML text gave.</summary>
/// <param name="Values">
/// Every value by its full key: parts joined by dots, a part that needs quotes in quotes, tables of a list numbered from 1 as in
/// <c>extra[2].mass_g</c>. A value is a long, double, bool, string, <see cref="TomlDate"/>, list, or dictionary (a table in braces).
/// </param>
/// <param name="Tables">Full names of the tables with headings of their own.</param>
internal sealed record TomlReading(IReadOnlyList<KeyValuePair<string, object>> Values, IReadOnlyList<string> Tables);

/// <summary>A date or time, as written.</summary>
internal sealed record TomlDate(string Text);

/// <summary>The text is no TOML.</summary>
internal sealed class NoTomlException(int at, string why) : Exception($"{why} at character {at}");
