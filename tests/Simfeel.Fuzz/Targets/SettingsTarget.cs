using System.Runtime.InteropServices;
using System.Text;
using Simfeel.Builds.Format;
using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Marks;
using Simfeel.Cockpit.Platform;
using Simfeel.Cockpit.Settings;
using Simfeel.Fuzz.Mutation;
using Simfeel.Fuzz.Oracles;
using Simfeel.Fuzz.Running;

namespace Simfeel.Fuzz.Targets;

/// <summary>
/// Files of the window's user: settings, keys, sticks, time marks. Their readers never refuse a file: what is wrong is said, and
/// a default is used. So an input counts as rejected where anything was said; what was read must be good either way.
/// </summary>
internal sealed class SettingsTarget : Target
{
    private static readonly bool HasKeys = NativeLibrary.TryLoad("libSDL2-2.0.so.0", out _);

    private static readonly string[] Files = ["settings.toml", "keys.toml", "sticks.toml", "flight.marks.toml"];

    private static readonly StickProfile Sticks = new()
    {
        Guid = "0",
        Name = "sticks",
        AxisCount = 8,
        Roll = new() { Axis = 0 },
        Pitch = new() { Axis = 1 },
        Throttle = new() { Axis = 2 },
        Yaw = new() { Axis = 3 },
    };

    private readonly IReadOnlyList<byte[]> _corpus = [.. Files.Select(name => Corpus.Of("corpus/settings/" + name)[0])];
    private readonly TomlMutator _toml = new(
    [
        Number("text_scale", 0.75, 2), Number("field_of_view_deg", 30, 140), Number("frame_rate_Hz", 20, 360), Number("video_delay_ms", 0, 300), Number("sound_gain", 0, 1),
        Number("low_raw", -32768, 32767), Number("high_raw", -32768, 32767), Number("deadband_raw", 0, 16383), Number("axis", 0, 8), Number("axes", 1, 255), Number("time_s", 0, 86400), Number("format", 1, 1),
    ]);

    public override string Name => "window files";

    public override int Weight => 90;

    public override string Ending => ".txt";

    /// <summary>The first line says which file it is.</summary>
    public override byte[] Make(Dice dice)
    {
        int file = dice.Below(Files.Length);
        byte[] text = dice.Once(3) ? Bytes.Mutate(_corpus[file], _corpus, dice) : _toml.Mutate(_corpus[file], dice);
        return [.. Encoding.UTF8.GetBytes(Files[file] + "\n"), .. text];
    }

    public override Verdict Try(byte[] input, Dice dice)
    {
        int end = input.AsSpan().IndexOf((byte)'\n');
        string name = Encoding.UTF8.GetString(input, 0, Math.Max(end, 0));
        byte[] text = input[(end + 1)..];
        List<string> wrong = [];
        Scratch.Store(name, text);
        switch (name)
        {
            case "flight.marks.toml":
                TimeMarksStore store = new(Path.Combine(Scratch.Folder, "flight.arrow"));
                store.Load(wrong);
                Marks(store.Marks);
                break;
            case "settings.toml":
                Settings(Text(name, wrong), name, wrong);
                break;
            case "keys.toml" when HasKeys:
                Keys(Text(name, wrong), name, wrong);
                break;
            case "sticks.toml":
                Profile(Text(name, wrong), name, wrong);
                break;
        }
        foreach (string sentence in wrong)
        {
            Reasons.Line(sentence, sentence);
            if (!sentence.Contains(name, StringComparison.Ordinal)) throw new UnexplainedException($"names no file: {sentence}");
        }
        if (wrong.Count > 0) return Verdict.Rejected;
        TomlRules.Read(text);
        return Verdict.Accepted;
    }

    private static string Text(string name, List<string> wrong)
    {
        new UserFolder(Scratch.Folder).TryRead(name, out string text, out string problem);
        if (problem.Length > 0) wrong.Add(problem);
        return text;
    }

    private static void Settings(string text, string name, List<string> wrong)
    {
        CockpitSettings read = SettingsFile.Read(text, name, wrong);
        Finite.Check(read, "settings");
        if (read.TextScale is < 0.75 or > 2 || read.FrameRate_Hz is < 20 or > 360 || read.FieldOfView_deg is < 30 or > 140 || read.VideoDelay_ms is < 0 or > 300)
            throw new UnexplainedException("a setting lies outside its range");
        Same(SettingsFile.Write(read), again => SettingsFile.Write(SettingsFile.Read(SettingsFile.Write(read), name, again)));
    }

    private static void Keys(string text, string name, List<string> wrong)
    {
        ActionMap read = ActionMapFile.Read(text, name, wrong);
        PilotAction[] actions = Enum.GetValues<PilotAction>();
        if (actions.Select(read.KeyOf).Distinct().Count() < actions.Length || actions.Select(read.PadOf).Distinct().Count() < actions.Length)
            throw new UnexplainedException("two actions share a key");
        if (actions.Any(action => ActionMap.FlyingKeys.Contains(read.KeyOf(action)))) throw new UnexplainedException("an action took a key that flies");
        Same(ActionMapFile.Write(read), again => ActionMapFile.Write(ActionMapFile.Read(ActionMapFile.Write(read), name, again)));
    }

    private static void Profile(string text, string name, List<string> wrong)
    {
        StickProfile read = StickProfileFile.Read(text, name, Sticks, wrong);
        foreach (StickAxis axis in (StickAxis[])[read.Roll, read.Pitch, read.Yaw, read.Throttle])
        {
            if (axis.Axis < 0 || axis.Axis >= read.AxisCount || axis.Low >= axis.High) throw new UnexplainedException($"axis {axis.Axis} of {read.AxisCount} from {axis.Low} to {axis.High}");
        }
        Same(StickProfileFile.Write(read), again => StickProfileFile.Write(StickProfileFile.Read(StickProfileFile.Write(read), name, Sticks, again)));
    }

    private static void Marks(TimeMarks marks)
    {
        for (int n = 0; n < marks.Count; n++)
        {
            if (!(marks[n].Time >= 0 && marks[n].Time <= TimeMark.Latest) || marks[n].Note.Length > TimeMark.LongestNote || marks[n].Note.Any(char.IsControl)) throw new UnexplainedException($"a mark at {marks[n].Time} s");
            if (n > 0 && !(marks[n].Time > marks[n - 1].Time)) throw new UnexplainedException("marks are out of order");
        }
        Same(TimeMarksFile.Write(marks), again => TimeMarksFile.Write(TimeMarksFile.Read(TimeMarksFile.Write(marks), "marks", again)));
    }

    /// <summary>What was read is written, read without a word and written again as the same text.</summary>
    private static void Same(string written, Func<List<string>, string> again)
    {
        List<string> said = [];
        string second = again(said);
        if (said.Count > 0) throw new UnexplainedException($"what the program wrote itself is wrong: {said[0]}");
        if (written != second) throw new UnexplainedException("what was read does not survive being written");
    }

    private static KeySpec Number(string name, double least, double most) => new(name, name is "axis" or "axes" or "format" || name.EndsWith("raw", StringComparison.Ordinal) ? KeyKind.Count : KeyKind.Number, "", 1, least, most, null, "", "", []);
}
