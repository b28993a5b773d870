using Simfeel.Flight.Tuning;
using Xunit.Abstractions;

namespace Simfeel.Flight.Tests.Tuning;

/// <summary>What the policy claims, beside what the flight itself does.</summary>
public class LoopMeasurementTests(ITestOutputHelper output)
{
    public static TheoryData<string> Names => [.. Starters.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void Matched_margins_hold_on_the_flight(string name)
    {
        TunedUnit unit = Starters.Get(name);
        for (int axis = 0; axis < 3; axis++)
        {
            AxisTuning claimed = axis switch { 0 => unit.Roll, 1 => unit.Pitch, _ => unit.Yaw };
            LoopMeasurement flown = LoopMeasurement.Of(unit, Starters.Profile, axis, 0.7 * claimed.Crossover, 6 * claimed.Crossover, 32);
            output.WriteLine($"{name} {axis}: crossover {claimed.Crossover:F1} {flown.Crossover:F1} rad/s, phase margin {claimed.PhaseMargin:F4} {flown.PhaseMargin:F4}, gain margin {claimed.GainMargin:F3} {flown.GainMargin:F3}");
            Assert.False(flown.Saturated);
            Assert.Equal(1, flown.Crossover / claimed.Crossover, 0.03);
            // tuned axis by axis: a product of inertia ties yaw to the roll loop, which the plant of yaw alone does not know
            Assert.Equal(1, flown.PhaseMargin / claimed.PhaseMargin, axis == 2 && Tie(unit) > 0.03 ? 0.05 : 0.03);
            Assert.True(flown.GainMargin > MatchedTuning.GainMargin);
            // where the product of inertia ties roll to yaw the other loop has a say far above the crossover
            Assert.Equal(1, flown.GainMargin / claimed.GainMargin, axis == 1 ? 0.03 : 0.1);
        }
    }

    /// <summary>Product of inertia between roll and yaw over the root of their moments.</summary>
    private static double Tie(TunedUnit unit)
    {
        Physics.Maths.Mat3 inertia = unit.Unit.Craft.I_BBcm_B;
        return Math.Abs(inertia.M02) / Math.Sqrt(inertia.M00 * inertia.M22);
    }
}
