using MathNet.Numerics.Random;

namespace Simfeel.Studies.Blind;

/// <summary>
/// Draws the trials of a session. Orders come in balanced blocks, so that they are equally frequent as far as the number of trials
/// allows: six of a triangle (AAB, ABA, BAA, BBA, BAB, ABB), four of a pair (AA, BB, AB, BA). Any first part of a block is as balanced
/// as it can be in places of the odd flight (or same and different) and in builds. Then all trials are shuffled, controls among them.
/// </summary>
internal static class TrialPlan
{
    /// <summary>Draws trials.</summary>
    /// <param name="test">Their kind.</param>
    /// <param name="trials">Number of real ones.</param>
    /// <param name="controls">Number of controls: the same build in every flight, the answer that counts as right drawn by lot.</param>
    /// <param name="seed">Seed; without one every number comes from the system's cryptographic source.</param>
    public static SealedTrial[] Draw(BlindTest test, int trials, int controls, int? seed)
    {
        Random random = seed is int given ? new Xoshiro256StarStar(given) : new CryptoRandomSource();
        try
        {
            List<SealedTrial> plan = [];
            while (plan.Count < trials)
            {
                string[] block = test == BlindTest.Triangle ? TriangleBlock(random) : PairBlock(random);
                plan.AddRange(block.Take(trials - plan.Count).Select(order => new SealedTrial(order, false, test.RightChoice(order)!.Value)));
            }
            int first = random.Next(2);
            for (int n = 0; n < controls; n++)
                plan.Add(new(new string(Letter((first + n) % 2), test.Flights), true, 1 + random.Next(test.Choices.Count)));
            SealedTrial[] drawn = [.. plan];
            random.Shuffle(drawn);
            return drawn;
        }
        finally
        {
            (random as IDisposable)?.Dispose();
        }
    }

    private static string[] TriangleBlock(Random random)
    {
        int[] places = [0, 1, 2];
        random.Shuffle(places);
        int odd = random.Next(2);
        // places go round twice and builds alternate, so both turns together hold every order once
        return [.. Enumerable.Range(0, 6).Select(n => Odd(places[n % 3], (odd + n) % 2))];

        static string Odd(int place, int odd) => string.Create(3, (place, odd), (order, at) =>
        {
            order.Fill(Letter(1 - at.odd));
            order[at.place] = Letter(at.odd);
        });
    }

    private static string[] PairBlock(Random random)
    {
        int same = random.Next(2);
        int[] first = [random.Next(2), random.Next(2)];
        return [.. Enumerable.Range(0, 4).Select(n =>
        {
            int kind = (same + n) % 2, build = (first[kind] + (n / 2)) % 2;
            return string.Concat(Letter(build), Letter(kind == 0 ? build : 1 - build));
        })];
    }

    private static char Letter(int build) => (char)('A' + build);
}
