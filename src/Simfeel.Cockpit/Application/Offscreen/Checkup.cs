using System.Diagnostics;
using Silk.NET.OpenGL;
using Simfeel.Cockpit.Graphics;
using Simfeel.Cockpit.Graphics.Landscape;
using Simfeel.Cockpit.Platform;
using Simfeel.Cockpit.Settings;
using Simfeel.Cockpit.Sound;
using Simfeel.Cockpit.Stage;
using Simfeel.Flight;
using Simfeel.Flight.Fields;

namespace Simfeel.Cockpit.Application.Offscreen;

/// <summary>What the window finds on this machine, measured with the program itself: pictures, pacing, delays, load.</summary>
public static class Checkup
{
    private const double Rate_Hz = 60;

    private const int WarmUp = 90, Measured = 240;

    /// <summary>Flies for some seconds and measures; in a window that nobody sees.</summary>
    /// <param name="options">Builds and field.</param>
    /// <returns>Keys and what stands behind them, in order.</returns>
    /// <exception cref="MissingOnMachineException">Something of the machine is missing.</exception>
    /// <exception cref="UnusableFileException">A file cannot be used.</exception>
    public static IReadOnlyList<KeyValuePair<string, object>> Run(CockpitOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        List<KeyValuePair<string, object>> report = [];
        string folder = Directory.CreateTempSubdirectory("simfeel-doctor").FullName;
        try
        {
            (FieldMap map, string text) = CockpitStart.ReadField(options.FieldFile);
            FieldPictures pictures = new(map);
            using (SoundDevice speaker = new())
                Add("sound", speaker.IsOpen ? speaker.Driver : speaker.Problem);
            using AppWindow window = new("Simfeel", options.Size.Width, options.Size.Height, visible: false);
            UserFolder user = new(folder);
            user.TryWrite(SettingsFile.Name, SettingsFile.Write(new() { Quality = Quality.Low }), out _);
            using CockpitApp app = new(
                window, options with { A = "wagtail", B = "curlew", Silent = true }, map, text, user, pictures);
            using PictureTarget target = new(window.Gl, options.Size.Width, options.Size.Height);
            app.DrawInto(target);
            app.Frame(1 / Rate_Hz);
            window.Gl.Finish();
            window.Swap();
            double first = (DateTime.Now - Process.GetCurrentProcess().StartTime).TotalSeconds;
            Add("start_to_first_frame_s", Math.Round(first, 2));
            Add("video_driver", AppWindow.Driver);
            Add("opengl", $"{window.Gl.GetStringS(StringName.Version)}, {window.Gl.GetStringS(StringName.Renderer)}");
            Add("stick_devices", app.Pilot.Hub.Devices.Count == 0 ? "none" : string.Join(", ", app.Pilot.Hub.Devices.Select(device => device.Name)));
            app.Rack.Wait(app.Rack.IndexOf("wagtail"));
            app.Rack.Wait(app.Rack.IndexOf("curlew"));
            app.FlyPicked();
            while (app.Outing is null) app.Frame(1 / Rate_Hz);

            double[] delay = new double[2];
            for (int craft = 0; craft < 2; craft++) delay[craft] = Fly(app, window, craft, Add);
            Add("picture_size", $"{options.Size.Width}x{options.Size.Height}, quality low");
            Add("event_to_picture_A_ms", Math.Round(1000 * delay[0], 2));
            Add("event_to_picture_B_ms", Math.Round(1000 * delay[1], 2));
            Add("physics_share_of_a_core", $"{100 * PhysicsShare(app.Outing!):F2} % (two craft in flight)");
            return report;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        void Add(string key, object value) => report.Add(new(key, value));
    }

    /// <summary>Flies one craft, the other as a shadow, and returns the median time from a frame's events to its swap, s.</summary>
    private static double Fly(CockpitApp app, AppWindow window, int craft, Action<string, object> add)
    {
        Outing outing = app.Outing!;
        double hover = outing.Build(craft).Unit.Throttle.HoverStick;
        const PilotSwitches both = PilotSwitches.Armed | PilotSwitches.Level | PilotSwitches.Climb | PilotSwitches.Shadow;
        outing.Stage.Tape = new ScriptTape(
            new(
                (0, default, craft == 0 ? PilotSwitches.Restart : PilotSwitches.SwapFromStart),
                (0.1, default, both),
                (0.3, new(0, 0, 0, hover + (0.4 * (1 - hover))), both),
                (1.3, new(0.1, -0.3, 0.2, hover), both)),
            outing.Profile.StickPeriod);
        FramePacer pacer = new(Rate_Hz);
        TimeRing work = new();
        for (int n = 0; n < WarmUp + Measured; n++)
        {
            double seconds = pacer.Wait();
            if (n == WarmUp)
            {
                pacer.Frames.Clear();
                work.Clear();
            }
            long begin = Stopwatch.GetTimestamp();
            app.Frame(seconds);
            // the driver may put work off until it is asked for the result
            window.Gl.Finish();
            window.Swap();
            work.Add(Stopwatch.GetElapsedTime(begin).TotalSeconds);
        }
        if (craft == 0)
        {
            add("frame_pace_median_ms", Math.Round(1000 * pacer.Frames.Median_s, 3));
            add("frame_pace_99th_percentile_ms", Math.Round(1000 * pacer.Frames.Percentile_s(99), 3));
            add("frame_work_median_ms", Math.Round(1000 * work.Median_s, 2));
            add("frame_work_99th_percentile_ms", Math.Round(1000 * work.Percentile_s(99), 2));
        }
        return work.Median_s;
    }

    /// <summary>Processor time of the physics of both craft over flight time.</summary>
    private static double PhysicsShare(Outing outing)
    {
        using FlightSession session = new(outing.Build(0).Unit, outing.Build(1).Unit, outing.Profile, outing.Conditions);
        PilotInput input = PilotInput.Of(new(0.2, -0.3, 0.1, outing.HoverStick), PilotSwitches.Armed | PilotSwitches.Shadow);
        double least = double.PositiveInfinity;
        for (int round = 0; round < 5; round++)
        {
            const int readings = 1000;
            long begin = Stopwatch.GetTimestamp();
            for (int n = 0; n < readings; n++) session.Fly(input);
            least = Math.Min(least, Stopwatch.GetElapsedTime(begin).TotalSeconds / (readings * outing.Profile.StickPeriod));
        }
        return least;
    }
}
