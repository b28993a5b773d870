using Simfeel.Builds;

namespace Simfeel.CommandLine;

/// <summary>Something that the user can mend: said in plain words, without a stack trace.</summary>
internal sealed class UserError : Exception
{
    /// <summary>A plain message.</summary>
    public UserError(string message, int exitCode = CommandLine.ExitCode.BadInput)
        : base(message)
    {
        ExitCode = exitCode;
        Diagnostics = [];
    }

    /// <summary>What is wrong with a build file.</summary>
    public UserError(IReadOnlyList<Diagnostic> diagnostics)
        : base(string.Join(Environment.NewLine, diagnostics))
    {
        ExitCode = CommandLine.ExitCode.BadInput;
        Diagnostics = diagnostics;
    }

    /// <summary>What the program ends with.</summary>
    public int ExitCode { get; }

    /// <summary>Places in a file, where it is about a file.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }
}
