using System.ComponentModel;
using Simfeel.Physics.Air;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

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
