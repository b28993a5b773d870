using Simfeel.Fuzz.Mutation;
using Simfeel.Fuzz.Oracles;
using Simfeel.Fuzz.Running;
using Simfeel.Studies.Blind;

namespace Simfeel.Fuzz.Targets;

/// <summary>Vote logs. What is taken is written again and read back, tallied, and a share of it calibrates bands.</summary>
internal sealed class VotesTarget : Target
{
    private readonly IReadOnlyList<byte[]> _corpus = Corpus.Of("corpus/votes");
    private readonly TableMutator _table = new(VoteRowFormat.Columns);

    public override string Name => "votes";

    public override int Weight => 60;

    public override string Ending => ".csv";

    public override byte[] Make(Dice dice) =>
        dice.Once(3) ? Bytes.Mutate(dice.Of(_corpus), _corpus, dice) : _table.Mutate(dice.Of(_corpus), dice);

    public override Verdict Try(byte[] input, Dice dice)
    {
        string path = Scratch.Store("fuzz-votes.csv", input);
        int lines = Reasons.LinesOf(input);
        VoteLogContent log;
        try
        {
            log = VoteLog.Read(path);
        }
        catch (VoteLogException error)
        {
            Reasons.Check(error.Diagnostics, [path], true, lines);
            return Verdict.Rejected;
        }
        Reasons.Check(log.Remarks, [path], false, lines);
        foreach (VoteRow row in log.Rows) Check(row);
        IReadOnlyList<VoteTally> tallies = VoteTally.Of(log.Rows);
        if (Deep(dice, 30)) BandCalibration.Of(tallies);
        if (Deep(dice, 20)) Append(path, log);
        return Verdict.Accepted;
    }

    private static void Check(VoteRow row)
    {
        if (Math.Abs(row.Subject.Difference_Percent) > VoteSubject.LargestDifference_Percent || !(row.Subject.VideoDelay_ms >= 0 && row.Subject.VideoDelay_ms <= VoteSubject.LongestVideoDelay_ms))
            throw new UnexplainedException($"a vote on {row.Subject.Difference_Percent} % at {row.Subject.VideoDelay_ms} ms");
        CsvLine.TrySplit(VoteRowFormat.Write(row), out IReadOnlyList<CsvField> fields);
        if (!VoteRowFormat.TryRead(fields, out VoteRow? again, out _) || again.Vote != row.Vote || again.Date != row.Date) throw new UnexplainedException("a vote does not survive being written");
    }

    /// <summary>One vote more is one row more, and nothing that was there is lost.</summary>
    private static void Append(string path, VoteLogContent log)
    {
        if (log.Rows.Count == 0) return;
        byte[] before = File.ReadAllBytes(path);
        new VoteLog(path).Append(log.Rows[0]);
        byte[] after = File.ReadAllBytes(path);
        if (!after.AsSpan().StartsWith(before)) throw new UnexplainedException("a vote that was added changed what stood before it");
        if (VoteLog.Read(path).Rows.Count != log.Rows.Count + 1) throw new UnexplainedException("a vote that was added cannot be read, or took another one away");
    }
}
