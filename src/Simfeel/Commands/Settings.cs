using System.ComponentModel;
using Simfeel.Physics.Air;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary>Options that every verb has.</summary>
internal class OutputSettings : CommandSettings
{
    /// <summary>What the parser reads as the value of an option that was given none, since the bare command is a verb as well.</summary>
    public const string NoValue = "__default_command";

    [CommandOption("--json")]
    [Description("Print JSON for machines: SI units, named in the keys.")]
    public bool Json { get; init; }
}

/// <summary>Options of verbs that put builds into air.</summary>
internal class AirSettings : OutputSettings
{
    private const double LowestAltitude_m = -400, HighestAltitude_m = 5000;

    [CommandOption("--altitude <METRES>")]
    [Description("Altitude of the field above the sea, -400 to 5000 m: the air thins as in the standard atmosphere, gravity stays. Default 0.")]
    public double Altitude { get; init; }

    /// <summary>The air at that altitude.</summary>
    public AirState Air => StandardAtmosphere.At(Altitude);

    public override ValidationResult Validate() =>
        Altitude is >= LowestAltitude_m and <= HighestAltitude_m
            ? ValidationResult.Success()
            : ValidationResult.Error($"--altitude is {Altitude}; it must lie between {LowestAltitude_m} and {HighestAltitude_m} m.");
}

/// <summary>Options of verbs about one build.</summary>
internal class OneBuildSettings : AirSettings
{
    [CommandArgument(0, "<BUILD>")]
    [Description("A build file, or the name of a starter build such as wagtail.")]
    public string Build { get; init; } = "";
}
