namespace Simfeel.Tests.Shared;

/// <summary>The folder of the source tree that the tests were built from.</summary>
internal static class ProjectFolder
{
    /// <summary>Absolute path of the folder with Simfeel.sln.</summary>
    public static string Root { get; } = Find();

    /// <summary>Text of the README.</summary>
    public static string Readme => File.ReadAllText(Path.Combine(Root, "README.md"));

    private static string Find()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Simfeel.sln"))) return folder.FullName;
        }
        throw new InvalidOperationException($"No folder above {AppContext.BaseDirectory} holds Simfeel.sln.");
    }
}
