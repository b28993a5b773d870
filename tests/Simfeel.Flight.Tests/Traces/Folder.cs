namespace Simfeel.Flight.Tests.Traces;

/// <summary>A folder of a test's own, gone with all that is in it when the test is over.</summary>
internal sealed class Folder : IDisposable
{
    private readonly string _path = Directory.CreateTempSubdirectory("simfeel-test-").FullName;

    public string File(string name) => Path.Combine(_path, name);

    public void Dispose() => Directory.Delete(_path, recursive: true);
}
