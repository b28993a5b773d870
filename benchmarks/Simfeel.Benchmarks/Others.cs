using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using Simfeel.Physics;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Rotors;

namespace Simfeel.Benchmarks;

/// <summary>
/// The kernel beside two general solvers, MathNet.Numerics and SciPy, on one model and one second of flight: all take turns on one
/// core, the least time of each counts.
/// </summary>
internal static class Others
{
    /// <summary>Steps a second of everything that takes fixed steps.</summary>
    private const int StepRate = 8000;

    /// <summary>Absolute tolerance of SciPy where none is given.</summary>
    private const double UsualAbsolute = 1e-6;

    /// <summary>Stretches that the slowest rows fly; their time is counted for a second.</summary>
    private const int FewHolds = 25;

    /// <summary>One line of the table.</summary>
    private sealed record Row(string Name, int Craft, Func<double> Fly, Func<FlightError>? Error, int MostRuns)
    {
        /// <summary>Least nanoseconds for a craft and a simulated second.</summary>
        public double Least { get; set; } = double.PositiveInfinity;

        public int Runs { get; set; }
    }

    /// <summary>Flies and returns a Markdown report.</summary>
    /// <param name="seconds">How long to go on.</param>
    public static string Report(double seconds)
    {
        RotorTable table = Specimen.Table();
        HeldManoeuvre second = HeldManoeuvre.HardSecond;
        int stepsPerHold = StepRate / second.HoldsPerSecond;
        using ScalarModel model = new(table);
        using HeldFlight<Lane1> one = new(second, table);
        using HeldFlight<Lane8> eight = new(second, table);
        using HeldFlight<LaneF16> sixteen = new(second, table);
        MathNetFlight mathNet = new(second, model);
        using Reference reference = new(table, second);
        CraftState[] path = new CraftState[second.HoldsPerSecond];

        List<Row> rows =
        [
            Ours("C# Lane1, midpoint", one, Integrator.Midpoint),
            Ours("C# Lane1, Runge-Kutta", one, Integrator.RungeKutta),
            Ours("C# Lane8, midpoint", eight, Integrator.Midpoint),
            Ours("C# Lane8, Runge-Kutta", eight, Integrator.RungeKutta),
            Ours("C# LaneF16 (float), midpoint", sixteen, Integrator.Midpoint),
            new("MathNet Runge-Kutta, our scalar derivative", 1, () => Timed(() => mathNet.Fly(stepsPerHold)), () =>
            {
                mathNet.Fly(stepsPerHold, path);
                return reference.Of(path);
            }, int.MaxValue),
        ];
        string tolerance = "";
        if (reference.Scipy is ScipyProcess scipy)
        {
            FlightError target = reference.Of(Path(one, Integrator.Midpoint));
            ScipyWish equal = EqualWish(scipy, target, reference);
            tolerance = $"\"As near as ours\" is the loosest relative tolerance 10^-n, absolute the same, whose attitude error is not above that of the midpoint rule: {equal.Tolerance:g1}.";
            rows.Add(Theirs("SciPy RK45, default tolerances", new(second.Name, "RK45", 1e-3, UsualAbsolute), 4));
            rows.Add(Theirs("SciPy RK45, as near as ours", equal, 3));
            rows.Add(Theirs($"SciPy RK45, default, steps of at most 1/{StepRate} s", new(second.Name, "RK45", 1e-3, UsualAbsolute, FewHolds, LongestStep: 1.0 / StepRate), 3));
            rows.Add(Theirs("SciPy RK45, default, called at 4000 Hz as a controller needs it", new(second.Name, "RK45", 1e-3, UsualAbsolute, FewHolds, 4000 / second.HoldsPerSecond), 3));
            rows.Add(Theirs("SciPy RK45, default, called at 8000 Hz", new(second.Name, "RK45", 1e-3, UsualAbsolute, FewHolds, 8000 / second.HoldsPerSecond), 3));

            Row Theirs(string name, ScipyWish wish, int runs) => new(name, 1, () => 1e9 * scipy.Fly(wish, false).Seconds,
                wish.Holds > 0 ? null : () => reference.Of(scipy.Fly(wish, true).Path), runs);
        }

        Measure(rows, seconds);
        return Write(rows, reference, tolerance);

        Row Ours(string name, IHeldFlight flight, Integrator integrator) => new(
            name, flight.Width, () => Timed(() => flight.Fly(integrator, stepsPerHold)),
            () => reference.Of(Path(flight, integrator)), int.MaxValue);

        CraftState[] Path(IHeldFlight flight, Integrator integrator)
        {
            flight.Fly(integrator, stepsPerHold, path);
            return path;
        }
    }

