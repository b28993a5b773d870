using Simfeel.Builds;
using Simfeel.Builds.Format;
using Simfeel.Builds.Reading;

namespace Simfeel.Studies.Sweep;

/// <summary>What a sweep varies: a part by a factor of its own size, or a number of the build file in the unit of its key.</summary>
/// <param name="Name">Name of a knob such as <c>motor.volume</c>, or a full key such as <c>battery.x_mm</c>.</param>
/// <param name="From">Lowest value.</param>
/// <param name="To">Highest value.</param>
/// <param name="Points">Values of a grid; not used by a hypercube.</param>
public sealed record SweepAxis(string Name, double From, double To, int Points)
{
    /// <summary>Values that an axis of the blades' shape takes at most: each needs a rotor table of its own.</summary>
    public const int ShapeLevels = 25;

    private static readonly HashSet<string> ShapeNames =
        ["propeller.diameter", "propeller.pitch", "propeller.diameter_in", "propeller.pitch_in", "propeller.chord_scale"];

    /// <summary>Whether it is a part that grows by a factor; else a number of the build file.</summary>
    public bool IsFactor => BuildKnobs.All.Any(knob => knob.Name == Name);

    /// <summary>Name of its column, with what it is measured in.</summary>
    public string Column => IsFactor ? Name + "_factor" : Name;

    /// <summary>The value at a share of the way from the lowest to the highest, 0 to 1.</summary>
    public double At(double share)
    {
        if (ShapeNames.Contains(Name)) share = Math.Round(share * (ShapeLevels - 1)) / (ShapeLevels - 1);
        return From + ((To - From) * share);
    }

    /// <summary>What is wrong with it for a build; null where nothing is.</summary>
    public string? Fault(Build build)
    {
        if (!(double.IsFinite(From) && double.IsFinite(To) && From < To)) return $"{Name} runs from {From} to {To}; write two rising numbers.";
        if (ShapeNames.Contains(Name) && Points > ShapeLevels)
            return $"{Name} has {Points} grid points; a propeller's shape takes at most {ShapeLevels}, since each needs a rotor table of its own.";
        if (IsFactor) return From > 0 ? null : $"{Name} is a factor of the part's own size and must be above 0.";
        if (BuildFormat.Find(Name) is not { Kind: KeyKind.Number } spec || spec.Table is "" or "measured" or "pilot")
            return $"Nothing called '{Name}' can be varied.{NearestName.Choices(Name, "Parts", [.. BuildKnobs.All.Select(knob => knob.Name)])}, or a number of the build file such as motor.mass_g.";
        if (!build.Values.Any(value => value.Key == Name)) return $"{build.Name} has no {Name} to vary.";
        return From >= spec.Minimum && To <= spec.Maximum ? null : $"{Name} runs from {From} to {To}; allowed is {spec.Range}.";
    }
}
