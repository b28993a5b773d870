using System.Text.Json;

namespace Simfeel.Tests;

/// <summary>
/// The determinism contract: the states of every drill on four starter builds have the same hash over lane widths, threads,
/// Debug and Release, and with the vector instruction sets switched off.
/// </summary>
public class DeterminismTests
{
    private static readonly Lazy<string> Reference = new(() => HashOf(Library("Release"), []));

    [Fact]
    public void Lanes_and_threads_agree() => Assert.NotEqual("", Reference.Value);

    [Theory]
    [InlineData("DOTNET_EnableAVX512")]
    [InlineData("DOTNET_EnableAVX2")]
    public void Instruction_sets_do_not_matter(string variable) =>
        Assert.Equal(Reference.Value, HashOf(Library("Release"), new() { [variable] = "0" }));

    [Fact]
    public void Debug_and_Release_agree() =>
        Assert.Equal(Reference.Value, HashOf(Library("Debug"), []));

    /// <summary>Runs the report; every hash in it must be the same, and is returned.</summary>
    private static string HashOf(string library, Dictionary<string, string> environment)
    {
        CliResult result = Cli.RunLibrary(library, environment, "doctor", "--hash", "--json");
        Assert.Equal(0, result.ExitCode);
        string[] hashes = [.. JsonDocument.Parse(result.Output).RootElement.EnumerateObject().Select(hash => hash.Value.GetString()!)];
        Assert.Equal(5, hashes.Length);
        return Assert.Single(hashes.Distinct());
    }

    private static string Library(string configuration)
    {
        string path = SourceTree.FullPath($"src/Simfeel/bin/{configuration}/net10.0/simfeel.dll");
        Assert.True(File.Exists(path), $"{path} is missing; ./simfeel test builds it.");
        return path;
    }
}
