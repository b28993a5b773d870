using System.Globalization;
using System.Text;
using Simfeel.Physics;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Rotors;
using Simfeel.Studies.Plots;

namespace Simfeel.Benchmarks;

/// <summary>
/// Work against precision: both of our integrators, MathNet's Runge-Kutta and SciPy's DOP853 on the same second, from coarse to
/// fine; what each costs on one core and how far it strays from a reference.
/// </summary>
internal static class WorkPrecision
{
    private static readonly int[] StepRates = [500, 1000, 2000, 4000, 8000, 16000, 32000];

    /// <summary>Relative and absolute tolerances of DOP853, and fewer for a manoeuvre of many short stretches, where one takes a minute.</summary>
    private static readonly double[] Tolerances = [1e-3, 1e-5, 1e-7, 1e-9], FewTolerances = [1e-3, 1e-8];

    /// <summary>Turns that each takes; SciPy's slow flights take one, timed by the core and not by the clock.</summary>
    private const int Rounds = 10, ScipyRounds = 1;

    /// <summary>Stretches from which one flight of SciPy's is all there is time for.</summary>
    private const int ManyHolds = 1000;

    /// <summary>A solver at one setting.</summary>
    private sealed record Point(string Setting, Func<double> Fly, Func<CraftState[]> Path, int Rounds)
    {
        public double Least { get; set; } = double.PositiveInfinity;

        public FlightError Error { get; set; }
    }

    /// <summary>A solver at all its settings.</summary>
    private sealed record Solver(string Name, IReadOnlyList<Point> Points);

    /// <summary>What came of it.</summary>
    /// <param name="Markdown">Tables.</param>
    /// <param name="Png">The plot.</param>
    public sealed record Result(string Markdown, byte[] Png);

    /// <summary>Flies everything.</summary>
    /// <param name="picture">Name of the file that will hold the plot.</param>
    public static Result Make(string picture)
    {
        RotorTable table = Specimen.Table();
        StringBuilder text = new();
        text.AppendLine(CultureInfo.InvariantCulture, $"# Work and precision on {Machine.CpuName}");
        text.AppendLine();
        text.AppendLine(CultureInfo.InvariantCulture, $"![Error against work]({picture})");
        text.AppendLine();
        text.AppendLine("Largest error over one second, at the ends of all stretches, of lane 0; least core time of many interleaved runs for each craft and simulated second. Order: of the attitude error against the step before.");
        List<Chart> charts = [];
        foreach (HeldManoeuvre manoeuvre in new[] { HeldManoeuvre.HardSecond, HeldManoeuvre.Controlled(table) })
        {
            using Reference reference = new(table, manoeuvre);
            using ScalarModel model = new(table);
            using HeldFlight<Lane1> one = new(manoeuvre, table);
            using HeldFlight<Lane8> eight = new(manoeuvre, table);
            using HeldFlight<LaneF16> sixteen = new(manoeuvre, table);
            MathNetFlight mathNet = new(manoeuvre, model);
            int[] rates = [.. StepRates.Where(rate => rate >= manoeuvre.HoldsPerSecond)];
            List<Solver> solvers =
            [
                Ours("midpoint, one craft", one, Integrator.Midpoint),
                Ours("midpoint, 8 lanes", eight, Integrator.Midpoint),
                Ours("midpoint, 16 lanes (float)", sixteen, Integrator.Midpoint),
                Ours("Runge-Kutta, one craft", one, Integrator.RungeKutta),
                Ours("Runge-Kutta, 8 lanes", eight, Integrator.RungeKutta),
                new("MathNet Runge-Kutta", [.. rates.Select(rate => new Point(
                    $"1/{rate} s",
                    () => Others.Timed(() => mathNet.Fly(rate / manoeuvre.HoldsPerSecond)),
                    () => Path(path => mathNet.Fly(rate / manoeuvre.HoldsPerSecond, path)),
                    Rounds))]),
            ];
            if (reference.Scipy is ScipyProcess scipy) solvers.Add(Theirs(scipy));
            Measure(solvers, reference);
            Write(text, manoeuvre, reference, solvers);
            charts.AddRange(Charts(manoeuvre, solvers));

            Solver Ours(string name, IHeldFlight flight, Integrator integrator) => new(name, [.. rates.Select(rate => new Point(
                $"1/{rate} s",
                () => Others.Timed(() => flight.Fly(integrator, rate / manoeuvre.HoldsPerSecond)) / flight.Width,
                () => Path(path => flight.Fly(integrator, rate / manoeuvre.HoldsPerSecond, path)),
                Rounds))]);

            Solver Theirs(ScipyProcess scipy)
            {
                bool many = manoeuvre.HoldsPerSecond >= ManyHolds;
                return new("SciPy DOP853", [.. (many ? FewTolerances : Tolerances).Select(tolerance =>
                {
                    ScipyFlight? last = null;
                    return new Point(
                        string.Create(CultureInfo.InvariantCulture, $"rtol {tolerance:g1}"),
                        () => 1e9 * (last = scipy.Fly(new(manoeuvre.Name, "DOP853", tolerance, tolerance), withPath: true)).Seconds,
                        () => last!.Path,
                        many ? 1 : ScipyRounds);
                })]);
            }

            CraftState[] Path(Action<CraftState[]> fly)
            {
                CraftState[] path = new CraftState[manoeuvre.HoldsPerSecond];
                fly(path);
                return path;
            }
        }
        Bends.Write(text, table);
        ChartSheet sheet = new("Largest error over one second against work, one core", 2, 380, charts);
        return new(text.ToString(), ChartPicture.Png(sheet));
    }

