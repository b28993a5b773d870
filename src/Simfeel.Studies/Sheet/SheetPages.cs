using Simfeel.Studies.Sheet.Sections;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Sheet;

/// <summary>The sections of a sheet in their order, the same for every form of it.</summary>
internal static class SheetPages
{
    public static SheetPage Of(FeelSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return new(TitleSection.Title(sheet), TitleSection.Line(sheet),
        [
            TitleSection.Of(sheet), WordsSection.Of(sheet), NumbersSection.Of(sheet), BlameSection.Of(sheet), GrowthSection.Of(sheet),
            ReserveSection.Of(sheet), MassSection.Of(sheet), TraceSection.Of(sheet), UncertaintySection.Of(sheet), PartsSection.Of(sheet),
            FlownSection.Of(sheet),
        ]);
    }
}
