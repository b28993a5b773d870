using Simfeel.Builds;

namespace Simfeel.Studies.Fit;

/// <summary>A measurement that cannot be used: said so that whoever took it can mend it.</summary>
public sealed class FitException : Exception
{
    /// <summary>An exception about one place in a file.</summary>
    /// <param name="file">The file as the caller gave it.</param>
    /// <param name="line">Line, counted from 1; null where the whole file is meant.</param>
    /// <param name="message">What is wrong.</param>
    /// <param name="hint">What to do; may be empty.</param>
    /// <param name="column">Name of the column that is meant; empty for none.</param>
    public FitException(string file, int? line, string message, string hint = "", string column = "")
        : this([new(Severity.Error, file, line, null, column, "", message, hint)])
    {
    }

    /// <summary>An exception about several places.</summary>
    public FitException(IReadOnlyList<Diagnostic> diagnostics)
        : base(string.Join(Environment.NewLine, diagnostics)) => Diagnostics = diagnostics;

    /// <summary>What is wrong, by line.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }
}
