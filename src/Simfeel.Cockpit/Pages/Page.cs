using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Pages.Widgets;
using SkiaSharp;

namespace Simfeel.Cockpit.Pages;

/// <summary>
/// One page: widgets one below the other, of which one has the focus. Taller than the window it scrolls. Up and down go
/// through the widgets in their order, left and right change a value or go on; accept does; back leaves.
/// </summary>
public abstract class Page
{
    private static readonly string[] Hints =
    [
        "Arrows or stick: move.   Enter or first button: choose.   Esc or second button: back.",
        "Arrows: move.   Enter: choose.   Esc: back.",
        "Esc: back",
    ];

    private readonly List<Widget> _all = [];
    private readonly List<Widget> _focusable = [];
    private IReadOnlyList<Widget>? _content;
    private float _scroll, _contentHeight, _viewHeight, _margin;
    private Widget? _pressed;
    private PaletteColours? _colours;
    private int _focus = -1;
    private bool _showFocus;

    /// <summary>Whether it lies over a flight that stays in sight behind it.</summary>
    public virtual bool IsOverFlight => false;

    /// <summary>The actions whose keys close it, first the one that opens it; none for a page that no key opens.</summary>
    public virtual IReadOnlyList<PilotAction> Closing => [];

    /// <summary>Whether it changes by itself and wants to be redrawn some ten times a second.</summary>
    public virtual bool IsLive => false;

    /// <summary>The stack it is open on.</summary>
    internal PageStack? Stack { get; set; }

    /// <summary>Whether a widget waits for a key or button.</summary>
    internal bool IsCapturing => Focused?.IsCapturing ?? false;

    /// <summary>Whether a widget takes text.</summary>
    internal bool IsTyping => Focused?.IsTyping ?? false;

    /// <summary>Widgets that can have the focus, in order.</summary>
    internal IReadOnlyList<Widget> Focusable => _focusable;

    /// <summary>Every widget, in order.</summary>
    internal IReadOnlyList<Widget> All => _all;

    /// <summary>The widget that has the focus; null where none can.</summary>
    internal Widget? Focused => _focusable.Count == 0 ? null : _focusable[Math.Clamp(_focus, 0, _focusable.Count - 1)];

    /// <summary>Height of the content, pixels, at the last redraw.</summary>
    internal float ContentHeight => _contentHeight;

    /// <summary>First and last pixel row of the content that is in sight.</summary>
    internal (float Top, float Bottom) Sight => (_scroll, _scroll + _viewHeight);

    /// <summary>Which widget has the focus when the page opens, counted among those that can.</summary>
    private protected virtual int FirstFocus => 0;

    /// <summary>Makes the widgets, heading first.</summary>
    private protected abstract IReadOnlyList<Widget> Build();

    /// <summary>What back does; usually closes the page.</summary>
    internal virtual void Leave() => Stack?.Close();

    /// <summary>Looks whether the model asks for other widgets; before every redraw.</summary>
    private protected virtual void Follow()
    {
    }

    /// <summary>Hears the size of the window, pixels; before the widgets take their places.</summary>
    private protected virtual void Fit(int width, int height)
    {
    }

    /// <summary>Makes the widgets anew before the next redraw; the focus stays at its place.</summary>
    private protected void Rebuild() => _content = null;

    /// <summary>Gives a widget the focus.</summary>
    private protected void Focus(Widget widget)
    {
        int at = _focusable.IndexOf(widget);
        if (at >= 0) (_focus, _showFocus) = (at, true);
    }

    /// <summary>Places and draws everything.</summary>
    internal void Draw(Pen pen, int width, int height)
    {
        Arrange(pen, width, height);
        pen.Fill(new(0, 0, width, height), IsOverFlight ? Palette.Veil : Palette.Night);
        pen.Part = "page";
        pen.Canvas.Save();
        pen.Canvas.ClipRect(new(0, 0, width, _viewHeight));
        pen.Canvas.Translate(0, -_scroll);
        foreach (Widget widget in _all)
        {
            pen.Box = widget.Bounds;
            if (pen.Log is not null || (widget.Bounds.Bottom >= _scroll && widget.Bounds.Top <= _scroll + _viewHeight))
                widget.Draw(pen, widget == Focused);
        }
        pen.Canvas.Restore();
        DrawEdges(pen, width, height);
    }

    /// <summary>Hears something, pointers in pixels of the window.</summary>
    internal void Handle(in UiInput input)
    {
        if (_content is null) return;
        UiInput here = input with { Y = input.Kind == UiInputKind.Wheel ? input.Y : input.Y + _scroll };
        Widget? focused = Focused;
        switch (input.Kind)
        {
            case UiInputKind.PointerMove:
                if (_pressed is not null) _pressed.Handle(here);
                else if (At(here) is { } under && !IsCapturing) _focus = _focusable.IndexOf(under);
                return;
            case UiInputKind.PointerDown:
                if (IsCapturing && At(here) != focused) focused!.Handle(here);
                _pressed = At(here);
                if (_pressed is null) return;
                _focus = _focusable.IndexOf(_pressed);
                _pressed.Handle(here);
                return;
            case UiInputKind.PointerUp:
                _pressed?.Handle(here);
                _pressed = null;
                return;
            case UiInputKind.Wheel:
                Scroll(-input.Y * 0.2f * _viewHeight);
                return;
            default:
                _showFocus = true;
                // nothing is done by a widget that one does not see
                bool acts = input.Kind is UiInputKind.Accept or UiInputKind.Left or UiInputKind.Right;
                if (acts && focused is not null && !IsInSight(focused.FocusArea)) return;
                if (focused?.Handle(here) == true) return;
                Move(input.Kind);
                return;
        }
    }

