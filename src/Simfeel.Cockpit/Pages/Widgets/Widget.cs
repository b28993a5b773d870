using Simfeel.Cockpit.Drawing;
using SkiaSharp;

namespace Simfeel.Cockpit.Pages.Widgets;

/// <summary>One thing on a page. Positions are pixels of the page's content, which may be taller than the window.</summary>
public abstract class Widget
{
    /// <summary>Where it stands.</summary>
    public SKRect Bounds { get; private protected set; }

    /// <summary>Whether it can have the focus.</summary>
    public virtual bool CanFocus => false;

    /// <summary>
    /// Whether it waits for a key or a button, which then comes as <see cref="UiInputKind.Key"/> or
    /// <see cref="UiInputKind.PadButton"/>.
    /// </summary>
    public virtual bool IsCapturing => false;

    /// <summary>Whether it takes text, which then comes as <see cref="UiInputKind.Text"/>, its keys as <see cref="UiInputKind.Key"/>.</summary>
    public virtual bool IsTyping => false;

    /// <summary>What of it must be in sight while it has the focus.</summary>
    internal virtual SKRect FocusArea => Bounds;

    /// <summary>Things inside this one, in order.</summary>
    internal virtual IReadOnlyList<Widget> Children => [];

    /// <summary>Takes its place; gives its height.</summary>
    internal float Arrange(Pen pen, float x, float y, float width)
    {
        float height = Measure(pen, x, y, width);
        Bounds = new(x, y, x + width, y + height);
        return height;
    }

    /// <summary>Makes it at least this tall, so that neighbours end on one line.</summary>
    internal void Stretch(float height) =>
        Bounds = new(Bounds.Left, Bounds.Top, Bounds.Right, Math.Max(Bounds.Bottom, Bounds.Top + height));

    /// <summary>Height at a width; places what is inside.</summary>
    private protected abstract float Measure(Pen pen, float x, float y, float width);

    /// <summary>Draws itself in <see cref="Bounds"/>.</summary>
    internal abstract void Draw(Pen pen, bool focused);

    /// <summary>Hears something while it has the focus, pointers in pixels of the content; true if it took it.</summary>
    internal virtual bool Handle(in UiInput input) => false;

    /// <summary>The frame and ground of a widget that can have the focus.</summary>
    private protected void DrawGround(Pen pen, bool focused)
    {
        float radius = 6 * pen.Scale;
        pen.Fill(Bounds, focused ? Palette.Raised : Palette.Panel, radius);
        if (focused) pen.Frame(Bounds, Palette.Focus, Math.Max(2, 2.5f * pen.Scale), radius);
    }
}
