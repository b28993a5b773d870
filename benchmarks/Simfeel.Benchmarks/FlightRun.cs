using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using Silk.NET.OpenGL;
using Simfeel.Cockpit.Application;
using Simfeel.Cockpit.Application.Offscreen;
using Simfeel.Cockpit.Graphics;
using Simfeel.Cockpit.Graphics.Landscape;
using Simfeel.Cockpit.Parts;
using Simfeel.Cockpit.Platform;
using Simfeel.Cockpit.Stage;
using Simfeel.Flight;
using Simfeel.Flight.Fields;

namespace Simfeel.Benchmarks;

/// <summary>
/// What the window's program costs: from the start of the process to the first picture, a frame by graphics preset, its
/// garbage, the physics, and the frames about a change of propellers. Processor time counts where other work shares the machine.
/// In a window on DISPLAY where there is one, else without a screen.
/// </summary>
internal static class FlightRun
{
    private const double Period = 1.0 / 60;
    private const int WarmUp = 60, Measured = 200;

    /// <summary>Runs and returns the Markdown report; the first thing a process does.</summary>
    /// <param name="part">Part to measure alone: start, frames or change; null for all.</param>
    public static string Report(string? part)
    {
        StringBuilder text = new();
        bool visible = Environment.GetEnvironmentVariable("DISPLAY") is { Length: > 0 };
        string folder = Directory.CreateTempSubdirectory("simfeel-flight").FullName;
        try
        {
            List<Moment> start = [Moment.Since("runtime", Process.GetCurrentProcess().StartTime)];
            string field = Path.Combine(AppContext.BaseDirectory, "fields", "gull-point.toml");
            (FieldMap map, string fieldText) = CockpitStart.ReadField(field);
            FieldPictures pictures = new(map);
            start.Add(Moment.Now("field file"));
            using AppWindow window = new("Simfeel", 1280, 720, visible);
            start.Add(Moment.Now("window and OpenGL context"));
            UserFolder user = new(folder);
            CockpitOptions options = new() { A = "wagtail", B = "curlew", FieldFile = field, PictureFolder = folder, Silent = true };
            using CockpitApp app = new(window, options, map, fieldText, user, pictures);
            start.Add(Moment.Now("scene, fonts, pages"));
            using PictureTarget target = new(window.Gl, 1280, 720);
            if (!visible) app.DrawInto(target);
            app.Frame(Period);
            start.Add(Moment.Now("first frame, given to the driver"));
            window.Gl.Finish();
            window.Swap();
            start.Add(Moment.Now("first frame, drawn"));

            text.AppendLine(CultureInfo.InvariantCulture, $"# Flight on {Machine.CpuName}");
            text.AppendLine();
            text.AppendLine(CultureInfo.InvariantCulture, $"{window.Gl.GetStringS(StringName.Renderer)}; {AppWindow.Driver}; 1280x720; {Environment.ProcessorCount} processors.");
            Start(text, start);
            if (part == "start") return text.ToString();
            app.Rack.Wait(app.Rack.IndexOf("wagtail"));
            app.Rack.Wait(app.Rack.IndexOf("curlew"));
            app.FlyPicked();
            while (app.Outing is null) app.Frame(Period);
            if (part is null or "frames") Presets(text, app, window);
            if (part is null or "frames") Physics(text, app);
            if (part is null or "change") Change(text, app, window, draw: true);
            if (part is null or "change") Change(text, app, window, draw: false);
            return text.ToString();
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Start(StringBuilder text, List<Moment> start)
    {
        text.AppendLine();
        text.AppendLine("## Start to first frame");
        text.AppendLine();
        text.AppendLine("| until | ms | CPU ms, all threads |");
        text.AppendLine("| --- | ---: | ---: |");
        double wall = 0, cpu = 0;
        foreach (Moment moment in start)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"| {moment.Name} | {1000 * (moment.Wall - wall):f0} | {1000 * (moment.Cpu - cpu):f0} |");
            (wall, cpu) = (moment.Wall, moment.Cpu);
        }
        text.AppendLine(CultureInfo.InvariantCulture, $"| all | {1000 * wall:f0} | {1000 * cpu:f0} |");
    }

