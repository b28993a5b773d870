using Simfeel.Studies.Blind;

namespace Simfeel.Studies.Tests.Blind;

public class SessionTests
{
    private static readonly string[] TriangleOrders = ["AAB", "ABA", "BAA", "BBA", "BAB", "ABB"];
    private static readonly string[] PairOrders = ["AA", "BB", "AB", "BA"];

    public static TheoryData<string> Kinds => [.. BlindTest.All.Select(test => test.Word)];

    /// <summary>Every number of trials: orders as equal as they can be, and so are places of the odd flight, same and different, and builds.</summary>
    [Theory]
    [InlineData("triangle")]
    [InlineData("pair")]
    public void Orders_are_balanced(string kind)
    {
        BlindTest test = BlindTest.Parse(kind)!;
        string[] orders = test == BlindTest.Triangle ? TriangleOrders : PairOrders;
        for (int trials = 1; trials <= 25; trials++)
        {
            RevealedTrial[] real = [.. Flown(new(test, trials, 5, seed: trials)).Where(trial => !trial.Control)];
            Assert.Equal(trials, real.Length);
            Assert.All(real, trial => Assert.Contains(trial.Order, orders));
            Even([.. orders.Select(order => real.Count(trial => trial.Order == order))]);
            Even([.. Enumerable.Range(1, test.Choices.Count).Select(right => real.Count(trial => test.RightChoice(trial.Order) == right))]);
            if (test == BlindTest.Triangle) Even([.. "AB".Select(odd => real.Count(trial => trial.Order.Count(build => build == odd) == 1))]);
        }

        static void Even(int[] counts) => Assert.InRange(counts.Max() - counts.Min(), 0, 1);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Controls_fly_one_build_and_lie_anywhere(string kind)
    {
        BlindTest test = BlindTest.Parse(kind)!;
        HashSet<int> places = [];
        for (int seed = 0; seed < 200; seed++)
        {
            RevealedTrial[] controls = [.. Flown(new(test, 6, 2, seed)).Where(trial => trial.Control)];
            Assert.Equal(2, controls.Length);
            Assert.All(controls, control => Assert.Single(control.Order.Distinct()));
            // one of either build
            Assert.NotEqual(controls[0].Order, controls[1].Order);
            foreach (RevealedTrial control in controls) places.Add(control.Trial);
        }
        Assert.Equal(8, places.Count);
    }

    [Fact]
    public void A_seed_fixes_the_order_and_none_does_not()
    {
        string a = Orders(new(BlindTest.Triangle, 60, 10, 7)), b = Orders(new(BlindTest.Triangle, 60, 10, 7));
        Assert.Equal(a, b);
        Assert.NotEqual(a, Orders(new(BlindTest.Triangle, 60, 10, 8)));
        Assert.NotEqual(Orders(new(BlindTest.Triangle, 60, 10)), Orders(new(BlindTest.Triangle, 60, 10)));

        static string Orders(BlindSession session) => string.Join(' ', Flown(session).Select(trial => trial.Order));
    }

    [Fact]
    public void A_flight_is_the_same_craft_however_often_it_is_flown()
    {
        BlindSession session = new(BlindTest.Triangle, 12, 3, 1);
        List<string> flown = [];
        while (!session.IsOver)
        {
            int trial = session.Voted + 1;
            string first = FlyAll(session);
            Assert.Equal(first, FlyAll(session));
            Assert.Equal("" + first[1], "" + (char)('A' + session.Select(2).TakeOff()));
            Assert.Equal(trial, session.Current!.Trial);
            flown.Add(first);
            session.Vote(1);
        }
        Assert.Equal(flown, session.Reveal().Select(trial => trial.Order));
    }

    [Fact]
    public void A_vote_needs_all_flights_and_a_choice()
    {
        BlindSession session = new(BlindTest.Triangle, 2, 0, 1);
        BlindFlight first = session.Current!;
        Assert.Equal((1, 1, "trial 1, flight 1"), (first.Trial, first.Flight, first.ToString()));
        first.TakeOff();
        session.Select(3).TakeOff();
        Assert.False(session.CanVote);
        Assert.Contains("all 3 flights of trial 1", Assert.Throws<InvalidOperationException>(() => session.Vote(1)).Message, StringComparison.Ordinal);
        session.Select(2).TakeOff();
        Assert.Throws<ArgumentOutOfRangeException>(() => session.Vote(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => session.Vote(4));
        Assert.Throws<ArgumentOutOfRangeException>(() => session.Select(4));
        Assert.Throws<InvalidOperationException>(session.Reveal);
        Assert.Equal(0, session.Voted);
        CastVote vote = session.Vote(3);
        Assert.Equal((1, "3"), (vote.Trial, vote.Answer));
        // a handle that was kept takes off no more
        Assert.Throws<InvalidOperationException>(() => first.TakeOff());
        Assert.Equal((2, 1), (session.Current!.Trial, session.Current.Flight));
    }

    [Fact]
    public void Abandoning_reveals_what_was_voted_and_nothing_else()
    {
        BlindSession session = new(BlindTest.Pair, 6, 2, 5);
        FlyAll(session);
        session.Vote(1);
        FlyAll(session);
        session.Vote(2);
        BlindFlight kept = session.Current!;
        Assert.Equal([1, 2], session.Abandon().Select(trial => trial.Trial));
        Assert.True(session.IsOver);
        Assert.Null(session.Current);
        Assert.Equal(session.Reveal(), session.Abandon());
        Assert.Throws<InvalidOperationException>(() => kept.TakeOff());
        Assert.Throws<InvalidOperationException>(() => session.Vote(1));
        Assert.Throws<InvalidOperationException>(session.Next);
        Assert.Empty(new BlindSession(BlindTest.Pair, 6, 2, 5).Abandon());
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(1001, 0)]
    [InlineData(5, -1)]
    [InlineData(5, 1001)]
    public void Numbers_of_trials_out_of_range_are_refused(int trials, int controls) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new BlindSession(BlindTest.Pair, trials, controls));

    /// <summary>Flies the trial from the current flight on and gives its builds.</summary>
    internal static string FlyAll(BlindSession session)
    {
        string order = "";
        session.Select(1);
        for (int n = 0; n < session.Test.Flights; n++, session.Next()) order += (char)('A' + session.Current!.TakeOff());
        return order;
    }

    /// <summary>A session flown to its end with any votes.</summary>
    private static IReadOnlyList<RevealedTrial> Flown(BlindSession session)
    {
        while (!session.IsOver)
        {
            FlyAll(session);
            session.Vote(1);
        }
        return session.Reveal();
    }
}
