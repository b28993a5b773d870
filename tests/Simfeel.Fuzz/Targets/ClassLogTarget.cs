using Simfeel.Builds;
using Simfeel.Fuzz.Mutation;
using Simfeel.Fuzz.Oracles;
using Simfeel.Fuzz.Running;
using Simfeel.Studies.Lessons;

namespace Simfeel.Fuzz.Targets;

/// <summary>Tables of a class to which answers are added.</summary>
internal sealed class ClassLogTarget : Target
{
    private readonly IReadOnlyList<byte[]> _corpus = Corpus.Of("corpus/class");
    private readonly TableMutator _table = new(ClassLog.Header.Split(','));

    private readonly Lazy<LessonResult> _result = new(() =>
        LessonRun.Fly(LessonReader.Read(Corpus.PathOf("lessons/ballast-to-the-tips.toml")).Lesson!, BuildReader.Read(Corpus.PathOf("builds/wagtail.toml")).Build!));

    public override string Name => "class tables";

    public override int Weight => 20;

    public override string Ending => ".csv";

    public override byte[] Make(Dice dice) =>
        dice.Once(2) ? Bytes.Mutate(dice.Of(_corpus), _corpus, dice) : _table.Mutate(dice.Of(_corpus), dice);

    public override Verdict Try(byte[] input, Dice dice)
    {
        string path = Scratch.Store("fuzz-class.csv", input);
        LessonResult result = _result.Value;
        try
        {
            ClassLog.Append(path, result, new ClassAnswers(result.Lesson.Choices.Count), new DateOnly(2000, 1, 1), "0");
        }
        catch (IOException error)
        {
            Reasons.Line(error.Message, error.Message);
            if (!error.Message.StartsWith(path, StringComparison.Ordinal)) throw new UnexplainedException($"names no file: {error.Message}");
            if (!File.ReadAllBytes(path).AsSpan().SequenceEqual(input)) throw new UnexplainedException("a table that was refused was changed");
            return Verdict.Rejected;
        }
        byte[] after = File.ReadAllBytes(path);
        if (!after.AsSpan().StartsWith(input)) throw new UnexplainedException("what stood in the table was changed");
        string first = System.Text.Encoding.UTF8.GetString(after).Split('\n', '\r')[0];
        if (first.TrimStart('\ufeff') != ClassLog.Header) throw new UnexplainedException($"added to a table with the heading '{first}'");
        return Verdict.Accepted;
    }
}