    /// <summary>Nanoseconds that something takes.</summary>
    public static double Timed(Action what)
    {
        long start = Stopwatch.GetTimestamp();
        what();
        return Stopwatch.GetElapsedTime(start).TotalNanoseconds;
    }

    private static ScipyWish EqualWish(ScipyProcess scipy, FlightError target, Reference reference)
    {
        ScipyWish wish = new(HeldManoeuvre.HardSecond.Name, "RK45", 1e-3, 1e-3);
        while (reference.Of(scipy.Fly(wish, true).Path).Attitude > target.Attitude && wish.Tolerance > 1e-10)
            wish = wish with { Tolerance = wish.Tolerance / 10, AbsoluteTolerance = wish.AbsoluteTolerance / 10 };
        return wish;
    }

    private static void Measure(List<Row> rows, double seconds)
    {
        // lets the just-in-time compiler reach its last tier, on its own thread
        for (int round = 0; round < 5; round++)
        {
            foreach (Row row in rows.Where(row => row.MostRuns == int.MaxValue)) row.Fly();
            Thread.Sleep(120);
        }
        Stopwatch all = Stopwatch.StartNew();
        do
        {
            foreach (Row slow in rows.Where(row => row.Runs < row.MostRuns && row.MostRuns < int.MaxValue)) Run(slow);
            // a slow row takes its turns, but does not keep the quick ones from theirs
            for (int round = 0; round < 20; round++)
            {
                foreach (Row quick in rows.Where(row => row.MostRuns == int.MaxValue)) Run(quick);
            }
        }
        while (all.Elapsed.TotalSeconds < seconds || rows.Any(row => row.MostRuns < int.MaxValue && row.Runs < row.MostRuns));

        static void Run(Row row)
        {
            row.Least = Math.Min(row.Least, row.Fly() / row.Craft);
            row.Runs++;
        }
    }

    private static string Write(List<Row> rows, Reference reference, string tolerance)
    {
        StringBuilder text = new();
        double batch = rows[2].Least, scalar = rows[0].Least;
        text.AppendLine(CultureInfo.InvariantCulture, $"# Beside general solvers on {Machine.CpuName}");
        text.AppendLine();
        text.AppendLine(CultureInfo.InvariantCulture, $"{RuntimeInformation.OSDescription}; {RuntimeInformation.FrameworkDescription}; MathNet.Numerics {typeof(MathNet.Numerics.OdeSolvers.RungeKutta).Assembly.GetName().Version!.ToString(3)}; {reference.Scipy?.Versions ?? "no SciPy"}.");
        text.AppendLine(CultureInfo.InvariantCulture, $"One second, {HeldManoeuvre.HardSecond.Purpose}; fixed steps of 1/{StepRate} s; one core; rows take turns, least time counts.");
        text.AppendLine();
        text.AppendLine("| solver | ns per craft and simulated second | times real time | as many times as C# Lane8, midpoint | as C# Lane1, midpoint | attitude error, deg | position error, mm | runs |");
        text.AppendLine("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (Row row in rows)
        {
            FlightError? error = row.Error?.Invoke();
            text.AppendLine(CultureInfo.InvariantCulture,
                $"| {row.Name} | {row.Least:f0} | {1e9 / row.Least:g4} | {row.Least / batch:g4} | {row.Least / scalar:g4} | {error?.Attitude:g2} | {error?.Position:g2} | {row.Runs} |");
        }
        text.AppendLine();
        if (tolerance.Length > 0) text.AppendLine(CultureInfo.InvariantCulture, $"{tolerance} Rows without an error fly {FewHolds} stretches only.");
        text.AppendLine(reference.Agreement);
        return text.ToString();
    }
}
