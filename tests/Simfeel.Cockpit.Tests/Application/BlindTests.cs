using System.Security.Cryptography;
using Simfeel.Cockpit.Application;
using Simfeel.Cockpit.Pages.Widgets;
using Simfeel.Flight;
using Simfeel.Flight.Traces;
using Simfeel.Studies.Blind;
using static Simfeel.Cockpit.Platform.Scancode;

namespace Simfeel.Cockpit.Tests.Application;

/// <summary>Blind flights in the whole program: what can be seen, heard and read until the vote is the same for both builds.</summary>
[Collection(WindowFixture.Collection)]
public class BlindTests(WindowFixture fixture)
{
    [Fact]
    public void Nothing_tells_the_flights_apart_until_the_last_vote() => fixture.Run(() =>
    {
        using StringWriter said = new();
        TextWriter before = Console.Error;
        string trace = "";
        using AppRun run = new(fixture.Window, (folder, options) =>
        {
            trace = Path.Combine(folder, "flight.arrow");
            return options with { StraightToTheField = true, Record = trace, Blind = new(BlindTest.Triangle, 2, 1) };
        });
        Console.SetError(said);
        try
        {
            run.ToTheField();
            BlindSession session = run.App.Blind.Session!;
            Dictionary<string, string> files = Files(run);
            List<double> masses = [];
            for (int trial = 1; trial <= 3; trial++)
            {
                HashSet<string> sights = [];
                for (int flight = 1; flight <= 3; flight++)
                {
                    if (flight > 1) run.Press(Tab);
                    FlyALittle(run);
                    masses.Add(run.App.Outing!.Build(0).Unit.Unit.Craft.Mass);
                    sights.Add(Sight(run).Replace($"flight {flight} of", "flight n of", StringComparison.Ordinal));
                    Assert.Equal(files, Files(run));
                    Assert.Null(run.App.Outing!.Stage.Recorder);
                }
                // every word that can be read in the three flights is the same
                Assert.Single(sights);
                run.Press(T);
                Assert.Equal("BlindVotePage", run.App.PageName);
                int voted = session.Voted;
                run.Press(Enter);
                Assert.Equal(voted + 1, session.Voted);
                // the vote is on the disk at once
                files = Files(run);
            }
            Assert.True(session.IsOver);
            Assert.Equal("BlindResultPage", run.App.PageName);
            Assert.Equal("", said.ToString());

            // what flew in each trial is what the order says, told by what it weighs
            IReadOnlyList<RevealedTrial> truth = session.Reveal();
            string flown = string.Concat(truth.Select(trial => trial.Order));
            Assert.Equal(flown.Select(build => build == 'A'), masses.Select(mass => mass == masses.Min()));
            Assert.Equal(2, masses.Distinct().Count());
            VoteLogContent log = VoteLog.Read(run.App.Blind.VotesFile);
            Assert.Equal(truth, log.Rows.Select(row => row.Vote));
            Assert.All(log.Rows, row => Assert.Equal(("Wagtail", "Curlew"), (row.Subject.BuildA, row.Subject.BuildB)));
            Assert.True(Math.Abs(log.Rows[0].Subject.Difference_Percent) > 30);
            Recorded(run, truth);
        }
        finally
        {
            Console.SetError(before);
        }
    });

