using System.Globalization;
using System.Text;
using Simfeel.Builds;
using Simfeel.Physics.Air;

namespace Simfeel.Flight.Traces;

/// <summary>All that a trace keeps of a build, so that it can be made again without any other file.</summary>
/// <param name="Name">Name of the build.</param>
/// <param name="File">Name of its file without folders; empty where it came from none.</param>
/// <param name="Rotors">Number of rotors.</param>
/// <param name="Source">Texts of the build file and of its polar.</param>
/// <param name="Edits">Numbers changed since, full key and value in the key's unit.</param>
public sealed record TraceBuild(
    string Name, string File, int Rotors, BuildSource Source, IReadOnlyList<KeyValuePair<string, double>> Edits)
{
    /// <summary>What to keep of a build.</summary>
    public static TraceBuild Of(FlyableBuild build)
    {
        ArgumentNullException.ThrowIfNull(build);
        string file = build.Path is null ? "" : Path.GetFileName(build.Path);
        return new(build.Name, file, build.Unit.Unit.Craft.Rotors.Count, build.Source, build.Edits);
    }

    /// <summary>Makes the build again.</summary>
    /// <exception cref="TraceException">The texts make no build that flies, such as after the format changed.</exception>
    public FlyableBuild Rebuild(AirState air, PilotProfile profile)
    {
        FlyableResult result = FlyableBuild.Of(Source, File.Length > 0 ? File : Name, Edits, air, profile);
        FlyableBuild build = result.Build ?? throw new TraceException($"The trace's build {Name} cannot be made again: {result.Message}");
        int rotors = build.Unit.Unit.Craft.Rotors.Count;
        return rotors == Rotors
            ? build
            : throw new TraceException($"The trace's build {Name} should have {Rotors} rotors, but its text makes {rotors}.");
    }

    /// <summary>Edits as <c>key=value</c>, a line each.</summary>
    internal string EditText()
    {
        StringBuilder text = new();
        foreach ((string key, double value) in Edits)
            text.Append(key).Append('=').Append(value.ToString("R", CultureInfo.InvariantCulture)).Append('\n');
        return text.ToString();
    }

    /// <summary>Edits out of their text; null where it is wrong.</summary>
    internal static IReadOnlyList<KeyValuePair<string, double>>? ParseEdits(string text)
    {
        List<KeyValuePair<string, double>> edits = [];
        foreach (string line in text.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            int sign = line.IndexOf('=', StringComparison.Ordinal);
            if (sign < 1 || !double.TryParse(line.AsSpan(sign + 1), NumberStyles.Float, CultureInfo.InvariantCulture, out double value) || !double.IsFinite(value)) return null;
            edits.Add(new(line[..sign], value));
        }
        return edits;
    }
}
