using Simfeel.Builds;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Blame;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Tests.Blame;

/// <summary>
/// Ledgers of numbers that are functions of the craft's mass, so that every share is known: build B has a battery 100 g heavier and
/// propellers 1 g heavier each, on a craft of 598 g. The drill is a few readings long.
/// </summary>
public class BlameLedgerTests
{
    private const double Battery = 0.1, Propellers = 0.004;

    private static readonly StudyConditions Conditions = new(Starters.Air, Starters.Profile, new());
    private static readonly Drill Glance = new("glance", "A few readings of a hover.", 0.005, (hover, _) => _ => new(0, 0, 0, hover));
    private static readonly Build A = BuildReader.Read(Path.Combine(AppContext.BaseDirectory, "builds", "wagtail.toml")).Build!;

    private static readonly Build B = A with
    {
        Battery = A.Battery with { Mass = A.Battery.Mass + Battery },
        Propeller = A.Propeller with { Body = A.Propeller.Body with { Mass = A.Propeller.Body.Mass + (Propellers / 4) } },
    };

    [Fact]
    public void What_adds_up_is_shared_as_it_was_added()
    {
        BlameLedger ledger = Run(mass => mass);
        Assert.Null(ledger.Gap);
        Assert.Equal((4, 0.598), (ledger.Hybrids, Math.Round(ledger.A, 9)));
        Assert.Equal(Battery + Propellers, ledger.Difference, 12);
        Assert.Equal(0, ledger.Interaction, 12);
        Assert.Equal(PartGroupNames.All, ledger.Shares.Select(share => share.Group));
        foreach (BlameShare share in ledger.Shares) Check(share, Of(share.Group), Of(share.Group), Of(share.Group));
        Assert.Equal([PartGroups.Battery, PartGroups.PropellerInertia], ledger.Ranked.Select(share => share.Group));
    }

    /// <summary>The square of a sum: m^2 + 2 m (b + p) + (b + p)^2; the product 2 b p is shared in halves, and comes with whoever is last.</summary>
    [Fact]
    public void What_two_groups_do_together_is_shared_in_halves()
    {
        BlameLedger ledger = Run(mass => mass * mass);
        const double m = 0.598, both = 2 * Battery * Propellers;
        foreach (BlameShare share in ledger.Shares)
        {
            double one = Of(share.Group), alone = (2 * m * one) + (one * one);
            Check(share, one == 0 ? 0 : alone + (both / 2), alone, one == 0 ? 0 : alone + both);
        }
        Assert.Equal(both, ledger.Interaction, 12);
        Assert.Equal(ledger.Difference, ledger.Shares.Sum(share => share.Share), 12);
    }

    /// <summary>598, 698, 602 and 702 g: what is never reached is named by its craft, and nothing is shared out.</summary>
    [Theory]
    [InlineData(0.600, 0.598, "build A never gets there within the drill.")]
    [InlineData(0.7, 0.9, "build B never gets there within the drill.")]
    [InlineData(0.65, 0.7, "the hybrid of A with B's battery never gets there within the drill.")]
    [InlineData(0.6, 0.65, "the hybrid of A with B's propeller mass and inertia never gets there within the drill.")]
    public void A_gap_names_the_craft(double above, double below, string gap)
    {
        BlameLedger ledger = Run(mass => above > below ? (mass < above ? double.NaN : mass) : mass > above && mass < below ? double.NaN : mass);
        Assert.Equal(gap, ledger.Gap);
        Assert.Equal(4, ledger.Hybrids);
        Assert.All(ledger.Shares, share => Check(share, 0, 0, 0));
        Assert.Empty(ledger.Ranked);
    }

    [Fact]
    public void A_craft_that_cannot_hover_is_said_to()
    {
        Build lead = A with { Battery = A.Battery with { Mass = 60 } };
        Assert.Equal("build B cannot hover or be tuned.", BlameStudy.Run(A, lead, [Reading(mass => mass)], Conditions)[0].Gap);
        Assert.Equal("build A cannot hover or be tuned.", BlameStudy.Run(lead, A, [Reading(mass => mass)], Conditions)[0].Gap);
    }

    [Fact]
    public void Each_metric_has_a_ledger_of_its_own()
    {
        Metric[] metrics = [Reading(mass => mass), Reading(mass => -3 * mass)];
        IReadOnlyList<BlameLedger> ledgers = BlameStudy.Run(A, B, metrics, Conditions);
        Assert.Equal(metrics, ledgers.Select(ledger => ledger.Metric));
        Assert.Equal(-3 * ledgers[0].Difference, ledgers[1].Difference, 12);
        // the largest share first, whichever way it pulls
        Assert.Equal(PartGroups.Battery, ledgers[1].Ranked.First().Group);
    }

    [Fact]
    public void Every_group_has_a_name_for_people_and_one_for_machines()
    {
        Assert.Equal(10, PartGroupNames.All.Distinct().Count());
        Assert.Equal(10, PartGroupNames.All.Select(PartGroupNames.Title).Distinct().Count());
        Assert.Equal(
            ["frame", "motor_mass", "bell_inertia", "motor_electrics", "propeller_inertia", "propeller_aerodynamics", "battery", "drag", "electronics", "pilot"],
            PartGroupNames.All.Select(PartGroupNames.Key));
        Assert.Throws<ArgumentOutOfRangeException>(() => PartGroupNames.Title(PartGroups.Frame | PartGroups.Battery));
        Assert.Throws<ArgumentOutOfRangeException>(() => PartGroupNames.Key(PartGroups.None));
    }

    private static double Of(PartGroups group) => group switch { PartGroups.Battery => Battery, PartGroups.PropellerInertia => Propellers, _ => 0 };

    private static void Check(BlameShare share, double part, double alone, double last)
    {
        Assert.Equal(part, share.Share, 12);
        Assert.Equal(alone, share.OneAtATime, 12);
        Assert.Equal(last, share.LastOneIn, 12);
    }

    private static BlameLedger Run(Func<double, double> ofMass) => BlameStudy.Run(A, B, [Reading(ofMass)], Conditions)[0];

    private static Metric Reading(Func<double, double> ofMass) => MetricCatalogue.All[0] with { Drill = Glance, Read = log => ofMass(log.Unit.Unit.Craft.Mass) };
}