    [Fact]
    public void Keys_that_would_tell_say_so_and_do_nothing() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, (_, options) => options with { StraightToTheField = true, Blind = new(BlindTest.Pair, 1, 0) });
        run.ToTheField();
        run.Frames(0.1);
        foreach (int key in (int[])[G, M, X, F, B])
        {
            run.App.Notify("");
            run.Press(key);
            Assert.Equal("", run.App.PageName);
            Assert.Contains("would tell", run.App.Readout.Notice, StringComparison.Ordinal);
        }
        Assert.False(run.App.Readout.ShowGraphs);
        Assert.False(run.App.Painter.MassView);
        Assert.False(run.App.Outing!.Stage.Session.Shadow);
        // a vote before all flights is refused
        run.Press(T);
        run.Press(Enter);
        Assert.Equal(0, run.App.Blind.Session!.Voted);
    });

    [Fact]
    public void There_is_no_vote_before_each_flight_was_in_the_air() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, (_, options) => options with { StraightToTheField = true, Blind = new(BlindTest.Pair, 1, 0) });
        run.ToTheField();
        // both taken to the field, but never armed
        run.Unseen(4);
        run.Press(Tab);
        run.Unseen(4);
        Assert.Equal((0, "flight 1 0.0 s, flight 2 0.0 s"), Try());
        run.Hover();
        Assert.Equal((0, "flight 1 0.0 s"), Try());
        run.Press(Tab);
        run.Hover();
        Assert.Equal((1, ""), Try());

        (int Voted, string Missing) Try()
        {
            run.Press(T);
            string said = run.App.Pages.Top!.All.OfType<Label>().Select(label => label.Text).FirstOrDefault(text => text.StartsWith("No vote", StringComparison.Ordinal)) ?? "";
            // without a vote the first button flies a flight again
            if (said.Length == 0) run.Press(Enter);
            else run.Press(T);
            return (run.App.Blind.Session!.Voted, said.Length == 0 ? "" : said[(said.IndexOf(": ", StringComparison.Ordinal) + 2)..^1]);
        }
    });

    [Fact]
    public void One_build_against_itself_is_refused_but_for_a_late_picture() => fixture.Run(() =>
    {
        using (AppRun straight = new(fixture.Window, (_, options) => options with { StraightToTheField = true, B = "wagtail", Blind = new(BlindTest.Pair) }))
        {
            UnusableFileException error = Assert.Throws<UnusableFileException>(straight.ToTheField);
            Assert.Contains("Wagtail against itself", error.Message, StringComparison.Ordinal);
        }
        using AppRun run = new(fixture.Window, (_, options) => options with { B = "wagtail" });
        run.App.FlyBlind(new(BlindTest.Pair));
        run.Until(() => run.App.PageName == "MessagePage", 60, "it was not refused");
        Assert.Null(run.App.Outing);
        run.Press(Enter);
        run.App.FlyBlind(new(BlindTest.Pair, Late: 0.08));
        run.ToTheField();
        Assert.True(run.App.Blind.IsOn);
    });

    [Fact]
    public void Both_builds_look_alike_from_outside() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, (_, options) => options with { StraightToTheField = true, Blind = new(BlindTest.Triangle, 1, 0) });
        run.ToTheField();
        byte[]?[] pictures = new byte[2][];
        for (int flight = 0; flight < 3; flight++)
        {
            if (flight > 0) run.Press(Tab);
            run.Press(R);
            run.App.Notify("");
            run.Frames(0.5);
            byte[] picture = new byte[4 * 640 * 360];
            run.App.Painter.ReadInto(640, 360, picture);
            pictures[run.App.Outing!.Build(0).Unit.Unit.Craft.Mass > 0.7 ? 1 : 0] = picture;
        }
        // the eye's height differs by what springs give under two masses, which moves edges far away by parts of a pixel
        int unlike = pictures[0]!.Zip(pictures[1]!).Count(pair => Math.Abs(pair.First - pair.Second) > 24);
        Assert.True(unlike < 1000, $"{unlike} bytes of {pictures[0]!.Length} differ");
    });

    [Fact]
    public void A_late_picture_comes_with_the_second_build_alone_and_the_session_can_be_left() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window);
        run.Frames(0.1);
        run.App.Rack.Wait(0);
        run.App.Rack.Wait(1);
        run.App.Blind.OpenSetup();
        Assert.Equal("BlindSetupPage", run.App.PageName);
        run.App.FlyBlind(new(BlindTest.Pair, 6, 0, 0.08));
        run.ToTheField();
        List<double> delays = [];
        for (int flight = 0; flight < 12 && !run.App.Blind.Session!.IsOver; flight++)
        {
            delays.Add(run.App.Blind.Late);
            run.Hover();
            run.Press(Tab);
            delays.Add(run.App.Blind.Late);
            run.Hover();
            run.Press(T);
            run.Press(Enter);
        }
        Assert.Equal([0, 0.08], delays.Distinct().Order());
        Assert.Equal("BlindResultPage", run.App.PageName);
        Assert.Equal(80, VoteLog.Read(run.App.Blind.VotesFile).Rows[0].Subject.VideoDelay_ms);
        run.Press(Escape);
        Assert.Equal("StartPage", run.App.PageName);

        run.App.FlyBlind(new(BlindTest.Pair, 6));
        run.ToTheField();
        run.Press(Escape);
        Assert.Equal("PausePage", run.App.PageName);
        Assert.DoesNotContain(run.App.Pages.Top!.All, widget => widget is Button { Text: "Part bench" or "After-flight table" or "Swap builds" });
        run.App.EndFlight();
        Assert.Equal("StartPage", run.App.PageName);
        Assert.False(run.App.Blind.IsOn);
    });

    /// <summary>The same seconds of flight every time.</summary>
    private static void FlyALittle(AppRun run)
    {
        run.Frames(0.1);
        run.Press(R);
        run.Hover();
        run.Frames(0.1);
    }

    /// <summary>Everything in words: title, names, pages of the pause menu.</summary>
    private static string Sight(AppRun run)
    {
        run.App.Notify("");
        run.Press(Escape);
        Assert.Equal("PausePage", run.App.PageName);
        string menu = string.Join('|', run.App.Pages.Top!.All.OfType<Button>().Select(button => button.Text));
        run.Press(Escape);
        Outing outing = run.App.Outing!;
        return string.Join('\n',
            run.Title, menu, run.App.Blind.State, outing.Build(0).Name, outing.Build(1).Name, outing.Build(0).Unit.Unit.Name, outing.Build(0).Path,
            run.App.Readout.Builds[0].Name, run.App.Readout.Builds[1].Name, run.App.Readout.Blind, outing.Look(0).Build.Name, outing.Look(1).Build.Name, run.App.Blind.Session);
    }

    private static Dictionary<string, string> Files(AppRun run) =>
        Directory.GetFiles(run.Folder, "*", SearchOption.AllDirectories).ToDictionary(file => file, file => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(file))));

    /// <summary>The recordings came after the end, bear the truth, and give the same bits.</summary>
    private static void Recorded(AppRun run, IReadOnlyList<RevealedTrial> truth)
    {
        string[] traces = [.. Directory.GetFiles(run.Folder, "flight-*.arrow").Order()];
        Assert.Equal(9, traces.Length);
        for (int n = 0; n < 9; n++)
        {
            Assert.EndsWith($"flight-trial-{1 + (n / 3):00}-flight-{1 + (n % 3)}.arrow", traces[n], StringComparison.Ordinal);
            using TraceReader reader = TraceReader.Open(traces[n]);
            Assert.True(reader.Header.Blind);
            Assert.Equal(truth[n / 3].Order[n % 3] == 'A' ? "Wagtail" : "Curlew", reader.Header.A.Name);
            using Replay replay = new(reader);
            while (replay.TryNext(out PilotInput input))
            {
                replay.Session.Fly(input);
                replay.Compare();
            }
            Assert.Null(replay.FirstDifference);
        }
    }
}
