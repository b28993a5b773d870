using Simfeel.Cockpit.Drawing;

namespace Simfeel.Cockpit.Pages.Widgets;

/// <summary>One of a few names.</summary>
/// <param name="label">What is chosen.</param>
/// <param name="names">The names; at least one.</param>
/// <param name="get">The chosen one.</param>
/// <param name="set">Chooses another one.</param>
internal sealed class Choice(string label, Func<IReadOnlyList<string>> names, Func<int> get, Action<int> set) : FieldWidget(label, "")
{
    private static float Arrow(Pen pen) => 26 * pen.Scale;

    private protected override float ControlWidth(Pen pen) =>
        names().Max(name => pen.Width(name, TextStyle.Body)) + 2 * Arrow(pen);

    private protected override float ControlHeight(Pen pen, float width) =>
        names().Max(name => pen.Wrap(name, TextStyle.Body, width - 2 * Arrow(pen)).Length) * pen.LineHeight(TextStyle.Body);

    private protected override void DrawControl(Pen pen, bool focused)
    {
        Chevron(pen, Control.Left + 9 * pen.Scale, -1);
        Chevron(pen, Control.Right - 9 * pen.Scale, 1);
        float room = Control.Width - 2 * Arrow(pen);
        string[] lines = pen.Wrap(names()[get()], TextStyle.Body, room);
        for (int k = 0; k < lines.Length; k++)
        {
            float left = Control.MidX - pen.Width(lines[k], TextStyle.Body) / 2;
            pen.Text(lines[k], left, Control.Top + k * pen.LineHeight(TextStyle.Body), TextStyle.Body, Palette.Ink);
        }
    }

    internal override bool Handle(in UiInput input)
    {
        int step = input.Kind switch
        {
            UiInputKind.Left => -1,
            UiInputKind.Right or UiInputKind.Accept => 1,
            UiInputKind.PointerDown => input.X >= Control.Left && input.X < Control.Left + 0.4f * Control.Width ? -1 : 1,
            _ => 0,
        };
        if (step == 0) return false;
        int count = names().Count;
        set((get() + step + count) % count);
        return true;
    }

    private void Chevron(Pen pen, float x, int way)
    {
        float size = 5 * pen.Scale, y = Control.MidY, width = 2 * pen.Scale;
        pen.Line(x - way * size / 2, y - size, x + way * size / 2, y, Palette.Quiet, width);
        pen.Line(x + way * size / 2, y, x - way * size / 2, y + size, Palette.Quiet, width);
    }
}
