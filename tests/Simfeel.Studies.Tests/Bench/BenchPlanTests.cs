using Simfeel.Physics.Maths;
using Simfeel.Studies.Bench;
using Simfeel.Studies.Bench.Measuring;

namespace Simfeel.Studies.Tests.Bench;

/// <summary>What errors of the readings cost, against the formula of the small swing, I = m g d^2 T^2 / (16 pi^2 L); words by hand.</summary>
public class BenchPlanTests
{
    [Fact]
    public void Costs_are_those_of_the_small_swing()
    {
        BenchPlan plan = BenchPlan.Of(BenchCases.Wagtail);
        Mat3 tensor = plan.Build.Craft.I_BBcm_B;
        double mass = plan.Build.Craft.Mass;
        foreach (SwingPlan test in plan.Tests)
        {
            double d = test.Spacing, gyration = Math.Sqrt(test.Axis.Moment(tensor) / mass);
            // rounded up to a centimetre, wires to half a metre
            Assert.InRange(d, (2.5 * gyration) - 1e-9, (2.5 * gyration) + 0.01);
            Assert.Equal(Math.Round(100 * d), 100 * d, 1e-6);
            Assert.True(test.Length == 1 || (test.Length >= (4 * d) - 1e-9 && test.Length < (4 * d) + 0.5));
            double[] costs = [.. test.Costs.Select(cost => cost.Percent)];
            Assert.Equal(7, costs.Length);
            Relative(100 * Math.Min(1e-3, 0.002 * mass) / mass, costs[0], 1e-6);
            Relative(100 * 2 * 5e-4 / d, costs[1], 0.03);
            Relative(100 * 1e-3 / test.Length, costs[2], 0.03);
            // twenty swings timed to 0.2 s, three times
            Relative(100 * 2 * (0.2 / 20 / Math.Sqrt(3)) / test.Period, costs[3], 0.01);
            // T grows by 1 + swing^2 / 16: 3 degrees of 10
            Relative(100 * 10 * 3 * Math.Pow(Math.PI / 180, 2) / 4, costs[4], 0.2);
            Relative(100 * Leaning(tensor, (int)test.Axis), costs[5], 0.02);
            // the product of both distances from the balance point, 3 mm off the middle
            Relative(100 * (1 - (((d / 2) + 0.003) * ((d / 2) - 0.003) / (d * d / 4))), costs[6], 1e-6);
        }
        Assert.Equal(0.25 * plan.Build.Build.Frame.Wheelbase, plan.Support, 0.0051);

        static void Relative(double expected, double actual, double tolerance) => Assert.Equal(1, actual / expected, tolerance);
    }

    /// <summary>Where the model's balance point lies, seen by the pilot: x forward, y right, z down.</summary>
    [Theory]
    [InlineData(BenchAxis.X, 5, "5.0 mm too far forward")]
    [InlineData(BenchAxis.X, -5, "5.0 mm too far back")]
    [InlineData(BenchAxis.Y, 5, "5.0 mm too far to the right")]
    [InlineData(BenchAxis.Y, -5, "5.0 mm too far to the left")]
    [InlineData(BenchAxis.Z, 5, "5.0 mm too low")]
    [InlineData(BenchAxis.Z, -5, "5.0 mm too high")]
    public void Sides_are_named(BenchAxis axis, double millimetres, string words) =>
        Assert.Equal($"the model is {words}", BenchVerdicts.Short(Quantity(BenchKind.Balance, axis, 1e-3 * millimetres, new(0, [new("edge", 1e-3)]))));

    [Fact]
    public void A_table_says_low_high_agreed_or_nothing()
    {
        Measurement measured = new(0.6, [new("scale", 1e-3)]);
        Assert.Equal("the model is low", BenchVerdicts.Short(Quantity(BenchKind.Mass, BenchAxis.X, 0.59, measured)));
        Assert.Equal("the model is high", BenchVerdicts.Short(Quantity(BenchKind.Mass, BenchAxis.X, 0.61, measured)));
        Assert.Equal("agrees within the band", BenchVerdicts.Short(Quantity(BenchKind.Mass, BenchAxis.X, 0.6015, measured)));
        Assert.Equal("not measured", BenchVerdicts.Short(Quantity(BenchKind.Mass, BenchAxis.X, 0.6, null)));
    }

    [Fact]
    public void Percent_is_of_what_was_measured_and_a_coordinate_has_none()
    {
        Measurement measured = new(0.5, [new("scale", 0.01)]);
        BenchQuantity mass = Quantity(BenchKind.Mass, BenchAxis.X, 0.6, measured);
        Assert.Equal(20, mass.Percent, 1e-12);
        Assert.Equal(1.959964 * 2, mass.BandPercent, 1e-5);
        Assert.True(double.IsNaN(Quantity(BenchKind.Mass, BenchAxis.X, 0.6, null).Percent));
        Assert.True(double.IsNaN(Quantity(BenchKind.Mass, BenchAxis.X, 0.6, null).BandPercent));
        BenchQuantity place = Quantity(BenchKind.Balance, BenchAxis.X, 0.6, measured);
        Assert.True(double.IsNaN(place.Percent) && double.IsNaN(place.BandPercent));
        Assert.Equal(0.1, place.Difference, 1e-12);
    }

    [Theory]
    [InlineData(BenchKind.Mass, 0.09994, "99.9")]
    [InlineData(BenchKind.Mass, 0.1, "100")]
    [InlineData(BenchKind.Mass, 0.5984, "598")]
    [InlineData(BenchKind.Balance, -0.00514, "-5.1")]
    [InlineData(BenchKind.Balance, 0.1234, "123.4")]
    [InlineData(BenchKind.Inertia, 1.4467e-3, "1.447")]
    [InlineData(BenchKind.Inertia, 0.0123456, "12.35")]
    [InlineData(BenchKind.Inertia, 1.23456e-5, "0.01235")]
    public void Numbers_have_the_digits_that_mean_something(BenchKind kind, double value, string text) =>
        Assert.Equal(text, Quantity(kind, BenchAxis.X, value, null).Text(value));

    private static BenchQuantity Quantity(BenchKind kind, BenchAxis axis, double model, Measurement? measured) =>
        new(kind, axis, "key", "title", model, false, measured);

    /// <summary>Largest relative change of the moment about an axis that leans by three degrees: u I u over all directions.</summary>
    private static double Leaning(Mat3 tensor, int n)
    {
        Vec3[] axes = [Vec3.UnitX, Vec3.UnitY, Vec3.UnitZ];
        double lean = 3 * Math.PI / 180, upright = Vec3.Dot(axes[n], tensor * axes[n]), most = 0;
        for (int degree = 0; degree < 360; degree++)
        {
            double way = degree * Math.PI / 180;
            Vec3 aside = (Math.Cos(way) * axes[(n + 1) % 3]) + (Math.Sin(way) * axes[(n + 2) % 3]);
            Vec3 line = (Math.Cos(lean) * axes[n]) + (Math.Sin(lean) * aside);
            most = Math.Max(most, Math.Abs((Vec3.Dot(line, tensor * line) / upright) - 1));
        }
        return most;
    }
}
