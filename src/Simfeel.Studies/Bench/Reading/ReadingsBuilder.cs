using Simfeel.Builds.Reading;
using Simfeel.Studies.Fit;

namespace Simfeel.Studies.Bench.Reading;

/// <summary>Makes readings out of checked tables and says what does not go together within them.</summary>
internal sealed class ReadingsBuilder(IReadOnlyDictionary<string, BenchTable> tables, DiagnosticBag bag)
{
    private const double LeastPeriod = 0.15, MostPeriod = 60;

    public BenchReadings Make()
    {
        BenchTable top = Table(""), mass = Table("mass"), timing = Table("timing");
        TimingReadings timed = new((int)timing["swings"], timing["run_pm_s"], timing["shared_pm_s"]);
        WithSigma? weighed = mass.Gave("mass_g") ? new(mass["mass_g"], mass.ScaleSigma("mass_pm_g", mass["mass_g"])) : null;
        if (mass.Any && weighed is null) Complete(mass, ["mass_g"]);
        Dictionary<BenchAxis, SwingReadings> swings = [];
        Dictionary<BenchAxis, BalanceReadings> balances = [];
        BalanceBuilder balance = new(bag);
        foreach (BenchAxis axis in BenchAxes.All)
        {
            if (Swing(Table(axis.Turn()), timed.Swings) is SwingReadings swing) swings[axis] = swing;
            if (balance.Make(axis, Table(axis.BalanceTable())) is BalanceReadings reading) balances[axis] = reading;
        }
        if (!bag.HasErrors && balances.GetValueOrDefault(BenchAxis.Z) is HookReadings && !balances.ContainsKey(BenchAxis.X))
            bag.Error(Table("balance_z").At, "balance_z.hook_angle_deg", "", "The plumb line tells the height only where the balance point's x is known.", "balance it forward and back as well, in [balance_x]");
        if (!bag.HasErrors && weighed is null && swings.Count + balances.Count == 0)
            bag.Error(null, "", "", "Nothing was measured yet: all readings are missing.", "take the # away before a key and write your reading behind it");
        return new()
        {
            Source = bag.SourceName,
            BuildName = top.BuildName,
            Gravity = top["gravity_m_s2"],
            Mass = weighed,
            Timing = timed,
            Swings = swings,
            Balances = balances,
        };
    }

    private BenchTable Table(string name) => tables.GetValueOrDefault(name) ?? new(name, new(1, 1));

    private SwingReadings? Swing(BenchTable table, int count)
    {
        if (!table.Any || !Complete(table, ["spacing_mm", "length_mm", "times_s"])) return null;
        string name = table.Name;
        double spacing = table["spacing_mm"], length = table["length_mm"];
        if (spacing >= length)
            bag.Error(table.PlaceOf("spacing_mm"), name + ".spacing_mm", $"{1e3 * spacing:G6}", $"The wires' spacing must be less than their length; allowed is 10 to {1e3 * length:G6} mm.", "have spacing and length changed places?");
        if (table.Gave("stick_mass_g") != table.Gave("stick_length_mm"))
            Complete(table, ["stick_mass_g", "stick_length_mm"]);
        IReadOnlyList<double> times = table.Many("times_s");
        double middle = times.Order().ElementAt(times.Count / 2);
        foreach (double time in times)
        {
            double period = time / count;
            if (period is < LeastPeriod or > MostPeriod)
                bag.Error(table.PlaceOf("times_s"), name + ".times_s", $"{time:G6}", $"With {count} swings in one timing a swing would take {period:G3} s; allowed is {LeastPeriod} to {MostPeriod} s.", $"write the time of all {count} swings, or say in [timing] how many were counted");
            // half a swing is far outside what a thumb does, unless swings are very short
            else if (Math.Abs(time - middle) > Math.Max(0.6 * middle / count, 0.5))
                bag.Warning(table.PlaceOf("times_s"), name + ".times_s", $"{time:G6}", $"Another timing took {middle:G6} s, and a swing takes about {middle / count:G3} s; the swings may have been miscounted.", "time it again and leave the wrong one out");
        }
        return new(
            table.With("spacing_mm", "spacing_pm_mm"), table.With("length_mm", "length_pm_mm"), times,
            table.With("swing_deg", "swing_pm_deg"), table["stick_mass_g"], table["stick_length_mm"], table.At.Line);
    }

    private bool Complete(BenchTable table, string[] keys) => BalanceBuilder.Complete(table, keys, bag);
}
