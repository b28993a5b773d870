using System.Text;
using System.Text.RegularExpressions;
using Simfeel.Builds.Format;
using Simfeel.Flight;
using Simfeel.Flight.Fields;
using Simfeel.Flight.Traces;
using Simfeel.Fuzz.Mutation;
using Simfeel.Fuzz.Oracles;
using Simfeel.Fuzz.Running;

namespace Simfeel.Fuzz.Targets;

/// <summary>Recordings. What is taken is read to its end, and flown again for some readings where no new rotor table is wanted.</summary>
internal sealed partial class TraceTarget : Target
{
    private const int MostReadings = 400;

    private readonly Lazy<IReadOnlyList<byte[]>> _corpus = new(() => [TraceMaker.Fly(false), TraceMaker.Fly(true)]);
    private readonly TomlMutator _builds = new(BuildFormat.Keys), _fields = new(FieldFormat.Keys);

    public override string Name => "traces";

    public override int Weight => 100;

    public override string Ending => ".arrow";

    public override byte[] Make(Dice dice)
    {
        byte[] trace = dice.Of(_corpus.Value);
        switch (dice.Below(5))
        {
            case 0: return Bytes.Mutate(trace, _corpus.Value, dice);
            case 1 or 2:
                byte[] struck = TraceMaker.Struck(trace, dice);
                return dice.Once(4) ? Bytes.Mutate(struck, _corpus.Value, dice) : struck;
            default: return TraceMaker.WithHeader(trace, words => Reword(words, dice));
        }
    }

    public override Verdict Try(byte[] input, Dice dice)
    {
        string path = Scratch.Store("fuzz.arrow", input);
        try
        {
            long readings = ReadAll(path, dice.Once(10) ? 1 : int.MaxValue, out TraceHeader header);
            if (readings < 0) throw new UnexplainedException($"{readings} stick readings");
            Replay(path, header, dice);
            return Verdict.Accepted;
        }
        catch (TraceException error)
        {
            Reasons.Line(error.Message, error.Message);
            bool names = error.Message.StartsWith(path + ": ", StringComparison.Ordinal);
            if (!names || !Place().IsMatch(error.Message[path.Length..])) throw new UnexplainedException($"names no place: {error.Message}");
            return Verdict.Rejected;
        }
    }

    private static long ReadAll(string path, int rows, out TraceHeader header)
    {
        using TraceReader trace = TraceReader.Open(path);
        header = trace.Header;
        Check(header);
        TraceRow row = trace.NewRow();
        long readings = 0;
        for (int n = 0; n < rows && trace.Read(row); n++)
        {
            if (row.Count < 1 || row.Count > header.ReadingsPerRow || row.Flown is not (0 or 1)) throw new UnexplainedException($"a row of {row.Count} readings of craft {row.Flown}");
            readings += row.Count;
            if (row.Reading != readings) throw new UnexplainedException($"reading {row.Reading} follows {readings - row.Count}");
        }
        return readings;
    }

    private static void Check(TraceHeader header)
    {
        Finite.Check(header.Profile, "pilot");
        Finite.Check(header.Conditions, "conditions");
        Finite.Check(header.Air, "air");
        if (!double.IsFinite(header.VideoDelay)) throw new UnexplainedException($"the video is {header.VideoDelay} s late");
        foreach ((string key, double value) in header.A.Edits.Concat(header.B.Edits))
        {
            if (!double.IsFinite(value)) throw new UnexplainedException($"the edit {key} is {value}");
        }
    }

    private static void Replay(string path, TraceHeader header, Dice dice)
    {
        bool known = header.Air == Starters.Air && header.A.Source.Text == Starters.Flyable.Source.Text && header.B.Source.Text == Starters.Flyable.Source.Text && header.A.Edits.Count + header.B.Edits.Count == 0;
        if (!Deep(dice, known ? 8 : 500)) return;
        using TraceReader trace = TraceReader.Open(path);
        using Replay replay = new(trace);
        double steps = header.Profile.StepsPerStickReading;
        for (int n = 0; n < MostReadings && n * steps < 4 * MostReadings && replay.Fly(); n++)
        {
        }
    }

    private void Reword(Dictionary<string, string> words, Dice dice)
    {
        string[] keys = [.. words.Keys];
        for (int n = dice.From(1, 3); n > 0; n--)
        {
            string key = dice.Of(keys);
            switch (dice.Below(8))
            {
                case 0: words.Remove(key); break;
                case 1: words[key + dice.Of(["x", "", " "])] = NastyWords.Word(dice); break;
                case 2 or 3 when key.EndsWith("_text", StringComparison.Ordinal):
                    TomlMutator mutator = key == "field_text" ? _fields : _builds;
                    words[key] = Encoding.UTF8.GetString(mutator.Mutate(Encoding.UTF8.GetBytes(words.GetValueOrDefault(key, "")), dice));
                    if (!dice.Once(5)) words[key.Replace("text", "sha256", StringComparison.Ordinal)] = FlyableBuild.Sha256Of(words[key]);
                    break;
                case 4:
                    words[dice.Of(["a_edits", "b_edits"])] = dice.Of(["motor.mass_g=", "battery.x_mm=", "no.such=", "=", "frame.layout=", "extra[1].mass_g=", "propeller.stations="]) + NastyWords.Number(dice) + dice.Of(["", "\n", "\nmotor.mass_g=31"]);
                    break;
                case 5: words["a_polar_file"] = NastyWords.Word(dice); words["a_polar_text"] = NastyWords.Word(dice); break;
                default: words[key] = dice.Once(3) ? NastyWords.Word(dice) : NastyWords.Number(dice); break;
            }
        }
    }

    [GeneratedRegex(@"after [0-9.]+ s|row [0-9]+ of|at its beginning|before its first row|beginning|message|schema|batch|columns|key '|The trace's \w|text of (the field|build [AB])|rows a second|has format|tuning policy|empty|no trace of a flight|over no field")]
    private static partial Regex Place();
}
