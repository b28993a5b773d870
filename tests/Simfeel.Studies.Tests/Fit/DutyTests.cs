using Simfeel.Studies.Fit;
using Simfeel.Studies.Fit.Estimation;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>Whether throttle is taken as duty, and why; rows of the model itself, eight at part throttle and some at full.</summary>
public class DutyTests
{
    private static readonly StandModel Wagtail = new(SyntheticStand.Starter("wagtail"));

    [Fact]
    public void Throttle_that_is_duty_is_taken_as_such()
    {
        (FitProblem problem, FitState state, bool duty, string words) = Choose([.. Sweep(throttle => throttle), At(1, 1)]);
        Assert.True(duty);
        Assert.Equal("the throttle behaves as the controller's duty in 9 rows (F = 0.0, below 3), so it is used as such", words);
        Assert.All(problem.Rows, row => Assert.True(row.ThrottleIsDuty));
        // five observations in each of nine rows, less nine speeds and six constants
        Assert.Equal(30, state.DegreesOfFreedom);
        Assert.All(state.X, x => Assert.Equal(0, x, 0.001));
        Assert.Equal(state.SumOfSquares, state.Residuals.Sum(row => row.Sum(r => r * r)), 1e-9);
    }

    [Theory]
    [InlineData(0, "nothing gives the back-EMF")]
    [InlineData(1, "only the row at full throttle gives the back-EMF")]
    [InlineData(2, "only the 2 rows at full throttle give the back-EMF")]
    public void Throttle_that_is_bent_is_not(int full, string ends)
    {
        (FitProblem problem, FitState state, bool duty, string words) = Choose([.. Sweep(throttle => Math.Pow(throttle, 1.6)), .. Enumerable.Repeat(At(1, 1), full)]);
        Assert.False(duty);
        Assert.Matches($"^the throttle is not the controller's duty \\(F = [0-9]+, above 3\\), so part throttle is not used; {ends}$", words);
        Assert.Equal(full, problem.Rows.Count(row => row.ThrottleIsDuty));
        // four observations at part throttle (power for voltage and current), five at full
        Assert.Equal(Math.Max(1, (8 * 3) + (4 * full) - 6), state.DegreesOfFreedom);
    }

    /// <summary>
    /// The F test of nested models (any textbook of regression): what the sum of squares grows by for each equation more, over the scatter that is
    /// left without them, of 1 % at least.
    /// </summary>
    [Theory]
    [InlineData(0.025)]
    [InlineData(0.05)]
    public void The_test_is_the_f_test_of_nested_models(double volts)
    {
        StandRow[] rows = [.. Sweep(throttle => throttle), At(1, 1)];
        for (int n = 0; n < rows.Length; n++)
            rows[n] = rows[n] with { Voltage = rows[n].Voltage * (1 + (n % 2 == 0 ? volts : -volts)), Current = rows[n].Current / (1 + (n % 2 == 0 ? volts : -volts)), Thrust = rows[n].Thrust * (1 + (n % 3 == 0 ? 0.04 : -0.02)) };
        FitState with = Solved(rows, true), without = Solved(rows, false);
        double f = (with.SumOfSquares - without.SumOfSquares) / (with.DegreesOfFreedom - without.DegreesOfFreedom) / Math.Max(1, without.SumOfSquares / without.DegreesOfFreedom);
        (_, _, bool duty, string words) = Choose(rows);
        Assert.Equal(f < 3, duty);
        Assert.Contains(duty ? $"(F = {f:F1}, below 3)" : $"(F = {f:F0}, above 3)", words, StringComparison.Ordinal);
        Assert.True(without.SumOfSquares / without.DegreesOfFreedom > 1.5 && f > 0.3);
    }

    [Fact]
    public void Too_few_rows_at_part_throttle_are_not_asked()
    {
        StandRow[] full = [At(1, 1), At(0.995, 1), At(1, 1)];
        Assert.Equal((false, "there are too few rows at part throttle to ask whether throttle is duty; only the 3 rows at full throttle give the back-EMF"), Told([At(0.5, 0.5), At(0.7, 0.7), .. full]));
        // 3 % and 99.5 % are no part throttle
        Assert.StartsWith("there are too few", Told([At(0.5, 0.5), At(0.7, 0.7), At(0.03, 0.03), .. full]).Words, StringComparison.Ordinal);
        Assert.StartsWith("the throttle behaves", Told([At(0.5, 0.5), At(0.7, 0.7), At(0.6, 0.6), .. full]).Words, StringComparison.Ordinal);
        // nor are rows without a voltage
        StandRow dark = At(0.6, 0.6) with { Voltage = double.NaN, Current = double.NaN };
        Assert.StartsWith("there are too few", Told([At(0.5, 0.5), At(0.7, 0.7), dark, .. full]).Words, StringComparison.Ordinal);
        Assert.Equal((false, "without a voltage the throttle tells nothing of the motor"), Told([dark, dark, dark, dark, dark]));

        static (bool Duty, string Words) Told(StandRow[] rows)
        {
            (_, _, bool duty, string words) = Choose(rows);
            return (duty, words);
        }
    }