    private static void Presets(StringBuilder text, CockpitApp app, AppWindow window)
    {
        text.AppendLine();
        text.AppendLine("## A frame of flight");
        text.AppendLine();
        text.AppendLine("Ours: events, flight, overlay and what is given to the driver, on the frame's thread; without drawing: events and flight alone. All: every thread, the driver's software rasteriser with them.");
        text.AppendLine();
        text.AppendLine("| preset | without drawing, CPU ms | frame's thread, CPU ms, median | all threads, CPU ms, mean | wall ms, least | wall ms, median | bytes allocated a frame, frame's thread | other threads |");
        text.AppendLine("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (Quality quality in Enum.GetValues<Quality>())
        {
            app.Settings.Quality = quality;
            app.StoreSettings();
            Fly(app);
            double[] blind = new double[Measured], ours = new double[Measured], wall = new double[Measured];
            for (int n = 0; n < WarmUp; n++) Whole(app, window);
            for (int n = 0; n < Measured; n++)
            {
                double before = ThreadTime();
                app.Frame(Period, draw: false);
                blind[n] = ThreadTime() - before;
            }
            Fly(app);
            for (int n = 0; n < WarmUp; n++) Whole(app, window);
            long garbage = GC.GetTotalAllocatedBytes(precise: true), own = GC.GetAllocatedBytesForCurrentThread();
            double all = ProcessTime();
            for (int n = 0; n < Measured; n++)
            {
                double before = ThreadTime();
                long began = Stopwatch.GetTimestamp();
                Whole(app, window);
                ours[n] = ThreadTime() - before;
                wall[n] = Stopwatch.GetElapsedTime(began).TotalSeconds;
            }
            all = ProcessTime() - all;
            own = GC.GetAllocatedBytesForCurrentThread() - own;
            garbage = GC.GetTotalAllocatedBytes(precise: true) - garbage - own;
            Array.Sort(blind);
            Array.Sort(ours);
            Array.Sort(wall);
            text.AppendLine(CultureInfo.InvariantCulture,
                $"| {quality} | {1000 * blind[Measured / 2]:f3} | {1000 * ours[Measured / 2]:f2} | {1000 * all / Measured:f1} | {1000 * wall[0]:f1} | {1000 * wall[Measured / 2]:f1} | {(double)own / Measured:f0} | {(double)garbage / Measured:f0} |");
        }
        app.Settings.Quality = Quality.Low;
        app.StoreSettings();
    }

    private static void Physics(StringBuilder text, CockpitApp app)
    {
        Outing outing = app.Outing!;
        using FlightSession session = new(outing.Build(0).Unit, outing.Build(1).Unit, outing.Profile, outing.Conditions);
        PilotInput input = PilotInput.Of(new(0.2, -0.3, 0.1, outing.HoverStick), PilotSwitches.Armed | PilotSwitches.Shadow);
        const int readings = 200;
        double least = double.PositiveInfinity;
        long garbage = long.MaxValue;
        for (int round = 0; round < 50; round++)
        {
            long bytes = GC.GetAllocatedBytesForCurrentThread();
            long began = Stopwatch.GetTimestamp();
            for (int n = 0; n < readings; n++) session.Fly(input);
            least = Math.Min(least, Stopwatch.GetElapsedTime(began).TotalSeconds / readings);
            garbage = Math.Min(garbage, GC.GetAllocatedBytesForCurrentThread() - bytes);
        }
        text.AppendLine();
        text.AppendLine(CultureInfo.InvariantCulture, $"Physics of two craft: {1e6 * least:f2} us for each stick reading of {1000 * outing.Profile.StickPeriod:f0} ms, {100 * least / outing.Profile.StickPeriod:f2} % of a core; {garbage} bytes allocated in {readings} readings.");
    }

    /// <summary>Frames before, while another propeller is worked out, and the one that swaps the craft.</summary>
    private static void Change(StringBuilder text, CockpitApp app, AppWindow window, bool draw)
    {
        FramePacer pacer = new(1 / Period);
        List<double> before = [], meanwhile = [], after = [], swaps = [], swapWork = [];
        int longest = 0;
        for (int round = 0; round < 6; round++)
        {
            Fly(app);
            for (int n = 0; n < 90; n++) before.Add(One());
            PartBench bench = app.BenchOf(0);
            // pitches that nobody flew before, so that no table is in memory or on disk
            bench.Change("propeller.pitch_in", 4.1 + (0.01 * round) + (Random.Shared.NextDouble() * 0.01));
            int frames = 0;
            for (; bench.State == PartBenchState.Working; frames++) meanwhile.Add(One());
            longest = Math.Max(longest, frames);
            double work = ThreadTime();
            long began = Stopwatch.GetTimestamp();
            app.Do(Cockpit.Input.PilotAction.Restart);
            swapWork.Add(ThreadTime() - work);
            if (draw) Whole(app, window);
            else app.Frame(Period, draw: false);
            swaps.Add(Stopwatch.GetElapsedTime(began).TotalSeconds);
            Fly(app);
            for (int n = 0; n < 90; n++) after.Add(One());
        }
        text.AppendLine();
        text.AppendLine(draw ? "## Frames about a change of propellers" : "## The same without drawing, as beside a graphics card");
        text.AppendLine();
        text.AppendLine(CultureInfo.InvariantCulture, $"Preset low, wall ms; the change took at most {longest} frames to be worked out.{(draw ? "" : " Frames at 60 Hz.")}");
        text.AppendLine();
        text.AppendLine("| frames | median | largest |");
        text.AppendLine("| --- | ---: | ---: |");
        Row("before", before);
        Row("while the table is computed", meanwhile);
        Row("with the swap", swaps);
        Row("after", after);
        Row("the swap itself, CPU of the frame's thread", swapWork);

        double One()
        {
            if (draw) return Whole(app, window);
            pacer.Wait();
            long began = Stopwatch.GetTimestamp();
            app.Frame(Period, draw: false);
            return Stopwatch.GetElapsedTime(began).TotalSeconds;
        }

        void Row(string name, List<double> times)
        {
            times.Sort();
            text.AppendLine(CultureInfo.InvariantCulture, $"| {name} | {(times.Count == 0 ? double.NaN : 1000 * times[times.Count / 2]):f2} | {(times.Count == 0 ? double.NaN : 1000 * times[^1]):f2} |");
        }
    }

    /// <summary>Lets both craft climb away and roll about, without a pilot.</summary>
    private static void Fly(CockpitApp app)
    {
        Outing outing = app.Outing!;
        double hover = outing.HoverStick;
        const PilotSwitches both = PilotSwitches.Armed | PilotSwitches.Level | PilotSwitches.Climb | PilotSwitches.Shadow;
        outing.Stage.Tape = new ScriptTape(
            new((0, default, PilotSwitches.Restart), (0.1, default, both), (0.3, new(0, 0, 0, hover + (0.4 * (1 - hover))), both), (1.3, new(0.1, -0.3, 0.2, hover), both)),
            outing.Profile.StickPeriod);
    }

    /// <summary>A frame with all that the driver makes of it; its time, s.</summary>
    private static double Whole(CockpitApp app, AppWindow window)
    {
        long began = Stopwatch.GetTimestamp();
        app.Frame(Period);
        window.Gl.Finish();
        window.Swap();
        return Stopwatch.GetElapsedTime(began).TotalSeconds;
    }

    private static double ProcessTime() => Environment.CpuUsage.TotalTime.TotalSeconds;

    private static double ThreadTime()
    {
        const int thread = 3;
        return clock_gettime(thread, out Instant now) == 0 ? now.Seconds + (1e-9 * now.Nanoseconds) : double.NaN;
    }

    [DllImport("libc")]
    private static extern int clock_gettime(int clock, out Instant now);

    private readonly record struct Instant(long Seconds, long Nanoseconds);

    /// <summary>How far the start has come.</summary>
    private readonly record struct Moment(string Name, double Wall, double Cpu)
    {
        private static long _origin;
        private static double _before;

        public static Moment Since(string name, DateTime start)
        {
            _before = (DateTime.Now - start).TotalSeconds;
            _origin = Stopwatch.GetTimestamp();
            return new(name, _before, ProcessTime());
        }

        public static Moment Now(string name) => new(name, _before + Stopwatch.GetElapsedTime(_origin).TotalSeconds, ProcessTime());
    }
}
