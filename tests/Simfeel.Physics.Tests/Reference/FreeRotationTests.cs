using Simfeel.Physics.Kernel;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Reference;

/// <summary>
/// Torque-free rotation of an asymmetric body against the closed form in Jacobi's elliptic functions (L. D. Landau,
/// E. M. Lifshitz, Mechanics, section 37; H. Goldstein, Classical Mechanics, chapter 5). The rows were computed from the
/// closed form and agree with a 30-digit Taylor integration.
/// Columns: t in s; rate in body axes, rad/s; q body to inertial as w, x, y, z.
/// </summary>
public class FreeRotationTests
{
    private static readonly double[][] CaseA =
    [
        [0.1, 0.9073887582886, 3.545945056892, 4.919942945774, 0.9532980984628, 0.07098825178200, 0.1606058992547, 0.2457420369020],
        [0.25, -0.8748251661600, 3.555139384713, 4.918468233895, 0.7253577010217, 0.06010798093524, 0.3617886955271, 0.5825394201126],
        [0.5, -3.153073610908, 1.521641434347, 5.146403433365, 0.08934936358853, -0.06245820225316, 0.3038742277906, 0.9464544985800],
        [1, -0.6776527373880, -3.603246468596, 4.910682570491, -0.8729029556009, 0.4038793757384, -0.1277431815652, 0.2420817207472],
        [2, -0.7485537958816, 3.587426043350, 4.913255865140, 0.8734769417709, 0.004315726591364, -0.09080051802123, -0.4783039542232],
        [5, 3.456047633648, -0.2504028717921, 5.194811479882, -0.2295413775364, 0.2924754458864, 0.1801337408559, 0.9106704700151],
        [10, 1.614011016794, -3.251052059315, 4.965003312243, -0.8105149990273, 0.2422654779935, -0.006741627350208, -0.5332236163047],
    ];

    private static readonly double[][] CaseB =
    [
        [0.1, 0.01056071865419, 9.999999351506, -0.001697702748788, 0.8775824417987, 0.0004813905671366, 0.4794255148569, -4.259127074788e-5],
        [0.25, 0.01367786933412, 9.999995101518, -0.004665943353741, 0.3153217707173, 0.0009529679763191, 0.9489842935853, -0.0002886038823366],
        [0.5, 0.02741678998175, 9.999963342912, -0.01276401556039, -0.8011438534872, 7.279632053367e-5, 0.5984708172773, -0.001096169604983],
        [0.75, 0.06132230601445, 9.999794098962, -0.03025072401997, -0.8205544356525, -0.003390394327324, -0.5715582591163, -0.0002824770405789],
        [1, 0.1403288922688, 9.998897878129, -0.06998606648003, 0.2836585749936, -0.003916920427652, -0.9588958523179, 0.006419888984889],
        [1.25, 0.3224840750946, 9.994154142496, -0.1611644956943, 0.9993079623222, 0.01166873453714, -0.03317640080695, 0.01211459876657],
        [1.5, 0.7409530899522, 9.969075914211, -0.3704428031119, 0.3463583790722, 0.03607271501393, 0.9372619734764, -0.01657183010965],
        [2, 3.765404062030, 9.167854780747, -1.882695391609, -0.8214441919258, -0.1996899642627, -0.5325114590765, -0.04224812038728],
        [3, 3.136497002687, -9.430418727244, -1.568240530647, -0.1285726487881, -0.07621226622517, 0.1097687062262, -0.9826553798733],
        [5, 0.01019339559894, -9.999999780326, 0.0009880933453546, 0.0005566064869497, 0.6073067666335, 6.327997641961e-5, 0.7944672286420],
    ];

    private static readonly double[][] CaseC =
    [
        [1, 0.07433081345339, 0.4035191264344, 0.4953212612912, 0.9481835029007, 0.05991007657363, 0.1848388456660, 0.2513830318155],
        [5, -0.2956497894504, 0.1681090554884, 0.5830556519755, -0.01065927617309, -0.02521908153913, 0.3729723276920, 0.9274384187286],
        [10, -0.04221780805235, -0.4110698854212, 0.4909365553464, -0.8384058668291, 0.5427629348080, -0.04788798349378, 0.01381086898427],
        [20, -0.09464457462927, 0.3964677812135, 0.4993087098289, 0.9970792903496, 0.03872127279455, 0.03338022421733, -0.05673898501293],
        [30, 0.2202324653430, -0.3036432161227, 0.5431392879442, -0.8811471853104, 0.4701825277667, 0.01172825232487, 0.04868753947208],
    ];

    /// <summary>The brick's inertia in slug ft^2: free rotation depends on ratios only. NASA/TM-2015-218675, table 4.</summary>
    private static readonly Vec3 Brick = new(0.001894220, 0.006211019, 0.007194665);

    public static TheoryData<string> Cases => ["A", "B", "C"];

