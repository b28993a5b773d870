using Simfeel.Builds.Estimates;
using Simfeel.Physics;

namespace Simfeel.Builds.Tests;

/// <summary>Units, estimates of what is missing, and their provenance.</summary>
public class EstimateTests
{
    [Fact]
    public void UnitsBecomeSI()
    {
        Build build = BuildText.Read(BuildText.Plus(
            """
            [speed_controller]
            command_delay_ms = 2.5
            idle_percent = 6
            resistance_mohm = 4
            [drag]
            area_x_cm2 = 98
            [pilot]
            roll_end_deg_s = 720
            [camera]
            tilt_deg = 30
            """));
        Assert.Equal(0.225, build.Frame.Wheelbase, 12);
        Assert.Equal(0.022, build.Motor.Body.StatorDiameter, 12);
        Assert.Equal(60 / (2 * Math.PI * 1800), build.Motor.Electrics.Kt, 12);
        Assert.Equal(5.1 * 0.0254, build.Propeller.Blades.Diameter, 12);
        Assert.Equal(1.3 * 3600, build.Battery.Capacity, 9);
        Assert.Equal(0.0025, build.SpeedController.CommandDelay, 12);
        Assert.Equal(0.06, build.SpeedController.IdleDuty, 12);
        Assert.Equal(0.004, build.SpeedController.Resistance, 12);
        Assert.Equal(0.0098, build.Drag.Area.X, 12);
        Assert.Equal(4 * Math.PI, build.Pilot.Roll.EndRate, 12);
        Assert.Equal(Math.PI / 6, build.Camera.Tilt, 12);
    }

    /// <summary>Scaling laws of similar motors: Kt^2/R as V^(5/3), torque limit as V, mass as V^0.85 (DESIGN rules; references, section 3: Km as L^2.5).</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(1.3)]
    public void MissingMotorConstantsScaleWithTheStator(double size)
    {
        Build small = BuildText.Read(BuildText.Minimal);
        Build large = BuildText.Read(BuildText.Minimal
            .Replace("stator_diameter_mm = 22", $"stator_diameter_mm = {22 * size}", StringComparison.Ordinal)
            .Replace("stator_height_mm = 7", $"stator_height_mm = {7 * size}", StringComparison.Ordinal)
            .Replace("wheelbase_mm = 225", "wheelbase_mm = 450", StringComparison.Ordinal));
        double km2 = Km2(large) / Km2(small);
        Assert.Equal(5, Math.Log(km2) / Math.Log(size), 6);
        Assert.Equal(3, Math.Log(large.Motor.Electrics.TorqueLimit / small.Motor.Electrics.TorqueLimit) / Math.Log(size), 6);
        Assert.Equal(3, Math.Log(large.Motor.Electrics.LossTorque / small.Motor.Electrics.LossTorque) / Math.Log(size), 6);
        Assert.Equal(2.55, Math.Log(large.Motor.Body.Mass / small.Motor.Body.Mass) / Math.Log(size), 6);

        static double Km2(Build b) => b.Motor.Electrics.Kt * b.Motor.Electrics.Kt / b.Motor.Electrics.WindingResistance;
    }

    /// <summary>Masses that the trade knows (common practice): 8x2 about 2 g, 14x4 about 9.5 g, 22x7 about 33 g, 28x7 about 50 g.</summary>
    [Theory]
    [InlineData(8, 2, 2.0)]
    [InlineData(14, 4, 9.5)]
    [InlineData(22, 7, 33)]
    [InlineData(28, 7, 50)]
    public void MotorMassFollowsTheTrade(double diameter, double height, double grams)
    {
        double volume = Math.PI / 4 * diameter * diameter * height * 1e-9;
        double estimate = 1e3 * MotorRules.ReferenceMass * Math.Pow(volume / MotorRules.ReferenceVolume, 0.85);
        Assert.InRange(estimate, 0.9 * grams, 1.1 * grams);
    }

    /// <summary>The no-load point comes back out of the motor model: at that voltage it runs with that current.</summary>
    [Fact]
    public void NoLoadPointIsMet()
    {
        Build build = BuildText.Read(BuildText.With("motor", "no_load_current_A = 1.4\nno_load_voltage_V = 10\nwinding_resistance_mohm = 62"));
        MotorElectrics motor = build.Motor.Electrics;
        double speed = (10 - (1.4 * 0.062)) / motor.Kt;
        Assert.Equal(motor.Kt * 1.4, motor.LossTorque + (motor.LossTorquePerSpeed * speed), 12);
    }

    /// <summary>
    /// Propeller mass against the published 5 g of a 5.1 inch propeller (Foehn et al., Science Robotics 7(67), 2022,
    /// Table 2) and spin inertia against k^2 m R^2 with k^2 = 0.30 to 0.40 from planforms measured at UIUC.
    /// </summary>
    [Fact]
    public void PropellerEstimateIsOfThePublishedOrder()
    {
        Build build = BuildText.Read(BuildText.Minimal);
        Assert.InRange(build.Propeller.Body.Mass, 0.0035, 0.0055);
        Build weighed = BuildText.Read(BuildText.With("propeller", "mass_g = 5\nhub_mass_share = 0.02"));
        double k2 = weighed.Propeller.Body.SpinInertia / (0.98 * 0.005 * Math.Pow(5.1 * 0.0254 / 2, 2));
        Assert.InRange(k2, 0.28, 0.42);
    }

