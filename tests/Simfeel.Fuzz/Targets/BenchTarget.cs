using Simfeel.Builds.Format;
using Simfeel.Fuzz.Mutation;
using Simfeel.Fuzz.Oracles;
using Simfeel.Fuzz.Running;
using Simfeel.Studies.Bench;
using Simfeel.Studies.Bench.Pages;
using Simfeel.Studies.Bench.Reading;
using Simfeel.Studies.Fit;

namespace Simfeel.Fuzz.Targets;

/// <summary>Bench readings. What is taken is held against a starter build.</summary>
internal sealed class BenchTarget : Target
{
    private readonly IReadOnlyList<byte[]> _corpus = Corpus.Of("bench/wagtail-bench.toml", "corpus/bench");
    private readonly TomlMutator _toml = new(BenchFormat.Keys);

    public override string Name => "bench readings";

    public override int Weight => 100;

    public override string Ending => ".toml";

    public override byte[] Make(Dice dice) =>
        dice.Once(4) ? Bytes.Mutate(dice.Of(_corpus), _corpus, dice) : _toml.Mutate(dice.Of(_corpus), dice);

    public override Verdict Try(byte[] input, Dice dice)
    {
        string path = Scratch.Store("fuzz-bench.toml", input);
        BenchResult result = BenchReader.Read(path);
        int lines = Reasons.LinesOf(input);
        Reasons.Check(result.Diagnostics, [path], result.Readings is null, lines);
        if (result.Readings is not BenchReadings readings) return Verdict.Rejected;
        TomlReading reading = TomlRules.Read(input);
        TomlRules.Unknown(reading, key => Known(key) is not null || BenchFormat.Tables.Contains(key), result.Diagnostics);
        foreach ((string key, object value) in reading.Values)
        {
            // a newer version of the format is read with a warning
            if (Known(key) is KeySpec spec && key != "format") TomlRules.InRange(key, spec, value);
        }
        Finite.Check(readings, "readings");
        try
        {
            BenchReport report = BenchStudy.Run(Starters.Wagtail, readings);
            foreach (BenchQuantity quantity in report.Measured)
            {
                if (!double.IsFinite(quantity.Measured!.Value + quantity.Measured.Sigma + quantity.Measured.HalfBand)) throw new UnexplainedException($"{quantity.Title} is {quantity.Measured.Value} with {quantity.Measured.Sigma}");
            }
            if (Deep(dice, 50)) _ = BenchResultPage.Html(report);
        }
        catch (FitException error)
        {
            Reasons.Check(error.Diagnostics, [path], true, lines);
            return Verdict.Rejected;
        }
        return Verdict.Accepted;
    }

    private static KeySpec? Known(string key)
    {
        string[] parts = key.Split('.', 2);
        return BenchFormat.Find(parts.Length > 1 ? parts[0] : "", parts[^1]);
    }
}
