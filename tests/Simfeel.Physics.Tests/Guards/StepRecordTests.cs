using Simfeel.Physics.Guards;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Guards;

/// <summary>The text of a step, what is wrong with a damaged one, and the bounds behind it.</summary>
public class StepRecordTests
{
    private static readonly string Text = Broken();

    [Fact]
    public unsafe void Every_number_that_a_step_depends_on_has_a_name()
    {
        // what is not named is the tables' addresses and the three fields that a record has beside its numbers
        Assert.Equal(sizeof(RotorLanes<Lane1>) - sizeof(TableLanes), StepNumbers.Rotor.Count * sizeof(double));
        Assert.Equal(sizeof(InflowLanes<Lane1>), StepNumbers.Inflow.Count * sizeof(double));
        Assert.Equal(sizeof(RotorFitLanes<Lane1>), StepNumbers.Fit.Count * sizeof(double));
        Assert.Equal(sizeof(BatteryLanes<Lane1>), StepNumbers.Battery.Count * sizeof(double));
        Assert.Equal(sizeof(FieldLanes<Lane1>) - sizeof(RotorFactors<Lane1>), StepNumbers.Field.Count * sizeof(double));
        CraftLanes<Lane1> lanes;
        int body = (int)((byte*)&lanes.Battery - (byte*)&lanes);
        Assert.Equal(body, StepNumbers.Body.Count * sizeof(double));
        Assert.Equal(StepNumbers.Names(8).Count, StepNumbers.Names(8).Distinct().Count());
    }

    [Theory]
    [InlineData("simfeel_fault = 1", "simfeel_fault = 2", "this program reads 1")]
    [InlineData("simfeel_fault = 1", "", "no record of a fault")]
    [InlineData("rotors = 4", "rotors = 9", "whole number from 1 to 8")]
    [InlineData("rotors = 4", "rotors = 5", "no line rotor5.x_m")]
    [InlineData("step_s = 0.00025", "step_s = 0", "above 0")]
    [InlineData("step_s = 0.00025", "step_s = NaN", "above 0")]
    [InlineData("primed = true", "primed = yes", "true or false")]
    [InlineData("integrator = Midpoint", "integrator = Euler", "one of Midpoint, RungeKutta")]
    [InlineData("gravity_m_s2 = 9.81", "gravity_m_s2 = much", "no number")]
    [InlineData("gravity_m_s2 = 9.81", "gravity_m_s2", "key = value")]
    [InlineData("gravity_m_s2 = 9.81", "gravity_m_s2 = 9.81\ngravity_m_s2 = 9.81", "twice")]
    [InlineData("cell = 1 ", "cell = 5 ", "no cell")]
    [InlineData("cell = 1 ", "cell = 1 1", "no cell")]
    [InlineData("cell = 1 ", "cell = 1 256 ", "34 numbers")]
    public void Damage_has_one_clear_error(string sound, string damaged, string said)
    {
        Assert.Contains(sound, Text, StringComparison.Ordinal);
        int at = Text.IndexOf(sound, StringComparison.Ordinal);
        FormatException error = Assert.Throws<FormatException>(() => StepRecord.Parse(Text[..at] + damaged + Text[(at + sound.Length)..]));
        Assert.Contains(said, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_step_that_breaks_nothing_any_more_is_told_apart()
    {
        StepRecord mended = StepRecord.Parse(Text.Replace("rotor3.duty = NaN", "rotor3.duty = 0.4", StringComparison.Ordinal));
        Assert.Equal(KernelStage.None, mended.Fly().Stage);
        Assert.Equal(KernelStage.Commands, StepRecord.Parse(Text).Fly().Stage);
    }

    // the maximum power theorem, by searching the load of a source of 16.8 V behind 18 milliohm
    [Fact]
    public void The_power_bound_is_four_times_the_most_that_any_load_takes_from_the_pack()
    {
        BatteryConstants pack = TestCraft.FlatBattery(16.8, 0.018);
        double most = Enumerable.Range(1, 100_000).Max(n => Math.Pow(16.8 / (0.018 + (n * 1e-6)), 2) * n * 1e-6);
        Assert.Equal(4 * most, Guard.MostPower(pack), most * 1e-6);
    }

    private static string Broken()
    {
        using CraftBatch<Lane1> batch = new(4);
        Craft craft = TestCraft.Quad(TestCraft.Irregular, 0);
        batch.SetCraft(0, craft, "one");
        batch.SetField(0, 1.2, 9.81);
        batch.SetState(0, CraftState.AtRest(craft));
        for (int n = 0; n < 3; n++) batch.Step(Integrator.Midpoint, 1.0 / 4000);
        batch.SetCommand(0, 2, double.NaN);
        return Assert.Throws<FlightFaultException>(() => batch.Step(Integrator.Midpoint, 1.0 / 4000)).Record.ToText();
    }
}
