using Silk.NET.OpenGL;
using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Graphics;
using Simfeel.Cockpit.Graphics.Aircraft;
using Simfeel.Cockpit.Graphics.Landscape;
using Simfeel.Cockpit.Graphics.OpenGl;
using Simfeel.Cockpit.Graphics.Views;
using Simfeel.Cockpit.Overlay;
using Simfeel.Cockpit.Pages;
using Simfeel.Cockpit.Platform;
using Simfeel.Cockpit.Settings;
using Simfeel.Cockpit.Stage;
using Simfeel.Flight.Fields;
using Simfeel.Physics.Maths;
using SkiaSharp;

namespace Simfeel.Cockpit.Application;

/// <summary>
/// Draws frames: the scene in one or two views, the overlay or a page over it. Lives on the thread of the OpenGL context.
/// Nothing is allocated in flight.
/// </summary>
internal sealed class Painter : IDisposable
{
    /// <summary>Redraws of a page that changes by itself, Hz.</summary>
    private const double LivePage_Hz = 10;

    private readonly GL _gl;
    private readonly FieldMap _map;
    private readonly ViewRig[] _rigs;
    private readonly FrameCapture _capture;
    private readonly AxisLabels _axes;
    private SceneRenderer _scene;
    private Quality _quality;
    private bool _hadPage;
    private double _orbit;

    /// <summary>Uploads the field.</summary>
    public Painter(GL gl, FieldMap map, Quality quality, AxisLabels axes, FieldPictures? pictures)
    {
        _gl = gl;
        _map = map;
        _quality = quality;
        _axes = axes;
        _rigs = [new(map), new(map)];
        _scene = new(gl, map, quality, pictures);
        _capture = new(gl);
        Layer = new(gl, AppWindow.AddressOf);
    }

    /// <summary>The two-dimensional layer.</summary>
    public OverlayLayer Layer { get; }

    /// <summary>What lies over a flight.</summary>
    public FlightOverlay Overlay { get; } = new();

    /// <summary>Framebuffer that pictures go to; 0 is the window's.</summary>
    public uint Framebuffer { get; set; }

    /// <summary>From where the flight is seen.</summary>
    public View View { get; set; } = View.Chase;

    /// <summary>Shows masses instead of shapes.</summary>
    public bool MassView { get; set; }

    /// <summary>Height of the level grid over the world's origin, m; null for none.</summary>
    public double? LevelGrid { get; set; }

    /// <summary>Takes settings over, for a picture of so many pixels to a unit of the desktop.</summary>
    public void Apply(CockpitSettings settings, Outing? outing, double density)
    {
        foreach (ViewRig rig in _rigs)
        {
            rig.FieldOfView = settings.FieldOfView_deg * Math.PI / 180;
            rig.Bend = settings.WideLens;
            rig.Tilt = settings.CameraTilt_deg * Math.PI / 180;
            rig.TrueScale = settings.TrueScale;
            rig.ScreenHeight = settings.ScreenHeight_mm / 1000;
            rig.EyeDistance = settings.EyeDistance_mm / 1000;
        }
        Layer.Pen.Scale = (float)(settings.TextScale * density);
        Palette.Use(PaletteColours.Of(settings.Palette));
        Layer.Invalidate();
        if (settings.Quality == _quality) return;
        _quality = settings.Quality;
        _scene.Dispose();
        _scene = new(_gl, _map, _quality);
        if (outing is not null) Show(outing);
    }

    /// <summary>Uploads the craft of an outing.</summary>
    public void Show(Outing outing)
    {
        for (int craft = 0; craft < 2; craft++) _scene.SetCraft(craft, outing.Look(craft));
        Reset();
    }

    /// <summary>Uploads the craft of a lesson.</summary>
    public void Show(LessonStage stage)
    {
        for (int craft = 0; craft < 2; craft++) _scene.SetCraft(craft, stage.Assembled(craft));
    }

    /// <summary>Forgets where the eyes were; after a restart or a swap.</summary>
    public void Reset()
    {
        foreach (ViewRig rig in _rigs) rig.Reset();
    }