    private void Move(UiInputKind kind)
    {
        switch (kind)
        {
            case UiInputKind.Up or UiInputKind.Left or UiInputKind.Previous:
                Step(-1);
                break;
            case UiInputKind.Down or UiInputKind.Right or UiInputKind.Next:
                Step(1);
                break;
            case UiInputKind.Back:
                Leave();
                break;
        }
    }

    /// <summary>To the next widget; through what is not in sight yet it scrolls first.</summary>
    private void Step(int way)
    {
        int next = Math.Min(_focus, Math.Max(0, _focusable.Count - 1)) + way;
        bool there = next >= 0 && next < _focusable.Count;
        float page = 0.6f * _viewHeight;
        if (!there || Math.Abs(ScrollFor(_focusable[next].FocusArea) - _scroll) > page) Scroll(way * page);
        else _focus = next;
    }

    private void Scroll(float by)
    {
        _scroll = Inside(_scroll + by);
        _showFocus = false;
    }

    private Widget? At(in UiInput input)
    {
        foreach (Widget widget in _focusable)
        {
            if (widget.Bounds.Contains(input.X, input.Y)) return widget;
        }
        return null;
    }

    private void Arrange(Pen pen, int width, int height)
    {
        Fit(width, height);
        Follow();
        // labels keep their colour
        if (_colours != Palette.Now) Rebuild();
        _colours = Palette.Now;
        bool first = _content is null;
        if (_focus < 0) (_focus, _showFocus) = (FirstFocus, FirstFocus > 0);
        _content ??= Build();
        float unit = pen.Scale;
        _margin = Math.Min(28 * unit, 0.04f * width);
        float column = Math.Min(width - 2 * _margin, 1040 * unit), left = (width - column) / 2;
        _viewHeight = height - FooterHeight(pen, width);
        Place(pen, left, column, _margin);
        // a short page stands a little above the middle
        float spare = _viewHeight - _contentHeight;
        if (spare > 0) Place(pen, left, column, _margin + 0.35f * spare);
        _focusable.Clear();
        _focusable.AddRange(_all.Where(widget => widget.CanFocus));
        _focus = Math.Clamp(_focus, 0, Math.Max(0, _focusable.Count - 1));
        _scroll = Inside(_scroll);
        if (first) _pressed = null;
        if (_showFocus && Focused is { } focused) _scroll = ScrollFor(focused.FocusArea);
    }

    private void Place(Pen pen, float left, float column, float y)
    {
        _all.Clear();
        foreach (Widget widget in _content!)
        {
            float tall = widget.Arrange(pen, left, y, column);
            Gather(widget);
            if (tall > 0) y += tall + 10 * pen.Scale;
        }
        _contentHeight = y + _margin - 10 * pen.Scale;
    }

    /// <summary>The least scrolling that brings an area into sight; its beginning where it is taller than the window.</summary>
    private float ScrollFor(SKRect area)
    {
        // before the first widget there is only the heading
        if (area == _focusable[0].FocusArea && area.Bottom + _margin <= _viewHeight) return 0;
        float scroll = Math.Max(_scroll, area.Bottom + _margin - _viewHeight);
        return Inside(Math.Min(scroll, area.Top - _margin));
    }

    private float Inside(float scroll) => Math.Clamp(scroll, 0, Math.Max(0, _contentHeight - _viewHeight));

    private bool IsInSight(SKRect area) => area.Top < _scroll + _viewHeight && area.Bottom > _scroll;

    private void Gather(Widget widget)
    {
        _all.Add(widget);
        foreach (Widget child in widget.Children) Gather(child);
    }

    private static string Hint(Pen pen, float room)
    {
        foreach (string hint in Hints)
        {
            if (pen.Width(hint, TextStyle.Small) <= room) return hint;
        }
        return "";
    }

    private static float FooterHeight(Pen pen, int width) =>
        Hint(pen, width - 24 * pen.Scale).Length == 0 ? 0 : pen.LineHeight(TextStyle.Small) + 8 * pen.Scale;

    private void DrawEdges(Pen pen, int width, int height)
    {
        float unit = pen.Scale;
        if (_contentHeight > _viewHeight + 0.5f)
        {
            float share = _viewHeight / _contentHeight;
            float top = _scroll * share;
            pen.Fill(new(width - 6 * unit, top, width - 2 * unit, top + _viewHeight * share), Palette.Line, 2 * unit);
        }
        string hint = Hint(pen, width - 24 * unit);
        if (hint.Length == 0) return;
        pen.Part = "footer";
        pen.Box = new(0, _viewHeight, width, height);
        pen.Line(0, _viewHeight, width, _viewHeight, Palette.Panel, Math.Max(1, unit));
        pen.Text(hint, (width - pen.Width(hint, TextStyle.Small)) / 2, _viewHeight + 4 * unit, TextStyle.Small, Palette.Quiet);
    }
}
