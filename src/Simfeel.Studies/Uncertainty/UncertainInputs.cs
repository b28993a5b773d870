using Simfeel.Builds;

namespace Simfeel.Studies.Uncertainty;

/// <summary>The inputs of two builds that are not known well, and how they are drawn.</summary>
/// <remarks>
/// A number that is the same in both builds, band and all, is taken as the same part and moves in both alike. Of two estimates by one
/// rule half of the variance is the rule's own error, the same in both builds, and half is each part's; of two stated bands each
/// moves alone. That half is our judgement: it is what makes a difference between builds steadier than either build's number.
/// </remarks>
public sealed class UncertainInputs
{
    /// <summary>
    /// Keys of the propellers' aerodynamics. Each place in their bands needs a rotor table of its own, so they move in steps of half the
    /// way from typical to an end.
    /// </summary>
    private static readonly HashSet<string> ShapeKeys =
    [
        "propeller.diameter_in", "propeller.pitch_in", "propeller.chord_scale", "propeller.blades", "propeller.thrust_factor",
        "propeller.torque_factor",
    ];

    private readonly List<Input> _inputs = [];

    /// <summary>The inputs of two builds.</summary>
    public UncertainInputs(Build a, Build b)
    {
        Dictionary<string, BuildValue> ofB = BuildVariation.Uncertain(b).ToDictionary(value => value.Key);
        foreach (BuildValue value in BuildVariation.Uncertain(a))
        {
            ofB.Remove(value.Key, out BuildValue? other);
            if (other is not null && (value.Low, value.Typical, value.High) == (other.Low, other.Typical, other.High))
            {
                Add(InputOwner.Both, value, 0);
                continue;
            }
            double shared = other is { FilledIn: true } && value.FilledIn ? SharedShare : 0;
            Add(InputOwner.A, value, shared);
            if (other is not null) Add(InputOwner.B, other, shared);
        }
        foreach (BuildValue value in ofB.Values) Add(InputOwner.B, value, 0);

        void Add(InputOwner owner, BuildValue value, double shared) =>
            _inputs.Add(new(new(value.Key, owner, value.FilledIn ? (value.Rule.Length > 0 ? value.Rule : "default") : "stated band"), shared));
    }

    /// <summary>Share of the variance that two estimates by one rule have in common.</summary>
    public const double SharedShare = 0.5;

    /// <summary>The inputs.</summary>
    public IReadOnlyList<UncertainInput> All => [.. _inputs.Select(input => input.What)];

    /// <summary>Places in their bands of one draw: A's and B's by key.</summary>
    public (Dictionary<string, double> A, Dictionary<string, double> B) Draw(int seed, int draw)
    {
        Dictionary<string, double> a = new(StringComparer.Ordinal), b = new(StringComparer.Ordinal);
        foreach ((UncertainInput what, double shared) in _inputs)
        {
            double own = Number(what.Owner == InputOwner.Both ? "" : what.Owner.ToString());
            double place = Math.Clamp((Math.Sqrt(shared) * (shared > 0 ? Number("rule") : 0)) + (Math.Sqrt(1 - shared) * own), -1, 1);
            Put(what, Stepped(what.Key, place), a, b);

            double Number(string of) => SeededNumbers.Triangular(SeededNumbers.Uniform(seed, draw, what.Key + "/" + of));
        }
        return (a, b);
    }

    /// <summary>Places with one input at an end of its band, all else typical.</summary>
    public static (Dictionary<string, double> A, Dictionary<string, double> B) AtEnd(UncertainInput input, double end)
    {
        Dictionary<string, double> a = new(StringComparer.Ordinal), b = new(StringComparer.Ordinal);
        Put(input, end, a, b);
        return (a, b);
    }

    private static void Put(UncertainInput input, double place, Dictionary<string, double> a, Dictionary<string, double> b)
    {
        if (input.Owner != InputOwner.B) a[input.Key] = place;
        if (input.Owner != InputOwner.A) b[input.Key] = place;
    }

    private static double Stepped(string key, double place) => ShapeKeys.Contains(key) ? Math.Round(2 * place) / 2 : place;

    private sealed record Input(UncertainInput What, double Shared);
}
