using System.ComponentModel;
using Simfeel.Flight;
using Simfeel.Physics;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary>Options of verbs that fly two builds over a field.</summary>
internal class FieldSettings : TwoBuildSettings
{
    private const double LowestStart_m = 0.05, HighestStart_m = 10000;

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

    [CommandOption("--height <METRES>")]
    [Description("Height of the start above flat ground, 0.05 to 10000 m. The ground is felt below about two rotor radii; nothing stops a craft there. Default 200.")]
    public double Height { get; init; } = FieldConditions.FreeHeight;

    /// <summary>The field that the options describe.</summary>
    public FieldConditions Field => new()
    {
        Seed = Seed,
        StartHeight = Height,
        Effects = LeftOut().Aggregate(AirEffects.All, (effects, name) => effects & ~EffectNames[name]),
    };

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
        if (Height is not (>= LowestStart_m and <= HighestStart_m))
            return ValidationResult.Error($"--height is {Height}; it must lie between {LowestStart_m} and {HighestStart_m} m.");
        return base.Validate();
    }

    private string[] LeftOut() => Without.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
}
