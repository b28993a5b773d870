namespace Simfeel.Mutation;

/// <summary>One change of one source file: what stands before and after the span that it replaces.</summary>
/// <param name="File">File, relative to the project's folder.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
/// <param name="Start">First character of the span.</param>
/// <param name="End">Character after the span.</param>
/// <param name="Replacement">What stands there instead; empty where a statement is left out.</param>
/// <param name="IsStatement">True where the span is a whole statement.</param>
/// <param name="Change">The change in words for a table: original → replacement, on one line.</param>
internal sealed record Mutant(
    string File, int Line, int Column, int Start, int End, string Replacement, bool IsStatement, string Change)
{
    /// <summary>Names the mutant as long as its file does not change.</summary>
    public string Key => $"{File}:{Line}:{Column}\t{Change}";
}
