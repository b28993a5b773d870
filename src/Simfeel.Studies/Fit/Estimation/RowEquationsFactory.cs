namespace Simfeel.Studies.Fit.Estimation;

/// <summary>Makes equations out of rows.</summary>
internal sealed class RowEquationsFactory(StandModel model, IReadOnlyList<StandBlock> blocks, IReadOnlyList<StandRow> all)
{
    /// <summary>Every reading starts with this share of itself as its standard deviation; the fit finds the true scatter.</summary>
    public const double RelativeSigma = 0.01;

    private const double FullThrottle = 0.995;
    private const double LeastThrottle = 0.03;

    /// <summary>True where a row tells something at all: the rotor turns.</summary>
    public static bool IsUseful(StandRow row) => row.Speed > 0 || (double.IsNaN(row.Speed) && (row.Thrust > 0 || row.Current > 0));

    /// <summary>The equations of a row; null where they would hold nothing but its own speed.</summary>
    /// <param name="row">The row.</param>
    /// <param name="throttleIsDuty">Whether the throttle is taken as duty; at full throttle it always is.</param>
    public RowEquations? Make(StandRow row, bool throttleIsDuty)
    {
        bool duty = row.Voltage > 0 && (row.Throttle >= FullThrottle || (throttleIsDuty && row.Throttle >= LeastThrottle));
        StandRow full = row.Throttle >= FullThrottle ? row with { Throttle = 1 } : row;
        List<Observation> seen = [];
        Add(Observed.Speed, row.Speed, StandQuantity.Speed, 1e-4);
        if (!row.NoPropeller)
        {
            Add(Observed.Thrust, row.Thrust, StandQuantity.Thrust, 1e-3);
            Add(Observed.Torque, row.Torque, StandQuantity.Torque, 1e-3);
        }
        if (duty)
        {
            Add(Observed.Voltage, row.Voltage, StandQuantity.Voltage, 3e-4);
            if (row.Current > 0) Add(Observed.Current, row.Current, StandQuantity.Current, 3e-4);
        }
        else if (row.Voltage * row.Current > 0)
        {
            double product = row.Voltage * row.Current;
            double step = row.Voltage * Step(StandQuantity.Current);
            seen.Add(new(Observed.Power, product, Sigma(product, step, 3e-4 * Most(r => r.Voltage * r.Current), Math.Sqrt(2) * RelativeSigma)));
        }
        else if (row.ElectricalPower > 0)
        {
            Add(Observed.Power, row.ElectricalPower, StandQuantity.ElectricalPower, 3e-4);
        }
        return seen.Count < 2 ? null : new(full, duty, seen, FirstSpeed(full, duty));

        void Add(Observed what, double value, StandQuantity quantity, double floor)
        {
            if (double.IsNaN(value)) return;
            seen.Add(new(what, value, Sigma(value, Step(quantity), floor * Most(r => Of(r, quantity)), RelativeSigma)));
        }
    }

    private double FirstSpeed(StandRow row, bool duty)
    {
        if (row.Speed > 0) return row.Speed;
        if (duty) return Math.Max(1, model.SpeedAt(row.Throttle * row.Voltage));
        double low = 1, high = 1e5;
        for (int n = 0; n < 60; n++)
        {
            double middle = Math.Sqrt(low * high);
            (double thrust, double torque) = model.Air(middle);
            bool above = row.Thrust > 0 ? thrust > row.Thrust : torque * middle > 0.7 * row.ElectricalPower;
            if (above) high = middle;
            else low = middle;
        }
        return low;
    }

    private double Step(StandQuantity quantity) => blocks.Max(block => block.StepOf(quantity));

    private double Most(Func<StandRow, double> of) => all.Select(of).Where(double.IsFinite).DefaultIfEmpty(0).Max();

    /// <summary>Relative error, rounding (a uniform error of one step has step / sqrt(12)) and a floor for offsets of the sensor.</summary>
    private static double Sigma(double value, double step, double floor, double relative) =>
        Math.Sqrt((relative * relative * value * value) + (step * step / 12) + (floor * floor));

    private static double Of(StandRow row, StandQuantity quantity) => quantity switch
    {
        StandQuantity.Speed => row.Speed,
        StandQuantity.Thrust => row.Thrust,
        StandQuantity.Torque => row.Torque,
        StandQuantity.Voltage => row.Voltage,
        StandQuantity.Current => row.Current,
        _ => row.ElectricalPower,
    };
}
