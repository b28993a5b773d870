using Simfeel.Physics.Maths;
using Simfeel.Studies.Fit;
using Simfeel.Studies.Fit.Estimation;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>One row as equations: weighted means, standard deviations and starting speeds by hand.</summary>
public class RowEquationTests
{
    private const double None = double.NaN;

    private static readonly StandModel Wagtail = new(SyntheticStand.Starter("wagtail"));

    private static readonly double[] Ones = [1, 1, 1, 1, 1, 1];

    /// <summary>Two readings of one number: the mean weighed by 1 / sigma^2 (any textbook), here 1002 with residuals of 0.2 and -0.4 sigma.</summary>
    [Theory]
    [InlineData(1000)]
    [InlineData(300)]
    [InlineData(20_000)]
    [InlineData(0.01)]
    public void The_speed_of_a_row_is_the_weighted_mean(double first)
    {
        RowEquations row = new(new() { Line = 1 }, false, [new(Observed.Speed, 1000, 10), new(Observed.Speed, 1010, 20)], first);
        double[] residuals = new double[2];
        row.Solve(Wagtail, Ones, residuals);
        Assert.Equal(0.2, residuals[0], 1e-6);
        Assert.Equal(-0.4, residuals[1], 1e-6);
        // slopes are as 1/10 and 1/20: the unit vector is (2, 1) / sqrt(5)
        double[] direction = new double[2];
        row.Direction(Wagtail, Ones, direction);
        Assert.Equal(2 / Math.Sqrt(5), direction[0], 1e-6);
        Assert.Equal(1 / Math.Sqrt(5), direction[1], 1e-6);
        // twice the sigma of all speeds halves what is left
        row.Solve(Wagtail, [2, 1, 1, 1, 1, 1], residuals);
        Assert.Equal(0.1, residuals[0], 1e-6);
    }

    /// <summary>With the speed held, every other quantity is that of the model there.</summary>
    [Fact]
    public void Predictions_are_the_models()
    {
        const double speed = 2500;
        (double thrust, double torque) = Wagtail.Air(speed);
        double current = Wagtail.CurrentFor(torque, speed), power = Wagtail.Power(current, speed), volts = Wagtail.BridgeVoltage(current, speed) / 0.8;
        Observation[] seen =
        [
            new(Observed.Speed, speed, 1e-6), new(Observed.Thrust, thrust - 0.3, 0.1), new(Observed.Torque, torque + 0.02, 0.01), new(Observed.Voltage, volts - 2, 1),
            new(Observed.Current, (power / volts) - 8, 4), new(Observed.Power, power + 50, 10),
        ];
        RowEquations row = new(new() { Line = 1, Throttle = 0.8 }, true, seen, speed);
        double[] residuals = new double[6];
        row.Solve(Wagtail, Ones, residuals);
        Assert.Equal([3, -2, 2, 2, -5], residuals[1..], (a, b) => Math.Abs(a - b) < 1e-3);
        // another model at the same speed: a tenth more thrust
        row.AtSameSpeed(Wagtail.With(StandFactors.None with { Thrust = 1.1 }), Ones, residuals);
        Assert.Equal(3 + thrust, residuals[1], 1e-3);
        Assert.Equal(-2, residuals[2], 1e-3);
        // each kind has a scale of its own
        row.AtSameSpeed(Wagtail, [1, 2, 4, 1, 1, 1], residuals);
        Assert.Equal([1.5, -0.5, 2], residuals[1..4], (a, b) => Math.Abs(a - b) < 1e-3);
    }

    /// <summary>Without the throttle as duty there is no voltage; without a propeller no thrust, whatever the speed.</summary>
    [Fact]
    public void What_does_not_change_with_speed_tells_nothing_of_it()
    {
        RowEquations bare = new(new() { Line = 1, NoPropeller = true }, false, [new(Observed.Thrust, 3, 1.5)], 1000);
        double[] one = [9];
        bare.Direction(Wagtail, Ones, one);
        Assert.Equal(0, one[0]);
        bare.Solve(Wagtail, Ones, one);
        Assert.Equal(-2, one[0]);
        RowEquations loose = new(new() { Line = 1, Throttle = 0.8 }, false, [new(Observed.Voltage, 20, 1)], 1000);
        loose.AtSameSpeed(Wagtail, Ones, one);
        Assert.True(double.IsNaN(one[0]));
    }

