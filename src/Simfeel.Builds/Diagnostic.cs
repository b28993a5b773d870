using System.Text;

namespace Simfeel.Builds;

/// <summary>How bad a <see cref="Diagnostic"/> is.</summary>
public enum Severity
{
    /// <summary>The build can be used, but something deserves a look.</summary>
    Warning,

    /// <summary>The build cannot be used.</summary>
    Error,
}

/// <summary>
/// One thing wrong with a build file, said so that its writer can mend it without help.
/// </summary>
/// <param name="Severity">Whether the build can still be used.</param>
/// <param name="File">Name of the file or text as the caller gave it.</param>
/// <param name="Line">Line, counted from 1; null where the whole file is meant.</param>
/// <param name="Column">Column, counted from 1; null where unknown.</param>
/// <param name="Key">Full key such as <c>motor.kv_rpm_per_V</c>; empty where none is meant.</param>
/// <param name="Value">The value as written; empty where none is meant.</param>
/// <param name="Message">What is wrong, with the allowed range and its unit where there is one.</param>
/// <param name="Hint">What to do; may be empty.</param>
public sealed record Diagnostic(
    Severity Severity,
    string File,
    int? Line,
    int? Column,
    string Key,
    string Value,
    string Message,
    string Hint)
{
    private const int LongestKey = 200, LongestValue = 200;

    /// <inheritdoc cref="Diagnostic(Severity, string, int?, int?, string, string, string, string)" path="/param[@name='Key']"/>
    public string Key { get; init; } = OneLine.Of(Key, LongestKey);

    /// <inheritdoc cref="Diagnostic(Severity, string, int?, int?, string, string, string, string)" path="/param[@name='Value']"/>
    public string Value { get; init; } = OneLine.Of(Value, LongestValue);

    /// <inheritdoc cref="Diagnostic(Severity, string, int?, int?, string, string, string, string)" path="/param[@name='Message']"/>
    public string Message { get; init; } = OneLine.Of(Message);

    /// <inheritdoc cref="Diagnostic(Severity, string, int?, int?, string, string, string, string)" path="/param[@name='Hint']"/>
    public string Hint { get; init; } = OneLine.Of(Hint);

    /// <summary>One line for a terminal: <c>file:line:column: error: key = value: message (hint)</c>.</summary>
    public override string ToString()
    {
        StringBuilder text = new(OneLine.Of(File));
        if (Line is int line) text.Append(':').Append(line);
        if (Line is not null && Column is int column) text.Append(':').Append(column);
        text.Append(Severity == Severity.Error ? ": error: " : ": warning: ");
        if (Key.Length > 0)
        {
            text.Append(Key);
            if (Value.Length > 0) text.Append(" = ").Append(Value);
            text.Append(": ");
        }
        text.Append(Message);
        if (Hint.Length > 0) text.Append(" (").Append(Hint).Append(')');
        return text.ToString();
    }
}
