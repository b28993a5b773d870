namespace Simfeel.Builds;

/// <summary>A folder of build files that are known by their names, such as the starter builds.</summary>
/// <param name="folder">The folder; one that is missing holds no build.</param>
public sealed class BuildShelf(string folder)
{
    /// <summary>The shelf of starter builds that comes with the program.</summary>
    public static BuildShelf Starters { get; } = new(Path.Combine(AppContext.BaseDirectory, "builds"));

    /// <summary>Names of the builds in order: file names without their ending.</summary>
    public IReadOnlyList<string> Names { get; } =
        Directory.Exists(folder)
            ? [.. Directory.EnumerateFiles(folder, "*.toml").Select(file => Path.GetFileNameWithoutExtension(file)).Order(StringComparer.Ordinal)]
            : [];

    /// <summary>
    /// The file of a build: the path itself where there is such a file or where it looks like a path, else that of the build of
    /// that name on the shelf; null where there is neither.
    /// </summary>
    public string? PathOf(string nameOrPath)
    {
        ArgumentNullException.ThrowIfNull(nameOrPath);
        if (File.Exists(nameOrPath) || Directory.Exists(nameOrPath)) return nameOrPath;
        bool looksLikeName = nameOrPath.Length > 0 && !nameOrPath.Contains(Path.DirectorySeparatorChar) && !nameOrPath.EndsWith(".toml", StringComparison.Ordinal);
        if (!looksLikeName) return nameOrPath;
        string name = nameOrPath.ToLowerInvariant();
        return Names.Contains(name) ? Path.Combine(folder, name + ".toml") : null;
    }
}
