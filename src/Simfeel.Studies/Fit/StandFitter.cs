using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using Simfeel.Builds;
using Simfeel.Studies.Fit.Estimation;

namespace Simfeel.Studies.Fit;

/// <summary>
/// Fits propeller coefficients and motor constants to a stand table: thrust and torque factor on the blade-element
/// table, KV, winding resistance, losses, inductance. Torque limit, split of the losses between constant and growing with
/// speed, and resistance of the speed controller cannot be told apart from these and stay the build's.
/// </summary>
public static class StandFitter
{
    private const int LeastRows = 5;
    private const double OutlierSigma = 4;

    /// <summary>Fits a table.</summary>
    /// <param name="build">The build whose numbers the fit starts from, in the air of the test.</param>
    /// <param name="table">The table.</param>
    /// <exception cref="FitException">Too little of the table can be true, or the result is none that a build can have.</exception>
    public static StandFit Fit(AssembledBuild build, StandTable table)
    {
        ArgumentNullException.ThrowIfNull(build);
        ArgumentNullException.ThrowIfNull(table);
        try
        {
            return Fitted(build, table);
        }
        catch (Exception error) when (error is NonConvergenceException or OptimizationException)
        {
            throw new FitException(table.Source, null, $"The fit does not converge: the rows contradict each other ({error.Message}).", "check how the columns were read, or say it with --column");
        }
    }

    private static StandFit Fitted(AssembledBuild build, StandTable table)
    {
        StandModel model = new(build);
        (List<StandRow> rows, List<RefusedRow> refused, List<string> notes) = RowSelection.Run(table, model);
        RowEquationsFactory factory = new(model, table.Blocks, rows);
        int[] all = [.. Enumerable.Range(0, StandFactors.Count)];
        rows = [.. rows.Where(row => Tells(row, refused))];
        Enough(rows, refused, table);

        (FitProblem problem, FitState state, bool duty, string words) = DutyTest.Choose(model, factory, rows, all);
        for (int pass = 0; pass < 2; pass++)
        {
            problem.Rescale(state);
            List<RefusedRow> outliers = Outliers(problem, state);
            refused.AddRange(outliers);
            rows = [.. rows.Where(row => !outliers.Any(outlier => outlier.Line == row.Line))];
            Enough(rows, refused, table);
            if (outliers.Count > 0) problem = Again(problem);
            state = problem.Solve(all, state.X);
        }
        problem.Rescale(state);
        state = problem.Solve(all, state.X);

        Matrix<double> covariance = state.Covariance(FitConstants.Prior);
        double[] sigma = [.. all.Select(j => Math.Sqrt(covariance[j, j]))];
        // without rotor speed all constants hang on each other and on the motor's model
        bool turning = rows.Any(row => row.Speed > 0);
        int[] determined = [.. all.Where(j => turning && sigma[j] < FitConstants.Narrowing * FitConstants.Prior[j])];
        if (determined.Length == 0)
        {
            string reason = FitConstants.WhyNot(FitConstants.Thrust, rows, duty, sigma[FitConstants.Thrust]);
            string shown = string.Concat(notes.Select(note => $" {char.ToUpperInvariant(note[0])}{note[1..]}."));
            throw new FitException(table.Source, null, $"No constant of the build can be told from this table: {reason}.{shown}", "a fit needs rotor speed and thrust, better torque, voltage, current and throttle too");
        }
        state = problem.Solve(determined, [.. all.Select(j => determined.Contains(j) ? state.X[j] : 0)]);
        StandModel fitted = model.With(StandFactors.FromLogarithms(state.X));
        Build after = FitConstants.Apply(fitted, determined, table.Source);
        return new StandFit
        {
            Table = table,
            Before = build,
            After = after,
            Constants = [.. all.Select(j => Constant(j, model, after, sigma[j], determined.Contains(j), FitConstants.WhyNot(j, rows, duty, sigma[j])))],
            Residuals = Residuals(problem, fitted),
            Rows = rows,
            Refused = [.. refused.OrderBy(row => row.Line)],
            Throttle = words,
            ThrottleIsDuty = duty,
            Notes = notes,
        };

        bool Tells(StandRow row, List<RefusedRow> left)
        {
            if (factory.Make(row, true) is not null) return true;
            left.Add(new(row.Line, "holds too few quantities to tell anything"));
            return false;
        }

        FitProblem Again(FitProblem before)
        {
            FitProblem next = new(model, [.. rows.Select(row => factory.Make(row, duty)).OfType<RowEquations>()], FitConstants.Prior);
            before.Scale.CopyTo(next.Scale, 0);
            return next;
        }
    }

