using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace Simfeel.Studies.Fit.Estimation;

/// <summary>Where a fit ended.</summary>
/// <param name="X">Natural logarithms of the factors on the build's constants.</param>
/// <param name="Information">Inverse covariance of X from the table alone, with the scatter found.</param>
/// <param name="Residuals">(model - measured) / sigma, row by row.</param>
/// <param name="SumOfSquares">Of the residuals.</param>
/// <param name="DegreesOfFreedom">Observations less rows and constants.</param>
internal sealed record FitState(
    double[] X, Matrix<double> Information, IReadOnlyList<double[]> Residuals, double SumOfSquares, double DegreesOfFreedom)
{
    /// <summary>Standard deviations of X with the build's own numbers counted in.</summary>
    public Matrix<double> Covariance(IReadOnlyList<double> prior)
    {
        Matrix<double> all = Information.Clone();
        for (int j = 0; j < StandFactors.Count; j++) all[j, j] += 1 / (prior[j] * prior[j]);
        return all.Inverse();
    }
}

/// <summary>
/// Weighted least squares over all rows: Levenberg-Marquardt over the constants, the speeds of the rows solved inside
/// and projected out of the Jacobian (variable projection after Golub and Pereyra, SIAM J. Numer. Anal. 10, 1973, in
/// Kaufman's form, BIT 15, 1975; citations from memory). What the build says of a constant counts as one more measurement of it.
/// </summary>
internal sealed class FitProblem(StandModel model, IReadOnlyList<RowEquations> rows, IReadOnlyList<double> prior)
{
    private const double Step = 1e-4;

    /// <summary>Weight of the common scatter against a column's own, in degrees of freedom: few rows cannot tell columns apart.</summary>
    private const double CommonWeight = 10;

    private const int Rescalings = 5;

    private readonly int _observations = rows.Sum(row => row.Observations.Count);

    /// <summary>Factors on the standard deviation of each kind of observation, found from the scatter.</summary>
    public double[] Scale { get; } = [.. Enum.GetValues<Observed>().Select(_ => 1.0)];

    /// <summary>The rows.</summary>
    public IReadOnlyList<RowEquations> Rows => rows;

    /// <summary>The best constants; those that are not free stay the build's.</summary>
    /// <exception cref="NonConvergenceException">The rows contradict each other beyond what a fit can bridge.</exception>
    /// <exception cref="OptimizationException">Likewise.</exception>
    public FitState Solve(IReadOnlyList<int> free, double[] start)
    {
        double[] x = [.. start];
        if (free.Count > 0)
        {
            Vector<double> zero = Vector<double>.Build.Dense(_observations + free.Count);
            IObjectiveModel objective = ObjectiveFunction.NonlinearModel(
                (p, _) => Function(Full(p)), (p, _) => Jacobian(Full(p)), zero, zero);
            LevenbergMarquardtMinimizer minimizer = new(maximumIterations: 60);
            x = Full(minimizer.FindMinimum(objective, Vector<double>.Build.DenseOfEnumerable(free.Select(j => x[j]))).MinimizingPoint);
        }
        return State(x, free.Count);

        double[] Full(Vector<double> p)
        {
            double[] full = new double[StandFactors.Count];
            for (int n = 0; n < free.Count; n++) full[free[n]] = Math.Clamp(p[n], -1.2, 1.2);
            return full;
        }

        Vector<double> Function(double[] at)
        {
            double[] values = new double[_observations + free.Count];
            StandModel here = model.With(StandFactors.FromLogarithms(at));
            int k = 0;
            foreach (RowEquations row in rows)
            {
                row.Solve(here, Scale, values.AsSpan(k, row.Observations.Count));
                k += row.Observations.Count;
            }
            foreach (int j in free) values[k++] = at[j] / prior[j];
            return Vector<double>.Build.Dense(values);
        }

        Matrix<double> Jacobian(double[] at)
        {
            // a step that was refused may have left the rows' speeds elsewhere
            Function(at);
            Matrix<double> data = DataJacobian(at, free);
            Matrix<double> all = Matrix<double>.Build.Dense(_observations + free.Count, free.Count);
            all.SetSubMatrix(0, 0, data);
            for (int n = 0; n < free.Count; n++) all[_observations + n, n] = 1 / prior[free[n]];
            return all;
        }
    }

