using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>Wakes and ground over lanes, against their formulas and statistics.</summary>
public class SurroundingsTests
{
    private const double Interval = 0.001, Speed = 1000;

    private static readonly Craft Craft = Heavy();
    private static readonly double Hover = DynamicInflow.HoverInflow(Craft.Rotors[0].Table) * Craft.Rotors[0].Radius * Speed;

    [Fact]
    public void Noise_is_white_and_one_for_every_rotor()
    {
        const int count = 40000;
        double[] a = [.. Enumerable.Range(0, count).Select(n => WakeNoise.At(3, n, 0))];
        double[] b = [.. Enumerable.Range(0, count).Select(n => WakeNoise.At(3, n, 1))];
        double[] c = [.. Enumerable.Range(0, count).Select(n => WakeNoise.At(4, n, 0))];
        double error = 4 / Math.Sqrt(count);
        Assert.InRange(a.Average(), -error, error);
        Assert.InRange(Correlation(a, a), 1 - error, 1 + error);
        Assert.InRange(Correlation(a, b), -error, error);
        Assert.InRange(Correlation(a, c), -error, error);
        Assert.InRange(Correlation(a[1..], a[..^1]), -error, error);
        Assert.All(a, x => Assert.InRange(x, -Math.Sqrt(3), Math.Sqrt(3)));

        static double Correlation(double[] x, double[] y) => x.Zip(y, (p, q) => p * q).Average();
    }

    /// <summary>
    /// In steady descent: mean and deviation as <see cref="WakeModel"/> states them, and a noise that forgets in the wake's own time
    /// 2 R / v_h (correlation exp(-1) after it), at every speed of descent.
    /// </summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(0.9)]
    [InlineData(1.25)]
    [InlineData(1.6)]
    [InlineData(2)]
    public void Descent_loses_and_shakes_thrust_as_stated(double descent)
    {
        double[] factors = Factors(new(0, 0, descent * Hover), Quat.Identity, 60000, AirEffects.Wake)[5000..];
        double depth = WakeModel.Depth(descent, 0);
        double mean = factors.Average();
        double deviation = Math.Sqrt(factors.Select(f => (f - mean) * (f - mean)).Average());
        int lag = (int)Math.Round(WakeModel.LagInRadii * Craft.Rotors[0].Radius / Hover / Interval);
        double error = 4 * depth * WakeModel.Spread * Math.Sqrt(2.0 * lag / factors.Length);
        Assert.InRange(mean, 1 - (depth * WakeModel.Loss) - error - 1e-12, 1 - (depth * WakeModel.Loss) + error + 1e-12);
        if (depth == 0)
        {
            Assert.All(factors, factor => Assert.Equal(1, factor));
            return;
        }
        Assert.InRange(deviation / (depth * WakeModel.Spread), 0.92, 1.05);
        double later = factors.Skip(lag).Zip(factors, (p, q) => (p - mean) * (q - mean)).Average() / (deviation * deviation);
        Assert.InRange(later, Math.Exp(-1) - 0.08, Math.Exp(-1) + 0.08);
    }

    [Fact]
    public void Depth_has_the_published_range_and_worst_place()
    {
        Assert.Equal(0, WakeModel.Depth(0.5, 0));
        Assert.InRange(WakeModel.Depth(0.6, 0), 0.01, 0.2);
        Assert.Equal(1, WakeModel.Depth(1.25, 0));
        Assert.InRange(WakeModel.Depth(1.6, 0), 0.05, 0.3);
        Assert.Equal(0, WakeModel.Depth(1.75, 0));
        Assert.Equal(0.5, WakeModel.Depth(1.25, 0.5));
    }

    [Fact]
    public void Sideways_flow_sweeps_a_rotors_own_wake_away()
    {
        // one rotor alone: no neighbour's wake
        Craft single = Craft with { Rotors = [Craft.Rotors[0]] };
        double still = Worst(single, new(0, 0, 1.25 * Hover))[0], swept = Worst(single, new(0, 2 * Hover, 1.25 * Hover))[0];
        Assert.True(still > 0.15 && swept < 0.01, $"{still} {swept}");
    }

    /// <summary>Half the wake is left where the flow in the disc's plane is half the induced velocity of hover, as in <see cref="WakeModel.Depth"/>.</summary>
    [Fact]
    public void Slow_sideways_flow_takes_half_the_wake_away()
    {
        Craft single = Craft with { Rotors = [Craft.Rotors[0]] };
        double still = Mean(new(0, 0, 1.25 * Hover)), half = Mean(new(0, 0.5 * Hover, 1.25 * Hover));
        Assert.Equal(WakeModel.Depth(1.25, 0.5) / WakeModel.Depth(1.25, 0), half / still, 0.01);

        double Mean(Vec3 velocity)
        {
            using CraftBatch<Lane1> batch = Start(single, velocity, Quat.Identity, AirEffects.Wake, double.PositiveInfinity);
            double sum = 0;
            for (int n = 0; n < 4000; n++)
            {
                batch.RefreshSurroundings(1, n, Interval);
                batch.Evaluate();
                sum += 1 - batch.GetSample(0).ThrustFactor[0];
            }
            return sum;
        }
    }

