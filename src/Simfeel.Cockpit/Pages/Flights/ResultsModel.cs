using Simfeel.Studies.Flights;

namespace Simfeel.Cockpit.Pages.Flights;

/// <summary>What the after-flight table shows.</summary>
public sealed class ResultsModel
{
    /// <summary>Names of builds A and B.</summary>
    public required string[] Builds { get; init; }

    /// <summary>What was found in the flights.</summary>
    public required IReadOnlyList<FindRow> Rows { get; init; }

    /// <summary>A sentence under the table, such as the delays that both builds had; empty for none.</summary>
    public string Footnote { get; init; } = "";
}
