using Simfeel.Physics.Maths;
using Simfeel.Studies.Fit;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>
/// Each bound of a row from both sides. The block's other row has 2000 gf, 0.2 N m and 23.5 V times 35 A = 822.5 W, against which small
/// offsets are measured; the stand is that of Wagtail: 1770 rpm/V, a disc of 5.1 inch, air of 1.225 kg/m3.
/// </summary>
public class RowCheckTests
{
    private const double None = double.NaN;

    private static readonly StandModel Wagtail = new(SyntheticStand.Starter("wagtail"));

    private static readonly StandRow Full = Row(100, 2000, 200, 23.5, 35, None, None, 30773) with { Line = 1 };

    [Theory]
    [InlineData(-1.9, "")]
    [InlineData(-2.4, "throttle of -2 %; allowed is 0 to 100 %")]
    [InlineData(101.9, "")]
    [InlineData(103, "throttle of 103 %; allowed is 0 to 100 %")]
    public void Throttle_goes_from_nothing_to_full(double percent, string reason) => Check(reason, Row(percent, None, None, None, None, None, None, None));

    /// <summary>Two percent of the block's largest reading are an offset of the sensor: 40 gf, 4 mN m, 0.7 A.</summary>
    [Theory]
    [InlineData(-39, None, None, "")]
    [InlineData(-41, None, None, "negative thrust, -41 gf")]
    [InlineData(None, -3.9, None, "")]
    [InlineData(None, -4.1, None, "negative torque, -0.0041 N m")]
    [InlineData(None, None, -0.69, "")]
    [InlineData(None, None, -0.71, "negative current, -0.71 A")]
    public void Readings_below_zero_are_offsets_or_wrong(double gf, double mNm, double amps, string reason) =>
        Check(reason, Row(None, gf, mNm, None, amps, None, None, None));

    [Theory]
    [InlineData(-0.1, None, "voltage of -0.1 V while the rotor turns")]
    [InlineData(0, 1000, "voltage of 0 V while the rotor turns")]
    [InlineData(0, 0, "")]
    [InlineData(0, None, "")]
    [InlineData(24, -1, "negative rotor speed, -1 rpm")]
    [InlineData(24, 0, "")]
    public void A_turning_rotor_has_a_voltage(double volts, double rpm, string reason) =>
        Check(reason, Row(None, None, None, volts, None, None, None, rpm));

    /// <summary>Three percent of the block's largest thrust are 60 gf.</summary>
    [Theory]
    [InlineData(59, 0, "")]
    [InlineData(61, 0, "61 gf of thrust while the rotor stands still")]
    [InlineData(61, None, "")]
    public void A_rotor_at_rest_does_not_lift(double gf, double rpm, string reason) => Check(reason, Row(None, gf, None, None, None, None, None, rpm));

    /// <summary>20 V times 10 A are 200 W; 8 % of that and 1 % of 822.5 W are 24.2 W.</summary>
    [Theory]
    [InlineData(224.1, "")]
    [InlineData(224.4, "voltage times current is 200.0 W, but the power column says 224.4 W")]
    [InlineData(175.9, "")]
    [InlineData(175.6, "voltage times current is 200.0 W, but the power column says 175.6 W")]
    public void Power_is_voltage_times_current(double watts, string reason) => Check(reason, Row(None, None, None, 20, 10, watts, None, None));

    /// <summary>10 V turn the motor at 17 700 rpm without load; 15 % more is left for a wrong KV in the build.</summary>
    [Theory]
    [InlineData(20_350, "")]
    [InlineData(20_360, "20360 rpm at 10.0 V, above the no-load speed of 17700 rpm that the motor's KV allows")]
    public void No_motor_turns_faster_than_without_load(double rpm, string reason) => Check(reason, Row(None, None, None, 10, None, None, None, rpm));

    /// <summary>200 W go in; 3 % of that and 0.5 % of 822.5 W more are 210.1 W. 10 000 rpm are 1047.2 rad/s.</summary>
    [Theory]
    [InlineData(200.5, None, "")]
    [InlineData(200.8, None, "the shaft gives 210.3 W, more than the 200.0 W that go in")]
    [InlineData(None, 210, "")]
    [InlineData(None, 210.2, "the shaft gives 210.2 W, more than the 200.0 W that go in")]
    public void No_more_comes_out_than_goes_in(double mNm, double shaft, string reason)
    {
        Check(reason, Row(None, None, mNm, 20, 10, None, shaft, 10_000));
        Check(reason, Row(None, None, mNm, None, None, 200, shaft, 10_000));
    }

