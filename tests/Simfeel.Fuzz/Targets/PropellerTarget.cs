using Simfeel.Builds;
using Simfeel.Builds.Assembly;
using Simfeel.Builds.Format;
using Simfeel.Fuzz.Mutation;
using Simfeel.Fuzz.Oracles;
using Simfeel.Fuzz.Running;

namespace Simfeel.Fuzz.Targets;

/// <summary>Propellers alone with a section polar beside them; the blow falls on either file.</summary>
internal sealed class PropellerTarget : Target
{
    private static readonly byte[] Between = "\n----- polar -----\n"u8.ToArray();

    private readonly IReadOnlyList<byte[]> _propellers = Corpus.Of("propellers/da4002.toml", "corpus/propellers");
    private readonly IReadOnlyList<byte[]> _polars = Corpus.Of("propellers/sda1075-ncrit4.csv", "corpus/polars");
    private readonly TomlMutator _toml = new([.. BuildFormat.Keys.Where(key => key.Table is "propeller" or "")]);
    private readonly TableMutator _table = new(["angle_deg", "reynolds", "lift", "drag"]);

    public override string Name => "propellers";

    public override int Weight => 60;

    public override string Ending => ".txt";

    public override byte[] Make(Dice dice)
    {
        byte[] propeller = dice.Of(_propellers), polar = dice.Of(_polars);
        if (dice.Once(4)) propeller = _toml.Mutate(propeller, dice);
        else polar = dice.Once(3) ? Bytes.Mutate(polar, _polars, dice) : _table.Mutate(polar, dice);
        return [.. propeller, .. Between, .. polar];
    }

    public override Verdict Try(byte[] input, Dice dice)
    {
        int cut = input.AsSpan().IndexOf(Between);
        byte[] propeller = cut < 0 ? input : input[..cut], polar = cut < 0 ? [] : input[(cut + Between.Length)..];
        string path = Scratch.Store("fuzz-propeller.toml", propeller), section = Scratch.Store("section.csv", polar);
        PropellerResult result = BuildReader.ReadPropeller(path);
        Reasons.Check(result.Diagnostics, [path, Path.GetRelativePath(".", section), section], result.Propeller is null, Math.Max(Reasons.LinesOf(propeller), Reasons.LinesOf(polar)));
        if (result.Propeller is not PropellerSpec read) return Verdict.Rejected;
        TomlRules.Read(propeller);
        if (read.Blades.Polar is not null) Polar(polar);
        Finite.Check(read, "propeller");
        if (Deep(dice, 4000)) RotorTableCache.Get(read.Blades, Starters.Air);
        return Verdict.Accepted;
    }

    /// <summary>A polar that was taken has no word where a number should be.</summary>
    private static void Polar(byte[] polar)
    {
        if (!System.Text.Unicode.Utf8.IsValid(polar)) throw new UnexplainedException("the polar was taken and is no UTF-8");
        string text = System.Text.Encoding.UTF8.GetString(polar);
        if (text.Contains("nan", StringComparison.OrdinalIgnoreCase) && text.Split('\n').Any(line => line.Split('#')[0].Contains("nan", StringComparison.OrdinalIgnoreCase)))
            throw new UnexplainedException("the polar was taken with a word for a number");
    }
}
