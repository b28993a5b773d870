using System.Globalization;
using Simfeel.Builds;
using Simfeel.Builds.Format;

namespace Simfeel.Cockpit.Parts;

/// <summary>Which numbers of a build lie on the part bench, how far they go and in what steps.</summary>
internal static class PartBenchList
{
    /// <summary>Keys that are offered where a build has them, with their labels, in the order in which they are shown.</summary>
    private static readonly (string Key, string Label)[] Offered =
    [
        ("frame.wheelbase_mm", "Wheelbase"),
        ("frame.aspect", "Side to side over front to back"),
        ("frame.sweep_deg", "Sweep of the front arms"),
        ("frame.arm_width_mm", "Arm width"),
        ("frame.arm_thickness_mm", "Arm thickness"),
        ("motor.stator_diameter_mm", "Stator diameter"),
        ("motor.stator_height_mm", "Stator height"),
        ("motor.kv_rpm_per_V", "Motor KV"),
        ("motor.mass_g", "Motor mass"),
        ("propeller.diameter_in", "Propeller diameter"),
        ("propeller.pitch_in", "Propeller pitch"),
        ("propeller.blades", "Propeller blades"),
        ("propeller.mass_g", "Propeller mass"),
        ("speed_controller.current_limit_A", "Current limit of a motor"),
        ("battery.cells", "Battery cells"),
        ("battery.capacity_mAh", "Battery capacity"),
        ("battery.mass_g", "Battery mass"),
        ("battery.x_mm", "Battery position, forward"),
        ("battery.z_mm", "Battery position, down"),
        ("stack.mass_g", "Electronics mass"),
        ("camera.mass_g", "Camera mass"),
        ("camera.tilt_deg", "Camera tilt"),
    ];

    /// <summary>The items of a build, set to what the build has.</summary>
    public static IReadOnlyList<PartBenchItem> Of(Build build)
    {
        List<PartBenchItem> items = [];
        foreach ((string key, string label) in Offered)
        {
            // with measured stations the pitch is a label
            bool idle = key == "propeller.pitch_in" && build.Propeller.Blades.Stations is not null;
            if (!idle && build.Values.FirstOrDefault(value => value.Key == key) is { } value) Add(items, build, value, label);
        }
        for (int n = 0; n < build.Extras.Count; n++)
        {
            string key = string.Create(CultureInfo.InvariantCulture, $"extra[{n + 1}].mass_g");
            string name = build.Extras[n].Name is { Length: > 0 } given ? char.ToUpperInvariant(given[0]) + given[1..] : $"Extra part {n + 1}";
            if (build.Values.FirstOrDefault(value => value.Key == key) is { } value) Add(items, build, value, name + " mass");
        }
        return items;
    }

    private static void Add(List<PartBenchItem> items, Build build, BuildValue value, string label)
    {
        KeySpec spec = BuildFormat.Find(value.Key)!;
        double now = value.Typical;
        (double low, double high, double step) =
            spec.Kind == KeyKind.Count ? (Math.Ceiling(now / 2), 2 * now, 1)
            : spec.Unit == "deg" ? (spec.Minimum, spec.Maximum, 1)
            : spec.Minimum < 0 ? Place(build, now)
            : now > 0 ? Size(now)
            : (0, 0, 0);
        // what is not there, such as a camera of 0 g, cannot be made larger
        if (step == 0) return;
        items.Add(new()
        {
            Key = value.Key,
            Label = label,
            Unit = spec.Unit,
            Original = now,
            Value = now,
            Low = Math.Max(low, spec.Minimum),
            High = Math.Min(high, spec.Maximum),
            Step = step,
        });
    }

    /// <summary>A size or mass: from half to twice what it is, in about forty steps to itself.</summary>
    private static (double Low, double High, double Step) Size(double now)
    {
        double step = Round(now / 40);
        return (Multiple(now / 2, step, Math.Floor), Multiple(2 * now, step, Math.Ceiling), step);
    }

    /// <summary>A place: half the wheelbase either way.</summary>
    private static (double Low, double High, double Step) Place(Build build, double now)
    {
        double half = 500 * build.Frame.Wheelbase, step = Round(half / 100);
        double most = Multiple(Math.Max(half, Math.Abs(now)), step, Math.Ceiling);
        return (-most, most, step);
    }

    /// <summary>Whole steps; through decimal numbers, so that 0.1 stays 0.1.</summary>
    private static double Multiple(double value, double step, Func<double, double> round) => (double)((decimal)round(value / step) * (decimal)step);

    /// <summary>The next lower of 1, 2 and 5 times a power of ten.</summary>
    private static double Round(double value)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(value)));
        double digit = value / power;
        return (double)((decimal)(digit < 2 ? 1 : digit < 5 ? 2 : 5) * (decimal)power);
    }
}