    /// <summary>
    /// One percent of the reading, a step over sqrt(12), and a thousandth of the table's largest reading, added as squares: for 10 N of 20 in
    /// steps of 0.1 sqrt(0.1^2 + 0.1^2 / 12 + 0.02^2). Voltage and current have 3 parts in 10 000 of the largest, speed one.
    /// </summary>
    [Fact]
    public void Readings_have_standard_deviations()
    {
        StandRow row = Row(0.5, 10, 0.1, 20, 8, None, 2000), strong = Row(1, 20, 0.2, 25, 30, None, 3000);
        RowEquations equations = Factory(row, strong).Make(row, true)!;
        Assert.Equal([Observed.Speed, Observed.Thrust, Observed.Torque, Observed.Voltage, Observed.Current], equations.Observations.Select(o => o.What));
        Assert.Equal([2000, 10, 0.1, 20, 8], equations.Observations.Select(o => o.Value));
        double[] sigma = [.. equations.Observations.Select(o => o.Sigma)];
        Assert.Equal(Math.Sqrt(400 + (4 / 12.0) + 0.09), sigma[0], 1e-9);
        Assert.Equal(Math.Sqrt(0.01 + (0.01 / 12) + 0.0004), sigma[1], 1e-12);
        Assert.Equal(Math.Sqrt(1e-6 + 4e-8), sigma[2], 1e-12);
        Assert.Equal(Math.Sqrt(0.04 + (1e-4 / 12) + (0.0075 * 0.0075)), sigma[3], 1e-12);
        Assert.Equal(Math.Sqrt(0.0064 + (0.01 / 12) + (0.009 * 0.009)), sigma[4], 1e-12);
        Assert.True(equations.ThrottleIsDuty);
        Assert.Equal(0.5, equations.Row.Throttle);
    }

    /// <summary>Without duty only the balance of power is left: the product's relative error is sqrt(2) percent, its step voltage times the current's.</summary>
    [Fact]
    public void Without_duty_the_power_counts()
    {
        StandRow row = Row(0.5, 10, None, 20, 8, 170, 2000), strong = Row(1, 20, None, 25, 30, 700, 3000);
        RowEquations equations = Factory(row, strong).Make(row, false)!;
        Assert.Equal([Observed.Speed, Observed.Thrust, Observed.Power], equations.Observations.Select(o => o.What));
        Assert.Equal(160, equations.Observations[2].Value);
        Assert.Equal(Math.Sqrt((2 * 1.6 * 1.6) + (4.0 / 12) + (0.225 * 0.225)), equations.Observations[2].Sigma, 1e-9);
        Assert.False(equations.ThrottleIsDuty);
        // a column of power where there is no product
        StandRow watts = Row(0.5, 10, None, None, None, 170, 2000);
        RowEquations told = Factory(watts, strong).Make(watts, true)!;
        Assert.Equal((Observed.Power, 170), (told.Observations[2].What, told.Observations[2].Value));
        Assert.Equal(Math.Sqrt((1.7 * 1.7) + (0.21 * 0.21)), told.Observations[2].Sigma, 1e-9);
        Assert.Equal([Observed.Speed, Observed.Thrust], Factory(watts).Make(watts with { ElectricalPower = 0 }, true)!.Observations.Select(o => o.What));
    }

    /// <summary>At full throttle any controller gives full duty, from 99.5 % on; at part throttle from 3 % on where it is said to be duty.</summary>
    [Theory]
    [InlineData(1, false, true, 1)]
    [InlineData(0.995, false, true, 1)]
    [InlineData(0.994, false, false, 0.994)]
    [InlineData(0.994, true, true, 0.994)]
    [InlineData(0.03, true, true, 0.03)]
    [InlineData(0.029, true, false, 0.029)]
    [InlineData(1.01, true, true, 1)]
    public void Full_throttle_is_full_duty(double throttle, bool said, bool duty, double taken)
    {
        StandRow row = Row(throttle, 10, None, 20, 8, None, 2000);
        RowEquations equations = Factory(row).Make(row, said)!;
        Assert.Equal(duty, equations.ThrottleIsDuty);
        Assert.Equal(taken, equations.Row.Throttle);
        Assert.Equal(duty, equations.Observations.Any(o => o.What == Observed.Current));
        Assert.Equal(!duty, equations.Observations.Any(o => o.What == Observed.Power));
        RowEquations dead = Factory(row).Make(row with { Voltage = 0 }, said)!;
        Assert.False(dead.ThrottleIsDuty);
        Assert.DoesNotContain(Factory(row).Make(row with { Current = 0 }, said)!.Observations, o => o.What is Observed.Current or Observed.Power);
    }

