using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>Energy closes: what the battery gives is heat, work at the shafts, or stored (first law).</summary>
public class PowerBudgetTests
{
    private static readonly Craft Quad = TestCraft.Quad(TestCraft.Constant(0.018, 0.0022, 0.03, 0.004));

    /// <summary>Every step of a flight with full throttle, closed throttle, braking and motors at their limits.</summary>
    [Fact]
    public void Power_closes_at_every_step()
    {
        using CraftBatch<Lane1> batch = Start();
        bool braked = false, limited = false;
        for (int n = 0; n < 6000; n++)
        {
            Command(batch, n);
            batch.Step(Integrator.Midpoint, 1 / 8000.0);
            batch.Evaluate();
            Sample sample = batch.GetSample(0);
            PowerBudget budget = PowerBudget.Of(Quad, sample);
            double size = Math.Abs(budget.Source) + budget.Heat + Math.Abs(budget.Shaft) + Math.Abs(budget.Stored);
            double gap = budget.Source - budget.Heat - budget.Shaft - budget.Stored;
            Assert.InRange(Math.Abs(gap) / size, 0, 1e-9);
            Assert.True(budget is { PackHeat: >= 0, CopperHeat: >= 0, IronHeat: >= 0, SaturationHeat: >= 0 });
            braked |= budget.Shaft < 0;
            limited |= sample.MotorCurrent[0] == Quad.Rotors[0].CurrentLimit;
        }
        Assert.True(braked && limited, "the flight meets braking and the current limit");
    }

    /// <summary>
    /// The shafts' work is what the rotors' speed and the air take: integrated over the flight, with speeds and torques read from
    /// the samples by the trapezoidal rule, and the chemistry's energy as charge times voltage.
    /// </summary>
    [Fact]
    public void Work_is_found_again_in_rotors_and_air()
    {
        Craft pinned = Quad with { Mass = 1e9, I_BBcm_B = 1e9 * Quad.I_BBcm_B };
        CraftState state = CraftState.AtRest(pinned, 0.9);
        state.RotorSpeeds = PerRotor.All(600);
        using CraftBatch<Lane1> batch = TestCraft.Batch(pinned, state, 1.2);
        // held duties: a jump of torque between two samples would be an error of the trapezoidal rule, not of the flight
        for (int k = 0; k < 4; k++) batch.SetCommand(0, k, 0.1 + (0.2 * k));
        const double step = 1 / 32000.0;
        double shaft = 0, air = 0, source = 0, charged = 0;
        Sample before = Read();
        double start = Kinetic(before);
        for (int n = 0; n < 16000; n++)
        {
            batch.Step(Integrator.Midpoint, step);
            Sample now = Read();
            shaft += step / 2 * (PowerBudget.Of(pinned, before).Shaft + PowerBudget.Of(pinned, now).Shaft);
            source += step / 2 * (PowerBudget.Of(pinned, before).Source + PowerBudget.Of(pinned, now).Source);
            air += step / 2 * (Air(before) + Air(now));
            charged += (before.State.Charge - now.State.Charge) * (Voltage(before) + Voltage(now)) / 2;
            before = now;
        }
        Assert.InRange(Math.Abs(shaft - air - (Kinetic(before) - start)) / shaft, 0, 1e-4);
        Assert.InRange(Math.Abs(source - charged) / source, 0, 1e-4);

        Sample Read()
        {
            batch.Evaluate();
            return batch.GetSample(0);
        }

        double Kinetic(Sample sample) => pinned.Rotors.Select((rotor, k) =>
            rotor.SpinInertia / 2 * sample.State.RotorSpeeds[k] * sample.State.RotorSpeeds[k]).Sum();
        double Air(Sample sample) => pinned.Rotors.Select((_, k) => sample.AirTorque[k] * sample.State.RotorSpeeds[k]).Sum();
        double Voltage(Sample sample) => pinned.Battery.OpenCircuitVoltageAt(sample.State.Charge / pinned.Battery.Capacity);
    }

    /// <summary>Resistor and capacitor of the pack's pair side by side: the one has U^2 / R, the other what is left of the current.</summary>
    [Fact]
    public void Pair_of_resistor_and_capacitor_shares_the_current()
    {
        CraftState state = CraftState.AtRest(Quad, 0.9);
        state.RotorSpeeds = PerRotor.All(1200);
        state.PairVoltage = 0.1;
        using CraftBatch<Lane1> batch = TestCraft.Batch(Quad, state, 1.2, duty: 0.6);
        batch.Evaluate();
        Sample sample = batch.GetSample(0);
        PowerBudget budget = PowerBudget.Of(Quad, sample);
        double resistor = 0.1 / Quad.Battery.PairResistance, i = sample.PackCurrent;
        Assert.Equal((Quad.Battery.SeriesResistance * i * i) + (0.1 * resistor), budget.PackHeat, 1e-9);
        Assert.Equal(0.1 * (i - resistor), budget.Stored, 1e-9);
    }

    private static CraftBatch<Lane1> Start()
    {
        CraftState state = CraftState.AtRest(Quad, 0.9);
        state.RotorSpeeds = PerRotor.All(1200);
        return TestCraft.Batch(Quad, state, 1.2, 9.81);
    }

    private static void Command(CraftBatch<Lane1> batch, int n)
    {
        double[] duties = [1, 0, 0.5, 1, 0.1, 0.9];
        for (int k = 0; k < 4; k++) batch.SetCommand(0, k, duties[((n / 500) + (k / 2)) % duties.Length]);
    }
}
