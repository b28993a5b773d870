using System.Diagnostics;

namespace Simfeel.Tests;

/// <summary>Runs the command line as users do: as a process of its own.</summary>
internal static class Cli
{
    private static readonly string Library = Path.Combine(AppContext.BaseDirectory, "simfeel.dll");

    public static CliResult Run(params string[] args) => RunLibrary(Library, new Dictionary<string, string>(), args);

    /// <summary>Runs arguments that must be refused: one message on the error stream that contains <paramref name="names"/>, nothing else.</summary>
    public static CliResult RunMistaken(string[] args, int exitCode, string names)
    {
        CliResult result = Run(args);
        Assert.Equal(exitCode, result.ExitCode);
        Assert.Equal("", result.Output);
        Assert.Contains(names, result.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", result.Errors, StringComparison.Ordinal);
        return result;
    }

    /// <summary>Runs a given simfeel.dll under extra environment variables.</summary>
    public static CliResult RunLibrary(string library, IReadOnlyDictionary<string, string> environment, params string[] args) =>
        Run(library, "", "", environment, args);

    /// <summary>Runs in a folder, with what is typed meanwhile.</summary>
    public static CliResult RunIn(string folder, string typed, IReadOnlyDictionary<string, string> environment, params string[] args) =>
        Run(Library, folder, typed, environment, args);

    private static CliResult Run(string library, string folder, string typed, IReadOnlyDictionary<string, string> environment, string[] args)
    {
        ProcessStartInfo start = new("dotnet", ["exec", library, .. args])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
            WorkingDirectory = folder,
        };
        foreach ((string key, string value) in environment) start.Environment[key] = value;
        using Process process = Process.Start(start)!;
        if (typed.Length > 0) process.StandardInput.WriteLine(typed);
        process.StandardInput.Close();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new(process.ExitCode, output, errors.Result);
    }
}

/// <summary>What a run left behind.</summary>
internal sealed record CliResult(int ExitCode, string Output, string Errors);
