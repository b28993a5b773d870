using Simfeel.Builds;
using Simfeel.Cockpit.Application.Offscreen;
using Simfeel.Cockpit.Graphics.Landscape;
using Simfeel.Cockpit.Platform;
using Simfeel.Flight.Fields;

namespace Simfeel.Cockpit.Application;

/// <summary>Ways to start the window's program.</summary>
public static class CockpitStart
{
    /// <summary>Opens the window and flies until the pilot leaves.</summary>
    /// <exception cref="MissingOnMachineException">Something of the machine is missing.</exception>
    /// <exception cref="UnusableFileException">A file cannot be used.</exception>
    public static void Fly(CockpitOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        (FieldMap map, string text) = ReadField(options.FieldFile);
        FieldPictures pictures = new(map);
        using AppWindow window = new("Simfeel", options.Size.Width, options.Size.Height);
        using CockpitApp app = new(window, options, map, text, UserFolder.OfUser(), pictures);
        app.Run();
    }

    /// <summary>Draws a replay into a video file, frame by frame, as fast as the machine can.</summary>
    /// <param name="options">With a replay.</param>
    /// <param name="file">Video file; written over.</param>
    /// <param name="progress">Hears the share that is done; null for nobody.</param>
    /// <returns>What came of the replay, in one sentence.</returns>
    /// <exception cref="MissingOnMachineException">Something of the machine is missing.</exception>
    /// <exception cref="UnusableFileException">A file cannot be used.</exception>
    /// <exception cref="IOException">The video cannot be written.</exception>
    public static string Video(CockpitOptions options, string file, IProgress<double>? progress)
    {
        ArgumentNullException.ThrowIfNull(options);
        const int rate = 60;
        (int width, int height) = options.Size;
        (FieldMap map, string text) = ReadField(options.FieldFile);
        using AppWindow window = new("Simfeel", width, height, visible: false);
        using CockpitApp app = new(window, options with { Silent = true }, map, text, UserFolder.OfUser());
        using PictureTarget target = new(window.Gl, width, height);
        app.DrawInto(target);
        // nobody is there to let time run on
        app.Settings.HoldAtMarks = false;
        using VideoPipe pipe = new(file, width, height, rate);
        byte[] picture = new byte[4 * width * height];
        while (app.Frame(1.0 / rate) && !app.ReplayEnded)
        {
            app.Painter.ReadInto(width, height, picture);
            pipe.Add(picture);
            progress?.Report(app.ReplayShare);
        }
        pipe.Finish();
        return app.ReplayVerdict;
    }

    /// <summary>The field of a file.</summary>
    /// <exception cref="UnusableFileException">The file cannot be used.</exception>
    internal static (FieldMap Map, string Text) ReadField(string file)
    {
        FieldResult result = FieldReader.Read(file);
        if (result.Map is null) throw new UnusableFileException(string.Join('\n', result.Diagnostics));
        foreach (Diagnostic warning in result.Diagnostics) Console.Error.WriteLine(warning);
        return (result.Map, File.ReadAllText(file));
    }
}
