using Simfeel.Builds;
using Simfeel.Builds.Format;
using Simfeel.Flight.Tuning;
using Simfeel.Fuzz.Mutation;
using Simfeel.Fuzz.Oracles;
using Simfeel.Fuzz.Running;
using Simfeel.Studies.Lessons;

namespace Simfeel.Fuzz.Targets;

/// <summary>Lesson files. What is taken is set up with a starter build; a share of it is flown and printed.</summary>
internal sealed class LessonTarget : Target
{
    private readonly IReadOnlyList<byte[]> _corpus = Corpus.Of("lessons", "corpus/lessons");
    private readonly TomlMutator _toml = new([.. LessonFormat.Keys, .. LessonKeys.Own]);

    public override string Name => "lessons";

    public override int Weight => 130;

    public override string Ending => ".toml";

    public override byte[] Make(Dice dice) =>
        dice.Once(4) ? Bytes.Mutate(dice.Of(_corpus), _corpus, dice) : _toml.Mutate(dice.Of(_corpus), dice);

    public override Verdict Try(byte[] input, Dice dice)
    {
        string path = Scratch.Store("fuzz-lesson.toml", input);
        LessonReading result = LessonReader.Read(path);
        Reasons.Check(result.Diagnostics, [path], result.Lesson is null, Reasons.LinesOf(input));
        if (result.Lesson is not Lesson lesson) return Verdict.Rejected;
        Keys(TomlRules.Read(input), result.Diagnostics);
        foreach (LessonSetting setting in lesson.Same) Value(setting.Key, setting.Value);
        Value(lesson.Change.Key, lesson.Change.A);
        Value(lesson.Change.Key, lesson.Change.B);
        if (lesson.Same.Select(setting => setting.Key.Path).Distinct().Count() < lesson.Same.Count) throw new UnexplainedException("a key of [same] counts twice");
        SetUp(lesson, dice);
        return Verdict.Accepted;
    }

    private static void Keys(TomlReading reading, IReadOnlyList<Diagnostic> said)
    {
        TomlRules.Unknown(reading, key => Known(key), said);
        foreach ((string key, object value) in reading.Values)
        {
            string[] parts = TomlRules.WithoutNumbers(key).Split('.', 2);
            KeySpec? spec = LessonFormat.Find(parts.Length > 1 ? parts[0] : "", parts[^1]);
            // outcomes may be open on a side
            if (spec is not null && spec.Key is not ("percent" or "difference")) TomlRules.InRange(key, spec, value);
        }
    }

    private static bool Known(string key)
    {
        string plain = TomlRules.WithoutNumbers(key);
        string[] parts = plain.Split('.', 2);
        if (LessonFormat.Tables.Contains(plain)) return true;
        if (parts.Length == 1) return LessonFormat.Find("", plain) is not null;
        return parts[0] is "same" or "change"
            ? LessonKeys.Find(parts[1]) is not null || LessonKeys.Own.Any(own => own.Path.StartsWith(parts[1] + ".", StringComparison.Ordinal)) || BuildFormat.Tables.Contains(parts[1])
            : LessonFormat.Find(parts[0], parts[1]) is not null;
    }

    private static void Value(LessonKey key, LessonValue value)
    {
        if (key.Words.Count > 0)
        {
            if (!key.Words.Contains(value.Word)) throw new UnexplainedException($"{key.Path} is '{value.Word}'");
            return;
        }
        (double least, double most) = value.IsFactor ? (LessonKeys.LeastFactor, LessonKeys.LargestFactor) : (key.Spec.Minimum, key.Spec.Maximum);
        if (!(value.Number >= least && value.Number <= most)) throw new UnexplainedException($"{key.Path} is {value.Number}");
    }

    private static void SetUp(Lesson lesson, Dice dice)
    {
        Build build = Starters.Wagtail.Build;
        try
        {
            LessonSetup first = new([.. lesson.Same, new(lesson.Change.Key, lesson.Change.A)]), second = new([.. lesson.Same, new(lesson.Change.Key, lesson.Change.B)]);
            foreach (LessonSetup setup in (LessonSetup[])[first, second])
            {
                Finite.Check(setup.Changed(build) with { Sheet = null }, "the lesson's build");
                if (!double.IsFinite(setup.Effort + setup.Hold + setup.Speed + setup.SinkSpeed + setup.Tilt + setup.Spin + setup.Air.Density)) throw new UnexplainedException("a setting is no number");
            }
            if (Deep(dice, 400) && second.Policy != TuningPolicy.SameGains && LikeKnown(second, build)) second.Make(build, new TuningRule(second.Policy));
            if (!Deep(dice, 8000)) return;
            LessonResult flown = LessonRun.Fly(lesson, build);
            if (double.IsInfinity(flown.A.Number) || double.IsInfinity(flown.B.Number)) throw new UnexplainedException("the lesson's number is infinite");
            LessonSheet sheet = new(flown, [], null, new(2000, 1, 1), "0");
            _ = sheet.Markdown(true);
        }
        catch (LessonException error)
        {
            // the program's own word for a build that cannot be changed so
            Reasons.Line(error.Message, error.Message);
        }
    }

    /// <summary>Whether no new rotor table is wanted, which takes half a second.</summary>
    private static bool LikeKnown(LessonSetup setup, Build build) => setup.Changed(build).Propeller.Blades == build.Propeller.Blades && setup.Air == Starters.Air;
}
