namespace Simfeel.Studies.Fit.Estimation;

/// <summary>
/// Whether the throttle of a table is the controller's duty. Both are fitted, with and without it; the throttle is taken
/// as duty where that does not make the rows disagree beyond an accuracy of 1 % in every column (F test).
/// </summary>
internal static class DutyTest
{
    private const double MostF = 3;

    /// <summary>The better problem and its solution.</summary>
    public static (FitProblem Problem, FitState State, bool Duty, string Words) Choose(
        StandModel model, RowEquationsFactory factory, IReadOnlyList<StandRow> rows, int[] all)
    {
        FitProblem plain = Problem(false);
        FitState without = plain.Solve(all, new double[StandFactors.Count]);
        int partial = rows.Count(row => row.Throttle is > 0.03 and < 0.995 && row.Voltage > 0);
        int full = rows.Count(row => row.Throttle >= 0.995);
        string ends = full == 0 ? "nothing gives the back-EMF" : full == 1 ? "only the row at full throttle gives the back-EMF" : $"only the {full} rows at full throttle give the back-EMF";
        if (rows.All(row => !(row.Voltage > 0)))
            return (plain, without, false, "without a voltage the throttle tells nothing of the motor");
        if (partial < 3)
            return (plain, without, false, $"there are too few rows at part throttle to ask whether throttle is duty; {ends}");
        FitProblem tied = Problem(true);
        FitState with = tied.Solve(all, without.X);
        double more = with.DegreesOfFreedom - without.DegreesOfFreedom;
        double spread = Math.Max(1, without.SumOfSquares / without.DegreesOfFreedom);
        double f = more > 0 ? (with.SumOfSquares - without.SumOfSquares) / more / spread : double.PositiveInfinity;
        return f < MostF
            ? (tied, with, true, $"the throttle behaves as the controller's duty in {partial + full} rows (F = {Math.Max(0, f):F1}, below {MostF:F0}), so it is used as such")
            : (plain, without, false, $"the throttle is not the controller's duty (F = {f:F0}, above {MostF:F0}), so part throttle is not used; {ends}");

        FitProblem Problem(bool duty) =>
            new(model, [.. rows.Select(row => factory.Make(row, duty)).OfType<RowEquations>()], FitConstants.Prior);
    }
}
