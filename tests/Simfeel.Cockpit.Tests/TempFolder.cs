namespace Simfeel.Cockpit.Tests;

/// <summary>A folder of its own for one test, gone after it.</summary>
internal sealed class TempFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("simfeel-test-").FullName;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
