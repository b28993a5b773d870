using Simfeel.Builds.Format;
using Simfeel.Physics;
using Simfeel.Physics.Air;
using Simfeel.Physics.Stand;
using Simfeel.Physics.Trim;

namespace Simfeel.Builds.Tests;

/// <summary>
/// The builds that come with the program. The bands are common practice: what an experienced builder expects of each
/// class, not measurements of particular craft.
/// </summary>
public class StarterTests
{
    private static readonly AirState SeaLevel = StandardAtmosphere.At(0);

    /// <summary>Class; mass g; Ixx 1e-3 kg m2; bench thrust kgf; thrust/weight; pack current A; hover rpm/1000; time constant ms; minutes to 20 %.</summary>
    private static readonly Dictionary<string, (double Low, double High)[]> Bands = new()
    {
        ["65 mm"] = [(26, 36), (0.005, 0.011), (0.02, 0.035), (2.5, 4.5), (9, 18), (26, 40), (10, 40), (3, 6)],
        ["3 in"] = [(165, 250), (0.1, 0.24), (0.3, 0.6), (5, 10), (35, 70), (13, 20), (12, 25), (5, 11)],
        ["5 in"] = [(560, 750), (1.1, 2.5), (1.4, 1.9), (7, 11), (100, 160), (8.8, 12), (14, 33), (7, 12)],
        ["6 in"] = [(620, 900), (1.6, 3.2), (1.6, 2.3), (7, 12), (95, 155), (6.8, 9.8), (20, 40), (8, 14.5)],
        ["7 in"] = [(850, 1300), (2.8, 5.5), (1.8, 2.8), (5, 10.5), (95, 165), (6.2, 8.5), (22, 45), (10, 21)],
        ["10 in"] = [(2000, 3500), (10, 22), (2.8, 4.5), (4, 7), (120, 220), (4.8, 6.8), (28, 60), (14, 30)],
    };

    private static readonly string[] Quantities =
        ["mass g", "Ixx g m2", "bench thrust kgf", "thrust/weight", "pack current A", "hover rpm/1000", "time constant ms", "minutes"];

    private static string[] AllNames => [.. Directory.GetFiles(BuildText.StarterDirectory(), "*.toml").Select(p => Path.GetFileNameWithoutExtension(p)).Order(StringComparer.Ordinal)];

    public static TheoryData<string> Names => [.. AllNames];

    [Fact]
    public void ThereAreEnoughOfEachClass()
    {
        Build[] all = [.. AllNames.Select(Read)];
        Assert.True(all.Length >= 12);
        Assert.Equal(all.Length, all.Select(b => b.Name).Distinct().Count());
        foreach (string label in Bands.Keys) Assert.True(all.Count(b => b.ClassLabel == label) >= 2, label);
        Assert.Contains(all, b => b is { Name: "Wagtail", ClassLabel: "5 in" });
        Assert.Contains(all, b => b is { Name: "Curlew", ClassLabel: "7 in" });
        Assert.All(all, b => Assert.NotEqual("", b.Description));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void ReadsWithoutAWord(string name)
    {
        BuildResult result = BuildReader.Read(PathOf(name));
        Assert.True(result.Diagnostics.Count == 0, string.Join('\n', result.Diagnostics));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void LiesInTheBandsOfItsClass(string name)
    {
        Build build = Read(name);
        Craft craft = BuildAssembler.Assemble(build, SeaLevel).Craft;
        int count = craft.Rotors.Count;
        OperatingPoint bench = new VirtualStand(craft, SeaLevel.Density, 0.9, 1).AtDuty(1);
        OperatingPoint full = new VirtualStand(craft, SeaLevel.Density, 0.9, count).AtDuty(1);
        HoverTrim hover = HoverTrim.Of(craft, SeaLevel.Density, StandardAtmosphere.StandardGravity, 0.5);
        double[] found =
        [
            craft.Mass * 1e3,
            craft.I_BBcm_B.M00 * 1e3,
            bench.Thrust / StandardAtmosphere.StandardGravity,
            count * full.Thrust / StandardAtmosphere.StandardGravity / craft.Mass,
            full.PackCurrent,
            hover.Rotor.Speed * 30 / Math.PI / 1000,
            hover.TimeConstant * 1e3,
            0.8 * craft.Battery.Capacity / hover.Rotor.PackCurrent / 60,
        ];
        for (int i = 0; i < found.Length; i++)
        {
            (double low, double high) = Bands[build.ClassLabel][i];
            Assert.True(found[i] >= low && found[i] <= high, $"{name}: {Quantities[i]} {found[i]:G4} is outside {low} to {high}.");
        }
        if (build.ClassLabel == "5 in") Assert.InRange(full.PackVoltage / build.Battery.Cells, 3.3, 3.7);
    }

    /// <summary>Pairs that differ in one thing only, so that a lesson can show it alone.</summary>
    [Theory]
    [InlineData("wagtail", "wagtail-swept", "frame")]
    [InlineData("wagtail", "pipit", "propeller")]
    [InlineData("redshank", "greenshank", "motor")]
    public void PairDiffersInOneTable(string first, string second, string table)
    {
        Build a = Read(first), b = Read(second);
        string[] given = [.. Given(a).Except(Given(b)).Concat(Given(b).Except(Given(a))).Select(line => line.Split(' ')[0]).Distinct()];
        Assert.All(given, key => Assert.Equal(table, BuildFormat.Find(key)!.Table));
        Assert.Equal(table == "frame", a.Frame.Layout != b.Frame.Layout);
        Assert.True(table == "frame" || given.Length > 0);

        static IEnumerable<string> Given(Build build) => build.Values
            .Where(v => v.Source is ValueSource.Stated or ValueSource.Measured or ValueSource.Datasheet or ValueSource.Estimated)
            .Select(v => $"{v.Key} {v.Low} {v.Typical} {v.High} {v.Source}");
    }

    [Fact]
    public void WagtailExplainsEveryKeyItUses()
    {
        string text = File.ReadAllText(PathOf("wagtail"));
        foreach (KeySpec key in BuildFormat.Keys.Where(k => k.Required && k.Table.Length > 0 && k.Table != "extra"))
            Assert.Matches($@"(?m)^{key.Key} = .*#.*\*", text);
        Assert.Contains("[[extra]]", text, StringComparison.Ordinal);
        Assert.Contains("low =", text, StringComparison.Ordinal);
        Assert.Contains("source =", text, StringComparison.Ordinal);
    }

    private static string PathOf(string name) => Path.Combine(BuildText.StarterDirectory(), name + ".toml");

    private static Build Read(string name) => BuildReader.Read(PathOf(name)).Build!;
}
