using Simfeel.Studies.Plots;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Sheet;

/// <summary>A feel sheet as a page.</summary>
public static class FeelSheetHtml
{
    /// <summary>
    /// One page of HTML that needs no other file, no network and no script; well-formed XML as well. The same sheet gives the same
    /// bytes.
    /// </summary>
    /// <exception cref="PlotFontException">The font of the charts is missing.</exception>
    public static string Write(FeelSheet sheet) => HtmlPage.Write(SheetPages.Of(sheet));
}
