using Simfeel.Builds.Assembly;
using Simfeel.Physics.Air;
using Simfeel.Physics.Rotors;

namespace Simfeel.Builds.Tests;

/// <summary>A propeller's own blade stations and section polar in a build file.</summary>
public sealed class PropellerShapeTests : IDisposable
{
    private const string Polar = "angle_deg,reynolds,lift,drag\n-5,20000,-0.4,0.04\n5,20000,0.6,0.05\n-5,80000,-0.5,0.02\n5,80000,0.7,0.03\n";
    private const string Stations = "stations = [[0.15, 0.12, 41], [0.5, 0.18, 26], [1, 0.03, 15.5]]";

    private readonly TempFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void StationsReplacePitchAndPlanform()
    {
        Build build = BuildText.Read(WithStations(Stations));
        RotorGeometry geometry = build.Propeller.Blades.Geometry();
        Assert.Equal(0.15, geometry.RootCutOut);
        BladeStation middle = geometry.At(0.75);
        Assert.Equal(0.105, middle.Chord, 12);
        Assert.Equal((26 + 15.5) / 2 * Math.PI / 180, middle.Twist, 12);
        Assert.Same(LowReynoldsPolar.Instance, geometry.Polar);
        // the label: pitch of the section at three quarters of the radius
        BuildValue pitch = build.Values.Single(v => v.Key == "propeller.pitch_in");
        Assert.Equal(ValueSource.Rule, pitch.Source);
        Assert.Equal(Math.PI * 5.1 * 0.75 * Math.Tan(20.75 * Math.PI / 180), pitch.Typical, 9);
    }

    [Fact]
    public void GivenPitchIsALabelOnly()
    {
        Build plain = BuildText.Read(WithStations(Stations)), labelled = BuildText.Read(WithStations(Stations + "\npitch_in = 4.3"));
        Assert.Equal(4.3 * 0.0254, labelled.Propeller.Blades.Pitch, 12);
        Assert.Same(RotorTableCache.Get(plain.Propeller.Blades, Air), RotorTableCache.Get(labelled.Propeller.Blades, Air));
    }

    /// <summary>
    /// k^2 of I = k^2 m R^2 with thickness in proportion to chord, integrated over planforms measured at UIUC: DA4002 0.397,
    /// direct-drive 5 x 3 0.299 (computed from the published stations outside this project).
    /// </summary>
    [Fact]
    public void SpinInertiaFollowsTheStations()
    {
        PropellerSpec da4002 = Da4002();
        const double mass = 0.0015 * 2, hub = 0.22;
        double radius = 2.5 * 0.0254, weight = mass * Math.Pow(5 / 5.1, 2.1) * radius * radius;
        Assert.InRange(((da4002.Body.SpinInertia / weight) - (hub * 0.5 * 0.11 * 0.11)) / (1 - hub) / 0.397, 0.985, 1.015);

        const string wide = "stations = [[0.15, 0.2290, 17.20], [0.3, 0.2372, 19.63], [0.4, 0.2386, 20.54], [0.5, 0.2361, 20.24], [0.6, 0.2261, 18.34], [0.7, 0.2078, 15.77], [0.8, 0.1842, 13.77], [0.9, 0.1532, 12.26], [0.95, 0.1266, 11.66], [1, 0.0242, 5.75]]";
        Assert.InRange(BuildText.Read(WithStations(wide)).Propeller.Blades.Geometry().GyrationRadiusSquared / 0.299, 0.985, 1.015);
    }

