using Simfeel.Builds;
using Simfeel.Physics.Maths;
using Simfeel.Studies.Fit;
using Simfeel.Studies.Fit.Estimation;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>What a fit found and what it could not, word by word, from results made by hand.</summary>
public class FitWordTests
{
    private const double None = double.NaN;

    private static readonly AssembledBuild Start = SyntheticStand.Starter("wagtail");

    private static readonly StandModel Wagtail = new(Start);

    /// <summary>Half a percent is nothing; a KV within two standard deviations is the build's.</summary>
    [Theory]
    [InlineData(1.1, 0.9, "Your propeller lifts 10 % more than the model thought and needs 10 % less torque at the same speed.")]
    [InlineData(0.93, 1.04, "Your propeller lifts 7 % less than the model thought and needs 4 % more torque at the same speed.")]
    [InlineData(1.004, 0.996, "Your propeller lifts what the model thought and needs the torque that the model thought.")]
    [InlineData(1.006, 0.994, "Your propeller lifts 1 % more than the model thought and needs 1 % less torque at the same speed.")]
    [InlineData(0.994, 1.006, "Your propeller lifts 1 % less than the model thought and needs 1 % more torque at the same speed.")]
    [InlineData(1.1, None, "Your propeller lifts 10 % more than the model thought; how much torque it needs, the table does not tell.")]
    [InlineData(None, 1.1, "Your propeller needs 10 % more torque at the same speed; how much it lifts, the table does not tell.")]
    [InlineData(None, None, "The table tells nothing of the propeller or the KV.")]
    public void Propellers_are_told_in_percent(double thrust, double torque, string words) =>
        Assert.Equal([words], FitSentences.Of(Fit([Constant("propeller.thrust_factor", 2, thrust), Constant("propeller.torque_factor", 0.5, torque), Constant("motor.kv_rpm_per_V", 1770, None)])));

    [Theory]
    [InlineData(1.0199, "The motor has the KV that the build says, 1770 rpm/V, within what the table can tell.")]
    [InlineData(0.9805, "The motor has the KV that the build says, 1770 rpm/V, within what the table can tell.")]
    [InlineData(1.0205, "The motor has a KV of 1806 rpm/V, not 1770.")]
    [InlineData(0.98, "The motor has a KV of 1735 rpm/V, not 1770.")]
    public void A_kv_within_its_band_is_the_builds(double factor, string words) =>
        Assert.Equal([words], FitSentences.Of(Fit([Constant("propeller.thrust_factor", 1, None), Constant("propeller.torque_factor", 1, None), Constant("motor.kv_rpm_per_V", 1770, factor)])));

    /// <summary>
    /// The strongest row that is known to be at its duty, before and now: a tenth more thrust at the same speed, which the torque sets. Below
    /// full throttle only where throttle is duty, and there above half.
    /// </summary>
    [Fact]
    public void The_strongest_row_is_told_before_and_now()
    {
        Build more = BuildEditor.Edit(Start.Build, [new("propeller.thrust_factor", 1.1)]).Build!;
        StandRow full = Row(0.996, 1500, 24, 28_000), part = Row(0.6, 1600, 24, 25_000);
        StandFit fit = Fit([Constant("propeller.thrust_factor", 1, None), Constant("propeller.torque_factor", 1, None), Constant("motor.kv_rpm_per_V", 1770, None)]) with { After = more };
        Check(100, 24, fit with { Rows = [full, part] }, 0.996);
        Check(60, 24, fit with { Rows = [full, part], ThrottleIsDuty = true }, 0.6);
        foreach (StandRow row in (StandRow[])[Row(0.995, 1500, 24, 28_000), full with { Thrust = 0 }, full with { Speed = 0 }, full with { Voltage = 0 }, full with { Thrust = None }])
            Assert.Equal(["The table tells nothing of the propeller or the KV."], FitSentences.Of(fit with { Rows = [row] }));
        Assert.Single(FitSentences.Of(fit with { Rows = [Row(0.5, 1500, 24, 20_000)], ThrottleIsDuty = true }), words => words.StartsWith("The table tells nothing", StringComparison.Ordinal));

        static void Check(int percent, double volts, StandFit fit, double throttle)
        {
            double speed = Wagtail.SpeedAt(throttle * volts);
            (double thrust, double torque) = Wagtail.Air(speed);
            double amps = Wagtail.Power(Wagtail.CurrentFor(torque, speed), speed) / volts, gf = thrust / TradeUnits.GramForce;
            Assert.Equal([$"At {percent} % throttle and {volts:F1} V the build now lifts {1.1 * gf:F0} gf at {amps:F1} A; before it was {gf:F0} gf at {amps:F1} A."], FitSentences.Of(fit));
        }
    }

