using Simfeel.Builds;
using Simfeel.Builds.Assembly;
using Simfeel.Builds.Format;
using Simfeel.Flight;
using Simfeel.Fuzz.Mutation;
using Simfeel.Fuzz.Oracles;
using Simfeel.Fuzz.Running;
using Simfeel.Physics.Mass;

namespace Simfeel.Fuzz.Targets;

/// <summary>Build files. What is taken is put together, and a share of it is tuned and flown.</summary>
internal sealed class BuildTarget : Target
{
    private readonly IReadOnlyList<byte[]> _corpus = Corpus.Of("builds", "corpus/builds");
    private readonly TomlMutator _toml = new(BuildFormat.Keys);

    public override string Name => "builds";

    public override int Weight => 230;

    public override string Ending => ".toml";

    public override byte[] Make(Dice dice) =>
        dice.Once(3) ? Bytes.Mutate(dice.Of(_corpus), _corpus, dice) : _toml.Mutate(dice.Of(_corpus), dice);

    public override Verdict Try(byte[] input, Dice dice)
    {
        string path = Scratch.Store("fuzz.toml", input);
        BuildResult result = BuildReader.Read(path);
        string polar = Path.GetRelativePath(".", Path.Combine(Scratch.Folder, "section.csv"));
        Reasons.Check(result.Diagnostics, [path, polar], result.Build is null, Reasons.LinesOf(input));
        if (result.Build is not Build build) return Verdict.Rejected;
        Numbers(build, result.Diagnostics, TomlRules.Read(input));
        Finite.Check(build with { Sheet = null }, "build");
        Together(build, dice);
        return Verdict.Accepted;
    }

    /// <summary>Every number of the file is in the build, inside its range.</summary>
    private static void Numbers(Build build, IReadOnlyList<Diagnostic> said, TomlReading reading)
    {
        TomlRules.Unknown(reading, key => !key.Contains('"', StringComparison.Ordinal) && (BuildFormat.Find(key) is not null || BuildFormat.Tables.Contains(TomlRules.WithoutNumbers(key))), said);
        Dictionary<string, BuildValue> values = build.Values.ToDictionary(value => value.Key, StringComparer.Ordinal);
        foreach ((string path, object value) in Flat(reading))
        {
            if (path.Contains('"', StringComparison.Ordinal) || BuildFormat.Find(path) is not KeySpec key) continue;
            TomlRules.InRange(path, key, value);
            if (key.Kind is not (KeyKind.Number or KeyKind.Count) || said.Any(d => d.Key == path)) continue;
            if (!values.TryGetValue(path, out BuildValue? there)) throw new UnexplainedException($"{path} was read and is not in the build");
            if (there.Typical != TomlRules.Typical(value)) throw new UnexplainedException($"{path} = {TomlRules.Typical(value)} became {there.Typical}");
        }
    }

    /// <summary>Values by full key; a table of the format that is written in braces is opened.</summary>
    private static IEnumerable<KeyValuePair<string, object>> Flat(TomlReading reading)
    {
        foreach ((string path, object value) in reading.Values)
        {
            if (value is Dictionary<string, object> table && BuildFormat.Find(path) is null && BuildFormat.Tables.Contains(path))
            {
                foreach ((string key, object inner) in table) yield return new($"{path}.{key}", inner);
            }
            else
            {
                yield return new(path, value);
            }
        }
    }

    private static void Together(Build build, Dice dice)
    {
        MassProperties mass = MassProperties.Combine([.. PartPlacer.Place(build).Select(part => part.Mass)]);
        if (!(mass.Mass > 0)) throw new UnexplainedException($"the mass is {mass.Mass} kg");
        Finite.Check(mass, "mass");
        // a propeller of its own wants a rotor table, which takes half a second
        bool own = Deep(dice, 4000);
        bool flown = own || Deep(dice, 40);
        if (!flown) return;
        if (!own) build = build with { Propeller = build.Propeller with { Blades = Starters.Wagtail.Build.Propeller.Blades } };
        AssembledBuild assembled = BuildAssembler.Assemble(build, Starters.Air);
        TunedUnit unit;
        try
        {
            unit = TunedUnit.Matched(FlightUnit.Of(assembled), Starters.Air, Starters.Profile);
        }
        catch (InvalidOperationException error)
        {
            // the program's own word for a craft that cannot hover or be tuned
            Reasons.Line(error.Message, error.Message);
            return;
        }
        Starters.Fly(unit, dice);
    }
}