    private static void Enough(List<StandRow> rows, List<RefusedRow> refused, StandTable table)
    {
        if (rows.Count >= LeastRows) return;
        List<Diagnostic> reasons = [.. refused.OrderBy(row => row.Line).Take(20).Select(row => new Diagnostic(Severity.Error, table.Source, row.Line, null, "", "", row.Reason, ""))];
        string count = rows.Count == 0 ? "no row" : $"only {rows.Count} of the rows";
        string hint = table.Skipped.Count > 0 ? $"{table.Skipped[0]}; --block chooses one" : "check how the columns were read, or say it with --column";
        throw new FitException([.. reasons, new(Severity.Error, table.Source, null, null, "", "", $"A fit needs {LeastRows} rows at least, and {count} can be used.", hint)]);
    }

    /// <summary>
    /// Rows with a residual beyond four robust standard deviations (1.4826 times the median magnitude). The reading with the
    /// largest studentized residual is the one to blame (data snooping, as surveyors do it).
    /// </summary>
    private static List<RefusedRow> Outliers(FitProblem problem, FitState state)
    {
        IReadOnlyList<double[]> residuals = problem.Studentized(state);
        double[] sizes = [.. residuals.SelectMany(row => row).Select(Math.Abs).Order()];
        double robust = 1.4826 * sizes[sizes.Length / 2];
        List<RefusedRow> outliers = [];
        for (int r = 0; r < problem.Rows.Count; r++)
        {
            int worst = Enumerable.Range(0, residuals[r].Length).MaxBy(k => Math.Abs(residuals[r][k]));
            Observed what = problem.Rows[r].Observations[worst].What;
            // readings that were computed, not measured, scatter hardly at all: nothing is an outlier within 0.3 %
            double far = residuals[r][worst] / Math.Max(robust, 0.3 / problem.Scale[(int)what]);
            if (Math.Abs(far) > OutlierSigma)
                outliers.Add(new(problem.Rows[r].Row.Line, $"the {what.ToString().ToLowerInvariant()} lies {Math.Abs(far):F0} standard deviations {(far > 0 ? "below" : "above")} what the other rows say"));
        }
        return outliers;
    }

    private static FittedConstant Constant(int j, StandModel model, Build after, double sigma, bool determined, string whyNot)
    {
        string key = FitConstants.KeyOf(j, model);
        BuildValue before = model.Build.Values.First(value => value.Key == key);
        double value = determined ? after.Values.First(v => v.Key == key).Typical : before.Typical;
        return new(key, before.Unit, FitConstants.MeaningOf(j, model), before.Typical, value, sigma, determined, determined ? "" : whyNot);
    }

    private static List<ColumnResidual> Residuals(FitProblem problem, StandModel fitted)
    {
        double[] ones = [.. problem.Scale.Select(_ => 1.0)];
        Dictionary<Observed, List<double>> relative = [];
        foreach (RowEquations row in problem.Rows)
        {
            double[] off = new double[row.Observations.Count];
            row.AtSameSpeed(fitted, ones, off);
            for (int k = 0; k < off.Length; k++)
            {
                (Observed what, double value, double sigma) = row.Observations[k];
                double fit = value + (off[k] * sigma);
                if (!relative.TryGetValue(what, out List<double>? list)) relative[what] = list = [];
                list.Add((value - fit) / fit);
            }
        }
        return [.. relative.OrderBy(pair => pair.Key).Select(pair => new ColumnResidual(
            pair.Key.ToString().ToLowerInvariant(), pair.Value.Count, 100 * Math.Sqrt(pair.Value.Average(x => x * x))))];
    }
}