    private static void Measure(List<Solver> solvers, Reference reference)
    {
        List<Point> points = [.. solvers.SelectMany(solver => solver.Points)];
        for (int round = 0; round < Rounds; round++)
        {
            foreach (Point point in points.Where(point => round < point.Rounds)) point.Least = Math.Min(point.Least, point.Fly());
            // lets the just-in-time compiler reach its last tier, on its own thread
            if (round < 4) Thread.Sleep(120);
        }
        foreach (Point point in points) point.Error = reference.Of(point.Path());
    }

    private static void Write(StringBuilder text, HeldManoeuvre manoeuvre, Reference reference, List<Solver> solvers)
    {
        text.AppendLine();
        text.AppendLine(CultureInfo.InvariantCulture, $"## {manoeuvre.Name}: {manoeuvre.Purpose}");
        text.AppendLine();
        text.AppendLine("| solver | step or tolerance | work, ms | attitude, deg | order | position, mm | rotor speed, rad/s |");
        text.AppendLine("| --- | --- | ---: | ---: | ---: | ---: | ---: |");
        foreach (Solver solver in solvers)
        {
            FlightError? before = null;
            foreach (Point point in solver.Points)
            {
                bool steps = point.Setting.StartsWith("1/", StringComparison.Ordinal);
                string order = steps && before is FlightError coarse && double.IsFinite(coarse.Attitude)
                    ? Math.Log2(coarse.Attitude / point.Error.Attitude).ToString("f1", CultureInfo.InvariantCulture) : "";
                text.AppendLine(CultureInfo.InvariantCulture,
                    $"| {solver.Name} | {point.Setting} | {point.Least / 1e6:g3} | {point.Error.Attitude:g2} | {order} | {point.Error.Position:g2} | {point.Error.RotorSpeed:g2} |");
                before = point.Error;
            }
        }
        text.AppendLine();
        text.AppendLine(reference.Agreement);
    }

    private static IEnumerable<Chart> Charts(HeldManoeuvre manoeuvre, List<Solver> solvers)
    {
        // the second row has room for it
        LegendPlace place = manoeuvre == HeldManoeuvre.HardSecond ? LegendPlace.None : LegendPlace.UpperRight;
        ChartAxis work = new("core time for a craft and second, ms") { Logarithmic = true };
        yield return Of("attitude", "attitude error, deg", place, error => error.Attitude);
        yield return Of("position", "position error, mm", LegendPlace.None, error => error.Position);

        Chart Of(string what, string label, LegendPlace legend, Func<FlightError, double> read) => new(
            $"{manoeuvre.Name}, {what}", work, new(label) { Logarithmic = true },
            [.. solvers.SelectMany((solver, style) => Series(solver, style, read))], legend);
    }

    private static IEnumerable<ChartSeries> Series(Solver solver, int style, Func<FlightError, double> read)
    {
        (double, double)[] points =
            [.. solver.Points.Where(point => double.IsFinite(read(point.Error)) && read(point.Error) > 0).Select(point => (point.Least / 1e6, read(point.Error)))];
        yield return ChartSeries.Line(solver.Name, style, points);
        yield return ChartSeries.Points("", style, points);
    }
}
