using Simfeel.Builds;

namespace Simfeel.Studies.Blind;

/// <summary>A vote log that cannot be read or written: said so that its owner can mend it.</summary>
public sealed class VoteLogException : Exception
{
    /// <summary>An exception about a whole file or one line of it.</summary>
    /// <param name="file">The file as the caller gave it.</param>
    /// <param name="line">Line, counted from 1; null where the whole file is meant.</param>
    /// <param name="message">What is wrong.</param>
    /// <param name="hint">What to do; may be empty.</param>
    public VoteLogException(string file, int? line, string message, string hint = "")
        : this([new(Severity.Error, file, line, null, "", "", message, hint)])
    {
    }

    /// <summary>An exception about several places.</summary>
    public VoteLogException(IReadOnlyList<Diagnostic> diagnostics)
        : base(string.Join(Environment.NewLine, diagnostics)) => Diagnostics = diagnostics;

    /// <summary>What is wrong, by line.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }
}
