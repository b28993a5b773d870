using Simfeel.Builds;
using Simfeel.CommandLine.Output;
using Simfeel.Physics;
using Simfeel.Physics.Mass;
using Simfeel.Physics.Maths;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary><c>simfeel weigh</c>: the mass budget of a build.</summary>
internal sealed class WeighCommand : Command<OneBuildSettings>
{
    public override int Execute(CommandContext context, OneBuildSettings settings, CancellationToken cancellationToken)
    {
        AssembledBuild build = BuildLibrary.Load(settings.Build, settings.Air);
        if (settings.Json) PrintJson(build);
        else PrintTable(build);
        return ExitCode.Ok;
    }

    private static void PrintJson(AssembledBuild build)
    {
        Craft craft = build.Craft;
        (Vec3 principal, Mat3 axes) = MassOf(build).Principal();
        JsonOutput.Print(new()
        {
            ["name"] = build.Build.Name,
            ["mass_kg"] = craft.Mass,
            ["cg_m"] = JsonOutput.Of(build.p_OBcm),
            ["inertia_kg_m2"] = JsonOutput.Of(craft.I_BBcm_B),
            ["principal_inertia_kg_m2"] = JsonOutput.Of(principal),
            ["principal_axes"] = JsonOutput.Of(axes),
            ["rotor_spin_inertia_kg_m2"] = craft.Rotors[0].SpinInertia,
            ["parts"] = build.Parts.Select(part => new Dictionary<string, object?>
            {
                ["name"] = part.Name,
                ["group"] = part.Group.ToString().ToLowerInvariant(),
                ["mass_kg"] = part.Mass.Mass,
                ["position_m"] = JsonOutput.Of(part.Mass.p_OBcm_O),
                ["inertia_share"] = JsonOutput.Of(ShareOf(part.Mass, build)),
            }).ToList(),
            ["filled_in"] = build.Values.Where(value => value.FilledIn).Select(value => new Dictionary<string, object?>
            {
                ["key"] = value.Key,
                ["value"] = value.Typical,
                ["unit"] = value.Unit,
                ["rule"] = value.Rule,
            }).ToList(),
        });
    }

    private static void PrintTable(AssembledBuild build)
    {
        Craft craft = build.Craft;
        Mat3 inertia = craft.I_BBcm_B;
        IEnumerable<IGrouping<string, PartMass>> kinds = build.Parts.GroupBy(part => part.Name.TrimEnd(' ', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9'));
        IGrouping<string, PartMass> heaviest = kinds.MaxBy(kind => kind.Sum(part => part.Mass.Mass))!;
        IGrouping<string, PartMass> roll = kinds.MaxBy(kind => Total(kind, build).X)!;
        double motors = build.Parts.Where(part => part.Group == PartKind.Motors).Sum(part => ShareOf(part.Mass, build).X);
        double motorMass = build.Parts.Where(part => part.Group == PartKind.Motors).Sum(part => part.Mass.Mass) / craft.Mass;

        Console.WriteLine($"{build.Build.Name} weighs {craft.Mass * 1000:F0} grams; the heaviest part is the {heaviest.Key}.");
        Console.WriteLine($"Its motors are {100 * motorMass:F0} percent of the mass and {100 * motors:F0} percent of the resistance to rolling.");
        Console.WriteLine($"It resists pitching {inertia.M11 / inertia.M00:F2} times as much as rolling, and yawing {inertia.M22 / inertia.M00:F2} times as much.");
        Console.WriteLine();

        Table table = Tables.New("part", "mass g", "x mm", "y mm", "z mm", "of roll %", "of pitch %", "of yaw %");
        foreach (IGrouping<string, PartMass> kind in kinds.OrderByDescending(kind => kind.Sum(part => part.Mass.Mass)))
        {
            MassProperties sum = MassProperties.Combine([.. kind.Select(part => part.Mass)]);
            Vec3 share = Total(kind, build);
            int count = kind.Count();
            table.AddRow(
                count > 1 ? $"{kind.Key} x {count}" : kind.Key, $"{sum.Mass * 1000:F1}",
                Tables.Signed(sum.p_OBcm_O.X * 1000, 1), Tables.Signed(sum.p_OBcm_O.Y * 1000, 1), Tables.Signed(sum.p_OBcm_O.Z * 1000, 1),
                $"{100 * share.X:F1}", $"{100 * share.Y:F1}", $"{100 * share.Z:F1}");
        }
        Tables.Print(table);
        bool weighed = build.Values.Any(value => value.Key == "measured.all_up_mass_g");
        Console.WriteLine($"mass                {craft.Mass * 1000:F1} g{(weighed ? " as weighed (measured.all_up_mass_g); wiring is what the parts leave over" : "")}");
        Console.WriteLine($"centre of gravity   {Tables.Signed(build.p_OBcm.X * 1000, 1)}, {Tables.Signed(build.p_OBcm.Y * 1000, 1)}, {Tables.Signed(build.p_OBcm.Z * 1000, 1)} mm (x forward, y right, z down, from the bottom plate's centre)");
        Console.WriteLine("inertia tensor about it, g m2:");
        Row(inertia.M00, inertia.M01, inertia.M02);
        Row(inertia.M10, inertia.M11, inertia.M12);
        Row(inertia.M20, inertia.M21, inertia.M22);
        Console.WriteLine($"spin inertia        {craft.Rotors[0].SpinInertia * 1e9:F0} g mm2 for each rotor (propeller and bell)");
        Provenance.Print(build, "frame", "motor", "propeller", "battery", "stack", "camera");

        static void Row(double a, double b, double c) =>
            Console.WriteLine($"  {Tables.Signed(a * 1000, 4),9} {Tables.Signed(b * 1000, 4),9} {Tables.Signed(c * 1000, 4),9}");
    }

    private static MassProperties MassOf(AssembledBuild build) =>
        new(build.Craft.Mass, build.p_OBcm, build.Craft.I_BBcm_B);

    /// <summary>Share of a part in the moments of inertia of the parts about the craft's centre of gravity.</summary>
    private static Vec3 ShareOf(MassProperties part, AssembledBuild build)
    {
        Mat3 own = part.InertiaAbout(build.p_OBcm), all = build.Craft.I_BBcm_B;
        return new(own.M00 / all.M00, own.M11 / all.M11, own.M22 / all.M22);
    }

    private static Vec3 Total(IEnumerable<PartMass> parts, AssembledBuild build) =>
        parts.Aggregate(Vec3.Zero, (sum, part) => sum + ShareOf(part.Mass, build));
}