    /// <summary>
    /// A square turned by a quarter is the same square: what flying forward does to the rear rotors, flying to a side does to
    /// those on the other side, and what is beside the track is spared.
    /// </summary>
    [Fact]
    public void Neighbours_wake_is_alike_in_every_direction()
    {
        double[] forward = Worst(Craft, new(4 * Hover, 0, Hover)), right = Worst(Craft, new(0, 4 * Hover, Hover));
        double[] back = Worst(Craft, new(-4 * Hover, 0, Hover)), left = Worst(Craft, new(0, -4 * Hover, Hover));
        int[][] behind = [[1, 2], [2, 3], [3, 0], [0, 1]];
        double[][] flights = [forward, right, back, left];
        for (int n = 0; n < 4; n++)
            for (int k = 0; k < 4; k++)
                Assert.True(behind[n].Contains(k) ? flights[n][k] > 0.15 : flights[n][k] < 0.01, $"direction {n}, rotor {k}: {flights[n][k]}");
        // diagonally only the last rotor stands in line behind another one
        double[] diagonal = Worst(Craft, new(2.8 * Hover, 2.8 * Hover, Hover));
        Assert.True(diagonal[2] > 0.15 && diagonal[0] < 0.01 && diagonal[1] < 0.01 && diagonal[3] < 0.01, string.Join(' ', diagonal));
    }

    /// <summary>However seldom the surroundings are renewed, thrust stays within what depth and noise allow.</summary>
    [Fact]
    public void Coarse_renewals_stay_within_bounds()
    {
        double most = 1 - WakeModel.Loss + (WakeModel.Spread * WakeModel.MostDeviations), least = 1 - WakeModel.Loss - (WakeModel.Spread * WakeModel.MostDeviations);
        using CraftBatch<Lane1> batch = Start(Craft, new(0, 0, 1.25 * Hover), Quat.Identity, AirEffects.Wake, double.PositiveInfinity);
        double sum = 0, squares = 0;
        const int count = 4000;
        for (int n = 0; n < count; n++)
        {
            batch.RefreshSurroundings(1, n, 0.1);
            batch.Evaluate();
            double factor = batch.GetSample(0).ThrustFactor[0];
            Assert.InRange(factor, least, most);
            sum += factor;
            squares += factor * factor;
        }
        double mean = sum / count;
        Assert.InRange(Math.Sqrt((squares / count) - (mean * mean)) / WakeModel.Spread, 0.9, 1.05);
    }

    /// <summary>
    /// Pushed through its own wake: sinking at v_h while moving forward, the front rotors' wakes stay level with the disc and
    /// pass over the rear rotors; in level flight and in climb they pass below.
    /// </summary>
    [Fact]
    public void Neighbours_wake_reaches_the_rotor_behind()
    {
        double[] pushed = Worst(Craft, new(4 * Hover, 0, Hover)), climbing = Worst(Craft, new(4 * Hover, 0, -2 * Hover));
        Assert.True(pushed[1] > 0.15 && pushed[2] > 0.15, "rear rotors are shaken");
        Assert.True(pushed[0] < 0.01 && pushed[3] < 0.01, "front rotors are not");
        Assert.All(climbing, worst => Assert.Equal(0, worst));
    }

    [Theory]
    [InlineData(0.1, 0)]
    [InlineData(0.5, 0)]
    [InlineData(1, 0)]
    [InlineData(2, 0)]
    [InlineData(1, 1.5)]
    public void Ground_gives_what_the_formula_says(double heightInRadii, double speedInHover)
    {
        RotorConstants rotor = Craft.Rotors[0];
        double ground = (heightInRadii * rotor.Radius) + rotor.p_BcmR_B.Z;
        Sample sample = Settled(Craft, new(0, speedInHover * Hover, 0), Quat.Identity, AirEffects.Ground, ground);
        Assert.Equal(GroundEffect.ThrustRatio(heightInRadii, speedInHover), sample.ThrustFactor[0], 1e-5);
    }

    /// <summary>Rolled, the lower rotors are nearer to the ground: each has the height of its own hub.</summary>
    [Theory]
    [InlineData(0.3, 0)]
    [InlineData(0, 0.25)]
    public void A_tilted_craft_feels_the_ground_at_each_hub(double roll, double pitch)
    {
        const double ground = 0.12;
        Quat attitude = Quat.FromEuler(roll, pitch, 0);
        Sample sample = Settled(Craft, Vec3.Zero, attitude, AirEffects.Ground, ground);
        double upright = Math.Cos(roll) * Math.Cos(pitch), radius = Craft.Rotors[0].Radius;
        for (int k = 0; k < 4; k++)
        {
            double height = (ground - attitude.Rotate(Craft.Rotors[k].p_BcmR_B).Z) / radius;
            // 1 / (1 - (cos / 4 z)^2), z = height over radius: the formula with the share of the thrust that points down
            Assert.Equal(1 / (1 - Math.Pow(upright / (4 * height), 2)), sample.ThrustFactor[k], 1e-5);
        }
    }

