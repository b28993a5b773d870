using Simfeel.Builds;
using Simfeel.Studies.Blame;
using Simfeel.Studies.Compare;
using Simfeel.Studies.Growth;
using Simfeel.Studies.Style;
using Simfeel.Studies.Uncertainty;

namespace Simfeel.Studies.Sheet;

/// <summary>Everything that a feel sheet tells; the same content becomes a page, Markdown or JSON.</summary>
public sealed record FeelSheet
{
    /// <summary>Version of the program.</summary>
    public required string Version { get; init; }

    /// <summary>Build A, put together.</summary>
    public required AssembledBuild A { get; init; }

    /// <summary>Build B, put together.</summary>
    public required AssembledBuild B { get; init; }

    /// <summary>Fingerprints (SHA-256 of the file's text, hexadecimal) of both build files.</summary>
    public required (string A, string B) Fingerprints { get; init; }

    /// <summary>The comparison under the policy asked for.</summary>
    public required Comparison Comparison { get; init; }

    /// <summary>The same under the other policy, since the tuning may outweigh the build.</summary>
    public required Comparison OtherPolicy { get; init; }

    /// <summary>What is known, given what is known of the parts.</summary>
    public required UncertaintyStudy Uncertainty { get; init; }

    /// <summary>Who is to blame, one ledger for each of the most telling metrics.</summary>
    public required IReadOnlyList<BlameLedger> Blame { get; init; }

    /// <summary>Growth curves: the most telling metric first.</summary>
    public required IReadOnlyList<GrowthCurve> Growth { get; init; }

    /// <summary>Styles of flying.</summary>
    public required IReadOnlyList<StyleFit> Styles { get; init; }

    /// <summary>In what the builds differ.</summary>
    public IReadOnlyList<BuildDifference> Differences => BuildDifference.Between(A.Build, B.Build);

    /// <summary>What the model leaves out, one sentence each.</summary>
    public required IReadOnlyList<string> NotModelled { get; init; }
}
