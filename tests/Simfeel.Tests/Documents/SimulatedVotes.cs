using Simfeel.Flight.Tuning;
using Simfeel.Studies.Blind;

namespace Simfeel.Tests.Documents;

/// <summary>The votes that come along to try <c>votes</c> with.</summary>
internal static class SimulatedVotes
{
    /// <summary>Where they lie in the tree.</summary>
    public const string File = "assets/blind/votes.csv";

    /// <summary>
    /// The votes of a simulated pilot: sessions of the real kind, the first trials seen, the others wrong. A control, all of whose
    /// flights are alike, is voted 1 in a triangle; in a pair nobody can tell it from a trial, so it is seen as well.
    /// </summary>
    public static void Write(string path)
    {
        DateTimeOffset day = new(2026, 5, 1, 19, 0, 0, TimeSpan.FromHours(2));
        Fly(path, BlindTest.Triangle, "Curlew", 45.6, trials: 12, controls: 3, seen: 12, day);
        Fly(path, BlindTest.Triangle, "Pipit", -2.6, trials: 12, controls: 3, seen: 4, day.AddDays(1));
        Fly(path, BlindTest.Triangle, "Redshank", 27.8, trials: 12, controls: 3, seen: 10, day.AddDays(2));
        Fly(path, BlindTest.Pair, "Sanderling", -28.3, trials: 16, controls: 4, seen: 15, day.AddDays(3));
    }

    private static void Fly(string path, BlindTest test, string other, double difference, int trials, int controls, int seen, DateTimeOffset day)
    {
        BlindSession session = new(test, trials, controls, seed: day.Day);
        VoteLog log = new(path);
        while (!session.IsOver)
        {
            int[] builds = [.. Enumerable.Range(1, test.Flights).Select(flight => session.Select(flight).TakeOff())];
            bool control = test == BlindTest.Triangle && builds.Distinct().Count() == 1;
            int answer = test == BlindTest.Pair ? 1 + Math.Abs(builds[0] - builds[1]) : 1 + Math.Max(0, Array.FindIndex(builds, build => builds.Count(b => b == build) == 1));
            bool sees = control || seen-- > 0;
            int choice = sees ? answer : 1 + (answer % test.Choices.Count);
            log.Append(session.Vote(choice), new("Wagtail", other, "stop_time", difference, TuningPolicy.Matched, 0, "0.1.0"), day.AddMinutes(3 * session.Voted));
        }
    }
}
