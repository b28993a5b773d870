using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Sheet;

/// <summary>A feel sheet as Markdown.</summary>
public static class FeelSheetMarkdown
{
    /// <summary>The content of the page; charts become the tables of their numbers. The same sheet gives the same text.</summary>
    public static string Write(FeelSheet sheet) => MarkdownPage.Write(SheetPages.Of(sheet));
}