    [Fact]
    public void Constants_have_keys_meanings_and_an_order()
    {
        Assert.Equal(
            ["propeller.thrust_factor", "propeller.torque_factor", "motor.kv_rpm_per_V", "motor.winding_resistance_mohm", "motor.loss_factor", "motor.inductance_uH"],
            Enumerable.Range(0, 6).Select(n => FitConstants.KeyOf(n, Wagtail)));
        Assert.Equal(
            [
                "thrust over that of the blade-element model", "torque over that of the blade-element model", "no-load speed per volt", "winding resistance between two wires",
                "iron and friction losses over the usual ones", "winding inductance, from the droop of speed under load",
            ],
            Enumerable.Range(0, 6).Select(n => FitConstants.MeaningOf(n, Wagtail)));
        Assert.Equal(6, FitConstants.Prior.Count);
    }

    /// <summary>What a table lacks is named; where it lacks nothing, how well it holds the constant: twice the deviation, in percent.</summary>
    [Theory]
    // with thrust, torque, speed, voltage and current, at part throttle and full
    [InlineData(0, "stivc", 0.5, false, "these rows hold it to 50 % only (95 %)")]
    [InlineData(0, "sivc", 0.5, false, "no thrust column")]
    [InlineData(0, "tivc", 0.5, false, "no rotor speed")]
    [InlineData(0, "ivc", 0.5, false, "no thrust column")]
    [InlineData(1, "stivc", 0.5, false, "these rows hold it to 50 % only (95 %)")]
    [InlineData(1, "svc", 0.5, false, "these rows hold it to 50 % only (95 %)")]
    [InlineData(1, "sp", 0.5, false, "these rows hold it to 50 % only (95 %)")]
    [InlineData(1, "s", 0.5, false, "no torque column")]
    [InlineData(1, "vc", 0.5, false, "no torque column and no rotor speed")]
    [InlineData(1, "i", 0.5, false, "no rotor speed")]
    [InlineData(1, "si", 0.5, false, "these rows hold it to 50 % only (95 %)")]
    [InlineData(2, "v", 1, false, "no rotor speed")]
    [InlineData(2, "s", 1, false, "no voltage")]
    [InlineData(2, "sv", 0.994, false, "no row at full throttle, and the throttle is not the duty")]
    [InlineData(2, "sv", 0.995, false, "these rows hold it to 50 % only (95 %)")]
    [InlineData(2, "sv", 0.5, true, "these rows hold it to 50 % only (95 %)")]
    [InlineData(3, "sti", 0.5, false, "no voltage and current")]
    [InlineData(3, "vc", 0.5, false, "no rotor speed")]
    [InlineData(3, "svc", 0.5, false, "no torque column, so losses and shaft power cannot be told apart")]
    [InlineData(3, "sivc", 0.5, false, "these rows hold it to 50 % only (95 %)")]
    [InlineData(4, "sp", 0.5, false, "no torque column, so losses and shaft power cannot be told apart")]
    [InlineData(4, "s", 0.5, false, "no voltage and current")]
    [InlineData(5, "v", 0.5, true, "no rotor speed")]
    [InlineData(5, "s", 0.5, true, "no voltage")]
    [InlineData(5, "sv", 1, false, "the throttle is not known to be the duty, and full throttle alone does not tell it from KV")]
    [InlineData(5, "sv", 0.5, true, "these rows hold it to 50 % only (95 %)")]
    public void What_a_table_lacks_is_named(int constant, string has, double throttle, bool duty, string words)
    {
        StandRow row = new()
        {
            Line = 1,
            Throttle = throttle,
            Speed = has.Contains('s') ? 2000 : None,
            Thrust = has.Contains('t') ? 5 : None,
            Torque = has.Contains('i') ? 0.1 : None,
            Voltage = has.Contains('v') ? 24 : None,
            Current = has.Contains('c') ? 5 : None,
            ElectricalPower = has.Contains('p') ? 100 : None,
        };
        // a row of nothing beside it neither helps nor harms
        Assert.Equal(words, FitConstants.WhyNot(constant, [new() { Line = 2 }, row], duty, 0.25));
        Assert.Equal(words, FitConstants.WhyNot(constant, [row with { Throttle = throttle }, row], duty, 0.25));
    }