    /// <summary>
    /// 1000 gf need 9.80665^1.5 / sqrt(2 x 1.225 x pi x 0.06477^2) = 170.9 W (momentum theory, any handbook of helicopters); 6 % and 1 % of
    /// 822.5 W less are 153.5 W. What the shaft gives counts, where that is known.
    /// </summary>
    [Theory]
    [InlineData(153.6, None, "")]
    [InlineData(153.3, None, "1000 gf from 153.3 W: with this disc at least 170.9 W are needed (momentum theory)")]
    [InlineData(300, 153.6, "")]
    [InlineData(300, 153.3, "1000 gf from 153.3 W on the shaft: with this disc at least 170.9 W are needed (momentum theory)")]
    public void No_disc_lifts_more_than_momentum_theory_allows(double watts, double shaft, string reason) =>
        Check(reason, Row(None, 1000, None, None, None, watts, shaft, None));

    /// <summary>At 20 000 rpm the build's propeller lifts 718 gf; three times that is 2154, a third 239.</summary>
    [Theory]
    [InlineData(2.99, "")]
    [InlineData(3.01, "far")]
    [InlineData(0.335, "")]
    [InlineData(0.331, "far")]
    [InlineData(0.031, "far")]
    [InlineData(0.029, "")]
    public void A_thrust_far_from_the_propellers_is_another_propellers(double factor, string far)
    {
        double expected = Wagtail.Air(20_000 / TradeUnits.RpmPerRadian).Thrust / TradeUnits.GramForce;
        string reason = far.Length > 0 ? $"{factor * expected:F0} gf at 20000 rpm, where the build's propeller lifts about {expected:F0} gf" : "";
        StandRow row = Row(None, factor * expected, None, None, None, None, None, 20_000);
        Check(reason, row);
        Check("", row with { NoPropeller = true });
    }

    /// <summary>Near idle all is small against the block's 2000 gf: up to a tenth nothing is told from it.</summary>
    [Fact]
    public void Small_thrusts_tell_no_propeller()
    {
        // four times what this speed lifts, from either side of 200 gf
        Check("", Row(None, 199, None, None, None, None, None, SpeedFor(50)));
        Check("201 gf at", Row(None, 201, None, None, None, None, None, SpeedFor(50)));
        // a fifth of what this speed lifts, which is once just below a tenth of the block's most and once above
        Check("", Row(None, 39, None, None, None, None, None, SpeedFor(199)));
        Check("40 gf at", Row(None, 40, None, None, None, None, None, SpeedFor(201)));
    }

    [Theory]
    [InlineData(10_000, 8_990, 10_100, "the rotor slows from 10000 to 8990 rpm while the throttle rises")]
    [InlineData(10_000, 9_010, 10_100, "")]
    [InlineData(10_000, 8_990, 10_000, "")]
    [InlineData(10_000, 8_990, 9_900, "")]
    public void A_rotor_that_slows_with_more_throttle_is_a_slip(double before, double here, double after, string reason)
    {
        StandRow[] rows = [Turning(20, before), Turning(40, here), Turning(60, after)];
        Check(reason, rows, 1);
        // only where the throttle rises twice, with a propeller, and with a row on either side
        Check("", [Turning(40, before), rows[1], rows[2]], 1);
        Check("", [rows[0], rows[1], Turning(40, after)], 1);
        Check("", [rows[0], rows[1] with { NoPropeller = true }, rows[2]], 1);
        Check("", [rows[0], rows[1]], 1);
        Check("", [rows[1], rows[2]], 0);

        static StandRow Turning(double percent, double rpm) => Row(percent, None, None, None, None, None, None, rpm);
    }

    [Theory]
    [InlineData(1000, 849, 1010, "thrust falls from 1000 to 849 gf while the throttle rises")]
    [InlineData(1000, 851, 1010, "")]
    [InlineData(1000, 849, 1000, "")]
    [InlineData(1000, 849, 990, "")]
    public void A_thrust_that_falls_with_more_throttle_is_a_slip(double before, double here, double after, string reason) =>
        Check(reason, [Row(20, before, None, None, None, None, None, None), Row(40, here, None, None, None, None, None, None), Row(60, after, None, None, None, None, None, None)], 1);

    /// <summary>P = V I and P = torque times speed give what a column does not; what a column gives stays.</summary>
    [Fact]
    public void What_powers_tell_is_worked_out()
    {
        Assert.Equal(12.5, Completed(Row(None, None, None, 20, None, 250, None, None)).Current, 1e-12);
        Assert.Equal(20, Completed(Row(None, None, None, None, 12.5, 250, None, None)).Voltage, 1e-12);
        StandRow turning = Row(None, None, None, 20, 10, None, 150, None) with { Speed = 1200 };
        Assert.Equal(0.125, Completed(turning).Torque, 1e-12);
        Assert.Equal(0.12, Completed(turning with { Torque = 0.12 }).Torque);
        Assert.Equal(double.NaN, Completed(turning with { Speed = 0 }).Torque);
        StandRow measured = Completed(Row(None, None, None, 20, 10, 205, None, None));
        Assert.Equal((20, 10, 205), (measured.Voltage, measured.Current, measured.ElectricalPower));
    }

