using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Physics;
using Simfeel.Physics.Maths;
using Simfeel.Studies.Lessons;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Plots;
using Simfeel.Studies.Tests.Metrics;

namespace Simfeel.Studies.Tests.Lessons;

/// <summary>Channels, the one number and the plot of a lesson, read off made-up rows.</summary>
public class LessonReadingTests
{
    /// <summary>Time less 0.4 s, about roll; other axes are ten times as large.</summary>
    private static readonly FlightChannel Ramp = new(
        "ramp", "turn of a ramp", new("ms", 1000, 0), (log, axis) => [.. Enumerable.Range(0, log.Samples.Count).Select(row => ((row * log.Period) - 0.4) * (axis == 0 ? 1 : 10))]);

    private static readonly FlightLog Second = SyntheticLog.Of(1);

    [Theory]
    [InlineData(LessonRead.At, 0.25, 0.9, -0.15)]
    [InlineData(LessonRead.At, -1, 0.9, -0.4)]
    [InlineData(LessonRead.At, 7, 9, 0.6)]
    [InlineData(LessonRead.Largest, 0.2, 0.5, 0.1)]
    [InlineData(LessonRead.Largest, 0.2, double.PositiveInfinity, 0.6)]
    [InlineData(LessonRead.Largest, 0.2, 7, 0.6)]
    [InlineData(LessonRead.Largest, 0.2, 0.1, -0.2)]
    [InlineData(LessonRead.Least, 0.5, 0.7, 0.1)]
    [InlineData(LessonRead.Least, 0.3, 0.7, -0.1)]
    [InlineData(LessonRead.Mean, 0.5, 0.7, 0.2)]
    [InlineData(LessonRead.Mean, 0.1, 0.5, -0.1)]
    public void A_number_is_read_within_its_times(LessonRead read, double from, double to, double value)
    {
        Assert.Equal(value, Number(read, from, to).Of(Second, 0), 9);
        Assert.Equal(10 * value, Number(read, from, to).Of(Second, 2), 9);
    }

    /// <summary>Squares of 0 to n have the mean n (2n + 1) / 6; either way about nothing n (n + 1) / 3.</summary>
    [Fact]
    public void A_root_mean_square_is_over_the_rows()
    {
        Assert.Equal(1e-3 * Math.Sqrt(400 * 801 / 6.0), Number(LessonRead.Rms, 0.4, 0.8).Of(Second, 0), 9);
        Assert.Equal(1e-3 * Math.Sqrt(400 * 401 / 3.0), Number(LessonRead.Rms, 0, 0.8).Of(Second, 0), 9);
    }

    [Fact]
    public void A_metric_is_read_as_it_is()
    {
        Metric metric = MetricCatalogue.All[0] with { Read = log => log.Samples.Count };
        Assert.Equal(1001, new LessonNumber { Title = "t", Display = metric.Display, Metric = metric }.Of(Second, 0));
    }

    [Fact]
    public void Channels_read_what_they_are_called()
    {
        FlightLog log = Log(
            new() { w_WB_B = new(1, 0, 0), q_WB = Quat.Identity },
            new() { w_WB_B = new(0, -2, 0), q_WB = Quat.FromAxisAngle(new(0, 1, 0), 0.5), p_WB = new(1, 2, -3), v_WB = new(2, -3, 6) },
            new() { w_WB_B = new(-3, 0, 0), q_WB = Quat.FromAxisAngle(new(0, 0, 1), 0.5) },
            new() { w_WB_B = new(3, 4, 12), q_WB = Quat.FromAxisAngle(new(1, 0, 0), Math.PI) },
            default(CraftState) with { q_WB = Quat.Identity });
        Check("rate", [0, -2, 0, 4, 0], axis: 1);
        Check("rate", [1, 0, -3, 3, 0]);
        Check("rate", [0, 0, 0, 12, 0], axis: 2);
        Check("angle", [0, -0.001, -0.002, -0.001 + 0.001, 0.001 + 0.001], axis: 1);
        Check("tilt", [0, 0.5, 0, Math.PI, 0]);
        Check("axis_drift", [0, Math.PI / 2, Math.PI, Math.Acos(3 / 13.0), 0]);
        Check("shake", [1, 2, 3, 5, 0]);
        Check("height", [0, 3, 0, 0, 0]);
        Check("fall", [0, -3, 0, 0, 0]);
        Check("climb", [0, -6, 0, 0, 0]);
        Check("sink", [0, 6, 0, 0, 0]);
        Check("speed", [0, 7, 0, 0, 0]);
        Check("sideways", [0, 2, 0, 0, 0]);
        Check("thrust", [0, 10, 20, 30, 40]);
        Check("power", [0, 120, 240, 360, 480]);
        Check("pack_voltage", [0, 15, 30, 45, 60]);
        Check("reserve_up", [0, 0.25, 0.5, 0.75, 1]);
        Check("reserve_down", [0, 2.5, 5, 7.5, 10]);
        Assert.Null(FlightChannel.Find("nothing"));

        void Check(string name, double[] expected, int axis = 0)
        {
            double[] read = FlightChannel.Find(name)!.Read(log, axis);
            Assert.Equal(expected.Length, read.Length);
            foreach ((double wanted, double got) in expected.Zip(read)) Assert.Equal(wanted, got, 6);
        }
    }

