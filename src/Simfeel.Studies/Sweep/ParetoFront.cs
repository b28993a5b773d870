using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Sweep;

/// <summary>The rows that no other row beats: at least as good in everything and better in something.</summary>
public static class ParetoFront
{
    /// <summary>For each row whether it stands on the front; rows without a number never do, equal rows stand there together.</summary>
    /// <param name="rows">By row, then by metric.</param>
    /// <param name="senses">Which way each metric is better; not <see cref="Sense.Neither"/>.</param>
    public static bool[] Of(IReadOnlyList<double[]> rows, IReadOnlyList<Sense> senses)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(senses);
        bool[] front = new bool[rows.Count];
        double[][] costs = [.. rows.Select(row => row.Select((value, m) => senses[m] == Sense.Less ? value : -value).ToArray())];
        // the best in the first metric first: then a row can be beaten by an earlier one only, and the front so far is all to ask
        int[] order = [.. Enumerable.Range(0, rows.Count).Where(n => !costs[n].Any(double.IsNaN)).Order(Comparer<int>.Create((a, b) => Compare(costs[a], costs[b])))];
        List<double[]> found = [];
        foreach (int n in order)
        {
            if (found.Any(other => Beats(other, costs[n]))) continue;
            front[n] = true;
            if (found.Count == 0 || !found[^1].AsSpan().SequenceEqual(costs[n])) found.Add(costs[n]);
        }
        return front;
    }

    private static bool Beats(double[] a, double[] b)
    {
        bool better = false;
        for (int m = 0; m < a.Length; m++)
        {
            if (a[m] > b[m]) return false;
            better |= a[m] < b[m];
        }
        return better;
    }

    private static int Compare(double[] a, double[] b)
    {
        for (int m = 0; m < a.Length; m++)
        {
            int order = a[m].CompareTo(b[m]);
            if (order != 0) return order;
        }
        return 0;
    }
}
