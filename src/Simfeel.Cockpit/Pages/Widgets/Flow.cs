using Simfeel.Cockpit.Drawing;

namespace Simfeel.Cockpit.Pages.Widgets;

/// <summary>Things in rows of equally wide columns; as many columns as there is room for.</summary>
/// <param name="children">The things, in order.</param>
/// <param name="least">Least width of a column at text scale 1, pixels.</param>
/// <param name="gap">Between columns and rows at text scale 1, pixels.</param>
internal sealed class Flow(IReadOnlyList<Widget> children, float least, float gap = 12) : Widget
{
    internal override IReadOnlyList<Widget> Children => children;

    private protected override float Measure(Pen pen, float x, float y, float width)
    {
        if (children.Count == 0) return 0;
        float between = gap * pen.Scale;
        int columns = Math.Clamp((int)((width + between) / (least * pen.Scale + between)), 1, children.Count);
        // rows as even as they can be: five things in room for four go as three and two
        int rows = (children.Count + columns - 1) / columns;
        columns = (children.Count + rows - 1) / rows;
        float column = (width - (columns - 1) * between) / columns;
        float top = y;
        for (int row = 0; row < rows; row++)
        {
            float tallest = 0;
            int from = row * columns, to = Math.Min(from + columns, children.Count);
            for (int k = from; k < to; k++)
                tallest = Math.Max(tallest, children[k].Arrange(pen, x + (k - from) * (column + between), top, column));
            for (int k = from; k < to; k++) children[k].Stretch(tallest);
            top += tallest + between;
        }
        return top - between - y;
    }

    internal override void Draw(Pen pen, bool focused)
    {
        // the page draws the things inside
    }
}
