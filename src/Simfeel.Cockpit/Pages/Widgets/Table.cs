using Simfeel.Cockpit.Drawing;
using SkiaSharp;

namespace Simfeel.Cockpit.Pages.Widgets;

/// <summary>
/// Rows of texts under headings; the first column is the row's name. Where it is too narrow for columns, each row becomes
/// lines of heading and text; without rows it takes no room. With details, a row can be picked and shows its sentence below it.
/// </summary>
/// <param name="headings">Headings, one for each column.</param>
/// <param name="rows">The texts; asked for at every redraw.</param>
/// <param name="details">A sentence for each row; null where rows cannot be picked.</param>
internal sealed class Table(string[] headings, Func<IReadOnlyList<string[]>> rows, IReadOnlyList<string>? details = null) : Widget
{
    private IReadOnlyList<string[]> _rows = [];
    private float[] _left = [];
    private float[] _tops = [];
    private bool _tabular;
    private int _picked;

    public override bool CanFocus => details is { Count: > 0 };

    /// <inheritdoc/>
    internal override SKRect FocusArea => _tops.Length > _picked + 1
        ? new(Bounds.Left, _picked == 0 ? Bounds.Top : _tops[_picked], Bounds.Right, _tops[_picked + 1])
        : Bounds;

    private protected override float Measure(Pen pen, float x, float y, float width)
    {
        _rows = rows();
        if (_rows.Count == 0) return 0;
        float unit = pen.Scale, gap = 22 * unit, pad = 12 * unit, inner = width - 2 * pad, body = pen.LineHeight(TextStyle.Body);
        float[] natural = [.. headings.Select((heading, k) => Math.Max(
            pen.Width(heading, TextStyle.Small), _rows.Select(row => pen.Width(row[k], TextStyle.Body)).DefaultIfEmpty(0).Max()))];
        float needed = natural.Sum() + (headings.Length - 1) * gap;
        _tabular = needed <= inner;
        _left = new float[headings.Length];
        float at = x + pad, spare = _tabular ? Math.Min((inner - needed) / headings.Length, 60 * unit) : 0;
        for (int k = 0; k < headings.Length; at += natural[k] + gap + spare, k++) _left[k] = at;

        float top = y + 4 * unit + (_tabular ? pen.LineHeight(TextStyle.Small) + 8 * unit : 0);
        _tops = new float[_rows.Count + 1];
        for (int k = 0; k < _rows.Count; k++)
        {
            _tops[k] = top;
            top += 12 * unit;
            top += _tabular ? body : StackedHeight(pen, _rows[k], inner);
            if (details is not null && k == _picked)
                top += pen.Wrap(details[k], TextStyle.Small, inner).Length * pen.LineHeight(TextStyle.Small) + 2 * unit;
        }
        _tops[^1] = top;
        return top + 4 * unit - y;
    }

    internal override void Draw(Pen pen, bool focused)
    {
        if (_rows.Count == 0) return;
        float unit = pen.Scale, pad = 12 * unit, inner = Bounds.Width - 2 * pad, body = pen.LineHeight(TextStyle.Body);
        pen.Fill(Bounds, Palette.Panel, 6 * unit);
        if (_tabular)
        {
            for (int k = 0; k < headings.Length; k++)
                pen.Text(headings[k], _left[k], Bounds.Top + 6 * unit, TextStyle.Small, Palette.Quiet);
            pen.Line(Bounds.Left + pad, _tops[0], Bounds.Right - pad, _tops[0], Palette.Line, 1);
        }
        for (int k = 0; k < _rows.Count; k++)
        {
            float y = _tops[k] + 6 * unit;
            if (focused && k == _picked)
            {
                SKRect row = new(Bounds.Left, _tops[k] + 1, Bounds.Right, _tops[k + 1]);
                pen.Fill(row, Palette.Raised, 4 * unit);
                pen.Frame(row, Palette.Focus, Math.Max(2, 2.5f * unit), 4 * unit);
            }
            if (_tabular)
            {
                for (int c = 0; c < headings.Length; c++) pen.Text(_rows[k][c], _left[c], y, TextStyle.Body, Palette.Ink);
                y += body;
            }
            else
            {
                y = DrawStacked(pen, _rows[k], y, inner);
            }
            if (details is not null && k == _picked)
                pen.Lines(details[k], Bounds.Left + pad, y + 2 * unit, inner, TextStyle.Small, Palette.Quiet);
        }
    }

    internal override bool Handle(in UiInput input)
    {
        switch (input.Kind)
        {
            case UiInputKind.Up when _picked > 0:
                _picked--;
                return true;
            case UiInputKind.Down when _picked < _rows.Count - 1:
                _picked++;
                return true;
            case UiInputKind.PointerDown:
                float y = input.Y;
                int row = Array.FindLastIndex(_tops, top => top <= y);
                if (row >= 0 && row < _rows.Count) _picked = row;
                return true;
            default:
                return false;
        }
    }

    private float StackedHeight(Pen pen, string[] row, float inner)
    {
        float height = pen.Wrap(row[0], TextStyle.Body, inner).Length * pen.LineHeight(TextStyle.Body);
        for (int c = 1; c < headings.Length; c++)
        {
            if (row[c].Length > 0)
                height += pen.Wrap(Stacked(row, c), TextStyle.Small, inner).Length * pen.LineHeight(TextStyle.Small);
        }
        return height;
    }

    private float DrawStacked(Pen pen, string[] row, float y, float inner)
    {
        float left = Bounds.Left + 12 * pen.Scale;
        y += pen.Lines(row[0], left, y, inner, TextStyle.Body, Palette.Ink);
        for (int c = 1; c < headings.Length; c++)
        {
            if (row[c].Length > 0) y += pen.Lines(Stacked(row, c), left, y, inner, TextStyle.Small, Palette.Ink);
        }
        return y;
    }

    private string Stacked(string[] row, int column) =>
        headings[column].Length == 0 ? row[column] : headings[column] + ": " + row[column];
}
