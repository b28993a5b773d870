using Simfeel.Studies.Plots;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Lessons;

/// <summary>The plot of a lesson: both craft over each other.</summary>
public static class LessonChart
{
    private const int MostPoints = 260;

    private static readonly string[] Axes = ["roll", "pitch", "yaw"];

    /// <summary>The chart, and its two axis labels.</summary>
    public static Chart Of(LessonResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return new(
            "", new("time, s"), new(Numbers.Axis(Title(result), result.Lesson.Plot.Channel.Display.Symbol)),
            [
                ChartSeries.Line($"{Signs.Of(false)} {result.A.Name}", ChartPalette.BuildA, Points(result, result.A, MostPoints)),
                ChartSeries.Line($"{Signs.Of(true)} {result.B.Name}", ChartPalette.BuildB, Points(result, result.B, MostPoints)),
            ]);
    }

    /// <summary>What is drawn, with the axis in its name where both craft turn about the same one.</summary>
    public static string Title(LessonResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        string title = result.Lesson.Plot.Channel.Title;
        bool turns = result.Lesson.Plot.Channel.Name == "rate" && result.A.Setup.Axis == result.B.Setup.Axis;
        return turns ? title.Replace("turn", Axes[result.A.Setup.Axis], StringComparison.Ordinal) : title;
    }

    /// <summary>Time (s) and value in the channel's unit, at most so many points within the plot's ends.</summary>
    public static IEnumerable<(double X, double Y)> Points(LessonResult result, LessonFlight flight, int most)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(flight);
        LessonPlot plot = result.Lesson.Plot;
        double[] rows = plot.Channel.Read(flight.Log, flight.Setup.Axis);
        double period = flight.Log.Period;
        int first = Math.Clamp((int)Math.Round(plot.From / period), 0, rows.Length - 1);
        int last = double.IsPositiveInfinity(plot.To) || double.IsNaN(plot.To) ? rows.Length - 1 : Math.Clamp((int)Math.Round(plot.To / period), first, rows.Length - 1);
        int step = Math.Max(1, (last - first) / most);
        for (int row = first; row <= last; row += step) yield return (row * period, plot.Channel.Display.PerSi * rows[row]);
    }
}
