using Simfeel.Flight.Drills;

namespace Simfeel.Studies.Lessons;

/// <summary>The drills that a lesson can fly: those of the catalogue and the <see cref="Experiments"/>.</summary>
public static class LessonDrills
{
    /// <summary>Names of the experiments.</summary>
    internal static readonly string[] OfTheirOwn = ["push", "release", "tumble", "sink", "climb", "level"];

    /// <summary>All names.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. DrillCatalogue.All.Select(drill => drill.Name), .. OfTheirOwn];

    /// <summary>The drill of a setup.</summary>
    /// <exception cref="ArgumentException">There is no such drill, or it has no such axis.</exception>
    public static Drill Of(LessonSetup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        return setup.DrillName switch
        {
            "push" => Experiments.Push(setup.Axis, setup.Hold),
            "release" when setup.Axis == 2 => throw new ArgumentException("The drill release tilts about roll or pitch, not about yaw."),
            "release" => Experiments.Release(setup.Axis, setup.Tilt),
            "tumble" => Experiments.Tumble(setup.Axis, setup.Spin),
            "sink" => Experiments.Sink(setup.Speed, setup.SinkSpeed),
            "climb" => Experiments.Climb(setup.Speed),
            "level" => Experiments.Level(setup.Speed),
            _ => DrillCatalogue.All.FirstOrDefault(drill => drill.Name == setup.DrillName)
                ?? throw new ArgumentException($"There is no drill called '{setup.DrillName}'."),
        };
    }
}
