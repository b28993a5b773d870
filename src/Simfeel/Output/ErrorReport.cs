using Simfeel.Builds;

namespace Simfeel.CommandLine.Output;

/// <summary>Prints an error: plain lines to standard error, or one JSON object to standard output.</summary>
internal static class ErrorReport
{
    /// <summary>Prints and returns the exit code.</summary>
    public static int Write(UserError error, bool json)
    {
        if (!json)
        {
            Console.Error.WriteLine(error.Diagnostics.Count > 0 ? error.Message : "simfeel: " + error.Message);
            return error.ExitCode;
        }
        JsonOutput.Print(new Dictionary<string, object?>
        {
            ["error"] = new Dictionary<string, object?>
            {
                ["exit_code"] = error.ExitCode,
                ["message"] = error.Message,
                ["diagnostics"] = error.Diagnostics.Select(Describe).ToList(),
            },
        });
        return error.ExitCode;
    }

    /// <summary>A diagnostic as JSON.</summary>
    public static Dictionary<string, object?> Describe(Diagnostic diagnostic) => new()
    {
        ["severity"] = diagnostic.Severity == Severity.Error ? "error" : "warning",
        ["file"] = diagnostic.File,
        ["line"] = diagnostic.Line,
        ["key"] = diagnostic.Key,
        ["value"] = diagnostic.Value,
        ["message"] = diagnostic.Message,
        ["hint"] = diagnostic.Hint,
    };
}
