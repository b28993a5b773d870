using System.Text.Json;

namespace Simfeel.Tests.Documents;

/// <summary>The page of licences names every package of the locks, every system package of the launcher and every folder of assets.</summary>
public class LicenceTests
{
    private static readonly string[] Rows = [.. File.ReadLines(SourceTree.FullPath("assets/handbook/licences.md")).Where(line => line.StartsWith("| ", StringComparison.Ordinal))];

    /// <summary>Packages of a lock: name, version and the folder (src, tests, benchmarks) of the lock.</summary>
    private static IEnumerable<(string Name, string Version, string Folder)> Locked =>
        from file in SourceTree.Files
        where Path.GetFileName(file) == "packages.lock.json"
        from framework in JsonDocument.Parse(File.ReadAllText(SourceTree.FullPath(file))).RootElement.GetProperty("dependencies").EnumerateObject()
        from package in framework.Value.EnumerateObject()
        where package.Value.GetProperty("type").GetString() != "Project"
        select (package.Name, package.Value.GetProperty("resolved").GetString()!, file.Split('/')[0]);

    [Fact]
    public void Every_project_has_a_lock()
    {
        string[] projects = [.. SourceTree.Files.Where(file => file.EndsWith(".csproj", StringComparison.Ordinal))];
        Assert.NotEmpty(projects);
        Assert.All(projects, project => Assert.Contains(Path.GetDirectoryName(project)!.Replace('\\', '/') + "/packages.lock.json", SourceTree.Files));
    }

    [Fact]
    public void Every_package_stands_there_in_its_version_and_no_other()
    {
        string[] locked = [.. Locked.GroupBy(package => (package.Name, package.Version)).Select(package => $"{package.Key.Name} {package.Key.Version} {Where(package.Select(p => p.Folder))}").Order()];
        string[] written = [.. Rows.Select(Cells).Where(cells => cells.Length == 5 && cells[0] != "package").Select(cells => $"{cells[0]} {cells[1]} {cells[3]}").Order()];
        Assert.NotEmpty(locked);
        Assert.True(locked.SequenceEqual(written), $"Missing: {string.Join(", ", locked.Except(written))}. Not in any lock: {string.Join(", ", written.Except(locked))}.");
        Assert.All(Rows.Select(Cells).Where(cells => cells.Length == 5), cells => Assert.All(cells, cell => Assert.NotEqual("", cell)));
    }

    [Fact]
    public void System_packages_of_the_launcher_stand_there()
    {
        string[] lines = [.. File.ReadLines(SourceTree.FullPath("simfeel")).Where(line => line.StartsWith("packages='", StringComparison.Ordinal) || line.StartsWith("test_packages='", StringComparison.Ordinal))];
        Assert.Equal(2, lines.Length);
        string names = string.Join(' ', Rows.Select(Cells).Where(cells => cells.Length == 3).Select(cells => cells[0]));
        Assert.All(lines.SelectMany(line => line.Split('\'')[1].Split(' ')), package => Assert.Contains(package, names, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_folder_of_assets_has_an_origin()
    {
        string[] folders = [.. SourceTree.Files.Where(file => file.StartsWith("assets/", StringComparison.Ordinal)).Select(file => string.Join('/', file.Split('/')[..2])).Distinct().Order()];
        string[] written = [.. Rows.Select(row => Cells(row)[0].Trim('`')).Where(name => name.StartsWith("assets/", StringComparison.Ordinal))];
        Assert.Equal(folders, written.Where(name => !Path.HasExtension(name)).Order());
        Assert.All(written, name => Assert.True(Path.Exists(SourceTree.FullPath(name)), name));
    }

    private static string Where(IEnumerable<string> folders) =>
        folders.Contains("src") ? "program" : folders.Contains("tests") ? "tests" : "benchmarks";

    private static string[] Cells(string row) => [.. row.Trim('|', ' ').Split('|').Select(cell => cell.Trim())];
}
