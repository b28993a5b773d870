using System.Reflection;
using System.Text.Json;
using Simfeel.Studies.Blind;

namespace Simfeel.Studies.Tests.Blind;

/// <summary>
/// Sessions that differ in nothing but their drawn order must look the same from outside to the last letter, until they are revealed. That
/// covers every way in which an order could be told, also ones that nobody thought of.
/// </summary>
public class SecrecyTests
{
    private const int Seeds = 20;

    private static readonly JsonSerializerOptions WithFields = new() { IncludeFields = true };

    [Theory]
    [InlineData("triangle", Eyes.Public)]
    [InlineData("triangle", Eyes.Debugger)]
    [InlineData("pair", Eyes.Public)]
    [InlineData("pair", Eyes.Debugger)]
    public void Nothing_that_can_be_seen_tells_the_order(string kind, Eyes eyes)
    {
        string[] views = [.. Enumerable.Range(0, Seeds).Select(seed => View(BlindTest.Parse(kind)!, seed, eyes))];
        Assert.All(views, view => Assert.Equal(views[0], view));
    }

    /// <summary>The truth's own type shows nothing either, should anything ever lead to it.</summary>
    [Theory]
    [InlineData(Eyes.Public)]
    [InlineData(Eyes.Debugger)]
    public void A_sealed_trial_shows_nothing(Eyes eyes)
    {
        string[] views =
        [
            .. from order in (string[])["AAB", "ABA", "BBA", "AAA"] from control in (bool[])[false, true] from right in (int[])[1, 2, 3]
               select new SealedTrial(order, control, right) into trial
               select VisibleState.Of(trial, eyes) + JsonSerializer.Serialize(trial, WithFields),
        ];
        Assert.Single(views.Distinct());
    }

    /// <summary>The check above can fail: with eyes for every private field no two sessions look alike.</summary>
    [Theory]
    [InlineData("triangle")]
    [InlineData("pair")]
    public void The_walk_finds_what_is_not_hidden(string kind)
    {
        string[] views = [.. Enumerable.Range(0, Seeds).Select(seed => View(BlindTest.Parse(kind)!, seed, Eyes.Everything))];
        Assert.Equal(Seeds, views.Distinct().Count());
        Assert.Contains("ABA", VisibleState.Of(new RevealedTrial(1, false, "ABA", "2", true), Eyes.Public), StringComparison.Ordinal);
    }

    /// <summary>The public members are those that the check above goes through, and the take-off and the reveal, which may tell. A new one must be thought about.</summary>
    [Fact]
    public void Public_methods_are_few_and_known()
    {
        Assert.Equal(["Abandon", "Next", "Reveal", "Select", "ToString", "Vote"], Methods(typeof(BlindSession)));
        Assert.Equal(["TakeOff", "ToString"], Methods(typeof(BlindFlight)));
        Assert.Equal(["ToString"], Methods(typeof(CastVote)));
        Assert.All((Type[])[typeof(BlindSession), typeof(BlindFlight), typeof(CastVote), typeof(SealedTrial)], type => Assert.True(type.IsSealed));
        Assert.False(typeof(SealedTrial).IsPublic);

        static IEnumerable<string> Methods(Type type) => type
            .GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
            .Where(method => !method.IsSpecialName).Select(method => method.Name).Order();
    }

    /// <summary>All that a session shows on the way through its first five trials, every vote the same, errors included.</summary>
    private static string View(BlindTest test, int seed, Eyes eyes)
    {
        BlindSession session = new(test, 8, 3, seed);
        List<string> seen = [];
        Look(session);
        for (int trial = 0; trial < 5; trial++)
        {
            for (int flight = 1; flight <= test.Flights; flight++)
            {
                BlindFlight handle = session.Select(flight);
                Look(handle);
                handle.TakeOff();
                Look(handle);
                Look(session);
            }
            Look(session.Vote(1));
            Look(session);
        }
        return string.Join('\n', seen);

        void Look(object shown)
        {
            seen.Add(shown.ToString()!);
            seen.Add(VisibleState.Of(shown, eyes));
            seen.Add(JsonSerializer.Serialize(shown));
            seen.Add(JsonSerializer.Serialize(shown, WithFields));
            foreach (Action error in (Action[])[() => session.Reveal(), () => session.Vote(0), () => session.Vote(9), () => session.Select(0), () => session.Select(9)])
            {
                Exception thrown = Assert.ThrowsAny<Exception>(error);
                // not its stack: that depends on what the just-in-time compiler has inlined by then
                seen.Add($"{thrown.GetType()}: {thrown.Message} {thrown.InnerException}");
                seen.Add(string.Join(',', thrown.Data.Keys.Cast<object>()));
            }
        }
    }
}
