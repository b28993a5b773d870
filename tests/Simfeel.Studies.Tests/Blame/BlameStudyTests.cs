using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Flight.Tests;
using Simfeel.Flight.Tuning;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Blame;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Tests.Blame;

public class BlameStudyTests
{
    private static readonly StudyConditions Conditions = new(Starters.Air, Starters.Profile, new FieldConditions());
    private static readonly Metric[] Metrics = [Named("stop_time"), Named("peak_yaw_acceleration")];

    private static readonly Lazy<IReadOnlyList<BlameLedger>> Demo = new(() => Run("wagtail", "curlew"));

    [Fact]
    public void Shares_sum_to_the_difference()
    {
        foreach (BlameLedger ledger in Demo.Value)
        {
            Assert.Null(ledger.Gap);
            Assert.Equal(512, ledger.Hybrids);
            Assert.True(ledger.Shares.Count(share => share.Share != 0) >= 8);
            Assert.Equal(ledger.Difference, ledger.Shares.Sum(share => share.Share), 1e-9);
            Assert.Equal(ledger.Difference, ledger.Interaction + ledger.Shares.Sum(share => share.OneAtATime), 1e-9);
        }
    }

    /// <summary>The ends of the ledger are the builds themselves, bit for bit.</summary>
    [Fact]
    public void Ends_are_the_builds()
    {
        double[][] alone = MetricFlights.Read([Starters.Get("wagtail"), Starters.Get("curlew")], Metrics, Conditions);
        for (int m = 0; m < Metrics.Length; m++)
        {
            Assert.Equal(alone[0][m], Demo.Value[m].A);
            Assert.Equal(alone[1][m], Demo.Value[m].B);
        }
    }

    [Fact]
    public void Swapped_builds_negate()
    {
        IReadOnlyList<BlameLedger> back = Run("curlew", "wagtail");
        for (int m = 0; m < Metrics.Length; m++)
        {
            foreach ((BlameShare one, BlameShare other) in Demo.Value[m].Shares.Zip(back[m].Shares))
            {
                Assert.Equal(one.Group, other.Group);
                Assert.Equal(-one.Share, other.Share, 1e-9);
                Assert.Equal(-one.OneAtATime, other.LastOneIn, 1e-9);
            }
        }
    }

    /// <summary>A build against itself with one part changed: that part is to blame for all of it, and no other for anything.</summary>
    [Fact]
    public void One_group_that_differs_takes_it_all()
    {
        Build wagtail = Read("wagtail");
        Build heavier = wagtail with { Propeller = wagtail.Propeller with { Body = wagtail.Propeller.Body with { SpinInertia = 1.5 * wagtail.Propeller.Body.SpinInertia } } };
        BlameLedger ledger = BlameStudy.Run(wagtail, heavier, [Metrics[0]], Conditions)[0];
        Assert.True(ledger.Difference > 0.005);
        foreach (BlameShare share in ledger.Shares)
            Assert.Equal(share.Group == PartGroups.PropellerInertia ? ledger.Difference : 0, share.Share);
    }

    [Fact]
    public void Equal_builds_have_nothing_to_share()
    {
        BlameLedger ledger = BlameStudy.Run(Read("wagtail"), Read("wagtail"), [Metrics[0]], Conditions)[0];
        Assert.Equal(0, ledger.Difference);
        Assert.Equal(1, ledger.Hybrids);
        Assert.All(ledger.Shares, share => Assert.Equal(0, share.Share));
    }

    /// <summary>What never comes in one hybrid is said, not shared out.</summary>
    [Fact]
    public void An_event_that_never_comes_is_told()
    {
        // half a starter of 65 mm: it never climbs at 15 m/s
        BlameLedger ledger = BlameStudy.Run(Read("dunlin"), Read("sanderling"), [Named("time_to_15_m_s")], Conditions)[0];
        Assert.NotNull(ledger.Gap);
        Assert.All(ledger.Shares, share => Assert.Equal(0, share.Share));
    }

    /// <summary>Under same-gains every hybrid flies with the numbers of the first build.</summary>
    [Fact]
    public void The_policy_reaches_every_hybrid()
    {
        Build wagtail = Read("wagtail"), curlew = Read("curlew");
        StudyConditions same = Conditions.Under(TuningPolicy.SameGains, wagtail);
        BlameLedger ledger = BlameStudy.Run(wagtail, curlew, [Metrics[0]], same)[0];
        Assert.Equal(ledger.Difference, ledger.Shares.Sum(share => share.Share), 1e-9);
        Assert.Equal(Demo.Value[0].A, ledger.A, 1e-9);
        Assert.NotEqual(Demo.Value[0].B, ledger.B);
    }

    private static IReadOnlyList<BlameLedger> Run(string a, string b) => BlameStudy.Run(Read(a), Read(b), Metrics, Conditions);

    private static Metric Named(string name) => MetricCatalogue.All.Single(metric => metric.Name == name);

    private static Build Read(string name) => BuildReader.Read(Path.Combine(AppContext.BaseDirectory, "builds", name + ".toml")).Build!;
}
