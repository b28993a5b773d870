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
