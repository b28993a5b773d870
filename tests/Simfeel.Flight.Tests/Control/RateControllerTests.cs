using Simfeel.Flight.Control;
using Simfeel.Physics;
using Simfeel.Physics.Lanes;

namespace Simfeel.Flight.Tests.Control;

/// <summary>The mixer's declared priority: roll and pitch, then thrust, then yaw.</summary>
public unsafe class RateControllerTests
{
    private const double Idle = 0.05;

    [Fact]
    public void Small_demands_pass_unchanged()
    {
        double[] share = Mix(roll: 10, pitch: -5, yaw: 2, collective: 0.4, out _);
        // shares of 0.01 per rad/s^2 on the corners front right, front left, back left, back right
        Assert.Equal(0.4 - 0.10 - 0.05 + 0.02, share[0], 12);
        Assert.Equal(0.4 + 0.10 - 0.05 - 0.02, share[1], 12);
        Assert.Equal(0.4 + 0.10 + 0.05 + 0.02, share[2], 12);
        Assert.Equal(0.4 - 0.10 + 0.05 - 0.02, share[3], 12);
    }

    [Fact]
    public void Closed_throttle_keeps_roll_authority_by_lifting_the_collective()
    {
        double[] share = Mix(roll: 20, pitch: 0, yaw: 0, collective: 0, out _);
        Assert.Equal(Idle, share[0], 12);
        Assert.Equal(Idle + 0.4, share[1], 12);
    }

    [Fact]
    public void Full_throttle_keeps_roll_authority_by_lowering_the_collective()
    {
        double[] share = Mix(roll: 20, pitch: 0, yaw: 0, collective: 1, out _);
        Assert.Equal(1, share[1], 12);
        Assert.Equal(0.6, share[0], 12);
    }

    [Fact]
    public void Yaw_yields_to_roll_and_to_thrust()
    {
        double[] share = Mix(roll: 20, pitch: 0, yaw: 30, collective: 0.25, out double[] integral);
        // roll alone takes 0.05..0.45; yaw (0.3) finds no room below rotors 0 and 3 and is cut to nothing
        Assert.Equal(Idle, share[0], 12);
        Assert.Equal(0.45, share[1], 12);
        Assert.Equal(0, integral[2]);
        Assert.NotEqual(0, integral[0]);
    }

    [Fact]
    public void Too_much_roll_is_scaled_and_does_not_integrate()
    {
        double[] share = Mix(roll: 500, pitch: 0, yaw: 0, collective: 0.5, out double[] integral);
        Assert.Equal(Idle, share[0], 12);
        Assert.Equal(1, share[1], 12);
        Assert.Equal(0, integral[0]);
    }

    [Fact]
    public void Every_demand_gives_shares_between_idle_and_one()
    {
        Random random = new(7);
        for (int n = 0; n < 20000; n++)
        {
            double[] share = Mix(Wide(), Wide(), Wide(), random.NextDouble(), out _);
            Assert.All(share, s => Assert.InRange(s, Idle - 1e-12, 1 + 1e-12));
        }

        double Wide() => Math.Pow(10, random.NextDouble() * 5) * (random.NextDouble() - 0.5);
    }

    /// <summary>
    /// One run with proportional gain 1 and no filters, so the rate command is the wanted acceleration; the duty map is
    /// d = s, so the share is the duty squared.
    /// </summary>
    private static double[] Mix(double roll, double pitch, double yaw, double collective, out double[] integral)
    {
        ControllerLanes<Lane1> controller = default;
        ControllerState<Lane1> state = default;
        controller.RotorCount = 4;
        controller.Idle = Lane1.Of(Idle);
        controller.B1 = Lane1.Of(1);
        AxisLanes<Lane1>* axes = (AxisLanes<Lane1>*)&controller.Axes;
        for (int axis = 0; axis < 3; axis++)
        {
            axes[axis].Proportional = Lane1.Of(1);
            axes[axis].GyroShare = Lane1.Of(1);
            axes[axis].IntegralStep = Lane1.Of(1e-18);
            axes[axis].IntegralLimit = Lane1.Of(1);
        }
        MixLanes<Lane1>* mix = (MixLanes<Lane1>*)&controller.Mix;
        (double X, double Y)[] corners = [(1, 1), (1, -1), (-1, -1), (-1, 1)];
        for (int k = 0; k < 4; k++)
        {
            mix[k].Roll = Lane1.Of(-0.01 * corners[k].Y);
            mix[k].Pitch = Lane1.Of(0.01 * corners[k].X);
            mix[k].Yaw = Lane1.Of(k % 2 == 0 ? 0.01 : -0.01);
        }
        Lane1* rate = stackalloc Lane1[3];
        Lane1* command = stackalloc Lane1[4];
        Lane1* duty = stackalloc Lane1[Craft.MaxRotors];
        (command[0], command[1], command[2], command[3]) = (Lane1.Of(roll), Lane1.Of(pitch), Lane1.Of(yaw), Lane1.Of(collective));
        RateController<Lane1>.Run(rate, command, &controller, &state, duty);
        AxisState<Lane1>* memory = (AxisState<Lane1>*)&state.Axes;
        integral = [memory[0].Integral.v, memory[1].Integral.v, memory[2].Integral.v];
        return [duty[0].v * duty[0].v, duty[1].v * duty[1].v, duty[2].v * duty[2].v, duty[3].v * duty[3].v];
    }
}
