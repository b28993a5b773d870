using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Motors;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>What the pack gives is what motors and electronics take, whatever motors sit at their limits.</summary>
public class PackPowerTests
{
    [Fact]
    public void Pack_power_is_the_sum_of_all_that_is_taken()
    {
        // random speeds, duties, charge, limits, resistances: driving, braking and held motors mixed in one pack
        Random random = new(20250);
        int held = 0, braking = 0, mixed = 0;
        double worst = 0;
        string where = "";
        for (int n = 0; n < 10_000; n++)
        {
            Craft craft = RandomCraft(random);
            CraftState state = CraftState.AtRest(craft, random.NextDouble());
            state.PairVoltage = 0.8 * random.NextDouble();
            for (int k = 0; k < 4; k++) state.RotorSpeeds[k] = (3800 * random.NextDouble()) - (random.Next(8) == 0 ? 500 : 0);
            using CraftBatch<Lane1> batch = TestCraft.Batch(craft, state);
            for (int k = 0; k < 4; k++)
                batch.SetCommand(0, k, random.Next(4) switch { 0 => 0, 1 => 1, _ => random.NextDouble() });
            batch.Evaluate();
            Sample sample = batch.GetSample(0);

            double taken = craft.Battery.ElectronicsPower, size = taken;
            int atLimit = 0, negative = 0;
            for (int k = 0; k < 4; k++)
            {
                RotorConstants rotor = craft.Rotors[k];
                double i = sample.MotorCurrent[k], power = MotorModel.PackPower(rotor, i, state.RotorSpeeds[k]);
                taken += power;
                size += Math.Abs(power);
                if (i == rotor.CurrentLimit || i == -rotor.BrakeCurrentLimit) atLimit++;
                if (i < 0) negative++;
            }
            held += atLimit > 0 ? 1 : 0;
            braking += negative > 0 ? 1 : 0;
            mixed += atLimit is > 0 and < 4 ? 1 : 0;
            double error = Math.Abs((sample.PackVoltage * sample.PackCurrent) - taken) / size;
            if (!(error <= worst)) (worst, where) = (error, $"state {n}, {atLimit} held, {negative} braking, {sample.PackVoltage} V");
        }
        Assert.True(held > 3000 && braking > 3000 && mixed > 2000, $"{held} {braking} {mixed}");
        Bound.Check($"pack power, relative ({where})", worst, 1e-9);
    }

    // Four motors, all at their driving limits at the open-circuit voltage, none of which is there at the terminal voltage:
    // a search that only repeats "who is at a limit at this voltage" swings between 7.2 V and 15.6 V for ever.
    [Fact]
    public void Motors_that_are_held_at_no_load_voltage_only_are_found()
    {
        double[] duty = [0.9, 0.82, 1, 1], backEmf = [8.9, 10.1, 9.2, 12.1], resistance = [0.072, 0.095, 0.098, 0.067];
        double[] limit = [42, 50, 44, 48], brake = [15, 0, 0, 0];
        Craft quad = TestCraft.Quad(TestCraft.NoAir);
        Craft craft = quad with
        {
            Rotors = [.. quad.Rotors.Select((r, k) => r with
            {
                Kt = 0.005, Resistance = resistance[k], CommutationDroop = 0, CurrentLimit = limit[k], BrakeCurrentLimit = brake[k],
            })],
            Battery = TestCraft.FlatBattery(15.42, 0.0357, 20),
        };
        CraftState state = CraftState.AtRest(craft);
        for (int k = 0; k < 4; k++) state.RotorSpeeds[k] = backEmf[k] / 0.005;
        using CraftBatch<Lane1> batch = TestCraft.Batch(craft, state);
        for (int k = 0; k < 4; k++) batch.SetCommand(0, k, duty[k]);
        batch.Evaluate();
        Sample sample = batch.GetSample(0);
        double taken = 20;
        for (int k = 0; k < 4; k++) taken += MotorModel.PackPower(craft.Rotors[k], sample.MotorCurrent[k], state.RotorSpeeds[k]);
        Bound.Check("pack power, swinging case, relative", Math.Abs((sample.PackVoltage * sample.PackCurrent / taken) - 1), 1e-12);
        Assert.InRange(sample.PackVoltage, 12.5, 12.9);
    }

    private static Craft RandomCraft(Random random)
    {
        Craft quad = TestCraft.Quad(TestCraft.NoAir);
        return quad with
        {
            Rotors = [.. quad.Rotors.Select(r => r with
            {
                Resistance = 0.04 + (0.08 * random.NextDouble()),
                CommutationDroop = 4e-5 * random.NextDouble(),
                CurrentLimit = 10 + (50 * random.NextDouble()),
                BrakeCurrentLimit = random.Next(3) == 0 ? 0 : 40 * random.NextDouble(),
                Kt = 0.004 + (0.002 * random.NextDouble()),
            })],
            Battery = quad.Battery with
            {
                SeriesResistance = 0.008 + (0.03 * random.NextDouble()),
                ElectronicsPower = 30 * random.NextDouble(),
            },
        };
    }
}
