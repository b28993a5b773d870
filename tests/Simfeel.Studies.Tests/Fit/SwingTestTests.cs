using Simfeel.Studies.Fit;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>The bifilar swing test against published and independently derived numbers.</summary>
public class SwingTestTests
{
    /// <summary>
    /// A bar of 0.3 x 0.04 m and 0.6 kg on wires 0.2 m apart and 1 m long. Inertia by the box formula; periods at 10, 20 and
    /// 30 degrees from an independent integration of the exact equation of motion, done with another program than this.
    /// </summary>
    [Theory]
    [InlineData(0, 1.752978721)]
    [InlineData(10, 1.756395729)]
    [InlineData(20, 1.766706932)]
    [InlineData(30, 1.784096790)]
    public void Exact_period_of_a_bar(double degrees, double period)
    {
        const double inertia = 0.6 / 12 * ((0.3 * 0.3) + (0.04 * 0.04));
        // the independent numbers are good to 1.2e-7 s; a fourth-order integration in steps of 0.1 ms agrees with ours to 1e-12
        Assert.Equal(period, SwingTest.ExactPeriod(inertia, 0.6, 0.2, 1, degrees * Math.PI / 180, 9.80665), 2e-7);
        SwingTest test = new()
        {
            Mass = new(0.6, 0),
            Spacing = new(0.2, 0),
            Length = new(1, 0),
            Period = new(period, 0),
            Swing = new(degrees * Math.PI / 180, 0),
        };
        Assert.Equal(0.00458, test.Inertia().Value, 1e-8);
    }

    /// <summary>
    /// I. E. Irodov, Problems in General Physics, 4.45: a rod of 1.5 kg and 0.90 m hung at its ends swings with
    /// T = 2 pi sqrt(l / 3g) = 1.10 s with wires of length l; its inertia is m l^2 / 12.
    /// </summary>
    [Fact]
    public void Irodovs_rod()
    {
        double period = 2 * Math.PI * Math.Sqrt(0.9 / (3 * 9.80665));
        Assert.Equal(1.10, period, 2);
        SwingTest test = new() { Mass = new(1.5, 0), Spacing = new(0.9, 0), Length = new(0.9, 0), Period = new(period, 0) };
        Assert.Equal(1.5 * 0.9 * 0.9 / 12, test.Inertia().Value, 12);
    }

    /// <summary>Propagation of all inputs against drawing them many times.</summary>
    [Fact]
    public void Uncertainty_is_that_of_many_draws()
    {
        SwingTest test = new()
        {
            Mass = new(0.598, 0.002),
            Spacing = new(0.2, 0.0008),
            Length = new(1, 0.002),
            Period = new(1.0, 0.004),
            Swing = new(0.3, 0.05),
            RigMass = new(0.05, 0.001),
            RigInertia = new(2e-4, 1e-5),
        };
        WithSigma inertia = test.Inertia();
        Random random = new(1);
        double sum = 0, squares = 0;
        const int draws = 3000;
        for (int n = 0; n < draws; n++)
        {
            double value = new SwingTest
            {
                Mass = Draw(test.Mass),
                Spacing = Draw(test.Spacing),
                Length = Draw(test.Length),
                Period = Draw(test.Period),
                Swing = Draw(test.Swing),
                RigMass = Draw(test.RigMass),
                RigInertia = Draw(test.RigInertia),
            }.Inertia().Value;
            sum += value;
            squares += value * value;
        }
        double mean = sum / draws, sigma = Math.Sqrt((squares / draws) - (mean * mean));
        // 3000 draws know their own scatter to 1.3 %
        Assert.Equal(1, inertia.Sigma / sigma, 0.05);
        Assert.Equal(1, inertia.Value / mean, 0.005);
        Assert.Equal(1, test.Shares().Sum(share => share.Share), 9);
        Assert.Equal("period", test.Shares()[0].Name);

        WithSigma Draw(WithSigma of) =>
            new(of.Value + (of.Sigma * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble())), 0);
    }

    /// <summary>A frame that swings along is taken off: its own swing and the swing with the craft give the craft's.</summary>
    [Fact]
    public void A_rig_is_taken_off()
    {
        const double craft = 0.0015, rig = 0.0004;
        SwingTest test = new()
        {
            Mass = new(0.6, 0),
            Spacing = new(0.2, 0),
            Length = new(1, 0),
            Period = new(SwingTest.ExactPeriod(craft + rig, 0.7, 0.2, 1, 0, 9.80665), 0),
            RigMass = new(0.1, 0),
            RigInertia = new(rig, 0),
        };
        Assert.Equal(craft, test.Inertia().Value, 10);
        FitException error = Assert.Throws<FitException>(() => (test with { RigInertia = new(0.01, 0) }).Inertia());
        Assert.Contains("frame", error.Message, StringComparison.Ordinal);
    }
}
