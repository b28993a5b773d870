using Simfeel.Physics;
using Simfeel.Physics.Air;

namespace Simfeel.Builds.Tests;

/// <summary>Age of the pack: 80 % of the capacity and twice the cells' resistances at its end (common practice).</summary>
public class WearTests
{
    [Theory]
    [InlineData(0, 1, 1)]
    [InlineData(50, 0.9, 1.5)]
    [InlineData(100, 0.8, 2)]
    public void CapacityFallsAndCellsResist(double wear, double capacity, double resistance)
    {
        const string pack = "resistance_per_cell_mohm = 4\npair_resistance_per_cell_mohm = 2\nlead_resistance_mohm = 3\npair_time_s = 12\n";
        Build fresh = BuildText.Read(BuildText.With("battery", pack)), worn = BuildText.Read(BuildText.With("battery", $"{pack}wear_percent = {wear}"));
        BatteryConstants battery = BuildAssembler.Assemble(worn, StandardAtmosphere.At(0)).Craft.Battery;
        Assert.Equal(capacity * 1.3 * 3600, battery.Capacity, 9);
        // leads do not wear
        Assert.Equal((6 * resistance * 0.004) + 0.003, battery.SeriesResistance, 12);
        Assert.Equal(6 * resistance * 0.002, battery.PairResistance, 12);
        Assert.Equal(12, battery.PairResistance * battery.PairCapacitance, 9);
        Assert.Equal(fresh.Battery.Mass, worn.Battery.Mass);
        Assert.Equal(fresh.Battery.NominalEnergy, worn.Battery.NominalEnergy);
        Assert.Equal(wear / 100, worn.Battery.Wear, 12);
        Assert.Equal(worn.Battery with { CellVoltage = [] }, BuildEditor.Edit(fresh, "battery.wear_percent", wear).Build!.Battery with { CellVoltage = [] });
    }
}
