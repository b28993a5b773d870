using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Sweep;

/// <summary>The rows that no other row beats: at least as good in everything and better in something.</summary>
public static class ParetoFront
{
    /// <summary>
    /// For each row whether it stands on the front; rows without a number never do, equal rows stand there together. Up to three metrics
    /// take n log n for n rows, more of them n times the size of the front.
    /// </summary>
    /// <param name="rows">By row, then by metric.</param>
    /// <param name="senses">Which way each metric is better; not <see cref="Sense.Neither"/>.</param>
    public static bool[] Of(IReadOnlyList<double[]> rows, IReadOnlyList<Sense> senses)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(senses);
        bool[] front = new bool[rows.Count];
        double[][] costs = [.. rows.Select(row => row.Select((value, m) => senses[m] == Sense.Less ? value : -value).ToArray())];
        // the best in the first metric first: then a row can be beaten by an earlier one only
        int[] order = [.. Enumerable.Range(0, rows.Count).Where(n => !costs[n].Any(double.IsNaN))];
        Array.Sort(order, (a, b) => Compare(costs[a], costs[b]));
        Func<double[], bool> stands = senses.Count <= 3 ? new Staircase(order.Select(n => At(costs[n], 1))).Stands : new Crowd().Stands;
        for (int k = 0; k < order.Length; k++)
        {
            // equal rows lie side by side
            bool again = k > 0 && costs[order[k]].AsSpan().SequenceEqual(costs[order[k - 1]]);
            front[order[k]] = again ? front[order[k - 1]] : stands(costs[order[k]]);
        }
        return front;
    }

    private static double At(double[] costs, int m) => m < costs.Length ? costs[m] : 0;

    private static int Compare(double[] a, double[] b)
    {
        for (int m = 0; m < a.Length; m++)
        {
            int order = a[m].CompareTo(b[m]);
            if (order != 0) return order;
        }
        return 0;
    }

    /// <summary>
    /// Rows of at most three metrics in order of the first: the least third cost among all rows so far whose second is no larger, kept in a
    /// tree of prefixes (P. M. Fenwick, Software: Practice and Experience 24, 1994).
    /// </summary>
    private sealed class Staircase
    {
        private readonly double[] _second;
        private readonly double[] _least;
        private readonly bool[] _known;

        public Staircase(IEnumerable<double> second)
        {
            _second = [.. second.Distinct().Order()];
            _least = new double[_second.Length + 1];
            _known = new bool[_least.Length];
        }

        /// <summary>Whether no row so far beats this one, which differs from them all; it is one of them from now on.</summary>
        public bool Stands(double[] costs)
        {
            int place = Array.BinarySearch(_second, At(costs, 1)) + 1;
            double third = At(costs, 2);
            for (int n = place; n > 0; n -= n & -n)
            {
                if (_known[n] && _least[n] <= third) return false;
            }
            for (int n = place; n < _least.Length; n += n & -n)
            {
                _least[n] = _known[n] ? Math.Min(_least[n], third) : third;
                _known[n] = true;
            }
            return true;
        }
    }

    /// <summary>Rows of any number of metrics in order of the first, each asked against the front so far.</summary>
    private sealed class Crowd
    {
        private readonly List<double[]> _front = [];

        /// <inheritdoc cref="Staircase.Stands"/>
        public bool Stands(double[] costs)
        {
            foreach (double[] other in _front)
            {
                if (NoWorse(other, costs)) return false;
            }
            _front.Add(costs);
            return true;
        }

        private static bool NoWorse(double[] a, double[] b)
        {
            for (int m = 0; m < a.Length; m++)
            {
                if (a[m] > b[m]) return false;
            }
            return true;
        }
    }
}