    [Fact]
    public void PolarFileIsReadInAnyOrder()
    {
        Write("section.csv", "# a section of our own\ndrag, lift,reynolds,angle_deg # columns\n0.03,0.7,80000,5\n0.05,0.6,20000,5\n\n0.02,-0.5,80000,-5\n0.04,-0.4,2e4,-5.0\n");
        Write("same.csv", Polar);
        TabulatedPolar polar = Read("section.csv").Propeller.Blades.Polar!;
        Assert.Equal(new(0.7, 0.03), polar.At(5 * Math.PI / 180, 80000, 0));
        Assert.Equal(new(-0.4, 0.04), polar.At(-5 * Math.PI / 180, 20000, 0));
        // linear in angle and in the logarithm of Reynolds
        SectionCoefficients middle = polar.At(0, 40000, 0);
        Assert.Equal(0.1, middle.Lift, 12);
        Assert.Equal(0.035, middle.Drag, 12);
        Assert.Equal(Read("same.csv").Propeller.Blades, Read("section.csv").Propeller.Blades);
    }

    [Fact]
    public void EqualShapesShareATableAndOthersDoNot()
    {
        Write("a.csv", Polar);
        Write("b.csv", Polar.Replace("0.7", "0.71", StringComparison.Ordinal));
        PropellerBlades a = Read("a.csv").Propeller.Blades, again = Read("a.csv").Propeller.Blades, b = Read("b.csv").Propeller.Blades;
        Assert.Equal(a, again);
        Assert.Equal(a.GetHashCode(), again.GetHashCode());
        Assert.NotEqual(a, b);
        Assert.NotEqual(BuildText.Read(WithStations(Stations)).Propeller.Blades, BuildText.Read(WithStations(Stations.Replace("41", "42", StringComparison.Ordinal))).Propeller.Blades);
        Assert.Same(RotorTableCache.Get(a, Air), RotorTableCache.Get(again, Air));
        Assert.NotSame(RotorTableCache.Get(a, Air), RotorTableCache.Get(b, Air));
    }

    [Fact]
    public void EditsAndHybridsKeepTheShape()
    {
        Write("a.csv", Polar);
        Build build = Read("a.csv"), plain = BuildText.Read(BuildText.Minimal);
        Build heavier = BuildEditor.Edit(build, "propeller.mass_g", 6).Build!;
        Assert.Equal(build.Propeller.Blades, heavier.Propeller.Blades);
        Assert.Equal(build.Propeller.Blades, Hybrid.Of(plain, build, PartGroups.PropellerAerodynamics).Propeller.Blades);
        Assert.Equal(plain.Propeller.Blades, Hybrid.Of(plain, build, PartGroups.PropellerInertia).Propeller.Blades);
    }

    [Fact]
    public void ScaleBesideStationsWarns()
    {
        BuildResult result = BuildReader.Parse(WithStations(Stations + "\nchord_scale = 1.2"), "test.toml");
        Diagnostic warning = Assert.Single(result.Diagnostics);
        Assert.Equal((Severity.Warning, "propeller.chord_scale"), (warning.Severity, warning.Key));
    }

