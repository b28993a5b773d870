namespace Simfeel.Studies.Blame;

/// <summary>Shapley values of a game given by the worth of every set of players.</summary>
public static class Shapley
{
    /// <summary>
    /// phi_n = sum over sets S without n of |S|! (N - |S| - 1)! / N! (v(S + n) - v(S)) (L. S. Shapley, A value for n-person games, 1953).
    /// A player who changes nothing in any set gets exactly 0; the values sum to v(all) - v(none).
    /// </summary>
    /// <param name="worth">Worth of every set; bit n of an index says that player n is in it; 2^N numbers.</param>
    /// <returns>One value for each player.</returns>
    /// <exception cref="ArgumentException">The number of sets is not a power of two.</exception>
    public static double[] Shares(IReadOnlyList<double> worth)
    {
        ArgumentNullException.ThrowIfNull(worth);
        int players = System.Numerics.BitOperations.Log2((uint)Math.Max(1, worth.Count));
        if (worth.Count != 1 << players) throw new ArgumentException($"{worth.Count} sets are not a power of two.", nameof(worth));
        double[] shares = new double[players];
        double[] weight = new double[players];
        for (int size = 0; size < players; size++) weight[size] = 1 / (players * Choose(players - 1, size));
        for (int n = 0; n < players; n++)
        {
            int bit = 1 << n;
            for (int set = 0; set < worth.Count; set++)
            {
                if ((set & bit) == 0)
                    shares[n] += weight[System.Numerics.BitOperations.PopCount((uint)set)] * (worth[set | bit] - worth[set]);
            }
        }
        return shares;
    }

    private static double Choose(int n, int k)
    {
        double ways = 1;
        for (int i = 1; i <= k; i++) ways = ways * (n - k + i) / i;
        return ways;
    }
}
