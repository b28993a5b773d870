using Simfeel.Cockpit.Graphics.Aircraft;
using Simfeel.Cockpit.Stage;
using Simfeel.Physics;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Tests.Stage;

public class PoseHistoryTests
{
    private const double Period = 0.001;

    [Fact]
    public void A_pose_between_two_readings_lies_between_them()
    {
        PoseHistory history = new();
        for (int n = 0; n <= 20; n++) Add(history, n);
        CraftPose pose = default;

        history.Read(3.25, ref pose);

        // 16.75 readings at 5 m/s north, turning 2 rad/s about the vertical
        Assert.Equal(16.75 * 5 * Period, pose.p_WB.X, 9);
        Assert.Equal(16.75 * 2 * Period, pose.q_WB.ToEuler().Yaw, 8);
        Assert.Equal(1, pose.q_WB.Norm, 12);
    }

    [Fact]
    public void A_delay_beyond_the_memory_shows_the_oldest_pose_that_is_kept()
    {
        PoseHistory history = new();
        for (int n = 0; n <= 5000; n++) Add(history, n);
        CraftPose pose = default;

        history.Read(1e6, ref pose);

        Assert.Equal((5000 - PoseHistory.Longest) * 5 * Period, pose.p_WB.X, 9);
    }

    [Fact]
    public void A_craft_that_was_put_elsewhere_is_not_drawn_on_the_way()
    {
        PoseHistory history = new();
        Add(history, 0);
        Add(history, 1000);
        CraftPose pose = default;

        history.Read(0.5, ref pose);

        Assert.Equal(0, pose.p_WB.X);
    }

    [Fact]
    public void Rotors_turn_by_their_own_speed_and_direction()
    {
        PoseHistory history = new();
        for (int n = 0; n <= 10; n++) Add(history, n);
        CraftPose pose = default;

        history.Read(0, ref pose);

        // eleven readings at 100 rad/s each
        Assert.Equal(1.1, pose.RotorAngles[0], 9);
        Assert.Equal(Math.Tau - 1.1, pose.RotorAngles[1], 9);
    }

    private static void Add(PoseHistory history, int reading)
    {
        CraftState state = new()
        {
            p_WB = new(reading * 5 * Period, 0, -2),
            q_WB = Quat.FromEuler(0, 0, reading * 2 * Period),
            RotorSpeeds = PerRotor.All(100),
        };
        history.Add(state, [1, -1, 1, -1], 0, Period);
    }
}
