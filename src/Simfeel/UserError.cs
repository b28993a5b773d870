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

    private UserError(IReadOnlyList<UserError> errors)
        : base(string.Join(Environment.NewLine, errors.Select(error => error.Message).Distinct()))
    {
        ExitCode = errors[0].ExitCode;
        Diagnostics = [.. errors.SelectMany(error => error.Diagnostics).Distinct()];
    }

    /// <summary>All that is wrong at once, in order, each said once; null where nothing is.</summary>
    public static UserError? Of(IEnumerable<UserError?> errors)
    {
        UserError[] all = [.. errors.OfType<UserError>()];
        return all.Length == 0 ? null : new(all);
    }

    /// <summary>What the program ends with.</summary>
    public int ExitCode { get; }

    /// <summary>Places in a file, where it is about a file.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }
}