    /// <summary>Two rotors stand before the others, on a craft whose centre of gravity need not lie between them.</summary>
    [Fact]
    public void Front_less_rear_is_a_difference_of_means()
    {
        IReadOnlyList<RotorConstants> rotors = Starters.Get("wagtail").Unit.Craft.Rotors;
        double middle = (rotors.Max(rotor => rotor.p_BcmR_B.X) + rotors.Min(rotor => rotor.p_BcmR_B.X)) / 2;
        CraftState state = default;
        for (int k = 0; k < 4; k++) state.RotorSpeeds[k] = (rotors[k].p_BcmR_B.X > middle ? 500 : 300) + (rotors[k].p_BcmR_B.Y > 0 ? 20 : 0);
        Assert.Equal([200, 200], FlightChannel.Find("front_less_rear")!.Read(Log(state, state), 0));
        Assert.Equal([410, 410], FlightChannel.Find("rotor_speed")!.Read(Log(state, state), 0));
    }

    /// <summary>300 rows at most ten points: every thirtieth.</summary>
    [Fact]
    public void A_plot_keeps_to_its_times_and_to_few_points()
    {
        (double X, double Y)[] points = [.. Points(0.2, 0.5, 10)];
        Assert.Equal(11, points.Length);
        for (int n = 0; n < 11; n++) Near((0.2 + (0.03 * n), 1000 * (0.2 + (0.03 * n) - 0.4)), points[n]);
        Assert.Equal(301, Points(0.2, 0.5, 260).Count());
        foreach (double end in (double[])[double.PositiveInfinity, double.NaN, 1, 5]) Near((1, 600), Points(0.9, end, 100).Last());
        Near((0, -400), Points(-1, 0.5, 100).First());
        Near((1, 600), Points(5, 9, 100).Single());
        Near((0.7, 300), Points(0.7, 0.3, 100).Single());

        static void Near((double X, double Y) expected, (double X, double Y) point)
        {
            Assert.Equal(expected.X, point.X, 9);
            Assert.Equal(expected.Y, point.Y, 6);
        }

        static IEnumerable<(double X, double Y)> Points(double from, double to, int most)
        {
            LessonResult result = Result(new(Ramp, from, to), "roll", "roll");
            return LessonChart.Points(result, result.A, most);
        }
    }

    [Fact]
    public void The_chart_names_the_craft_and_the_axis_that_both_turn_about()
    {
        FlightChannel rate = FlightChannel.Find("rate")!;
        foreach ((string a, string b, string title) in new[] { ("roll", "roll", "roll rate"), ("pitch", "pitch", "pitch rate"), ("yaw", "yaw", "yaw rate"), ("roll", "yaw", "turn rate") })
        {
            Chart chart = LessonChart.Of(Result(new(rate, 0, 1), a, b));
            Assert.Equal(("time, s", $"{title}, deg/s"), (chart.X.Label, chart.Y.Label));
            Assert.Equal(["\u25CF A one", "\u25B2 B other"], chart.Series.Select(series => series.Name));
            Assert.Equal([ChartPalette.BuildA, ChartPalette.BuildB], chart.Series.Select(series => series.Style));
            Assert.Equal(334, chart.Series[1].X.Count);
        }
        Assert.Equal("turn of a ramp", LessonChart.Title(Result(new(Ramp, 0, 1), "roll", "roll")));
    }

    [Fact]
    public void Hands_are_counted_between_none_and_999()
    {
        ClassAnswers answers = new([0, 999, 5]);
        Assert.Equal(1004, answers.Count);
        foreach (int n in (int[])[0, 1, 2, 2]) answers.Add(n);
        Assert.Equal([1, 999, 7], answers.Hands);
        foreach (int n in (int[])[0, 0, 2]) answers.Take(n);
        Assert.Equal([0, 999, 6], answers.Hands);
        Assert.Equal([0, 0], new ClassAnswers(2).Hands);
        foreach (int[] wrong in (int[][])[[-1, 5], [5, 1000], [5, 5, -1]]) Assert.Throws<ArgumentOutOfRangeException>(() => new ClassAnswers(wrong));
        Assert.Equal("A 0, B 999, C 6", LessonWords.Hands(answers));
    }

    private static LessonNumber Number(LessonRead read, double from, double to) =>
        new() { Title = "ramp", Display = Ramp.Display, Channel = Ramp, Read = read, From = from, To = to };

    private static LessonResult Result(LessonPlot plot, string a, string b)
    {
        Lesson lesson = LessonReader.Read(LessonShelf.Files.PathOf("ballast-to-the-tips")!).Lesson! with { Plot = plot };
        return new(lesson, Flight("one", a), Flight("other", b));

        static LessonFlight Flight(string name, string axis) =>
            new(name, new(0), new([new(LessonKeys.Find("drill.axis")!, new(double.NaN, axis))]), null!, Second, 0);
    }

    /// <summary>Rows of the states; each behind the first has its number times 1 to 4 N, 15 V, 8 A and 0.1 to 0.4 N m.</summary>
    private static FlightLog Log(params CraftState[] states)
    {
        Sample[] samples = [.. states.Select((state, row) =>
        {
            Sample sample = new() { State = state, PackVoltage = 15 * row, PackCurrent = 8 };
            for (int k = 0; k < 4; k++)
            {
                sample.Thrust[k] = row * (k + 1);
                sample.ReserveUp[k] = 0.1 * row * (k + 1);
                sample.ReserveDown[k] = row * (k + 1);
            }
            return sample;
        })];
        return new() { Drill = "made up", Unit = Second.Unit, Profile = Second.Profile, Field = Second.Field, Effort = 1, Samples = LogRows.Of(samples, 4), Sticks = new Simfeel.Flight.Sticks[samples.Length] };
    }
}
