using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Flight.Tuning;
using Simfeel.Physics.Air;
using Simfeel.Physics.Maths;
using Simfeel.Studies.Batch;

namespace Simfeel.Studies.Lessons;

/// <summary>Everything that one craft of a lesson is flown with, in SI units.</summary>
public sealed class LessonSetup
{
    private const double Degree = Math.PI / 180;

    /// <summary>Density of the ballast, kg/m^3: lead (any handbook).</summary>
    private const double Lead = 11340;

    private readonly IReadOnlyList<LessonSetting> _settings;

    /// <summary>A setup of settings; of two of one key the last counts.</summary>
    public LessonSetup(IReadOnlyList<LessonSetting> settings)
    {
        _settings = settings;
    }

    /// <summary>Name of the drill.</summary>
    public string DrillName => Word("drill.name");

    /// <summary>0 roll, 1 pitch, 2 yaw.</summary>
    public int Axis => Word("drill.axis") switch { "roll" => 0, "pitch" => 1, _ => 2 };

    /// <summary>Share of full stick.</summary>
    public double Effort => Number("drill.effort");

    /// <summary>Time that a stick is held, s.</summary>
    public double Hold => Number("drill.hold_s");

    /// <summary>Speed, m/s.</summary>
    public double Speed => Number("drill.speed_m_s");

    /// <summary>Sink speed, m/s.</summary>
    public double SinkSpeed => Number("drill.sink_m_s");

    /// <summary>Tilt, rad.</summary>
    public double Tilt => Number("drill.tilt_deg") * Degree;

    /// <summary>Spin, rad/s.</summary>
    public double Spin => Number("drill.spin_deg_per_s") * Degree;

    /// <summary>The air.</summary>
    public AirState Air => StandardAtmosphere.At(Number("air.altitude_m"));

    /// <summary>How the gains are chosen.</summary>
    public TuningPolicy Policy => TuningPolicies.Parse(Word("tuning.policy"))!.Value;

    /// <summary>Who flies.</summary>
    public PilotProfile Profile => new()
    {
        StateOfCharge = Number("pack.charge_percent") / 100,
        DisplayDelay = Number("display.delay_ms") / 1000,
    };

    /// <summary>The craft, made from a build as it was read.</summary>
    /// <param name="build">The build.</param>
    /// <param name="policy">How the gains are chosen, with the craft whose gains are kept where they are.</param>
    /// <exception cref="LessonException">The build cannot be changed so, or cannot fly then.</exception>
    public (AssembledBuild Assembled, TunedUnit Unit) Make(Build build, TuningRule policy)
    {
        Build changed = Changed(build);
        AssembledBuild assembled;
        try
        {
            assembled = BuildAssembler.Assemble(changed, Air);
        }
        catch (ArgumentException error)
        {
            throw new LessonException(error.Message);
        }
        StudyConditions conditions = new(Air, Profile, new FieldConditions(), 1, policy);
        TunedUnit unit = conditions.Tune(changed, out string refusal) ?? throw new LessonException(refusal);
        return (assembled, unit);
    }

    /// <summary>A build with the settings that concern parts and ballast.</summary>
    /// <exception cref="LessonException">A number is refused.</exception>
    internal Build Changed(Build build)
    {
        List<KeyValuePair<string, double>> edits = [];
        List<(BuildKnob Knob, double Factor)> grown = [];
        foreach (LessonSetting setting in _settings)
        {
            if (setting.Key.Kind == LessonKeyKind.Build)
                edits.Add(new(setting.Key.Path, setting.Value.IsFactor ? setting.Value.Number * Present(build, setting.Key) : setting.Value.Number));
            else if (setting.Key.Kind == LessonKeyKind.Part)
                grown.Add((BuildKnobs.Find(setting.Key.Path)!, setting.Value.Number));
        }
        Build changed = build;
        if (edits.Count > 0)
        {
            BuildResult result = BuildEditor.Swap(build, edits);
            changed = result.Build
                ?? throw new LessonException(string.Join(" ", result.Diagnostics.Where(d => d.Severity == Severity.Error).Select(d => $"{d.Key}: {d.Message}")));
        }
        try
        {
            foreach ((BuildKnob knob, double factor) in grown) changed = knob.Grow(changed, factor);
        }
        catch (InvalidOperationException error)
        {
            throw new LessonException(error.Message);
        }
        if (BuildKnob.Refusal(changed) is string refusal) throw new LessonException(refusal);
        return WithBallast(changed);
    }

    private static double Present(Build build, LessonKey key) =>
        build.Values.FirstOrDefault(value => value.Key == key.Path)?.Typical
        ?? throw new LessonException($"{build.Name} has no {key.Path} to change.");

    /// <summary>Lumps of lead on the lines from the middle of the motors to each motor; the drag of the build stays.</summary>
    private Build WithBallast(Build build)
    {
        double mass = Number("ballast.mass_g") / 1000, spread = Number("ballast.spread_percent") / 100;
        if (mass == 0) return build;
        IReadOnlyList<MotorMount> mounts = build.Frame.Mounts;
        Vec3 middle = Vec3.Zero;
        foreach (MotorMount mount in mounts) middle += 1.0 / mounts.Count * mount.p_OM;
        double lump = mass / mounts.Count, diameter = Math.Cbrt(6 * lump / (Math.PI * Lead));
        Vec3 up = new(0, 0, -Number("ballast.height_mm") / 1000);
        return build with
        {
            Values = [],
            Sheet = null,
            Extras =
            [
                .. build.Extras,
                .. mounts.Select((mount, n) => new ExtraSpec($"ballast {n + 1}", lump, new PartShape(
                    ShapeKind.Sphere, new(diameter, diameter, diameter), middle + (spread * (mount.p_OM - middle)) + up, Mat3.Identity))),
            ],
        };
    }

    private double Number(string path) =>
        Last(path) is LessonSetting setting ? setting.Value.Number : LessonKeys.Own.First(key => key.Path == path).Default!.Value;

    private string Word(string path) =>
        Last(path) is LessonSetting setting ? setting.Value.Word : LessonKeys.Own.First(key => key.Path == path).WhenMissing;

    private LessonSetting? Last(string path)
    {
        for (int n = _settings.Count - 1; n >= 0; n--)
        {
            if (_settings[n].Key.Path == path) return _settings[n];
        }
        return null;
    }
}

/// <summary>A lesson cannot be flown with a build or a value; the message says why.</summary>
public sealed class LessonException(string message) : Exception(message);
