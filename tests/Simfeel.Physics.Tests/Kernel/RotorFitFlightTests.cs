using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;
using Simfeel.Physics.Tests.Rotors;
using Xunit.Abstractions;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>Flights by polynomials for the rotors against the same flights by their tables.</summary>
public class RotorFitFlightTests(ITestOutputHelper output)
{
    private const double Step = 1.0 / 8000;

    private static readonly RotorTable Table = RotorTableBuilder.Build(Specimens.Default(2), Specimens.SeaLevel);

    /// <summary>Half a second of hard commands, 4 ms holds: bounds set from the first run, with room for about three times.</summary>
    [Fact]
    public void Flights_end_where_those_by_the_tables_do()
    {
        Check<Lane1>();
        Check<Lane4>();
        Check<Lane8>();
        Check<LaneF16>();

        void Check<T>()
            where T : unmanaged, ILane<T>
        {
            (double way, double angle) = Apart(Fly<T>(0), Fly<T>(32));
            output.WriteLine($"{typeof(T).Name}: {1000 * way:f3} mm, {angle / Math.PI * 180:f4} deg apart");
            Assert.InRange(way, 1e-9, 1e-4);
            Assert.InRange(angle, 1e-9, 0.01 * Math.PI / 180);
        }
    }

    /// <summary>Second order: half the hold, a quarter of what it changes.</summary>
    [Fact]
    public void What_polynomials_change_falls_with_the_square_of_their_hold()
    {
        CraftState[] table = Fly<Lane8>(0);
        double[] apart = [.. new[] { 64, 32, 16 }.Select(hold => Apart(table, Fly<Lane8>(hold)).Way)];
        output.WriteLine(string.Join(", ", apart.Select(a => $"{1000 * a:f4} mm")));
        Assert.InRange(Math.Sqrt(apart[0] / apart[2]), 2.5, 6.5);
    }

    /// <summary>Samples are worked out with the tables whatever the batch flies by.</summary>
    [Fact]
    public void Samples_keep_to_the_tables()
    {
        Craft craft = TestCraft.Quad(Table);
        CraftState state = Start(craft, 0);
        using CraftBatch<Lane1> byTable = TestCraft.Batch(craft, state, 1.2, 9.8), fitted = TestCraft.Batch(craft, state, 1.2, 9.8);
        fitted.SetRotorModel(RotorModel.Polynomials);
        for (int n = 0; n < 20; n++) fitted.Step(Integrator.Midpoint, Step);
        fitted.Evaluate();
        byTable.SetState(0, fitted.GetState(0));
        byTable.Evaluate();
        for (int k = 0; k < 4; k++) Assert.Equal(byTable.GetSample(0).Thrust[k], fitted.GetSample(0).Thrust[k]);
    }

    [Fact]
    public void A_hold_of_no_step_is_refused()
    {
        using CraftBatch<Lane1> batch = new(4);
        Assert.Throws<ArgumentOutOfRangeException>(() => batch.SetRotorModel(RotorModel.Polynomials, 0));
    }

    private static (double Way, double Angle) Apart(CraftState[] a, CraftState[] b)
    {
        double way = 0, angle = 0;
        for (int n = 0; n < a.Length; n++)
        {
            Quat p = a[n].q_WB, q = b[n].q_WB;
            double x = (p.W * q.X) - (p.X * q.W) - (p.Y * q.Z) + (p.Z * q.Y), y = (p.W * q.Y) - (p.Y * q.W) - (p.Z * q.X) + (p.X * q.Z);
            double z = (p.W * q.Z) - (p.Z * q.W) - (p.X * q.Y) + (p.Y * q.X);
            way = Math.Max(way, (a[n].p_WB - b[n].p_WB).Length);
            angle = Math.Max(angle, 2 * Math.Sqrt((x * x) + (y * y) + (z * z)));
        }
        return (way, angle);
    }

    private static CraftState Start(Craft craft, int lane)
    {
        CraftState state = CraftState.AtRest(craft);
        state.v_WB = new(2 + lane, 1 - lane, 0.3 * lane);
        state.w_WB_B = new(1 - lane, 2, 0.2 * lane);
        for (int k = 0; k < 4; k++) state.RotorSpeeds[k] = 1000 + (40 * k);
        return state;
    }

    private static CraftState[] Fly<T>(int hold)
        where T : unmanaged, ILane<T>
    {
        using CraftBatch<T> batch = new(4);
        for (int lane = 0; lane < T.Width; lane++)
        {
            Craft craft = TestCraft.Quad(Table, lane % 4);
            batch.SetCraft(lane, craft);
            batch.SetField(lane, 1.225, 9.8);
            batch.SetState(lane, Start(craft, lane % 4));
        }
        if (hold > 0) batch.SetRotorModel(RotorModel.Polynomials, hold);
        for (int n = 0; n < 4000; n++)
        {
            if (n % 64 == 0)
            {
                for (int k = 0; k < 4; k++)
                    batch.SetCommand(0, k, 0.45 + (0.25 * Math.Sin(n * 0.002)) + (0.1 * Math.Sin((n * 0.01) + (1.5 * k))));
            }
            batch.Step(Integrator.Midpoint, Step);
        }
        return [.. Enumerable.Range(0, T.Width).Select(batch.GetState)];
    }
}
