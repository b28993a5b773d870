using Simfeel.Builds.Format;
using Simfeel.Flight.Contact;
using Simfeel.Flight.Fields;
using Simfeel.Fuzz.Mutation;
using Simfeel.Fuzz.Oracles;
using Simfeel.Fuzz.Running;
using Simfeel.Physics.Maths;

namespace Simfeel.Fuzz.Targets;

/// <summary>Field files. What is taken is built, probed, and now and then flown over.</summary>
internal sealed class FieldTarget : Target
{
    private readonly IReadOnlyList<byte[]> _corpus = Corpus.Of("corpus/fields", "corpus/fields", "corpus/fields", "fields");
    private readonly TomlMutator _toml = new(FieldFormat.Keys);

    public override string Name => "fields";

    public override int Weight => 130;

    public override string Ending => ".toml";

    public override byte[] Make(Dice dice) =>
        dice.Once(3) ? Bytes.Mutate(dice.Of(_corpus), _corpus, dice) : _toml.Mutate(dice.Of(_corpus), dice);

    public override Verdict Try(byte[] input, Dice dice)
    {
        string path = Scratch.Store("fuzz-field.toml", input);
        FieldResult result = FieldReader.Read(path);
        Reasons.Check(result.Diagnostics, [path], result.Map is null, Reasons.LinesOf(input));
        if (result.Map is not FieldMap map) return Verdict.Rejected;
        TomlReading reading = TomlRules.Read(input);
        TomlRules.Unknown(reading, key => Known(key) is not null || FieldFormat.Tables.Contains(TomlRules.WithoutNumbers(key)), result.Diagnostics);
        foreach ((string key, object value) in reading.Values)
        {
            // a newer version of the format is read with a warning
            if (Known(key) is KeySpec spec && key != "format") TomlRules.InRange(key, spec, value);
        }
        Finite.Check(map, "field");
        Probe(map, dice);
        if (Deep(dice, 200)) Starters.Fly(Starters.Flyable.Unit, dice, map);
        return Verdict.Accepted;
    }

    private static KeySpec? Known(string key)
    {
        if (key.Contains('"', StringComparison.Ordinal)) return null;
        string[] parts = TomlRules.WithoutNumbers(key).Split('.');
        return parts.Length > 2 ? null : FieldFormat.Find(parts.Length > 1 ? parts[0] : "", parts[^1]);
    }

    /// <summary>Every place has a ground, every distance is a number, and the start is free.</summary>
    private static void Probe(FieldMap map, Dice dice)
    {
        ContactWorld world = ContactWorld.Of(map);
        if (!world.IsLand(0, 0)) throw new UnexplainedException("the start lies in the sea");
        foreach (FieldSolid solid in map.Solids)
        {
            if (!(solid.Size.X > 0 && solid.Size.Y > 0 && solid.Size.Z > 0)) throw new UnexplainedException($"a {solid.Kind} has the size {solid.Size}");
        }
        for (int n = 0; n < 10; n++)
        {
            Vec3 place = new(4000 * (dice.Share() - 0.5), 4000 * (dice.Share() - 0.5), -100 * dice.Share());
            double sum = world.GroundAt(place.X, place.Y) + world.GroundDepth(place, 0.1, out Vec3 away) + away.Length;
            if (world.SolidCount > 0) sum += world.Distance(dice.Below(world.SolidCount), place, out Vec3 out_W) + out_W.Length;
            if (!double.IsFinite(sum)) throw new UnexplainedException($"what lies at {place} is no number");
        }
    }
}
