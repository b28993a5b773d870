namespace Simfeel.Tests.Shared;

/// <summary>A folder of a test's own, gone with all that is in it when the test is over.</summary>
internal sealed class TempFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("simfeel-test-").FullName;

    /// <summary>Path of a file in it.</summary>
    public string File(string name) => System.IO.Path.Combine(Path, name);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
