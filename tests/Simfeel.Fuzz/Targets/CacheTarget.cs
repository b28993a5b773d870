using System.Security.Cryptography;
using Simfeel.Builds;
using Simfeel.Builds.Assembly;
using Simfeel.Fuzz.Mutation;
using Simfeel.Fuzz.Running;
using Simfeel.Physics.Rotors;

namespace Simfeel.Fuzz.Targets;

/// <summary>Rotor tables kept on disk. A damaged one counts as not there; one that is taken has the bits that were stored.</summary>
internal sealed class CacheTarget : Target
{
    private readonly string _folder = Path.Combine(Scratch.Folder, "rotors");
    private readonly RotorTableStore _store;
    private readonly Lazy<(byte[] Key, RotorTable Table, byte[] File)> _known;

    public CacheTarget()
    {
        _store = new(_folder);
        _known = new(() =>
        {
            byte[] key = RotorTableKey.Of(Starters.Wagtail.Build.Propeller.Blades.Geometry(), Starters.Air)!;
            RotorTable table = Starters.Wagtail.Craft.Rotors[0].Table;
            _store.Save(key, table);
            return (key, table, File.ReadAllBytes(Directory.GetFiles(_folder)[0]));
        });
    }

    public override string Name => "rotor tables on disk";

    public override int Weight => 10;

    public override string Ending => ".rotor";

    public override byte[] Make(Dice dice)
    {
        byte[] bytes = [.. _known.Value.File];
        if (dice.Once(3)) return Bytes.Mutate(bytes, [bytes], dice);
        for (int n = dice.From(1, 8); n > 0; n--) bytes[dice.Once(2) ? dice.Below(60) : dice.Below(bytes.Length)] ^= (byte)dice.From(1, 255);
        // a good sum over bad content is no accident any more, but must still be no table of another key
        if (dice.Once(4)) SHA256.HashData(bytes.AsSpan(0, bytes.Length - 32), bytes.AsSpan(bytes.Length - 32));
        return bytes;
    }

    public override Verdict Try(byte[] input, Dice dice)
    {
        (byte[] key, RotorTable table, byte[] file) = _known.Value;
        string path = Path.Combine(_folder, Convert.ToHexStringLower(key) + ".rotor");
        File.WriteAllBytes(path, input);
        RotorTable? read = _store.Load(key);
        if (read is null) return Verdict.Rejected;
        bool summed = SHA256.HashData(input.AsSpan(0, input.Length - 32)).AsSpan().SequenceEqual(input.AsSpan(input.Length - 32));
        if (!summed || !input.AsSpan(0, 44).SequenceEqual(file.AsSpan(0, 44))) throw new UnexplainedException("a damaged table was taken");
        if (input.AsSpan().SequenceEqual(file) && !read.Nodes.SequenceEqual(table.Nodes)) throw new UnexplainedException("a table came back with other bits");
        return Verdict.Accepted;
    }
}
