using Simfeel.Studies.Sweep;

namespace Simfeel.Studies.Tests.Sweep;

/// <summary>A journal's first line may say anything: a plan that no sweep has is none.</summary>
public class SweepPlanLineTests
{
    private static readonly SweepAxis Volume = new("motor.volume", 0.6, 1.8, 4), Place = new("battery.x_mm", -20, 20, 3);

    public static TheoryData<string> Damages
    {
        get
        {
            TheoryData<string> names = [];
            foreach (string name in Damaged.Keys) names.Add(name);
            return names;
        }
    }

    private static readonly Dictionary<string, Func<SweepPlan, SweepPlan>> Damaged = new()
    {
        ["no axis"] = plan => plan with { Axes = [] },
        ["an axis without points"] = plan => plan with { Axes = [Volume with { Points = 0 }, Place] },
        ["an axis of too many points"] = plan => plan with { Axes = [Volume with { Points = 1001 }, Place] },
        ["an axis that does not rise"] = plan => plan with { Axes = [Volume with { To = 0.6 }, Place] },
        ["an axis wider than numbers go"] = plan => plan with { Axes = [Volume with { From = -1.7e308, To = 1.7e308 }, Place] },
        ["an unknown key"] = plan => plan with { Axes = [Volume with { Name = "motor.bananas" }, Place] },
        ["a key of words"] = plan => plan with { Axes = [Volume with { Name = "name" }, Place] },
        ["an axis twice"] = plan => plan with { Axes = [Volume, Volume] },
        ["an unknown metric"] = plan => plan with { Metrics = ["stop_time", "bananas"] },
        ["a metric twice"] = plan => plan with { Metrics = ["stop_time", "stop_time"] },
        ["a front of what is not read"] = plan => plan with { Front = ["hover_power"] },
        ["a front of tastes"] = plan => plan with { Front = ["turn_radius"] },
        ["fewer than no samples"] = plan => plan with { Samples = -1 },
        ["too many samples"] = plan => plan with { Samples = SweepPlan.MostRows + 1 },
        ["a grid too large"] = plan => plan with { Axes = [Volume with { Points = 1000 }, Place with { Points = 1000 }, new("battery.mass", 0.5, 2, 1000)] },
    };

    [Theory]
    [MemberData(nameof(Damages))]
    public void A_damaged_plan_is_none(string damage)
    {
        Assert.NotNull(SweepPlan.Parse(Sound.ToLine()));
        Assert.Null(SweepPlan.Parse(Damaged[damage](Sound).ToLine()));
    }

    [Fact]
    public void The_largest_plans_are_plans()
    {
        Assert.NotNull(SweepPlan.Parse((Sound with { Samples = SweepPlan.MostRows }).ToLine()));
        Assert.NotNull(SweepPlan.Parse((Sound with { Axes = [Volume with { Points = 1000 }, Place with { Points = 1000 }] }).ToLine()));
        Assert.NotNull(SweepPlan.Parse((Sound with { Axes = [Volume with { Points = 1 }], Front = [] }).ToLine()));
    }

    [Fact]
    public void Rows_make_blocks_and_one_point_is_the_middle()
    {
        Assert.Equal((12L, 1), (Sound.Rows, Sound.Blocks));
        Assert.Equal((256L, 1), Size(256));
        Assert.Equal((257L, 2), Size(257));
        SweepPlan single = Sound with { Axes = [Volume with { Points = 1 }, Place] };
        Assert.Equal(1.2, single.Values(1)[0], 1e-12);
        Assert.Equal((0.0, 20.0), (single.Values(1)[1], single.Values(2)[1]));

        static (long, int) Size(int samples)
        {
            SweepPlan plan = Sound with { Samples = samples };
            return (plan.Rows, plan.Blocks);
        }
    }

    private static SweepPlan Sound => new()
    {
        Version = "1",
        Build = "build",
        Fingerprint = "00",
        Conditions = "still air",
        Axes = [Volume, Place],
        Samples = 0,
        Seed = 1,
        Metrics = ["stop_time", "turn_radius"],
        Front = ["stop_time"],
    };
}