    /// <summary>The build takes what was determined and nothing else; estimates that depend on it follow.</summary>
    [Fact]
    public void The_build_takes_what_was_determined()
    {
        StandModel fitted = Wagtail.With(new(1.1, 0.9, 1.05, 1.2, 1.3, 1.4));
        Build after = FitConstants.Apply(fitted, [0, 1, 2, 3, 4, 5], "t");
        Assert.Equal(1.1 * Of(Start.Build, "propeller.thrust_factor"), Of(after, "propeller.thrust_factor"), 1e-9);
        Assert.Equal(0.9 * Of(Start.Build, "propeller.torque_factor"), Of(after, "propeller.torque_factor"), 1e-9);
        Assert.Equal(1.05 * 1770, Of(after, "motor.kv_rpm_per_V"), 1e-9);
        Assert.Equal(1e3 * fitted.WindingResistance, Of(after, "motor.winding_resistance_mohm"), 1e-9);
        Assert.Equal(1.3 * Of(Start.Build, "motor.loss_factor"), Of(after, "motor.loss_factor"), 1e-9);
        // estimated inductance goes with the square of the turns
        Assert.Equal(1.4 / (1.05 * 1.05) * Of(Start.Build, "motor.inductance_uH"), Of(after, "motor.inductance_uH"), 1e-6);
        Build thrust = FitConstants.Apply(fitted, [0], "t");
        Assert.Equal(1770, Of(thrust, "motor.kv_rpm_per_V"));
        Assert.Equal(1.1 * Of(Start.Build, "propeller.thrust_factor"), Of(thrust, "propeller.thrust_factor"), 1e-9);
    }

    [Fact]
    public void A_no_load_current_gives_the_fitted_losses()
    {
        AssembledBuild start = SyntheticStand.Assembled(BuildReader.Parse(
            File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "builds", "wagtail.toml")).Replace("stator_height_mm = 7 ", "no_load_current_A = 1.5\nno_load_voltage_V = 10\nstator_height_mm = 7 ", StringComparison.Ordinal), "x.toml").Build!);
        StandModel model = new(start), fitted = model.With(StandFactors.None with { Loss = 1.25, Kv = 1.05 });
        Assert.Equal(("motor.no_load_current_A", "no-load current"), (FitConstants.KeyOf(FitConstants.Loss, model), FitConstants.MeaningOf(FitConstants.Loss, model)));
        Build after = FitConstants.Apply(fitted, [FitConstants.Kv, FitConstants.Loss], "t");
        Assert.Equal(1, after.Motor.Electrics.LossTorque / fitted.Rotor.LossTorque, 1e-6);
        Assert.Equal(1.5, Of(FitConstants.Apply(fitted, [FitConstants.Kv], "t"), "motor.no_load_current_A"));
    }

    /// <summary>A factor that no build may have is refused with the key's range.</summary>
    [Fact]
    public void What_no_build_may_have_is_refused()
    {
        FitException error = Assert.Throws<FitException>(() => FitConstants.Apply(Wagtail.With(StandFactors.None with { Thrust = 3 }), [0], "t"));
        Assert.Contains("The fit gives propeller.thrust_factor = ", error.Message, StringComparison.Ordinal);
    }

    private static double Of(Build build, string key) => build.Values.Single(value => value.Key == key).Typical;

    private static FittedConstant Constant(string key, double before, double factor) =>
        new(key, "", "", before, double.IsNaN(factor) ? before : factor * before, 0.01, !double.IsNaN(factor), "");

    private static StandRow Row(double throttle, double gf, double volts, double rpm) =>
        new() { Line = 1, Throttle = throttle, Thrust = gf * TradeUnits.GramForce, Voltage = volts, Speed = rpm / TradeUnits.RpmPerRadian };

    private static StandFit Fit(IReadOnlyList<FittedConstant> constants) => new()
    {
        Table = new("t", "", [], []),
        Before = Start,
        After = Start.Build,
        Constants = constants,
        Residuals = [],
        Rows = [],
        Refused = [],
        Throttle = "",
        ThrottleIsDuty = false,
        Notes = [],
    };
}
