using Simfeel.Builds;
using Simfeel.Physics;
using Simfeel.Studies.Blame;
using Simfeel.Studies.Compare;
using Simfeel.Studies.Growth;
using Simfeel.Studies.Sheet;
using Simfeel.Studies.Sheet.Sections;
using Simfeel.Studies.Sheet.Writing;
using Simfeel.Studies.Tests.Sheet;
using Simfeel.Studies.Uncertainty;
using static Simfeel.Studies.Tests.Sheet.MadeSheet;

namespace Simfeel.Studies.Tests.Approved;

/// <summary>Sections of sheets whose numbers are made up for the sentences that the demo does not need, <see cref="ApprovedPage"/>.</summary>
public class ApprovedSectionTests
{
    private static readonly Lazy<FeelSheet> Nothing = new(() => MadeSheet.Of());

    [Fact]
    public void Where_nothing_differs_and_nothing_was_asked_for()
    {
        FeelSheet bare = Nothing.Value;
        FeelSheet sheet = bare with { Comparison = bare.Comparison with { Field = new() { Effects = AirEffects.None } } };
        Check("sections-of-nothing.txt", TitleSection.Of(sheet), WordsSection.Of(sheet), BlameSection.Of(sheet), GrowthSection.Of(sheet), UncertaintySection.Of(sheet), PartsSection.Of(sheet), FlownSection.Of(sheet));
    }

    /// <summary>Decided, undecided, not drawn, other under the other policy, and a pack that gives more than it is rated for.</summary>
    [Fact]
    public void Where_much_is_open()
    {
        FeelSheet sheet = (Different() with
        {
            Uncertainty = new()
            {
                Draws = 40,
                Seed = 3,
                Refused = 2,
                Inputs = [new("battery.mass_g", InputOwner.A, "rule")],
                Metrics =
                [
                    Drawn("stop_time", 0.01, 0.03, 0.05, new TornadoBar(new("battery.mass_g", InputOwner.A, "rule"), 0.02, 0.045), new(new("motor.kv", InputOwner.Both, "default"), 0.035, 0.03)),
                    Drawn("climb_in_1_s", -1, 2, 5, new TornadoBar(new("motor.kv", InputOwner.B, "default"), -1, 3)),
                    Drawn("yaw_stop_time", -0.05, 0.001, 0.002), Drawn("catch_time", -0.001, 0, 0.001), Drawn("flip_time", -0.2, 0, 0.01),
                ],
            },
        }).Styled();
        Check("sections-of-open-questions.txt", WordsSection.Of(sheet), NumbersSection.Of(sheet), UncertaintySection.Of(sheet), FlownSection.Of(sheet));
    }

    [Fact]
    public void Where_no_difference_is_certain()
    {
        FeelSheet sheet = MadeSheet.Of(("stop_time", 0.1, 0.13)) with
        {
            Uncertainty = new() { Draws = 40, Seed = 3, Refused = 0, Inputs = [], Metrics = [Drawn("stop_time", -0.01, 0.03, 0.05)] },
        };
        Assert.Equal(["No difference between Gull and Tern that would be felt is certain, given what is known of their parts."], WordsSection.Telling(sheet));
        Assert.Equal("undecided", sheet.Word(sheet.Comparison.Metrics.Single(pair => pair.Metric.Name == "stop_time")));
    }

    /// <summary>Shares that add up, that pull both ways, that need each other, of nothing, and none.</summary>
    [Fact]
    public void Blame_of_every_kind()
    {
        FeelSheet sheet = Different() with
        {
            Blame =
            [
                Ledger("stop_time", 0.1, 0.13, (PartGroups.Frame, 0.02, 0.019, 0.021), (PartGroups.Battery, 0.01, 0.01, 0.01)),
                Ledger("climb_in_1_s", 10, 12, (PartGroups.MotorElectrics, 5, 3, 7), (PartGroups.Battery, -6, -4, -8), (PartGroups.Drag, 3, 3, 3)),
                Ledger("thrust_to_weight", 4, 6, (PartGroups.MotorMass, 1.9, 1, 3), (PartGroups.Frame, 0.1, 0, 0)),
                Ledger("yaw_stop_time", 0.1, 0.101),
                Ledger("catch_time", 0.2, 0.2, (PartGroups.Frame, 0, 0.01, -0.01)),
                Ledger("flip_time", 0.5, double.NaN) with { Gap = "build B never gets there within the drill." },
            ],
        };
        Check("sections-of-blame.txt", WordsSection.Of(sheet), BlameSection.Of(sheet));
        ApprovedPage.Check("sections-of-blame.html", HtmlPage.Write(new("Blame", "", [new("head", "", []), BlameSection.Of(sheet)])));
    }

