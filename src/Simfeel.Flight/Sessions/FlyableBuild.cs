using System.Security.Cryptography;
using System.Text;
using Simfeel.Builds;
using Simfeel.Physics.Air;
using Simfeel.Physics.Guards;

namespace Simfeel.Flight;

/// <summary>A build put together and tuned, with the texts and edits that make it again bit for bit.</summary>
/// <param name="Assembled">The build in its air.</param>
/// <param name="Unit">Tuned by the policy "matched".</param>
/// <param name="Edits">Numbers changed since, full key and value in the key's unit, in order.</param>
/// <param name="Path">The build file; null where the text came from elsewhere.</param>
public sealed record FlyableBuild(
    AssembledBuild Assembled,
    TunedUnit Unit,
    IReadOnlyList<KeyValuePair<string, double>> Edits,
    string? Path)
{
    /// <summary>Name of the build.</summary>
    public string Name => Assembled.Build.Name;

    /// <summary>The texts of its files.</summary>
    public BuildSource Source => Assembled.Build.Source!;

    /// <summary>Reads, assembles and tunes a build file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="air">The air it will fly in.</param>
    /// <param name="profile">The pilot that it is tuned for.</param>
    public static FlyableResult Read(string path, AirState air, PilotProfile profile) =>
        Make(BuildReader.Read(path), [], path, air, profile);

    /// <summary>Assembles and tunes a build from kept texts and edits.</summary>
    /// <param name="source">The texts.</param>
    /// <param name="name">Name that messages give as the file.</param>
    /// <param name="edits">Numbers to change, full key and value in the key's unit.</param>
    /// <param name="air">The air it will fly in.</param>
    /// <param name="profile">The pilot that it is tuned for.</param>
    public static FlyableResult Of(
        BuildSource source, string name, IReadOnlyList<KeyValuePair<string, double>> edits, AirState air, PilotProfile profile) =>
        Make(BuildReader.Parse(source, name), edits, null, air, profile);

    /// <summary>SHA-256 of a text in UTF-8, lower-case hexadecimal digits.</summary>
    public static string Sha256Of(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private static FlyableResult Make(
        BuildResult read, IReadOnlyList<KeyValuePair<string, double>> edits, string? path, AirState air, PilotProfile profile)
    {
        ArgumentNullException.ThrowIfNull(profile);
        BuildResult result = read.Build is Build build && edits.Count > 0 ? BuildEditor.Edit(build, edits) : read;
        string said = string.Join('\n', result.Diagnostics);
        if (result.Build is null) return new(null, said);
        try
        {
            AssembledBuild assembled = BuildAssembler.Assemble(result.Build, air);
            TunedUnit unit = TunedUnit.Matched(FlightUnit.Of(assembled), air, profile);
            return new(new(assembled, unit, edits, path), said);
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException)
        {
            return new(null, said.Length == 0 ? e.Message : $"{e.Message}\n{said}");
        }
        catch (FlightFaultException fault)
        {
            return new(null, fault.Message) { Fault = fault };
        }
    }
}

/// <summary>What came of making a build ready to fly.</summary>
/// <param name="Build">The build; null where it cannot be had.</param>
/// <param name="Message">What is wrong, or warnings; a line each; empty where there is nothing to say.</param>
public sealed record FlyableResult(FlyableBuild? Build, string Message)
{
    /// <summary>The fault that its tuning ended with; null where it is none.</summary>
    public FlightFaultException? Fault { get; init; }
}
