using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Text.Json;

namespace Simfeel.Tests;

/// <summary>Simfeel neither listens nor calls: none of its assemblies can, and what others in it could is known.</summary>
public class NetworkTests
{
    /// <summary>Assemblies of others that refer to types of <c>System.Net</c>, and for what. None of it is called by ours.</summary>
    private static readonly Dictionary<string, string> Others = new()
    {
        ["Spectre.Console.dll"] = "asks for the machine's own name where it prints a link to a file, which no output of ours does",
    };

    [Fact]
    public void Own_assemblies_know_no_network() =>
        Assert.All(ReferenceGraphTests.Chain, project => Assert.Empty(NetworkTypes(project == "Simfeel" ? "simfeel.dll" : project + ".dll")));

    [Fact]
    public void Assemblies_of_others_that_know_it_are_listed()
    {
        string[] libraries = [.. Libraries().Where(library => NetworkTypes(library).Length > 0).Order()];
        Assert.Equal(Others.Keys.Order(), libraries);
    }

    /// <summary>The managed libraries that the program is started with.</summary>
    private static string[] Libraries()
    {
        using JsonDocument graph = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "simfeel.deps.json")));
        string[] libraries =
        [
            .. from target in graph.RootElement.GetProperty("targets").EnumerateObject()
               from library in target.Value.EnumerateObject()
               where library.Value.TryGetProperty("runtime", out _)
               from file in library.Value.GetProperty("runtime").EnumerateObject()
               select Path.GetFileName(file.Name),
        ];
        Assert.Contains("Tomlyn.dll", libraries);
        return libraries;
    }

    private static string[] NetworkTypes(string library)
    {
        using FileStream file = File.OpenRead(Path.Combine(AppContext.BaseDirectory, library));
        using PEReader image = new(file);
        MetadataReader metadata = image.GetMetadataReader();
        return
        [
            .. metadata.TypeReferences.Select(metadata.GetTypeReference)
                .Select(type => $"{metadata.GetString(type.Namespace)}.{metadata.GetString(type.Name)}")
                .Where(name => name.StartsWith("System.Net.", StringComparison.Ordinal)),
        ];
    }
}