    [Fact]
    public void Ground_is_not_felt_upside_down_from_afar_or_from_below()
    {
        double radius = Craft.Rotors[0].Radius;
        Sample inverted = Settled(Craft, Vec3.Zero, Quat.FromEuler(Math.PI, 0, 0), AirEffects.Ground, radius);
        Sample high = Settled(Craft, Vec3.Zero, Quat.Identity, AirEffects.Ground, 100);
        Sample below = Settled(Craft, Vec3.Zero, Quat.Identity, AirEffects.Ground, -1);
        for (int k = 0; k < 4; k++)
        {
            Assert.Equal(1, inverted.ThrustFactor[k]);
            Assert.Equal(1, high.ThrustFactor[k], 1e-6);
            Assert.Equal(1, below.ThrustFactor[k]);
        }
    }

    /// <summary>Seeds matter with the wake only; the same seed gives the same bits.</summary>
    [Fact]
    public void Runs_repeat_with_their_seed_and_need_none_without_the_wake()
    {
        Assert.Equal(Hash(AirEffects.All, 1), Hash(AirEffects.All, 1));
        Assert.NotEqual(Hash(AirEffects.All, 1), Hash(AirEffects.All, 2));
        Assert.Equal(Hash(AirEffects.All & ~AirEffects.Wake, 1), Hash(AirEffects.All & ~AirEffects.Wake, 2));
        Assert.Equal(Hash(AirEffects.None, 1), Hash(AirEffects.None, 2));

        static ulong Hash(AirEffects effects, int seed)
        {
            Craft quad = TestCraft.Quad(TestCraft.Constant(0.018, 0.0022, 0.03, 0.004));
            CraftState state = CraftState.AtRest(quad);
            state.v_WB = new(0, 0, 6);
            state.RotorSpeeds = PerRotor.All(900);
            using CraftBatch<Lane1> batch = TestCraft.Batch(quad, state, 1.2, 9.81, default, 0.3);
            batch.SetEffects(effects, 1);
            for (int n = 0; n < 800; n++)
            {
                if (n % 8 == 0) batch.RefreshSurroundings(seed, n / 8, Interval);
                batch.Step(Integrator.Midpoint, 1 / 8000.0);
            }
            return batch.Hash(0);
        }
    }

    /// <summary>Largest loss of each rotor in two seconds.</summary>
    private static double[] Worst(Craft craft, Vec3 velocity)
    {
        using CraftBatch<Lane1> batch = Start(craft, velocity, Quat.Identity, AirEffects.Wake, double.PositiveInfinity);
        double[] worst = new double[craft.Rotors.Count];
        for (int n = 0; n < 2000; n++)
        {
            batch.RefreshSurroundings(1, n, Interval);
            batch.Evaluate();
            for (int k = 0; k < worst.Length; k++) worst[k] = Math.Max(worst[k], 1 - batch.GetSample(0).ThrustFactor[k]);
        }
        return worst;
    }

    private static double[] Factors(Vec3 velocity, Quat attitude, int count, AirEffects effects)
    {
        using CraftBatch<Lane1> batch = Start(Craft, velocity, attitude, effects, double.PositiveInfinity);
        double[] factors = new double[count];
        for (int n = 0; n < count; n++)
        {
            batch.RefreshSurroundings(1, n, Interval);
            batch.Evaluate();
            factors[n] = batch.GetSample(0).ThrustFactor[0];
        }
        return factors;
    }

    private static Sample Settled(Craft craft, Vec3 velocity, Quat attitude, AirEffects effects, double ground)
    {
        using CraftBatch<Lane1> batch = Start(craft, velocity, attitude, effects, ground);
        for (int n = 0; n < 500; n++) batch.RefreshSurroundings(1, n, Interval);
        batch.Evaluate();
        return batch.GetSample(0);
    }

    private static CraftBatch<Lane1> Start(Craft craft, Vec3 velocity, Quat attitude, AirEffects effects, double ground)
    {
        CraftState state = CraftState.AtRest(craft);
        state.v_WB = velocity;
        state.q_WB = attitude;
        state.RotorSpeeds = PerRotor.All(Speed);
        CraftBatch<Lane1> batch = TestCraft.Batch(craft, state, 1.2);
        batch.SetEffects(effects, ground);
        return batch;
    }

    /// <summary>A square quad in front-right, rear-right, rear-left, front-left order, too heavy to change its state.</summary>
    private static Craft Heavy()
    {
        Craft quad = TestCraft.Quad(TestCraft.Constant(0.018, 0.0022, 0.03, 0.004));
        return quad with
        {
            Rotors = [.. quad.Rotors.Select((rotor, k) => rotor with { p_BcmR_B = new(k is 0 or 3 ? 0.08 : -0.08, k < 2 ? 0.08 : -0.08, -0.02) })],
        };
    }
}