    [Fact]
    public void Rows_that_tell_one_thing_only_tell_nothing()
    {
        StandRow row = Row(0.5, None, None, None, None, None, 2000);
        Assert.Null(Factory(row).Make(row, true));
        Assert.NotNull(Factory(row).Make(row with { Thrust = 5 }, true));
        // without its propeller thrust and torque are none of the motor's
        Assert.Null(Factory(row).Make(row with { Thrust = 0, Torque = 0, NoPropeller = true }, true));
        Assert.Equal([Observed.Speed, Observed.Power], Factory(row).Make(row with { Thrust = 0, NoPropeller = true, ElectricalPower = 20 }, true)!.Observations.Select(o => o.What));
    }

    [Theory]
    [InlineData(1, None, None, true)]
    [InlineData(0, 5, 5, false)]
    [InlineData(None, 5, None, true)]
    [InlineData(None, None, 5, true)]
    [InlineData(None, 0, 0, false)]
    [InlineData(None, None, None, false)]
    public void A_row_is_useful_where_the_rotor_turns(double speed, double thrust, double current, bool useful) =>
        Assert.Equal(useful, RowEquationsFactory.IsUseful(Row(None, thrust, None, None, current, None, speed)));

    /// <summary>Before anything is solved a row stands at the speed that it gives, else at that of its duty, its thrust, or 0.7 of its power.</summary>
    [Fact]
    public void Rows_start_near_their_speed()
    {
        const double speed = 2200;
        (double thrust, double torque) = Wagtail.Air(speed);
        Assert.Equal(thrust, ThrustAtStart(Row(None, thrust, 0.1, None, None, None, None)), 1e-6);
        Assert.Equal(thrust, ThrustAtStart(Row(None, None, torque, None, None, torque * speed / 0.7, None)), 1e-6);
        Assert.Equal(thrust, ThrustAtStart(Row(None, 1, 0.1, None, None, None, speed)), 1e-9);
        double volts = Wagtail.BridgeVoltage(Wagtail.CurrentFor(torque, speed), speed) / 0.6;
        Assert.Equal(thrust, ThrustAtStart(Row(0.6, 1, 0.1, volts, 5, None, None)), 1e-6);

        static double ThrustAtStart(StandRow row)
        {
            RowEquations equations = Factory(row).Make(row, true)!;
            double[] residuals = new double[equations.Observations.Count];
            equations.AtSameSpeed(Wagtail, Ones, residuals);
            int at = equations.Observations.ToList().FindIndex(o => o.What is Observed.Thrust);
            // without a thrust column the torque gives the speed away
            if (at >= 0) return equations.Observations[at].Value + (residuals[at] * equations.Observations[at].Sigma);
            int of = equations.Observations.ToList().FindIndex(o => o.What is Observed.Torque);
            return (equations.Observations[of].Value + (residuals[of] * equations.Observations[of].Sigma)) * Wagtail.Air(speed).Thrust / Wagtail.Air(speed).Torque;
        }
    }

    /// <summary>Steps: thrust 0.1 N in one block and 0.01 in another, of which the coarser counts; speed 2 rad/s, volts 0.01, amperes 0.1.</summary>
    private static RowEquationsFactory Factory(params StandRow[] rows) => new(Wagtail,
        [
            Block(Column(StandQuantity.Thrust, 10, TradeUnits.GramForce * 1.0197162129779283)),
            Block(Column(StandQuantity.Thrust, 0.01, 1), Column(StandQuantity.Speed, 2, 1), Column(StandQuantity.Voltage, 0.01, 1), Column(StandQuantity.Current, 100, 1e-3)),
        ], rows);

    private static StandBlock Block(params ColumnReading[] columns) => new(1, "", 1, columns, [], [], []);

    private static ColumnReading Column(StandQuantity quantity, double step, double si) => new(1, "", quantity, "", si, "") { Step = step };

    private static StandRow Row(double throttle, double thrust, double torque, double volts, double amps, double watts, double speed) => new()
    {
        Line = 1,
        Throttle = throttle,
        Thrust = thrust,
        Torque = torque,
        Voltage = volts,
        Current = amps,
        ElectricalPower = watts,
        Speed = speed,
    };
}
