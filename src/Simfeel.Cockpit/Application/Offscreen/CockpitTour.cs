using Simfeel.Cockpit.Graphics;
using Simfeel.Cockpit.Graphics.Views;
using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Parts;
using Simfeel.Cockpit.Platform;
using Simfeel.Cockpit.Stage;
using Simfeel.Flight;
using Simfeel.Flight.Fields;

namespace Simfeel.Cockpit.Application.Offscreen;

/// <summary>
/// Draws the pictures of the README's tour: the program itself, driven by a script, without a screen. Settings and keys are
/// those that come with the program.
/// </summary>
public static class CockpitTour
{
    private const double Frame = 1.0 / 60;

    private const PilotSwitches Assisted = PilotSwitches.Armed | PilotSwitches.Level | PilotSwitches.Climb;

    /// <summary>Draws all pictures into a folder.</summary>
    /// <param name="options">Builds and field.</param>
    /// <param name="folder">Folder; made if it is not there.</param>
    /// <returns>The files.</returns>
    /// <exception cref="MissingOnMachineException">Something of the machine is missing.</exception>
    /// <exception cref="IOException">A picture cannot be written.</exception>
    public static IReadOnlyList<string> Draw(CockpitOptions options, string folder)
    {
        ArgumentNullException.ThrowIfNull(options);
        Directory.CreateDirectory(folder);
        string settings = Directory.CreateTempSubdirectory("simfeel-tour").FullName;
        try
        {
            (FieldMap map, string text) = CockpitStart.ReadField(options.FieldFile);
            using AppWindow window = new("Simfeel", options.Size.Width, options.Size.Height, visible: false);
            using CockpitApp app = new(window, options with { A = "wagtail", B = "curlew", Silent = true, PictureFolder = settings }, map, text, new UserFolder(settings));
            using PictureTarget target = new(window.Gl, options.Size.Width, options.Size.Height);
            app.DrawInto(target);
            app.Settings.Quality = Quality.High;
            app.StoreSettings();
            return Pictures(app, folder);
        }
        finally
        {
            Directory.Delete(settings, recursive: true);
        }
    }

    private static List<string> Pictures(CockpitApp app, string folder)
    {
        List<string> files = [];
        app.Rack.Wait(app.Rack.IndexOf("wagtail"));
        app.Rack.Wait(app.Rack.IndexOf("curlew"));
        Run(app, 0.5);
        Take("start");

        app.Lessons.ShowAt("ballast-to-the-tips", 0.42, masses: true);
        Run(app, 0.3);
        Take("lesson");
        app.Pages.Close();

        Begin(app, Flowing(app));
        app.Painter.View = View.Onboard;
        Run(app, 2.9);
        Take("onboard");

        Begin(app, Flowing(app, PilotSwitches.SwapFromStart));
        app.Painter.View = View.Chase;
        Run(app, 3.3);
        Take("chase-with-shadow");

        Begin(app, Flowing(app, PilotSwitches.SwapFromStart));
        app.Painter.MassView = true;
        Run(app, 2.6);
        Take("mass-view");
        app.Painter.MassView = false;

        app.Do(PilotAction.Bench);
        PartBench bench = app.BenchOf(0);
        bench.Change("frame.wheelbase_mm", 260);
        bench.Change("motor.stator_height_mm", 8);
        bench.Settled.Wait();
        app.Pages.Invalidate();
        Run(app, 0.2);
        Take("part-bench");
        app.Pages.Clear();

        Begin(app, Freestyle(app, 0));
        Run(app, 11);
        app.Outing!.Stage.Tape = new ScriptTape(Freestyle(app, 1), app.Outing.Profile.StickPeriod);
        Run(app, 11);
        app.Do(PilotAction.Results);
        Run(app, 0.2);
        Take("after-flight");
        return files;

        void Take(string name)
        {
            string file = Path.Combine(folder, name + ".png");
            app.WritePng(file);
            files.Add(file);
        }
    }

    /// <summary>Takes the builds to the field anew, a script in the pilot's place.</summary>
    private static void Begin(CockpitApp app, StickScript script)
    {
        if (app.Outing is null) app.FlyPicked();
        else app.Do(PilotAction.Restart);
        app.Frame(Frame);
        app.Outing!.Stage.Tape = new ScriptTape(script, app.Outing.Profile.StickPeriod);
        app.Notify("");
    }

    /// <summary>Flies on; only the last frames are drawn, which is as many as the views need to come to rest.</summary>
    private static void Run(CockpitApp app, double seconds)
    {
        int frames = (int)Math.Round(seconds / Frame);
        for (int n = 0; n < frames; n++) app.Frame(Frame, draw: n >= frames - 45);
    }

    /// <summary>Climbs out and flows along a curve, the other build as a shadow.</summary>
    private static StickScript Flowing(CockpitApp app, PilotSwitches start = PilotSwitches.Restart)
    {
        double hover = app.Rack.Get(app.Rack.IndexOf("wagtail"))!.Build!.Unit.Throttle.HoverStick;
        double up = hover + (0.45 * (1 - hover));
        PilotSwitches both = Assisted | PilotSwitches.Shadow;
        return new(
            (0, default, start),
            (0.05, default, both),
            (0.3, new(0, 0, 0, up), both),
            (1.3, new(0, -0.45, 0, hover), both),
            (2.1, new(0.15, -0.4, 0.1, hover), both),
            (3.2, new(0.3, -0.35, 0.2, hover), both));
    }

    /// <summary>Punch, rolls with hard stops, a drop and a soft end, by rates.</summary>
    private static StickScript Freestyle(CockpitApp app, int craft)
    {
        double hover = app.Outing!.Build(craft).Unit.Throttle.HoverStick;
        PilotSwitches start = craft == 0 ? PilotSwitches.Restart : PilotSwitches.SwapFromStart;
        const PilotSwitches acro = PilotSwitches.Armed;
        return new(
            (0, default, start),
            (0.05, default, acro),
            (0.3, new(0, 0, 0, hover + (0.3 * (1 - hover))), Assisted),
            (1.0, new(0, 0, 0, hover), Assisted),
            (1.5, new(0, 0, 0, hover), acro),
            (1.6, new(0, 0, 0, 1), acro),
            (2.8, new(0, 0, 0, hover), acro),
            (3.3, new(1, 0, 0, hover), acro),
            (3.75, new(0, 0, 0, hover), acro),
            (4.5, new(-1, 0, 0, hover), acro),
            (4.95, new(0, 0, 0, hover), acro),
            (5.7, new(0, 0, 1, hover), acro),
            (6.1, new(0, 0, 0, hover), acro),
            (6.4, default, acro),
            (7.9, new(0, 0, 0, hover), Assisted),
            (9.8, new(0, 0, 0, 0.1), Assisted));
    }
}
