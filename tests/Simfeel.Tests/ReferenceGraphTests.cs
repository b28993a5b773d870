using System.Reflection;
using System.Xml.Linq;

namespace Simfeel.Tests;

/// <summary>References run one way only: Physics, Builds, Flight, Studies, Cockpit, the command line.</summary>
public class ReferenceGraphTests
{
    /// <summary>Projects from the innermost to the outermost: each may know those before it.</summary>
    internal static readonly string[] Chain =
        ["Simfeel.Physics", "Simfeel.Builds", "Simfeel.Flight", "Simfeel.Studies", "Simfeel.Cockpit", "Simfeel"];

    public static TheoryData<string> Projects => [.. Chain];

    [Fact]
    public void Source_folder_holds_the_projects_of_the_chain_only()
    {
        string[] projects = [.. ProjectFiles("src/").Select(Path.GetFileNameWithoutExtension).Order()!];

        Assert.Equal(Chain.Order(), projects);
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void Project_file_refers_to_its_predecessor_and_to_nothing_behind_itself(string project)
    {
        int place = Array.IndexOf(Chain, project);
        string[] references = References($"src/{project}/{project}.csproj");

        Assert.Empty(references.Except(Chain[..place]));
        if (place > 0) Assert.Contains(Chain[place - 1], references);
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void Compiled_assembly_refers_to_nothing_behind_itself(string project)
    {
        Assembly assembly = Load(project);
        string[] references = [.. ReferencesOf(assembly).Where(name => name.StartsWith("simfeel", StringComparison.OrdinalIgnoreCase))];

        Assert.Empty(references.Except(Chain[..Array.IndexOf(Chain, project)]));
    }

    [Fact]
    public void Physics_needs_nothing_but_the_runtime()
    {
        Assert.All(ReferencesOf(Load("Simfeel.Physics")), name => Assert.StartsWith("System.", name, StringComparison.Ordinal));
        Assert.Empty(XDocument.Load(SourceTree.FullPath("src/Simfeel.Physics/Simfeel.Physics.csproj")).Descendants("PackageReference"));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void Every_project_has_its_tests_which_refer_to_it(string project)
    {
        string[] references = References($"tests/{project}.Tests/{project}.Tests.csproj");

        Assert.Contains(project, references);
        // A test may look at what its project is made of, not at what is made of it.
        // The fuzzers look at everything; the command line's tests run a share of them.
        string[] also = project == "Simfeel" ? ["Simfeel.Fuzz"] : [];
        Assert.Empty(references.Except(Chain[..(Array.IndexOf(Chain, project) + 1)]).Except(also));
    }

    [Fact]
    public void Solution_holds_every_project()
    {
        string solution = File.ReadAllText(SourceTree.FullPath("Simfeel.sln")).Replace('\\', '/');

        Assert.All(ProjectFiles(""), path => Assert.Contains($"\"{path}\"", solution, StringComparison.Ordinal));
    }

    private static string[] ProjectFiles(string under) =>
        [.. SourceTree.Files.Where(path =>
            path.StartsWith(under, StringComparison.Ordinal) && path.EndsWith(".csproj", StringComparison.Ordinal))];

    private static string[] References(string projectFile) =>
        [.. XDocument.Load(SourceTree.FullPath(projectFile))
            .Descendants("ProjectReference")
            .Select(reference => reference.Attribute("Include")!.Value.Replace('\\', '/'))
            .Select(path => Path.GetFileNameWithoutExtension(path))];

    private static IEnumerable<string> ReferencesOf(Assembly assembly) =>
        assembly.GetReferencedAssemblies().Select(reference => reference.Name!);

    internal static Assembly Load(string project)
    {
        // The command line's assembly carries the name of its command.
        string name = project == "Simfeel" ? "simfeel" : project;
        return Assembly.LoadFrom(Path.Combine(AppContext.BaseDirectory, name + ".dll"));
    }
}