    /// <summary>
    /// A motor without its propeller: it turns, lifts at most 3 % of what a propeller would and takes at most 5 % of its torque, or where there
    /// is no torque half of its power.
    /// </summary>
    [Theory]
    [InlineData(0.029, 0.049, None, true)]
    [InlineData(0.029, 0.051, None, false)]
    [InlineData(0, None, 0.49, true)]
    [InlineData(0, None, 0.51, false)]
    [InlineData(None, 0.01, None, false)]
    [InlineData(0, None, None, true)]
    public void A_motor_without_its_propeller_is_told_by_what_it_takes(double lift, double torque, double power, bool bare)
    {
        const double speed = 2000;
        (double thrust, double needs) = Wagtail.Air(speed);
        StandRow row = new() { Line = 2, Speed = speed, Thrust = lift * thrust, Torque = torque * needs, ElectricalPower = power * needs * speed };
        Assert.Equal(bare, Completed(row).NoPropeller);
        Assert.Equal(bare, Completed(row with { ElectricalPower = None, Voltage = 20, Current = row.ElectricalPower / 20 }).NoPropeller);
    }

    /// <summary>Where the propeller would lift 100 gf, a twentieth of the block's most: 3 gf are nothing, 4 are lift.</summary>
    [Fact]
    public void A_slow_rotor_that_lifts_has_its_propeller()
    {
        Assert.True(Completed(Row(None, 2.9, 0, None, None, None, None, SpeedFor(100))).NoPropeller);
        Assert.False(Completed(Row(None, 3.1, 0, None, None, None, None, SpeedFor(100))).NoPropeller);
        Assert.False(Completed(Row(None, None, 0, None, None, None, None, SpeedFor(100))).NoPropeller);
    }

    /// <summary>Below 2 % of the block's largest thrust, 40 gf, there is nothing to tell it by; who says so himself is believed.</summary>
    [Fact]
    public void A_slow_rotor_is_not_taken_for_bare()
    {
        Assert.False(Completed(Row(None, 0, 0, None, None, None, None, SpeedFor(39))).NoPropeller);
        Assert.True(Completed(Row(None, 0, 0, None, None, None, None, SpeedFor(41))).NoPropeller);
        Assert.False(Completed(Row(None, 0, 0, None, None, None, None, 0)).NoPropeller);
        Assert.True(Completed(Row(None, 0, 0, None, None, None, None, SpeedFor(39)) with { NoPropeller = true }).NoPropeller);
    }

    [Fact]
    public void Good_rows_and_refused_ones_keep_their_order_and_lines()
    {
        StandRow[] rows = [Full, Row(None, -900, None, None, None, None, None, None) with { Line = 7 }, Row(None, 500, None, None, None, None, None, None) with { Line = 8 }, Row(130, 1, None, None, None, None, None, None) with { Line = 9 }];
        (IReadOnlyList<StandRow> good, IReadOnlyList<RefusedRow> refused) = RowChecks.Run(rows, Wagtail);
        Assert.Equal([1, 8], good.Select(row => row.Line));
        Assert.Equal([7, 9], refused.Select(row => row.Line));
        Assert.Empty(RowChecks.Run([], Wagtail).Good);
    }

    /// <summary>Speed (rpm) at which the build's propeller lifts a thrust, gf.</summary>
    private static double SpeedFor(double gf)
    {
        double low = 0, high = 4000;
        for (int n = 0; n < 60; n++)
        {
            double middle = (low + high) / 2;
            if (Wagtail.Air(middle).Thrust > gf * TradeUnits.GramForce) high = middle;
            else low = middle;
        }
        return low * TradeUnits.RpmPerRadian;
    }

    private static StandRow Completed(StandRow row) => RowChecks.Run([Full, row], Wagtail).Good.Single(good => good.Line == row.Line);

    private static void Check(string reason, StandRow row) => Check(reason, [row, Full], 0);

    private static void Check(string reason, StandRow[] rows, int index)
    {
        StandRow[] numbered = [.. rows.Select((row, n) => row == Full ? row : row with { Line = 10 + n })];
        IReadOnlyList<RefusedRow> refused = RowChecks.Run(numbered, Wagtail).Refused;
        if (reason.Length == 0) Assert.Empty(refused);
        else Assert.StartsWith(reason, Assert.Single(refused, row => row.Line == 10 + index).Reason, StringComparison.Ordinal);
    }

    /// <summary>Percent, gf, mN m, V, A, W, W on the shaft, rpm.</summary>
    private static StandRow Row(double percent, double gf, double mNm, double volts, double amps, double watts, double shaft, double rpm) => new()
    {
        Line = 2,
        Throttle = percent / 100,
        Thrust = gf * TradeUnits.GramForce,
        Torque = 1e-3 * mNm,
        Voltage = volts,
        Current = amps,
        ElectricalPower = watts,
        MechanicalPower = shaft,
        Speed = rpm / TradeUnits.RpmPerRadian,
    };
}