    // Steps where the truncation of the fourth-order method is below the tolerance: A 2.5e-4 s, B 2.5e-4 s, C 1e-3 s.
    // Measured largest differences: A 4.4e-13, B 2.8e-12, C 7.9e-14.
    [Theory]
    [MemberData(nameof(Cases))]
    public void Runge_kutta_meets_every_row_of_the_closed_form_to_1e_9(string name)
    {
        (Craft craft, Vec3 rate, double[][] rows) = Case(name);
        double step = name == "C" ? 1e-3 : 2.5e-4;
        Bound.Check($"free rotation, case {name}", Worst(craft, rate, rows, Integrator.RungeKutta, step), 1e-9);
    }

    [Theory]
    [InlineData("A", Integrator.Midpoint, 2)]
    [InlineData("B", Integrator.Midpoint, 2)]
    [InlineData("C", Integrator.Midpoint, 2)]
    [InlineData("A", Integrator.RungeKutta, 4)]
    [InlineData("C", Integrator.RungeKutta, 4)]
    public void Error_against_the_closed_form_falls_with_the_integrators_order(string name, Integrator integrator, double order)
    {
        (Craft craft, Vec3 rate, double[][] rows) = Case(name);
        double step = integrator == Integrator.Midpoint ? 1e-3 : name == "C" ? 2e-2 : 5e-3;
        double coarse = Worst(craft, rate, rows, integrator, step);
        double fine = Worst(craft, rate, rows, integrator, step / 2);
        Bound.Between($"order, case {name}, {integrator}", Math.Log2(coarse / fine), order - 0.2, order + 0.2);
    }

    [Fact]
    public void Spin_about_the_middle_axis_grows_with_the_linear_rate()
    {
        // sigma = w2 sqrt((I3 - I2)(I2 - I1) / (I1 I3)) = 10/3 1/s (Goldstein, section 5.6); 0.1 % up to 1.25 s
        (Craft craft, Vec3 rate, _) = Case("B");
        double sigma = 10 * Math.Sqrt(0.003 * 0.0015 / (0.0045 * 0.009));
        Assert.Equal(10.0 / 3, sigma, 1e-12);
        foreach (int steps in new[] { 250, 500, 1000, 1250 })
        {
            CraftState s = TestCraft.Fly(craft, TestCraft.RigidStart(craft, rate), Integrator.RungeKutta, 1e-3, steps);
            double linear = 0.01 * Math.Cosh(sigma * steps * 1e-3);
            Assert.Equal(1, s.w_WB_B.X / linear, 1e-3);
        }
    }

    // Case A, 10 s at 1 ms. Measured: Runge-Kutta 1.3e-13 of the energy, 3.1e-13 of the momentum; midpoint 1.0e-7, 9.7e-7.
    [Theory]
    [InlineData(Integrator.RungeKutta, 1e-12, 1e-12)]
    [InlineData(Integrator.Midpoint, 3e-7, 3e-6)]
    public void Energy_and_momentum_of_a_tumbling_body_stay(Integrator integrator, double energyBound, double momentumBound)
    {
        (Craft craft, Vec3 rate, _) = Case("A");
        CraftState start = TestCraft.RigidStart(craft, rate);
        CraftState end = TestCraft.Fly(craft, start, integrator, 1e-3, 10_000);
        double energy = Math.Abs((TestCraft.KineticEnergy(craft, end) / TestCraft.KineticEnergy(craft, start)) - 1);
        Vec3 before = TestCraft.Momentum_W(craft, start);
        double momentum = (TestCraft.Momentum_W(craft, end) - before).Length / before.Length;
        Bound.Check($"tumble energy, {integrator}", energy, energyBound);
        Bound.Check($"tumble momentum, {integrator}", momentum, momentumBound);
    }

    private static (Craft Craft, Vec3 Rate, double[][] Rows) Case(string name)
    {
        Mat3 inertia = Mat3.Diagonal(0.0045, 0.0060, 0.0090);
        const double degree = Math.PI / 180;
        return name switch
        {
            "A" => (TestCraft.RigidBody(1, inertia), new(2, 3, 5), CaseA),
            "B" => (TestCraft.RigidBody(1, inertia), new(0.01, 10, 5.690446008673e-43), CaseB),
            _ => (TestCraft.RigidBody(1, Mat3.Diagonal(Brick.X, Brick.Y, Brick.Z)), new(10 * degree, 20 * degree, 30 * degree), CaseC),
        };
    }

    /// <summary>Largest difference of rates (rad/s) and quaternion elements over all rows.</summary>
    private static double Worst(Craft craft, Vec3 rate, double[][] rows, Integrator integrator, double step)
    {
        using var batch = TestCraft.Batch(craft, TestCraft.RigidStart(craft, rate));
        double worst = 0;
        int done = 0;
        foreach (double[] row in rows)
        {
            int until = (int)Math.Round(row[0] / step);
            for (; done < until; done++) batch.Step(integrator, step);
            CraftState s = batch.GetState(0);
            double[] got = [s.w_WB_B.X, s.w_WB_B.Y, s.w_WB_B.Z, s.q_WB.W, s.q_WB.X, s.q_WB.Y, s.q_WB.Z];
            for (int n = 0; n < got.Length; n++) worst = Math.Max(worst, Math.Abs(got[n] - row[n + 1]));
        }
        return worst;
    }
}
