namespace Simfeel.Fuzz.Processes;

/// <summary>A command line over hostile files, and what it may write.</summary>
/// <param name="Args">The words behind the program's name.</param>
/// <param name="Files">Files that lie there before, by name below the working folder.</param>
/// <param name="Links">Symbolic links that lie there before: name and target.</param>
/// <param name="Outputs">Names below the working folder that may be there afterwards or may have changed.</param>
internal sealed record HostileCase(
    IReadOnlyList<string> Args,
    IReadOnlyDictionary<string, byte[]> Files,
    IReadOnlyDictionary<string, string> Links,
    IReadOnlyList<string> Outputs);