    /// <summary>
    /// Rows without error leave no residual, and what the table says of each constant is the inverse of its covariance: the build's own
    /// number counts as one more measurement, so that the deviation never exceeds the prior's.
    /// </summary>
    [Fact]
    public void A_prior_counts_as_a_measurement()
    {
        (_, FitState state, _, _) = Choose([.. Sweep(throttle => throttle), At(1, 1)]);
        double[] with = Deviations(state, [.. FitConstants.Prior]), wide = Deviations(state, [.. FitConstants.Prior.Select(p => 100 * p)]);
        for (int n = 0; n < 6; n++)
        {
            Assert.InRange(with[n], 0, FitConstants.Prior[n]);
            Assert.True(with[n] < wide[n]);
        }
        // without any information of the table the deviation is the prior's
        FitState blind = state with { Information = state.Information * 0 };
        Assert.All(Deviations(blind, [.. FitConstants.Prior]).Zip(FitConstants.Prior), pair => Assert.Equal(pair.Second, pair.First, 1e-12));

        static double[] Deviations(FitState state, double[] prior)
        {
            MathNet.Numerics.LinearAlgebra.Matrix<double> covariance = state.Covariance(prior);
            return [.. Enumerable.Range(0, 6).Select(n => Math.Sqrt(covariance[n, n]))];
        }
    }

    /// <summary>
    /// One column three times as bad as assumed, the others five times as good: the scales say so, within what 16 rows tell, and no more than
    /// to a fifth or ten times.
    /// </summary>
    [Fact]
    public void Scales_follow_the_scatter_of_each_column()
    {
        StandRow[] rows = [.. Enumerable.Range(0, 16).Select(n => At(0.3 + (0.04 * n), 0.3 + (0.04 * n))), At(1, 1)];
        // thrust off by 5 % to and fro
        for (int n = 0; n < rows.Length; n++) rows[n] = rows[n] with { Thrust = rows[n].Thrust * (1 + (n % 2 == 0 ? 0.05 : -0.05)) };
        (FitProblem problem, FitState state, _, _) = Choose(rows);
        problem.Rescale(state);
        Assert.InRange(problem.Scale[(int)Observed.Thrust], 3.5, 5.5);
        Assert.Equal(0.2, problem.Scale[(int)Observed.Voltage], 0.1);
        Assert.Equal(0.2, problem.Scale[(int)Observed.Current], 0.1);
        // no such column
        Assert.Equal(1, problem.Scale[(int)Observed.Power]);
    }

    private static FitState Solved(StandRow[] rows, bool duty)
    {
        RowEquationsFactory factory = new(Wagtail, [new(1, "", 1, [], [], [], [])], rows);
        return new FitProblem(Wagtail, [.. rows.Select(row => factory.Make(row, duty)!)], FitConstants.Prior).Solve([0, 1, 2, 3, 4, 5], new double[6]);
    }

    private static StandRow[] Sweep(Func<double, double> dutyOf) =>
        [.. Enumerable.Range(0, 8).Select(n => 0.2 + (0.1 * n)).Select(throttle => At(throttle, dutyOf(throttle)))];

    /// <summary>What the model's own stand shows at a duty with a pack that sags by 1 V.</summary>
    private static StandRow At(double throttle, double duty)
    {
        double volts = 25 - duty, speed = Wagtail.SpeedAt(duty * volts);
        (double thrust, double torque) = Wagtail.Air(speed);
        double power = Wagtail.Power(Wagtail.CurrentFor(torque, speed), speed);
        return new() { Line = 1, Throttle = throttle, Speed = speed, Thrust = thrust, Torque = torque, Voltage = volts, Current = power / volts };
    }

    private static (FitProblem Problem, FitState State, bool Duty, string Words) Choose(StandRow[] rows) =>
        DutyTest.Choose(Wagtail, new(Wagtail, [new(1, "", 1, [], [], [], [])], rows), rows, [0, 1, 2, 3, 4, 5]);
}
