using System.ComponentModel;
using Simfeel.Physics;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary>Options of verbs that fly: the air of the site and how it moves.</summary>
internal class SiteSettings : AirSettings
{
    private static readonly Dictionary<string, AirEffects> EffectNames = new(StringComparer.Ordinal)
    {
        ["inflow"] = AirEffects.DynamicInflow,
        ["wake"] = AirEffects.Wake,
        ["ground"] = AirEffects.Ground,
    };

    [CommandOption("--seed <NUMBER>")]
    [Description("Seed of the noise in wakes, any whole number; both builds meet the same noise. Default 1.")]
    public int Seed { get; init; } = 1;

    [CommandOption("--without <EFFECTS>")]
    [Description("Leave out effects of moving air, separated by commas: inflow (lag of the induced velocity), wake (an estimate), ground.")]
    public string Without { get; init; } = "";

    /// <summary>The effects that act.</summary>
    public AirEffects Effects => LeftOut().Aggregate(AirEffects.All, (effects, name) => effects & ~EffectNames[name]);

    /// <summary>Names of the effects that act, for people.</summary>
    public static string Describe(AirEffects effects) =>
        effects == AirEffects.None
            ? "none"
            : string.Join(", ", EffectNames.Where(pair => effects.HasFlag(pair.Value)).Select(pair => pair.Key));

    public override ValidationResult Validate()
    {
        string? unknown = LeftOut().FirstOrDefault(name => !EffectNames.ContainsKey(name));
        if (unknown is not null)
            return ValidationResult.Error($"--without names '{unknown}'; effects are {string.Join(", ", EffectNames.Keys)}.");
        return base.Validate();
    }

    private string[] LeftOut() => Without.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
}
