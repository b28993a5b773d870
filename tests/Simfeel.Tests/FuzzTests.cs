using Simfeel.Fuzz.Mutation;
using Simfeel.Fuzz.Oracles;
using Simfeel.Fuzz.Running;
using Simfeel.Fuzz.Targets;

namespace Simfeel.Tests;

/// <summary>
/// A small share of the campaign that <c>tests/Simfeel.Fuzz</c> runs at length: mutated files and command lines through the program's own
/// readers. Nothing crashes, nothing hangs, whatever is refused has place and reason, and whatever is taken is right.
/// </summary>
public class FuzzTests
{
    private const int Inputs = 4000;

    private static readonly IReadOnlyList<Target> Targets = AllTargets.Make();

    public static TheoryData<string> Kinds => [.. Targets.Select(target => target.Name)];

    public static TheoryData<string, string> Cases
    {
        get
        {
            TheoryData<string, string> all = [];
            foreach (Target target in Targets)
            {
                foreach ((string name, _) in Corpus.Cases(target.Name)) all.Add(target.Name, name);
            }
            return all;
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Mutated_inputs_are_taken_rightly_or_refused_with_place_and_reason(string kind)
    {
        Target target = Targets.First(one => one.Name == kind);
        int count = Inputs * target.Weight / Targets.Sum(one => one.Weight);

        KindResult result = Campaign.Run(target, seed: 11, from: 0, count, failure => Assert.Fail(failure.What));

        Assert.True(result.Clean, string.Join('\n', result.Failures.Select(failure => $"{failure.Number}: {failure.What}")));
        Assert.Equal(count, result.Inputs);
        // generators that make only good or only bad inputs would prove nothing
        // (a table with a good sum over damaged content is a rare throw)
        Assert.InRange(result.Rejected, 1, kind == "rotor tables on disk" ? count : count - 1);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Inputs_that_once_broke_something_do_so_no_more(string kind, string name)
    {
        Target target = Targets.First(one => one.Name == kind);

        // throws where the oracle objects
        target.Try(Corpus.Cases(kind).First(one => one.Name == name).Input, new Dice(1));
    }

    [Theory]
    [InlineData("a_edits", "motor.mass_g=Infinity")]
    [InlineData("b_edits", "motor.mass_g=NaN")]
    [InlineData("pilot_roll_pitch_end_rate_rad_s", "0.5")]
    [InlineData("policy", "-inf")]
    [InlineData("a_rotors", "5")]
    [InlineData("pilot_step_rate_Hz", "1e308")]
    public void A_recording_with_a_bad_word_in_its_header_is_refused_by_name(string key, string word)
    {
        byte[] trace = TraceMaker.WithHeader(TraceMaker.Fly(false), words => words[key] = word);

        Target.Always = true;
        try
        {
            Assert.Equal(Verdict.Rejected, Targets.First(one => one.Name == "traces").Try(trace, new Dice(1)));
        }
        finally
        {
            Target.Always = false;
        }
    }
}
