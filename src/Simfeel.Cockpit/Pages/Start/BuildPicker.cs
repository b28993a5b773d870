using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Pages.Widgets;

namespace Simfeel.Cockpit.Pages.Start;

/// <summary>One of the two builds on the start page: left and right go through the list, accept opens it.</summary>
/// <param name="index">0 for A, 1 for B.</param>
/// <param name="get">The picked build.</param>
/// <param name="step">Goes to the next (1) or the one before (-1).</param>
/// <param name="open">Opens the list.</param>
internal sealed class BuildPicker(int index, Func<BuildChoice> get, Action<int> step, Action open) : Widget
{
    private const string Hint = "Left and right: another build.   Enter: all builds.";

    public override bool CanFocus => true;

    /// <summary>The headline numbers of a build, or why it has none.</summary>
    public static string Numbers(BuildChoice build) => build.Fault is { } fault
        ? "! " + fault
        : FormattableString.Invariant(
            $"{1000 * build.Mass:0} g    roll inertia {1000 * build.RollInertia:G3} g m²    thrust {build.ThrustToWeight:0.0} x weight");

    private protected override float Measure(Pen pen, float x, float y, float width)
    {
        BuildChoice build = get();
        float inner = Inner(pen, width);
        return pen.Wrap(build.Name, TextStyle.Heading, inner - 40 * pen.Scale).Length * pen.LineHeight(TextStyle.Heading)
            + Rows(pen, build.Description, TextStyle.Body, inner)
            + Rows(pen, Numbers(build), TextStyle.Small, inner)
            + Rows(pen, Hint, TextStyle.Small, inner) + 36 * pen.Scale;
    }

    internal override void Draw(Pen pen, bool focused)
    {
        DrawGround(pen, focused);
        BuildChoice build = get();
        float unit = pen.Scale, left = Bounds.Left + 14 * unit, inner = Inner(pen, Bounds.Width);
        float y = Bounds.Top + 12 * unit, heading = pen.LineHeight(TextStyle.Heading);
        pen.BuildMark(index, left + 7 * unit, y + heading / 2, 7 * unit, Palette.Build(index));
        pen.Text(index == 0 ? "A" : "B", left + 22 * unit, y, TextStyle.Heading, Palette.Ink);
        y += pen.Lines(build.Name, left + 40 * unit, y, inner - 40 * unit, TextStyle.Heading, Palette.Ink) + 4 * unit;
        y += pen.Lines(build.Description, left, y, inner, TextStyle.Body, Palette.Ink) + 4 * unit;
        y += pen.Lines(Numbers(build), left, y, inner, TextStyle.Small, build.Fault is null ? Palette.Ink : Palette.Warning) + 4 * unit;
        pen.Lines(Hint, left, y, inner, TextStyle.Small, Palette.Quiet);
    }

    internal override bool Handle(in UiInput input)
    {
        switch (input.Kind)
        {
            case UiInputKind.Left:
                step(-1);
                return true;
            case UiInputKind.Right:
                step(1);
                return true;
            case UiInputKind.Accept or UiInputKind.PointerDown:
                open();
                return true;
            default:
                return false;
        }
    }

    private static float Inner(Pen pen, float width) => width - 28 * pen.Scale;

    private static float Rows(Pen pen, string text, TextStyle style, float width) =>
        pen.Wrap(text, style, width).Length * pen.LineHeight(style);
}
