using System.Diagnostics;
using Simfeel.Cockpit.Loading;
using Simfeel.Flight;

namespace Simfeel.Cockpit.Tests.Parts;

public sealed class BuildWatchTests : IDisposable
{
    private readonly TempFolder _folder = new();
    private readonly string _path;

    public BuildWatchTests()
    {
        _path = Path.Combine(_folder.Path, "mine.toml");
        File.Copy(BenchBuilds.Starter("wagtail").Path!, _path);
    }

    private string Text => File.ReadAllText(_path);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void An_edit_is_offered_once()
    {
        using BuildWatch watch = Start();
        Assert.False(watch.TryTake(out _, out _));
        File.WriteAllText(_path, Changed("mass_g = 48", "mass_g = 49"));
        FlyableBuild build = Build(watch);
        Assert.Equal(0.049, build.Assembled.Build.Stack.Mass, 12);
        Assert.Equal(Text, build.Source.Text);
        Assert.False(watch.TryTake(out _, out _));
    }

    [Fact]
    public void A_bad_edit_says_what_is_wrong_and_its_mending_is_seen()
    {
        using BuildWatch watch = Start();
        string good = Text;
        File.WriteAllText(_path, Changed("wheelbase_mm = 225", "wheelbase_mm = 22"));
        string error = Error(watch);
        Assert.Contains("frame.wheelbase_mm = 22", error, StringComparison.Ordinal);
        Assert.Contains("40 to 1500 mm", error, StringComparison.Ordinal);
        File.WriteAllText(_path, good);
        Assert.Equal(good, Build(watch).Source.Text);
    }

    [Fact]
    public void A_craft_that_cannot_hover_is_an_error_too()
    {
        using BuildWatch watch = Start();
        File.WriteAllText(_path, Changed("value = 1770", "value = 200"));
        Assert.Contains("cannot hover", Error(watch), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_renamed_over_the_old_one_is_seen()
    {
        using BuildWatch watch = Start();
        string beside = _path + "~";
        File.WriteAllText(beside, Changed("mass_g = 48", "mass_g = 52.5"));
        File.Move(beside, _path, overwrite: true);
        Assert.Equal(0.0525, Build(watch).Assembled.Build.Stack.Mass, 12);
    }

    [Fact]
    public void A_deleted_file_is_said_and_seen_when_it_is_back()
    {
        using BuildWatch watch = Start();
        string text = Text;
        File.Delete(_path);
        Assert.Contains("There is no such file", Error(watch), StringComparison.Ordinal);
        File.WriteAllText(_path, text);
        Assert.Equal("Wagtail", Build(watch).Name);
    }

    [Fact]
    public void A_change_before_the_watch_began_is_seen()
    {
        FlyableBuild old = Load();
        DateTime written = File.GetLastWriteTimeUtc(_path);
        File.WriteAllText(_path, Changed("mass_g = 48", "mass_g = 49"));
        File.SetLastWriteTimeUtc(_path, written);
        using BuildWatch watch = new(old, BenchBuilds.Profile);
        Assert.Equal(0.049, Build(watch).Assembled.Build.Stack.Mass, 12);
    }

    [Fact]
    public void The_polar_that_a_build_names_is_watched_also_while_it_is_missing()
    {
        using BuildWatch watch = Start();
        string polar = Path.Combine(_folder.Path, "section.csv");
        File.WriteAllText(_path, Changed("diameter_in = 5.1", "polar = \"section.csv\"\ndiameter_in = 5.1"));
        Assert.Contains("propeller.polar", Error(watch), StringComparison.Ordinal);
        File.WriteAllText(polar, Polar(0.02));
        FlyableBuild first = Build(watch);
        File.WriteAllText(polar, Polar(0.03));
        FlyableBuild second = Build(watch);
        Assert.Equal(first.Source.Text, second.Source.Text);
        Assert.True(second.Unit.Hover.Rotor.Torque > first.Unit.Hover.Rotor.Torque);
        File.WriteAllText(polar, "nothing");
        Assert.Contains("section.csv", Error(watch), StringComparison.Ordinal);
        File.WriteAllText(polar, Polar(0.02));
        Assert.Equal(first.Unit.Hover.Rotor.Torque, Build(watch).Unit.Hover.Rotor.Torque);
    }

    [Fact]
    public void A_build_from_no_file_is_refused() =>
        Assert.Throws<ArgumentException>(() => new BuildWatch(BenchBuilds.Of(Text), BenchBuilds.Profile));

    /// <summary>A thin section: lift 2 pi per radian up to 10 degrees, and a drag coefficient.</summary>
    private static string Polar(double drag)
    {
        string text = "angle_deg,reynolds,lift,drag\n";
        foreach (int degrees in new[] { -10, 0, 10 })
            foreach (int reynolds in new[] { 20000, 200000 })
                text += FormattableString.Invariant($"{degrees},{reynolds},{0.1 * degrees + 0.3:F2},{drag}\n");
        return text;
    }

    private static FlyableBuild Build(BuildWatch watch)
    {
        (FlyableBuild? build, string? error) = Next(watch);
        Assert.True(build is not null, error);
        Assert.Null(error);
        return build;
    }

    private static string Error(BuildWatch watch)
    {
        (FlyableBuild? build, string? error) = Next(watch);
        Assert.Null(build);
        return error!;
    }

    /// <summary>Waits for the next offer; gives up after a time that only a hang takes.</summary>
    private static (FlyableBuild?, string?) Next(BuildWatch watch)
    {
        Stopwatch waited = Stopwatch.StartNew();
        FlyableBuild? build;
        string? error;
        while (!watch.TryTake(out build, out error))
        {
            Assert.True(waited.Elapsed.TotalSeconds < 30, "Nothing was offered.");
            Thread.Sleep(20);
        }
        return (build, error);
    }

    private string Changed(string from, string to)
    {
        Assert.Contains(from, Text, StringComparison.Ordinal);
        return Text.Replace(from, to, StringComparison.Ordinal);
    }

    private FlyableBuild Load() => BenchBuilds.Good(FlyableBuild.Read(_path, BenchBuilds.Air, BenchBuilds.Profile));

    private BuildWatch Start() => new(Load(), BenchBuilds.Profile);
}
