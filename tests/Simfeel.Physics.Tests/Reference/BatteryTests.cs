using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Reference;

/// <summary>
/// The battery through the kernel, motors silent, against circuit algebra of the Thevenin model:
/// V = Voc - I R0 - V1, V1 = I R1 (1 - exp(-t/(R1 C1))) at constant current; at constant power V^2 - Voc V + P R0 = 0.
/// </summary>
public class BatteryTests
{
    [Theory]
    [InlineData(Integrator.Midpoint)]
    [InlineData(Integrator.RungeKutta)]
    public void Voltage_under_a_current_step_follows_the_thevenin_response(Integrator integrator)
    {
        // R0 15 mohm, R1 10 mohm, C1 1500 F, 20 A, Voc 16 V. The electronics' power is set before every step so that
        // the current is 20 A at mid-step.
        BatteryConstants battery = TestCraft.FlatBattery(16, 0.015) with { PairResistance = 0.01, PairCapacitance = 1500 };
        const double step = 2.5e-3;
        using CraftBatch<Lane1> batch = new(1);
        Craft craft = Silent(battery);
        batch.SetCraft(0, craft);
        batch.SetState(0, CraftState.AtRest(craft));
        Dictionary<int, double> expected = new() { [0] = 15.7, [2000] = 15.643306262, [6000] = 15.573575888, [18_000] = 15.509957414 };
        for (int n = 0; n <= 18_000; n++)
        {
            double pair = batch.GetState(0).PairVoltage, rate = (20 / 1500.0) - (pair / 15);
            if (expected.TryGetValue(n, out double voltage))
            {
                Draw(pair);
                Bound.Check($"Thevenin, {n / 400} s, {integrator}, V", Math.Abs(Evaluated(batch).PackVoltage - voltage), 1e-9);
                Bound.Check($"Thevenin current, {integrator}, A", Math.Abs(Evaluated(batch).PackCurrent - 20), 1e-10);
            }
            Draw(pair + (0.5 * step * rate));
            batch.Step(integrator, step);
        }

        void Draw(double pair) =>
            batch.SetCraft(0, Silent(battery with { ElectronicsPower = 20 * (16 - (20 * 0.015) - pair) }));
    }

    [Fact]
    public void Constant_power_takes_the_larger_root()
    {
        // 400 W from 16 V behind 0.02 ohm: 25.834261323 A, 15.483314774 V
        Sample sample = Loaded(16, 0.02, 400);
        Bound.Check("400 W, A", Math.Abs(sample.PackCurrent - 25.834261323), 1e-9);
        Bound.Check("400 W, V", Math.Abs(sample.PackVoltage - 15.483314774), 1e-9);
        Bound.Check("400 W, W", Math.Abs((sample.PackVoltage * sample.PackCurrent) - 400), 1e-9);
    }

    // limit V^2/(4R) = 3200 W at half the voltage; the square root makes the last bits of the current count double
    [Theory]
    [InlineData(3199.9999, 8.0, 2e-3)]
    [InlineData(3200, 8.0, 1e-6)]
    [InlineData(3300, 8.0, 0)]
    [InlineData(1e6, 8.0, 0)]
    public void Beyond_the_power_limit_the_pack_gives_its_greatest_power_and_no_more(double power, double voltage, double tolerance)
    {
        Sample sample = Loaded(16, 0.02, power);
        Assert.Equal(voltage, sample.PackVoltage, tolerance + 1e-12);
        Assert.Equal(400, sample.PackCurrent, (tolerance / 0.02) + 1e-9);
    }

    [Fact]
    public void Charge_is_counted_in_coulombs()
    {
        // 30 A for 60 s from 1.3 A h: 0.615384615 of the charge left
        BatteryConstants battery = TestCraft.FlatBattery(16, 0.015, 30 * (16 - (30 * 0.015))) with { Capacity = 1.3 * 3600 };
        Craft craft = Silent(battery);
        foreach (Integrator integrator in Enum.GetValues<Integrator>())
        {
            CraftState end = TestCraft.Fly(craft, CraftState.AtRest(craft), integrator, 0.01, 6000);
            Bound.Check($"state of charge, {integrator}", Math.Abs((end.Charge / battery.Capacity) - (1 - (30 * 60 / 4680.0))), 1e-9);
            Assert.Equal(0.615384615, end.Charge / battery.Capacity, 1e-9);
        }
    }

    [Fact]
    public void Open_circuit_voltage_is_exact_at_the_nodes_and_monotone_between()
    {
        // the measured 21700 cell A of S. Sunil, K. Pattipati, B. Balasingam, IEEE Trans. Instrum. Meas. 2025 (data
        // repository), read off between its rows at our nodes, four cells in series: shape only
        double[] voltage = [.. new[] { 2.5061, 3.1630, 3.3290, 3.4750, 3.5803, 3.6590, 3.7410, 3.8270, 3.9135, 4.0000, 4.0850, 4.1932 }
            .Select(v => 4 * v)];
        BatteryConstants battery = TestCraft.FlatBattery(16, 0.015) with { OpenCircuitVoltage = voltage, Capacity = 4680 };
        Craft craft = Silent(battery);
        IReadOnlyList<double> nodes = BatteryConstants.ChargeNodes;
        double worst = 0;
        for (int n = 0; n < nodes.Count; n++) worst = Math.Max(worst, Math.Abs(At(nodes[n]) - voltage[n]));
        Bound.Check("open-circuit voltage at the nodes, V", worst, 1e-13);

        double last = At(0);
        for (int n = 1; n <= 1000; n++)
        {
            double next = At(n / 1000.0);
            Assert.True(next > last);
            last = next;
        }
        for (int n = 1; n < nodes.Count; n++)
            Assert.Equal((voltage[n] + voltage[n - 1]) / 2, At((nodes[n] + nodes[n - 1]) / 2), 1e-12);
        Assert.Equal(voltage[0], At(-0.1));
        Assert.Equal(At(1), At(1.1));

        double At(double share)
        {
            using CraftBatch<Lane1> batch = TestCraft.Batch(craft, CraftState.AtRest(craft, share));
            return Evaluated(batch).PackVoltage;
        }
    }

    private static Sample Loaded(double voltage, double resistance, double power)
    {
        Craft craft = Silent(TestCraft.FlatBattery(voltage, resistance, power));
        using CraftBatch<Lane1> batch = TestCraft.Batch(craft, CraftState.AtRest(craft));
        return Evaluated(batch);
    }

    private static Sample Evaluated(CraftBatch<Lane1> batch)
    {
        batch.Evaluate();
        return batch.GetSample(0);
    }

    private static Craft Silent(BatteryConstants battery) => new()
    {
        Mass = 1,
        I_BBcm_B = Mat3.Diagonal(1e-3, 1e-3, 2e-3),
        Rotors = [TestCraft.SilentRotor(1, 1e-5)],
        Battery = battery,
    };
}
