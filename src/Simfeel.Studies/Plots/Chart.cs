namespace Simfeel.Studies.Plots;

/// <summary>How a series is drawn.</summary>
public enum ChartMark
{
    /// <summary>Markers alone: what was measured or published.</summary>
    Points,

    /// <summary>A line alone: what is computed.</summary>
    Line,
}

/// <summary>Where a chart has room for its legend.</summary>
public enum LegendPlace
{
    /// <summary>No legend.</summary>
    None,

    /// <summary>Upper left corner.</summary>
    UpperLeft,

    /// <summary>Upper right corner.</summary>
    UpperRight,

    /// <summary>Lower left corner.</summary>
    LowerLeft,

    /// <summary>Lower right corner.</summary>
    LowerRight,
}

/// <summary>A series of a chart.</summary>
/// <param name="Name">What the legend calls it; empty keeps it out of the legend.</param>
/// <param name="Mark">Markers or a line.</param>
/// <param name="Style">
/// Number of its look, 0 to <see cref="ChartPalette.Count"/> - 1: colour together with marker shape or dashes, so that
/// colour never tells two series apart alone. Points and a line of one number belong together.
/// </param>
/// <param name="X">Places, in the unit of the axis.</param>
/// <param name="Y">Values, as many.</param>
public sealed record ChartSeries(string Name, ChartMark Mark, int Style, IReadOnlyList<double> X, IReadOnlyList<double> Y)
{
    /// <summary>Markers.</summary>
    public static ChartSeries Points(string name, int style, IEnumerable<(double X, double Y)> points) => Of(name, ChartMark.Points, style, points);

    /// <summary>A line.</summary>
    public static ChartSeries Line(string name, int style, IEnumerable<(double X, double Y)> points) => Of(name, ChartMark.Line, style, points);

    /// <summary>A line through a function at evenly spaced places.</summary>
    public static ChartSeries Curve(string name, int style, double from, double to, int steps, Func<double, double> function) =>
        Line(name, style, Enumerable.Range(0, steps + 1).Select(i => from + ((to - from) * i / steps)).Select(x => (x, function(x))));

    private static ChartSeries Of(string name, ChartMark mark, int style, IEnumerable<(double X, double Y)> points)
    {
        (double X, double Y)[] all = [.. points];
        return new(name, mark, style, [.. all.Select(p => p.X)], [.. all.Select(p => p.Y)]);
    }
}

/// <summary>An axis of a chart.</summary>
/// <param name="Label">What it shows, with the unit, or a plain name for a ratio.</param>
/// <param name="From">Least value shown; chosen from the data if null.</param>
/// <param name="To">Largest value shown; chosen from the data if null.</param>
public sealed record ChartAxis(string Label, double? From = null, double? To = null)
{
    /// <summary>Whether it shows powers of ten.</summary>
    public bool Logarithmic { get; init; }

    /// <summary>Names in place of numbers: the first at 0, the next at 1, and so on.</summary>
    public IReadOnlyList<string> Names { get; init; } = [];
}

/// <summary>One chart: two axes and what is drawn between them.</summary>
/// <param name="Title">A line above it.</param>
/// <param name="X">Axis across.</param>
/// <param name="Y">Axis up.</param>
/// <param name="Series">What is drawn, in this order.</param>
/// <param name="Legend">Where the legend goes.</param>
public sealed record Chart(string Title, ChartAxis X, ChartAxis Y, IReadOnlyList<ChartSeries> Series, LegendPlace Legend = LegendPlace.None)
{
    /// <summary>Words beside points.</summary>
    public IReadOnlyList<ChartNote> Notes { get; init; } = [];
}

/// <summary>A word or two beside a point of a chart.</summary>
/// <param name="Text">The words.</param>
/// <param name="X">Place, in the unit of the axis.</param>
/// <param name="Y">Place, in the unit of the axis.</param>
/// <param name="Side">-1 left of the point, 1 right of it, 0 above.</param>
public sealed record ChartNote(string Text, double X, double Y, int Side = 0);

/// <summary>A picture of charts side by side.</summary>
/// <param name="Title">Heading of the picture.</param>
/// <param name="Columns">Charts in a row.</param>
/// <param name="RowHeight">Height of a row of charts, pixels at a width of <see cref="ChartPicture.Width"/>.</param>
/// <param name="Charts">The charts, row by row.</param>
public sealed record ChartSheet(string Title, int Columns, int RowHeight, IReadOnlyList<Chart> Charts);
