using System.Diagnostics;

namespace Simfeel.Tests.Documents;

/// <summary>The example changes of the handbook apply to this tree. <c>bash .ci/examples</c> builds and tests them.</summary>
public class ExampleTests
{
    private const string Folder = "assets/handbook/examples/";

    public static TheoryData<string> Patches => [.. SourceTree.Files.Where(file => file.StartsWith(Folder, StringComparison.Ordinal)).Select(file => file[Folder.Length..])];

    [Theory]
    [MemberData(nameof(Patches))]
    public void It_applies_to_the_tree(string patch)
    {
        ProcessStartInfo start = new("git", ["-c", "safe.directory=*", "apply", "--check", Folder + patch]) { WorkingDirectory = SourceTree.Root, RedirectStandardError = true };
        using Process git = Process.Start(start)!;
        string errors = git.StandardError.ReadToEnd();
        git.WaitForExit();
        Assert.True(git.ExitCode == 0, $"{patch} does not apply any more: apply it, mend it, store it anew (see DEVELOPERS.md).\n{errors}");
    }

    /// <summary>Code, test and README or asset, and a line that says which tests show it.</summary>
    [Theory]
    [MemberData(nameof(Patches))]
    public void It_is_whole_and_named_in_the_guide(string patch)
    {
        string[] lines = File.ReadAllLines(SourceTree.FullPath(Folder + patch));
        string[] files = [.. lines.Where(line => line.StartsWith("+++ b/", StringComparison.Ordinal)).Select(line => line[6..])];
        Assert.Contains("README.md", files);
        Assert.Contains(files, file => file.StartsWith("tests/", StringComparison.Ordinal));
        Assert.Contains(files, file => file.StartsWith("src/", StringComparison.Ordinal) || file.StartsWith("assets/", StringComparison.Ordinal));
        string[] tests = [.. lines.Where(line => line.StartsWith("Tests: ", StringComparison.Ordinal))];
        Assert.NotEmpty(tests);
        Assert.All(tests, line => Assert.True(Directory.Exists(SourceTree.FullPath("tests/" + line.Split(' ')[1])), line));
        Assert.Contains($"({Folder}{patch})", File.ReadAllText(SourceTree.FullPath("DEVELOPERS.md")), StringComparison.Ordinal);
    }
}
