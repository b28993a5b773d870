using Simfeel.Builds;
using Simfeel.Physics.Mass;

namespace Simfeel.Studies.Bench;

/// <summary>Parts of one kind, as far as they make up mass, balance and inertia.</summary>
/// <param name="Name">What they are called, such as <c>motors</c>.</param>
/// <param name="Single">Whether it is one part that can be moved, such as the battery.</param>
/// <param name="Whole">All of them as one body, from the build's origin.</param>
/// <param name="MassKeys">Keys of the build file that set their mass.</param>
/// <param name="PlaceTable">Table whose <c>x_mm</c>, <c>y_mm</c>, <c>z_mm</c> place a single part; empty where none does.</param>
/// <param name="Estimated">Whether their mass was filled in by a rule.</param>
public sealed record PartShare(string Name, bool Single, MassProperties Whole, IReadOnlyList<string> MassKeys, string PlaceTable, bool Estimated)
{
    private static readonly Dictionary<string, (string Name, string[] Keys, string Place)> Kinds = new(StringComparer.Ordinal)
    {
        ["arm"] = ("arms", ["frame.arm_width_mm", "frame.arm_thickness_mm"], ""),
        ["bottom plate"] = ("bottom plate", ["frame.plate_mass_g"], ""),
        ["top plate"] = ("top plate", ["frame.top_plate_mass_g"], ""),
        ["hardware"] = ("screws and standoffs", ["frame.hardware_mass_g"], ""),
        ["duct"] = ("ducts", ["frame.duct_mass_g"], ""),
        ["stator"] = ("motors", ["motor.mass_g"], ""),
        ["bell"] = ("motors", ["motor.mass_g"], ""),
        ["propeller"] = ("propellers", ["propeller.mass_g"], ""),
        ["battery"] = ("battery", ["battery.mass_g"], "battery"),
        ["stack"] = ("stack", ["stack.mass_g"], "stack"),
        ["camera"] = ("camera", ["camera.mass_g"], "camera"),
        ["wiring"] = ("wiring", ["stack.wiring_mass_g"], ""),
    };

    /// <summary>Keys that <see cref="Of"/> can name.</summary>
    internal static IEnumerable<string> AllKeys =>
        Kinds.Values.SelectMany(kind => kind.Place.Length > 0 ? [.. kind.Keys, .. "xyz".Select(letter => $"{kind.Place}.{letter}_mm")] : kind.Keys);

    /// <summary>The kinds of parts of a build, in the order of its parts.</summary>
    public static IReadOnlyList<PartShare> Of(AssembledBuild build)
    {
        ArgumentNullException.ThrowIfNull(build);
        HashSet<string> filledIn = [.. build.Values.Where(value => value.FilledIn).Select(value => value.Key)];
        return [.. build.Parts.Where(part => part.Mass.Mass > 0).GroupBy(NameOf).Select(kind =>
        {
            PartMass first = kind.First();
            (string[] keys, string place) = first.Group == PartKind.Extras
                ? ([$"the [[extra]] \"{kind.Key}\""], "")
                : (Kinds[KindOf(first)].Keys, Kinds[KindOf(first)].Place);
            return new PartShare(
                kind.Key, kind.Count() == 1, MassProperties.Combine([.. kind.Select(part => part.Mass)]), keys, place, keys.Any(filledIn.Contains));
        })];
    }

    /// <summary>Its moment of inertia about a craft's centre of gravity, kg m^2.</summary>
    public double InertiaIn(AssembledBuild build, BenchAxis axis)
    {
        ArgumentNullException.ThrowIfNull(build);
        return axis.Moment(Whole.InertiaAbout(build.p_OBcm));
    }

    private static string KindOf(PartMass part) => part.Name.TrimEnd(' ', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9');

    private static string NameOf(PartMass part) => part.Group == PartKind.Extras ? part.Name : Kinds[KindOf(part)].Name;
}