    /// <summary>
    /// Scales the standard deviation of each kind of observation to its scatter about a solution. Repeated, since a bad
    /// column first pulls the speeds of the rows with it and makes the good ones look bad.
    /// </summary>
    public void Rescale(FitState state)
    {
        for (int n = 0; n < Rescalings; n++)
        {
            RescaleOnce(state);
            state = State(state.X, 0);
        }
    }

    private void RescaleOnce(FitState state)
    {
        List<double>[] sizes = [.. Scale.Select(_ => new List<double>())];
        IReadOnlyList<double[]> residuals = Studentized(state);
        for (int r = 0; r < rows.Count; r++)
        {
            for (int k = 0; k < residuals[r].Length; k++)
            {
                int what = (int)rows[r].Observations[k].What;
                // in units of the first guess, so that the common scatter keeps its weight when this is repeated
                sizes[what].Add(Math.Abs(residuals[r][k]) * Scale[what]);
            }
        }
        // the median of all, so that one bad column does not spoil the others; its own, so that a slip does not spoil a column
        double common = Median([.. sizes.SelectMany(size => size)]);
        for (int what = 0; what < Scale.Length; what++)
        {
            if (sizes[what].Count == 0) continue;
            double most = 3 * Math.Max(Median(sizes[what]), 0.2);
            double sum = sizes[what].Sum(size => Math.Min(size, most) * Math.Min(size, most));
            double variance = (sum + (CommonWeight * common * common)) / (sizes[what].Count + CommonWeight);
            // a column may be five times as good or ten times as bad as assumed
            Scale[what] = Math.Clamp(Math.Sqrt(variance), 0.2, 10);
        }
    }

    /// <summary>Standard deviation by the median magnitude.</summary>
    private static double Median(List<double> sizes)
    {
        double[] sorted = [.. sizes.Order()];
        return 1.4826 * sorted[sorted.Length / 2];
    }

    /// <summary>
    /// Residuals over the standard deviation that they have left, since a row's own speed takes up a share of each.
    /// </summary>
    public IReadOnlyList<double[]> Studentized(FitState state)
    {
        StandModel here = model.With(StandFactors.FromLogarithms(state.X));
        return [.. rows.Select((row, r) =>
        {
            double[] direction = new double[row.Observations.Count];
            row.Direction(here, Scale, direction);
            return state.Residuals[r].Select((value, k) => value / Math.Sqrt(Math.Max(0.05, 1 - (direction[k] * direction[k])))).ToArray();
        })];
    }

    private FitState State(double[] x, int free)
    {
        List<double[]> residuals = [];
        StandModel here = model.With(StandFactors.FromLogarithms(x));
        double sum = 0;
        foreach (RowEquations row in rows)
        {
            double[] own = new double[row.Observations.Count];
            row.Solve(here, Scale, own);
            residuals.Add(own);
            sum += own.Sum(value => value * value);
        }
        double freedom = Math.Max(1, _observations - rows.Count - free);
        Matrix<double> jacobian = DataJacobian(x, [.. Enumerable.Range(0, StandFactors.Count)]);
        Matrix<double> information = jacobian.TransposeThisAndMultiply(jacobian) / Math.Max(0.04, sum / freedom);
        return new(x, information, residuals, sum, freedom);
    }

    /// <summary>Derivatives of all residuals by the logarithms of the factors, what the rows' own speeds take up left out.</summary>
    private Matrix<double> DataJacobian(double[] x, IReadOnlyList<int> free)
    {
        Matrix<double> jacobian = Matrix<double>.Build.Dense(_observations, free.Count);
        StandModel here = model.With(StandFactors.FromLogarithms(x));
        StandModel[] up = [.. free.Select(j => Shifted(j, Step))], down = [.. free.Select(j => Shifted(j, -Step))];
        int start = 0;
        foreach (RowEquations row in rows)
        {
            int count = row.Observations.Count;
            double[] direction = new double[count], above = new double[count], below = new double[count];
            row.Direction(here, Scale, direction);
            for (int n = 0; n < free.Count; n++)
            {
                row.AtSameSpeed(up[n], Scale, above);
                row.AtSameSpeed(down[n], Scale, below);
                double along = 0;
                for (int k = 0; k < count; k++)
                {
                    above[k] = (above[k] - below[k]) / (2 * Step);
                    along += above[k] * direction[k];
                }
                for (int k = 0; k < count; k++) jacobian[start + k, n] = above[k] - (along * direction[k]);
            }
            start += count;
        }
        return jacobian;

        StandModel Shifted(int j, double step)
        {
            double[] moved = [.. x];
            moved[j] += step;
            return model.With(StandFactors.FromLogarithms(moved));
        }
    }
}
