using ScottPlot;

namespace Simfeel.Studies.Plots;

/// <summary>
/// Looks of series. Colours after Okabe and Ito, Color Universal Design (2008), told apart by eyes of every kind of colour
/// vision; each has a marker shape and dashes of its own as well.
/// </summary>
public static class ChartPalette
{
    private static readonly (Color Colour, MarkerShape Marker, LinePattern Dashes)[] Looks =
    [
        (Color.FromHex("#000000"), MarkerShape.OpenCircle, LinePattern.Solid),
        (Color.FromHex("#0072B2"), MarkerShape.FilledSquare, LinePattern.Solid),
        (Color.FromHex("#D55E00"), MarkerShape.FilledTriangleUp, new([9, 4], 0, "dashed")),
        (Color.FromHex("#009E73"), MarkerShape.FilledDiamond, new([2, 3], 0, "dotted")),
        (Color.FromHex("#CC79A7"), MarkerShape.OpenSquare, new([10, 3, 2, 3], 0, "dash-dotted")),
        (Color.FromHex("#56B4E9"), MarkerShape.OpenTriangleDown, new([5, 3], 0, "short-dashed")),
        (Color.FromHex("#7F7F7F"), MarkerShape.Cross, new([2, 5], 0, "sparse")),
    ];

    // as everywhere: A blue, solid, a disc; B orange, dashed, a triangle
    private static readonly (Color Colour, MarkerShape Marker, LinePattern Dashes) LookA =
        (Looks[1].Colour, MarkerShape.FilledCircle, LinePattern.Solid);

    /// <summary>Number of looks, those of the two builds apart.</summary>
    public static int Count => Looks.Length;

    /// <summary>Look of build A where two builds are compared.</summary>
    public static int BuildA => Count;

    /// <summary>Look of build B.</summary>
    public static int BuildB => 2;

    /// <summary>Look of what is there for comparison only, such as a stick.</summary>
    public static int Faint => 6;

    internal static Color Ink { get; } = Color.FromHex("#202020");

    internal static Color Grid { get; } = Color.FromHex("#E4E4E4");

    internal static (Color Colour, MarkerShape Marker, LinePattern Dashes) Look(int style) =>
        style == BuildA ? LookA : Looks[style];

    /// <summary>Colour of a look as <c>#rrggbb</c>.</summary>
    public static string Hex(int style) => Look(style).Colour.ToHex();
}