    /// <summary>Draws the flight as it was some time ago (s).</summary>
    /// <param name="outing">The flight.</param>
    /// <param name="width">Width of the picture, pixels.</param>
    /// <param name="height">Height of the picture, pixels.</param>
    /// <param name="delay">Delay of the picture, s.</param>
    /// <param name="seconds">Time since the last frame, s.</param>
    public void DrawFlight(Outing outing, int width, int height, double delay, double seconds)
    {
        ReadOnlySpan<CraftPose> poses = outing.Poses(delay);
        SceneOptions options = new(outing.Stage.Session.Time, MassView, MassView, LevelGrid);
        int flown = outing.Flown;
        _axes.Shown = MassView;
        if (MassView)
        {
            // a slow walk around the craft
            _orbit += 0.25 * seconds;
            Camera close = ViewRig.Orbit(outing.Look(flown), poses[flown], _orbit, 0.35);
            _scene.Draw(Framebuffer, 0, 0, width, height, close, poses, options);
            for (int axis = 0; axis < 3; axis++)
            {
                Vec3 tip = poses[flown].p_WB + poses[flown].q_WB.Rotate(CraftMassModel.Tip(axis, outing.Assembled(flown)));
                bool inSight = ScreenPoint.TryPlace(close, (double)width / height, tip, out float x, out float y);
                // the ground hides what is under it
                _axes.Put(axis, x, y, inSight && tip.Z <= 0);
            }
            return;
        }
        if (View != View.Split)
        {
            Camera camera = _rigs[flown].Update(View, outing.Look(flown), poses[flown], seconds);
            _scene.Draw(Framebuffer, 0, 0, width, height, camera, poses, options);
            return;
        }
        int half = width / 2;
        for (int craft = 0; craft < 2; craft++)
        {
            Camera camera = _rigs[craft].Update(View.Chase, outing.Look(craft), poses[craft], seconds);
            _scene.Draw(Framebuffer, craft * half, 0, craft == 0 ? half : width - half, height, camera, poses, options);
        }
    }

    /// <summary>Draws the craft of a lesson into a part of the picture.</summary>
    /// <param name="stage">The lesson.</param>
    /// <param name="area">The part, pixels from the top left corner.</param>
    /// <param name="height">Height of the picture, pixels.</param>
    public void DrawLesson(LessonStage stage, SKRectI area, int height)
    {
        ReadOnlySpan<CraftPose> poses = stage.Poses();
        Camera camera = stage.Eye(poses, (double)area.Width / area.Height);
        _scene.Draw(Framebuffer, area.Left, height - area.Bottom, area.Width, area.Height, camera, poses, new(stage.Time, stage.ShowsMasses));
    }

    /// <summary>Draws the field without anybody flying, from high above the start, for the pages before a flight.</summary>
    public void DrawField(int width, int height, double time)
    {
        _gl.BindFramebuffer(FramebufferTarget.Framebuffer, Framebuffer);
        Camera camera = new(
            new(-34, -16, -9), Physics.Maths.Quat.FromEuler(0, -0.16, 0.42), 55 * Math.PI / 180, 0);
        _scene.Draw(Framebuffer, 0, 0, width, height, camera, [], new(time));
    }

    /// <summary>Lays the overlay or the page on top over what was drawn.</summary>
    public void DrawLayer(PageStack pages, FlightReadout? readout, int width, int height, double time)
    {
        Layer.Resize(width, height);
        Page? page = pages.Top;
        if (page is null != _hadPage is false) Layer.Invalidate();
        _hadPage = page is not null;
        if (page is not null)
        {
            if (pages.NeedsRedraw) Layer.Invalidate();
            if (Layer.IsDue(time, page.IsLive ? LivePage_Hz : 0))
            {
                pages.Draw(Layer.Begin(time), width, height);
                Layer.End();
            }
        }
        else if (readout is not null && Layer.IsDue(time, FlightOverlay.WantedRate_Hz(readout)))
        {
            Overlay.Draw(Layer.Begin(time), readout, width, height, time);
            Layer.End();
        }
        Layer.Composite(Framebuffer);
    }

    /// <summary>Stores what was drawn as a PNG file.</summary>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be written.</exception>
    public void WritePng(int width, int height, string file, bool overwrite) => _capture.WritePng(Framebuffer, 0, 0, width, height, file, overwrite);

    /// <summary>Reads what was drawn: rows from the top, four bytes a pixel.</summary>
    public void ReadInto(int width, int height, Span<byte> picture) =>
        _capture.ReadInto(Framebuffer, 0, 0, width, height, picture);

    /// <inheritdoc/>
    public void Dispose()
    {
        Layer.Dispose();
        _scene.Dispose();
    }
}