    [Theory]
    [InlineData("7", "2 to 60 stations")]
    [InlineData("[]", "There are 0 blade stations.")]
    [InlineData("[[0.2, 0.1, 30]]", "There is only one blade station.")]
    [InlineData("[[0.2, 0.1], [1, 0.1, 10]]", "three numbers")]
    [InlineData("[[0.2, 0.1, nan], [1, 0.1, 10]]", "three numbers")]
    [InlineData("[[0.2, 0.1, \"30\"], [1, 0.1, 10]]", "three numbers")]
    [InlineData("[[0.2, 0.1, 30], [0.2, 0.1, 10]]", "does not rise; the station before stands at 0.2")]
    [InlineData("[[0.01, 0.1, 30], [1, 0.1, 10]]", "radius 0.01 is out of range")]
    [InlineData("[[0.2, 0.1, 30], [1.1, 0.1, 10]]", "radius 1.1 is out of range")]
    [InlineData("[[0.2, 0, 30], [1, 0.1, 10]]", "chord 0 is out of range")]
    [InlineData("[[0.2, 18, 30], [1, 0.1, 10]]", "chord 18 is out of range")]
    [InlineData("[[0.2, 0.1, 130], [1, 0.1, 10]]", "twist 130 is out of range")]
    [InlineData("[[0.6, 0.1, 30], [1, 0.1, 10]]", "first blade station stands at 0.6")]
    [InlineData("[[0.2, 0.1, 30], [0.8, 0.1, 10]]", "last blade station stands at 0.8")]
    public void BadStations(string stations, string message)
    {
        string text = WithStations("stations = " + stations);
        Diagnostic error = Assert.Single(BuildReader.Parse(text, "test.toml").Diagnostics);
        Assert.Equal((Severity.Error, "propeller.stations", BuildText.LineOf(text, "stations")), (error.Severity, error.Key, error.Line));
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
        Assert.Contains("-45 to 90 deg", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("../a.csv", "leads out")]
    [InlineData("x/../../a.csv", "leads out")]
    [InlineData("/a.csv", "counts from")]
    [InlineData("C:/a.csv", "counts from")]
    [InlineData("x\\\\a.csv", "parted by /")]
    [InlineData("", "names no file")]
    [InlineData("x/", "names no file")]
    [InlineData("none.csv", "no such file")]
    [InlineData("link.csv", "link")]
    [InlineData("way/a.csv", "link")]
    public void OnlyFilesBesideOrBelowTheBuild(string name, string message)
    {
        // the file is there, outside the build's folder, and both ways out of it exist
        Write("a.csv", Polar);
        string inner = Directory.CreateDirectory(_folder.File("inner")).FullName;
        File.CreateSymbolicLink(Path.Combine(inner, "link.csv"), _folder.File("a.csv"));
        Directory.CreateSymbolicLink(Path.Combine(inner, "way"), _folder.Path);
        string path = Path.Combine(inner, "build.toml");
        File.WriteAllText(path, BuildText.With("propeller", $"polar = \"{name}\""));
        Diagnostic error = Assert.Single(BuildReader.Read(path).Diagnostics);
        Assert.Equal((path, "propeller.polar"), (error.File, error.Key));
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AFileBelowTheBuildIsFine()
    {
        Directory.CreateDirectory(_folder.File("sections"));
        Write("sections/a.csv", Polar);
        Assert.NotNull(Read("sections/a.csv").Propeller.Blades.Polar);
        Assert.Contains("not read from a file", Assert.Single(BuildReader.Parse(BuildText.With("propeller", "polar = \"a.csv\""), "test.toml").Diagnostics).Message, StringComparison.Ordinal);
    }

    /// <summary>What is wrong with the polar, line, field and pieces of the message with the allowed range.</summary>
    public static TheoryData<string, string, int?, string, string[]> BadPolars => new()
    {
        { "\n", "", null, "", ["no header"] },
        { "# nothing\n", "", null, "", ["no header"] },
        { "angle,reynolds,lift,drag", "angle", 1, "angle_deg", ["lacks this column", "angle_deg, reynolds, lift and drag"] },
        { "angle_deg;reynolds;lift;drag", "semicolons", 1, "", ["parted by semicolons", "parted by commas"] },
        { "angle_deg,reynolds,lift,drag,lift", "twice", 1, "lift", ["twice"] },
        { "5,20000,0.6,0.05", "-0.05", 3, "drag", ["too small", "above 0 to 5"] },
        { "5,20000,0.6,0.05", "0", 3, "drag", ["too small", "above 0 to 5"] },
        { "5,20000,0.6,0.05", "x", 3, "drag", ["no number", "above 0 to 5"] },
        { "5,20000,0.6,0.05", "nan", 3, "drag", ["no number", "above 0 to 5"] },
        { "5,20000,0.6,0.05", "5,200,0.6,0.05", 3, "reynolds", ["too small", "1000 to 100000000"] },
        { "5,20000,0.6,0.05", "185,20000,0.6,0.05", 3, "angle_deg", ["too large", "-180 to 180 deg"] },
        { "5,20000,0.6,0.05", "5,20000,60,0.05", 3, "lift", ["too large", "-5 to 5"] },
        { "5,20000,0.6,0.05", "5,20000,0.6", 3, "", ["3 values, the header 4"] },
        { "5,20000,0.6,0.05", "5,20000,0,6,0,05", 3, "", ["6 values, the header 4"] },
        { "5,20000,0.6,0.05", "-5,20000,0.6,0.05", 3, "angle_deg", ["given twice", "line 2"] },
        { "5,20000,0.6,0.05", "#", null, "angle_deg", ["5 deg at Reynolds number 20000 is missing"] },
        { "5,20000,0.6,0.05", "6,20000,0.6,0.05", null, "angle_deg", ["5 deg at Reynolds number 20000 is missing and 1 more"] },
    };

    [Theory]
    [MemberData(nameof(BadPolars))]
    public void BadPolar(string piece, string change, int? line, string field, string[] message)
    {
        string text = piece switch
        {
            "\n" or "# nothing\n" => piece,
            _ when piece.StartsWith("angle", StringComparison.Ordinal) => Polar.Replace("angle_deg,reynolds,lift,drag", piece, StringComparison.Ordinal),
            _ when change.Contains(',', StringComparison.Ordinal) || change == "#" => Polar.Replace("\n" + piece, "\n" + change, StringComparison.Ordinal),
            _ => Polar.Replace(piece, piece.Replace("0.05", change, StringComparison.Ordinal), StringComparison.Ordinal),
        };
        Write("a.csv", text);
        BuildResult result = Result("a.csv");
        Assert.Null(result.Build);
        Diagnostic error = result.Diagnostics.First(d => d.Severity == Severity.Error);
        Assert.Equal((_folder.File("a.csv"), line, field), (error.File, error.Line, error.Key));
        foreach (string part in message) Assert.Contains(part, error.Message, StringComparison.Ordinal);
        Assert.Single(result.Diagnostics, d => d.Severity == Severity.Error);
        if (line == 1) Assert.Equal("", error.Value);
    }

    [Fact]
    public void PolarsThatAreTooBigAreRefused()
    {
        Write("big.csv", new string('#', (1024 * 1024) + 1));
        Says("big.csv", "a polar file may have at most 1 MiB");
        Write("angles.csv", "angle_deg,reynolds,lift,drag\n" + string.Concat(Enumerable.Range(0, 401).Select(i => $"{0.1 * i:F1},20000,0,0.1\n")));
        Says("angles.csv", "401 different angles; allowed are 2 to 400");
        Write("reynolds.csv", "angle_deg,reynolds,lift,drag\n" + string.Concat(Enumerable.Range(1, 41).Select(i => $"0,{i}000,0,0.1\n1,{i}000,0,0.1\n")));
        Says("reynolds.csv", "41 different Reynolds numbers; allowed are 1 to 40");
        Write("one.csv", "angle_deg,reynolds,lift,drag\n0,20000,0,0.1\n");
        Says("one.csv", "only one angle; allowed are 2 to 400");
        Write("bad.csv", "angle_deg,reynolds,lift,drag\n" + string.Concat(Enumerable.Range(0, 300).Select(i => $"{i},20000,0,-1\n")));
        Assert.Equal(20, Result("bad.csv").Diagnostics.Count);

        void Says(string name, string message) => Assert.Contains(message, Assert.Single(Result(name).Diagnostics).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ATableOfTheWholeTurnCloses()
    {
        const string open = "angle_deg,reynolds,lift,drag\n-180,20000,0.1,0.04\n0,20000,0,0.05\n180,20000,0,0.04\n";
        Write("open.csv", open);
        Assert.Contains("same flow", Assert.Single(Result("open.csv").Diagnostics).Message, StringComparison.Ordinal);
        Write("closed.csv", open.Replace("0.1,0.04", "0,0.04", StringComparison.Ordinal));
        Assert.Equal(0.04, Read("closed.csv").Propeller.Blades.Polar!.At(Math.PI, 20000, 0).Drag, 12);
    }

    [Fact]
    public void APropellerAloneIsReadByTheSameReader()
    {
        Assert.Equal("DA4002 5 x 3.75", BuildReader.ReadPropeller(Da4002Path).Name);
        Write("p.toml", "format = 1\n[propeller]\ndiameter_in = 5\npitch_in = 4\nblades = 2\nbaldes = 3\n");
        PropellerResult result = BuildReader.ReadPropeller(_folder.File("p.toml"));
        Assert.Equal(("p", 2), (result.Name, result.Propeller!.Blades.Count));
        Diagnostic warning = Assert.Single(result.Diagnostics);
        Assert.Equal((Severity.Warning, "propeller.baldes", "did you mean blades?"), (warning.Severity, warning.Key, warning.Hint));

        Write("q.toml", "format = 1\n[propeller]\nblades = 1\n");
        result = BuildReader.ReadPropeller(_folder.File("q.toml"));
        Assert.Null(result.Propeller);
        Assert.Equal(["propeller.diameter_in", "propeller.pitch_in", "propeller.blades"], result.Diagnostics.Select(d => d.Key));
    }

    [Fact]
    public void APolarIsNamedAsItsBuildIs()
    {
        Write("a.csv", "angle_deg,reynolds,lift\n");
        Write("build.toml", BuildText.With("propeller", "polar = \"a.csv\""));
        string build = Path.GetRelativePath(".", _folder.File("build.toml"));
        Assert.Equal(Path.Combine(Path.GetDirectoryName(build)!, "a.csv"), Assert.Single(BuildReader.Read(build).Diagnostics).File);
    }

    [Theory]
    [InlineData(Polar)]
    [InlineData("# a section\n\nangle_deg;reynolds;lift;drag\n-5;20000;-0.4;0.04\n")]
    public void APolarIsNoPropeller(string text)
    {
        Write("a.csv", text);
        PropellerResult result = BuildReader.ReadPropeller(_folder.File("a.csv"));
        Assert.Null(result.Propeller);
        Diagnostic error = Assert.Single(result.Diagnostics);
        Assert.Contains("looks like a polar or another CSV file", error.Message, StringComparison.Ordinal);
        Assert.Contains("[propeller]", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void APropellerAloneIsNoBuildAndThatIsSaidOnce()
    {
        Diagnostic error = Assert.Single(BuildReader.Read(Da4002Path).Diagnostics);
        Assert.Contains("holds a propeller only", error.Message, StringComparison.Ordinal);
        // with a second table it is a build in the making, whose missing keys are named
        BuildResult started = BuildReader.Parse("format = 1\n[propeller]\nblades = 3\n[motor]\npoles = 14\n", "test.toml");
        Assert.Contains(started.Diagnostics, d => d.Key == "motor.kv_rpm_per_V");
    }

    private static string Da4002Path => Path.Combine(BuildText.StarterDirectory(), "..", "validation", "da4002.toml");

    private static PropellerSpec Da4002()
    {
        PropellerResult result = BuildReader.ReadPropeller(Da4002Path);
        Assert.Empty(result.Diagnostics);
        return result.Propeller!;
    }

    private static AirState Air { get; } = StandardAtmosphere.At(0);

    /// <summary>The minimal build with lines in place of its pitch.</summary>
    private static string WithStations(string lines) => BuildText.Minimal.Replace("pitch_in = 4.3", lines, StringComparison.Ordinal);

    private void Write(string name, string text) => File.WriteAllText(_folder.File(name), text);

    private BuildResult Result(string polar)
    {
        Write("build.toml", BuildText.With("propeller", $"polar = \"{polar}\""));
        return BuildReader.Read(_folder.File("build.toml"));
    }

    private Build Read(string polar)
    {
        BuildResult result = Result(polar);
        Assert.True(result.Build is not null, string.Join('\n', result.Diagnostics));
        return result.Build;
    }
}
