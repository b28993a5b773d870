using System.ComponentModel;
using Simfeel.Flight;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary>Options of verbs that fly drills with two builds.</summary>
internal class FieldSettings : SiteSettings
{
    private const double LowestStart_m = 0.05, HighestStart_m = 10000;

    [CommandArgument(0, "<A>")]
    [Description("A build file, or the name of a starter build such as wagtail.")]
    public string A { get; init; } = "";

    [CommandArgument(1, "<B>")]
    [Description("The build to compare it with.")]
    public string B { get; init; } = "";

    [CommandOption("--height <METRES>")]
    [Description("Height of the start above flat ground, 0.05 to 10000 m. The ground is felt below about two rotor radii; a craft that reaches it bounces and lies there. Default 200.")]
    public double Height { get; init; } = FieldConditions.FreeHeight;

    /// <summary>The field that the options describe.</summary>
    public FieldConditions Field => new() { Seed = Seed, StartHeight = Height, Effects = Effects };

    public override ValidationResult Validate() =>
        Height is >= LowestStart_m and <= HighestStart_m
            ? base.Validate()
            : ValidationResult.Error($"--height is {Height}; it must lie between {LowestStart_m} and {HighestStart_m} m.");
}