    [Fact]
    public void CellVoltageRisesAndTakesItsFullVoltage()
    {
        foreach ((string type, double full) in (ReadOnlySpan<(string, double)>)[("pouch", 4.2), ("pouch", 4.35), ("cylindrical", 4.2), ("cylindrical", 4.1)])
        {
            BatterySpec battery = BuildText.Read(BuildText.With("battery", $"cell_type = \"{type}\"\nfull_cell_voltage_V = {full}")).Battery;
            Assert.Equal(BatteryConstants.ChargeNodes.Count, battery.CellVoltage.Count);
            Assert.Equal(full, battery.CellVoltage[^1], 12);
            for (int i = 1; i < battery.CellVoltage.Count; i++) Assert.True(battery.CellVoltage[i] > battery.CellVoltage[i - 1]);
        }
        // Measured points of the round cell (Sunil, Pattipati, Balasingam, 2025): 3.4218 V at 0.1508, 3.5737 V at 0.2915.
        Assert.Equal(3.4218 + ((0.2 - 0.1508) / (0.2915 - 0.1508) * (3.5737 - 3.4218)), BatteryRules.CellVoltage(true, 4.1932)[3], 9);
    }

    [Fact]
    public void CoastingControllerHasNoBrakeCurrent()
    {
        Assert.Equal(0, BuildText.Read(BuildText.Plus("[speed_controller]\nbraking = false\n")).SpeedController.BrakeCurrentLimit);
        SpeedControllerSpec braking = BuildText.Read(BuildText.Plus("[speed_controller]\ncurrent_limit_A = 55\n")).SpeedController;
        Assert.Equal(55, braking.BrakeCurrentLimit, 12);
    }

    [Fact]
    public void EveryNumberHasProvenance()
    {
        Build build = BuildText.Read(BuildText.With("motor", "mass_g = { low = 31, typical = 33, high = 36, source = \"measured\" }\noutER = 1"));
        BuildValue mass = Assert.Single(build.Values, v => v.Key == "motor.mass_g");
        Assert.Equal(new BuildValue("motor.mass_g", 31, 33, 36, "g", ValueSource.Measured, ""), mass);
        BuildValue resistance = Assert.Single(build.Values, v => v.Key == "motor.winding_resistance_mohm");
        Assert.Equal((ValueSource.Rule, "mohm", true), (resistance.Source, resistance.Unit, resistance.FilledIn));
        Assert.Equal(1e3 * build.Motor.Electrics.WindingResistance, resistance.Typical, 9);
        Assert.True(resistance.Low < resistance.Typical && resistance.Typical < resistance.High);
        Assert.NotEqual("", resistance.Rule);
        Assert.Equal(ValueSource.Stated, Assert.Single(build.Values, v => v.Key == "battery.cells").Source);
        Assert.Equal(ValueSource.Default, Assert.Single(build.Values, v => v.Key == "gyro.lowpass_Hz").Source);
        Assert.Equal(build.Values.Count, build.Values.Select(v => v.Key).Distinct().Count());
        Assert.All(build.Values.Where(v => v.Source == ValueSource.Rule), v => Assert.NotEqual("", v.Rule));
    }

    [Fact]
    public void NumbersMayBeWrittenInEveryForm()
    {
        string[] forms = ["33", "33.0", "3.3e1", "{ value = 33 }", "{ value = 33, source = \"datasheet\" }", "{ low = 30, typical = 33, high = 35 }"];
        foreach (string form in forms) Assert.Equal(0.033, BuildText.Read(BuildText.With("motor", $"mass_g = {form}")).Motor.Body.Mass, 12);
    }

    [Fact]
    public void TablesMayBeWrittenInlineOrDotted()
    {
        string dotted = BuildText.Minimal.Replace("[battery]\ncells = 6", "[battery]\ncells = 4", StringComparison.Ordinal);
        string inline = BuildText.Minimal[..BuildText.Minimal.IndexOf("[battery]", StringComparison.Ordinal)]
            .Replace("name = \"Test\"", "name = \"Test\"\nbattery = { cells = 4, capacity_mAh = 1300 }", StringComparison.Ordinal);
        string top = BuildText.Minimal[..BuildText.Minimal.IndexOf("[battery]", StringComparison.Ordinal)]
            .Replace("name = \"Test\"", "name = \"Test\"\nbattery.cells = 4\nbattery.capacity_mAh = 1300", StringComparison.Ordinal);
        Assert.Equal(4, BuildText.Read(dotted).Battery.Cells);
        Assert.Equal(4, BuildText.Read(inline).Battery.Cells);
        Assert.Equal(4, BuildText.Read(top).Battery.Cells);
    }

    [Fact]
    public void NamesMayBeOfAnyScript()
    {
        Build build = BuildText.Read(BuildText.Minimal.Replace("\"Test\"", "\"M\u00F6we \u30AB\u30E2\u30E1 \U0001F426\"", StringComparison.Ordinal));
        Assert.Equal("M\u00F6we \u30AB\u30E2\u30E1 \U0001F426", build.Name);
    }
}
