using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Motors;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>
/// A hundred thousand packs with motors at and near their limits, some of which no simple repetition solves: in each one Kirchhoff's and
/// Joule's laws hold, and every current is the one that its motor takes at that voltage.
/// </summary>
public class RarePackStatesTests
{
    [Fact]
    public void Voltage_and_currents_agree_in_every_pack()
    {
        Random random = new(7);
        using CraftBatch<Lane8> batch = new(4);
        double power = 0, kirchhoff = 0, currents = 0;
        Craft[] craft = new Craft[8];
        double[,] duty = new double[8, 4];
        for (int n = 0; n < 12_500; n++)
        {
            for (int lane = 0; lane < 8; lane++)
            {
                craft[lane] = Of(random);
                batch.SetCraft(lane, craft[lane]);
                CraftState state = CraftState.AtRest(craft[lane], 0.05 + (0.95 * random.NextDouble()));
                for (int k = 0; k < 4; k++)
                {
                    state.RotorSpeeds[k] = 3400 * random.NextDouble();
                    duty[lane, k] = random.Next(3) == 0 ? 1 : random.NextDouble();
                    batch.SetCommand(lane, k, duty[lane, k]);
                }
                batch.SetState(lane, state);
            }
            batch.Evaluate();
            for (int lane = 0; lane < 8; lane++)
            {
                Sample sample = batch.GetSample(lane);
                BatteryConstants pack = craft[lane].Battery;
                double source = pack.OpenCircuitVoltageAt(sample.State.Charge / pack.Capacity), taken = pack.ElectronicsPower, size = taken;
                // a pack that cannot give what is asked for stays where it gives most
                if (sample.PackVoltage < 0.501 * source) continue;
                for (int k = 0; k < 4; k++)
                {
                    RotorConstants rotor = craft[lane].Rotors[k];
                    double w = sample.State.RotorSpeeds[k], own = MotorModel.PackPower(rotor, sample.MotorCurrent[k], w);
                    taken += own;
                    size += Math.Abs(own);
                    currents = Math.Max(currents, Math.Abs(sample.MotorCurrent[k] - MotorModel.Current(rotor, duty[lane, k], sample.PackVoltage, w)));
                }
                power = Math.Max(power, Math.Abs((sample.PackVoltage * sample.PackCurrent) - taken) / size);
                kirchhoff = Math.Max(kirchhoff, Math.Abs(source - (pack.SeriesResistance * sample.PackCurrent) - sample.PackVoltage));
            }
        }
        Bound.Check("pack power in rare states, relative", power, 1e-9);
        Bound.Check("source less what the resistance takes, V", kirchhoff, 1e-9);
        Bound.Check("currents at that voltage, A", currents, 1e-6);
    }

    private static Craft Of(Random random)
    {
        Craft quad = TestCraft.Quad(TestCraft.NoAir);
        return quad with
        {
            Rotors = [.. quad.Rotors.Select(r => r with
            {
                Resistance = 0.04 + (0.08 * random.NextDouble()),
                CommutationDroop = 0,
                CurrentLimit = 30 + (30 * random.NextDouble()),
                BrakeCurrentLimit = random.Next(2) == 0 ? 0 : 40 * random.NextDouble(),
            })],
            Battery = quad.Battery with { PairResistance = 0, SeriesResistance = 0.02 + (0.03 * random.NextDouble()), ElectronicsPower = 30 * random.NextDouble() },
        };
    }
}
