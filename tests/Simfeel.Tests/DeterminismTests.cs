using System.Text.Json;

namespace Simfeel.Tests;

/// <summary>
/// The determinism contract of the README, in processes of their own: the states of every drill on four starter builds have one
/// hash over lane widths, threads, order of flights, Debug and Release, compilers, instruction sets, and live or replayed.
/// </summary>
public class DeterminismTests
{
    private static readonly Lazy<Dictionary<string, string>> Whole = new(() => HashesOf("Release", []));

    /// <summary>Lane widths, threads, order and replay; the program itself finds out, and these are its hashes.</summary>
    [Fact]
    public void Lanes_threads_order_and_replay_agree()
    {
        string[] flights = [.. Whole.Value.Where(hash => hash.Key.StartsWith("flights_", StringComparison.Ordinal)).Select(hash => hash.Value)];
        Assert.Equal(6, flights.Length);
        Assert.Single(flights.Distinct());
        Assert.Equal(Whole.Value["session_live"], Whole.Value["session_replayed"]);
    }

    /// <summary>One processor for studies, every method compiled for good at once, another language and time zone.</summary>
    [Fact]
    public void Processors_compiler_language_and_time_zone_do_not_matter() =>
        Assert.Equal(Whole.Value, HashesOf("Release", new()
        {
            ["DOTNET_PROCESSOR_COUNT"] = "1",
            ["DOTNET_TieredCompilation"] = "0",
            ["LC_ALL"] = "ar_EG.UTF-8",
            ["TZ"] = "Asia/Kathmandu",
        }));

    [Fact]
    public void Vectors_of_512_bits_do_not_matter() =>
        Assert.Equal(Whole.Value, HashesOf("Release", new() { ["DOTNET_EnableAVX512"] = "0" }));

    /// <summary>Without AVX2 there is no fused multiply-add in the processor either, so the runtime's own has to round alike.</summary>
    [Fact]
    public void Vectors_of_256_bits_and_fused_multiply_add_do_not_matter() =>
        Same(HashesOf("Release", new() { ["DOTNET_EnableAVX2"] = "0" }, "--brief"));

    [Fact]
    public void Debug_and_Release_agree() => Same(HashesOf("Debug", [], "--brief"));

    /// <summary>
    /// Only where this machine's mathematics library rounds as that of the reference does: if it does not, the contract promises
    /// nothing, and the log has to say just that. Renewed by <c>./simfeel doctor --bits assets/reference/bits.txt</c>.
    /// </summary>
    [Fact]
    public void The_bits_are_those_of_the_reference()
    {
        CliResult result = Cli.RunLibrary(Library("Release"), new Dictionary<string, string>(), "doctor", "--bits-against", "reference");
        Assert.True(
            result.ExitCode == 0 || result.Output.Contains("The mathematics library computes", StringComparison.Ordinal),
            result.Output + result.Errors);
    }

    /// <summary>Each of some hashes is that of the whole run.</summary>
    private static void Same(Dictionary<string, string> some)
    {
        Assert.Equal(5, some.Count);
        Assert.All(some, hash => Assert.Equal(Whole.Value[hash.Key], hash.Value));
    }

    private static Dictionary<string, string> HashesOf(string configuration, Dictionary<string, string> environment, params string[] options)
    {
        CliResult result = Cli.RunLibrary(Library(configuration), environment, ["doctor", "--hash", "--json", .. options]);
        Assert.True(result.ExitCode == 0, result.Output + result.Errors);
        JsonElement root = JsonDocument.Parse(result.Output).RootElement;
        Assert.True(root.GetProperty("agree").GetBoolean());
        return root.EnumerateObject().Where(field => field.Value.ValueKind == JsonValueKind.String).ToDictionary(field => field.Name, field => field.Value.GetString()!);
    }

    private static string Library(string configuration)
    {
        string path = SourceTree.FullPath($"src/Simfeel/bin/{configuration}/net10.0/simfeel.dll");
        Assert.True(File.Exists(path), $"{path} is missing; ./simfeel test builds it.");
        return path;
    }
}
