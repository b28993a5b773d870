using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace Simfeel.Builds.Reading;

/// <summary>The one door to the TOML parser: a document, or what keeps the text from being one.</summary>
internal static class TomlText
{
    /// <summary>How deep brackets may be nested in files of builds, fields, lessons and readings.</summary>
    public const int MaxDepth = 16;

    /// <summary>The document, or null where the text is empty, too long or no TOML, which is then said.</summary>
    /// <param name="text">The text.</param>
    /// <param name="bag">Receives what is wrong.</param>
    /// <param name="kind">What the text should be, such as "field file".</param>
    /// <param name="start">What to start from where the text is empty.</param>
    /// <param name="mayBePolar">Whether a polar could stand in the file's place.</param>
    public static DocumentSyntax? Read(string text, DiagnosticBag bag, string kind, string start, bool mayBePolar = false)
    {
        if (!SourceText.Check(text, bag, kind, start)) return null;
        DocumentSyntax? document = Parse(text, MaxDepth, out TomlFault fault);
        if (document is null)
        {
            string end = fault.IsDepth ? $", which no {kind} needs" : "";
            bag.Error(new(fault.Line, 1), "", "", $"{char.ToUpperInvariant(fault.Reason[0])}{fault.Reason[1..]}{end}.");
            return null;
        }
        if (!document.HasErrors) return document;
        SyntaxMessages.Report(document, text, bag, mayBePolar);
        return null;
    }

    /// <summary>The document without errors, or null with the first fault.</summary>
    /// <param name="text">The text.</param>
    /// <param name="maxDepth">How deep brackets may be nested.</param>
    /// <param name="fault">The first fault; its reason starts in lower case and has no full stop.</param>
    public static DocumentSyntax? Clean(string text, int maxDepth, out TomlFault fault)
    {
        DocumentSyntax? document = Parse(text, maxDepth, out fault);
        if (document is null || !document.HasErrors) return document;
        DiagnosticMessage first = document.Diagnostics.Where(d => d.Kind == DiagnosticMessageKind.Error).MinBy(d => d.Span.Start.Line)!;
        fault = new(first.Span.Start.Line + 1, $"this line is not valid TOML: {first.Message.TrimEnd('.').ReplaceLineEndings(" ")}");
        return null;
    }

    /// <summary>The document, in which the parser may have noted errors; null where it threw.</summary>
    private static DocumentSyntax? Parse(string text, int maxDepth, out TomlFault fault)
    {
        fault = default;
        try
        {
            return SyntaxParser.Parse(text, new TomlSerializerOptions { MaxDepth = maxDepth }, validate: true);
        }
        catch (TomlException e)
        {
            // thrown for nesting only; everything else is noted in the document
            fault = new(e.Line is int line and > 0 ? line : 1, $"brackets are nested more than {maxDepth} deep") { IsDepth = true };
        }
        catch (ArgumentOutOfRangeException)
        {
            // the lexer fails to word its own message where the text ends within an escape
            fault = new(1 + text.AsSpan().Count('\n'), "the text ends behind a backslash, within quotes");
        }
        return null;
    }
}

/// <summary>What keeps a text from being TOML.</summary>
/// <param name="Line">Its line, from 1.</param>
/// <param name="Reason">The reason, without capital and full stop.</param>
internal readonly record struct TomlFault(int Line, string Reason)
{
    /// <summary>Whether brackets are nested too deep.</summary>
    public bool IsDepth { get; init; }
}
