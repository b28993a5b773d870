namespace Simfeel.Builds.Reading;

/// <summary>A place in a source text, counted from 1.</summary>
internal readonly record struct Place(int Line, int Column);

/// <summary>Collects what is wrong with one source text, so that its writer sees all of it at once.</summary>
internal sealed class DiagnosticBag(string sourceName)
{
    private readonly List<Diagnostic> _found = [];

    public string SourceName => sourceName;

    public bool HasErrors => _found.Any(d => d.Severity == Severity.Error);

    /// <summary>True where something was said about the key.</summary>
    public bool Concerns(string key) => _found.Any(d => d.Key == key);

    /// <summary>
    /// By line; what concerns the whole text, such as a key that is missing, comes after these, since a line often tells why, and
    /// what concerns a file named in it last.
    /// </summary>
    public IReadOnlyList<Diagnostic> InOrder() =>
        [.. _found.OrderBy(d => d.File != sourceName).ThenBy(d => d.Line ?? int.MaxValue).ThenBy(d => d.Column ?? 0)];

    /// <summary>Takes over what was found in a file that this one names.</summary>
    public void Adopt(DiagnosticBag other) => _found.AddRange(other._found);

    public void Error(Place? at, string key, string value, string message, string hint = "") =>
        Add(Severity.Error, at, key, value, message, hint);

    public void Warning(Place? at, string key, string value, string message, string hint = "") =>
        Add(Severity.Warning, at, key, value, message, hint);

    private void Add(Severity severity, Place? at, string key, string value, string message, string hint) =>
        _found.Add(new(severity, SourceName, at?.Line, at?.Column, key, Shortened(WithoutComment(value)), message, hint));

    /// <summary>A value as it stands in the file may drag the comment behind it along.</summary>
    private static string WithoutComment(string value)
    {
        char quote = '\0';
        for (int n = 0; n < value.Length; n++)
        {
            char c = value[n];
            if (quote == '\0' && c == '#') return value[..n];
            if (quote == c) quote = '\0';
            else if (quote == '\0' && c is '"' or '\'') quote = c;
        }
        return value;
    }

    private static string Shortened(string value)
    {
        string line = string.Concat(value.Trim().Select(c => char.IsControl(c) ? ' ' : c));
        return line.Length <= 60 ? line : line[..57] + "...";
    }
}
