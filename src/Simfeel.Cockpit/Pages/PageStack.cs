using System.Diagnostics.CodeAnalysis;
using Simfeel.Cockpit.Drawing;

namespace Simfeel.Cockpit.Pages;

/// <summary>The open pages, the last one on top; only that one hears and is drawn.</summary>
[SuppressMessage("Naming", "CA1711", Justification = "It is a stack.")]
public sealed class PageStack
{
    private readonly List<Page> _pages = [];
    private bool _changed = true;

    /// <summary>The page on top; null while none is open.</summary>
    public Page? Top => _pages.Count > 0 ? _pages[^1] : null;

    /// <summary>Number of open pages.</summary>
    public int Count => _pages.Count;

    /// <summary>Whether a widget waits for a key or button.</summary>
    public bool IsCapturing => Top?.IsCapturing ?? false;

    /// <summary>Whether a widget takes text.</summary>
    public bool IsTyping => Top?.IsTyping ?? false;

    /// <summary>Whether something changed since the last <see cref="Draw"/>.</summary>
    public bool NeedsRedraw => _changed;

    /// <summary>Opens a page on top.</summary>
    public void Open(Page page)
    {
        page.Stack = this;
        _pages.Add(page);
        _changed = true;
    }

    /// <summary>Closes the page on top.</summary>
    public void Close()
    {
        if (_pages.Count == 0) return;
        _pages[^1].Stack = null;
        _pages.RemoveAt(_pages.Count - 1);
        _changed = true;
    }

    /// <summary>Closes every page.</summary>
    public void Clear()
    {
        while (_pages.Count > 0) Close();
    }

    /// <summary>Has the page on top drawn again, since its model changed.</summary>
    public void Invalidate() => _changed = true;

    /// <summary>Hands something to the page on top.</summary>
    public void Handle(in UiInput input)
    {
        if (input.Kind == UiInputKind.None || Top is not { } page) return;
        page.Handle(input);
        _changed = true;
    }

    /// <summary>Draws the page on top.</summary>
    /// <param name="pen">Pen on an empty layer.</param>
    /// <param name="width">Width of the window, pixels.</param>
    /// <param name="height">Height of the window, pixels.</param>
    public void Draw(Pen pen, int width, int height)
    {
        _changed = false;
        Top?.Draw(pen, width, height);
    }
}