    /// <summary>Best inside, at an end, as built, nowhere; with and without consequences, and where nothing flies.</summary>
    [Fact]
    public void Growth_of_every_kind()
    {
        FeelSheet sheet = Different() with
        {
            Growth =
            [
                Curve("Gull", "stop_time", BuildKnobs.MotorVolume, [0.12, 0.09, 0.08, 0.1, double.NaN], ("arms stayed", [0.11, 0.09, 0.07, double.NaN, 0.06])),
                Curve("Tern", "thrust_to_weight", BuildKnobs.ArmLength, [1, 2, 3]),
                Curve("Gull", "stop_time", BuildKnobs.BatteryMass, [0.12, 0.08, 0.09]),
                Curve("Tern", "turn_radius", BuildKnobs.PropellerPitch, [5, 6, 7]) with { Knob = new("extra", "extra part", "") },
                Curve("Tern", "stop_time", BuildKnobs.PropellerPitch, [double.NaN, double.NaN]),
            ],
        };
        Check("sections-of-growth.txt", WordsSection.Of(sheet), GrowthSection.Of(sheet));
        ApprovedPage.Check("sections-of-growth.html", HtmlPage.Write(new("Growth", "", [new("head", "", []), GrowthSection.Of(sheet)])));
    }

    [Fact]
    public void Bands_of_ones_own_are_those_that_the_words_name()
    {
        FeelSheet sheet = Different();
        FeelBands own = new(7.5, 20);
        FeelSheet judged = sheet with { Comparison = sheet.Comparison with { Bands = own } };
        string words = MarkdownPage.Write(new("", "", [new("head", "", []), NumbersSection.Of(judged)]));
        Assert.Contains("above 20 %", words, StringComparison.Ordinal);
        Assert.Contains("7.5 to 20 %", words, StringComparison.Ordinal);
        Assert.DoesNotContain("15 %", words, StringComparison.Ordinal);
    }

    private static FeelSheet Different()
    {
        FeelSheet sheet = MadeSheet.Of(
            ("stop_time", 0.1, 0.13), ("climb_in_1_s", 10, 12), ("yaw_stop_time", 0.1, 0.101), ("dash_speed", 40, 44), ("thrust_to_weight", 4, 6), ("catch_time", 0.2, 0.2),
            ("flip_time", 0.5, double.NaN), ("climb_pack_current", 100, 200));
        return sheet with
        {
            OtherPolicy = Compared(("stop_time", 0.13, 0.1), ("climb_in_1_s", 10, 10), ("yaw_stop_time", 0.1, 0.14), ("dash_speed", 40, 44), ("thrust_to_weight", 4, double.NaN), ("hover_power", 100, 200)) with { Policy = "same-gains" },
        };
    }

    private static BlameLedger Ledger(string metric, double a, double b, params (PartGroups Group, double Share, double Alone, double Last)[] shares) => new()
    {
        Metric = MadeSheet.Metric(metric),
        A = a,
        B = b,
        Hybrids = 8,
        Shares = [.. PartGroupNames.All.Select(group => shares.Where(share => share.Group == group).Select(share => new BlameShare(group, share.Share, share.Alone, share.Last)).FirstOrDefault(new BlameShare(group, 0, 0, 0)))],
    };

    private static GrowthCurve Curve(string build, string metric, BuildKnob knob, double[] values, params (string Name, double[] Values)[] variants) => GrowthReading.Read(
        build, knob, MadeSheet.Metric(metric), [.. values.Select((value, n) => new GrowthPoint(0.5 + (0.5 * n), 100 * (n + 1), value, double.IsNaN(value) ? "It does not fly." : ""))], variants, 0.05);

    private static void Check(string name, params Section[] sections) => ApprovedPage.Check(name, MarkdownPage.Write(new("Sections", "of a sheet", [new("head", "", []), .. sections])));
}
