namespace Simfeel.Studies.Fit.Estimation;

/// <summary>Measured quantities that a row of a stand table may bring to a fit.</summary>
internal enum Observed
{
    Speed,
    Thrust,
    Torque,
    Voltage,
    Current,
    Power,
}

/// <summary>One measured number with the standard deviation that it is given.</summary>
internal readonly record struct Observation(Observed What, double Value, double Sigma);

/// <summary>
/// One row of a stand as equations: every column has an error, the speed's too, so the true speed is an unknown of the row
/// (errors in variables). With the throttle taken as duty the voltage follows from the speed; without it only the balance
/// of power does: V I = i (Kt w + R i).
/// </summary>
internal sealed class RowEquations
{
    private const int MaxSteps = 25;

    // one to a million rad/s: no rotor on a stand leaves that, but a step towards the solution may
    private static readonly double LeastLogSpeed = Math.Log(1), MostLogSpeed = Math.Log(1e6);

    private readonly double[] _residual;
    private readonly double[] _slope;
    private double _logSpeed;

    public RowEquations(StandRow row, bool throttleIsDuty, IReadOnlyList<Observation> observations, double firstSpeed)
    {
        Row = row;
        ThrottleIsDuty = throttleIsDuty;
        Observations = observations;
        _logSpeed = Math.Max(LeastLogSpeed, Math.Log(firstSpeed));
        _residual = new double[observations.Count];
        _slope = new double[observations.Count];
    }

    public StandRow Row { get; }

    public bool ThrottleIsDuty { get; }

    public IReadOnlyList<Observation> Observations { get; }

    /// <summary>Finds the true speed under a model and writes (model - measured) / sigma of every observation.</summary>
    public void Solve(StandModel model, IReadOnlyList<double> scale, Span<double> residuals)
    {
        for (int n = 0; n < MaxSteps; n++)
        {
            Residuals(model, _logSpeed, scale, _residual);
            Slope(model, scale);
            double square = Dot(_slope, _slope);
            double step = square > 0 ? -Dot(_slope, _residual) / square : 0;
            _logSpeed = Math.Clamp(_logSpeed + Math.Clamp(step, -0.3, 0.3), LeastLogSpeed, MostLogSpeed);
            if (Math.Abs(step) < 1e-9) break;
        }
        Residuals(model, _logSpeed, scale, residuals);
    }

    /// <summary>Residuals under another model at the speed last solved.</summary>
    public void AtSameSpeed(StandModel model, IReadOnlyList<double> scale, Span<double> residuals) =>
        Residuals(model, _logSpeed, scale, residuals);

    /// <summary>
    /// Share of each observation that the row's own speed takes up, 0 to 1; its unit vector is written to
    /// <paramref name="direction"/>. What is left tells of the constants.
    /// </summary>
    public void Direction(StandModel model, IReadOnlyList<double> scale, Span<double> direction)
    {
        Slope(model, scale);
        double length = Math.Sqrt(Dot(_slope, _slope));
        for (int k = 0; k < _slope.Length; k++) direction[k] = length > 0 ? _slope[k] / length : 0;
    }

    private void Slope(StandModel model, IReadOnlyList<double> scale)
    {
        const double step = 1e-5;
        Span<double> below = stackalloc double[_slope.Length];
        Residuals(model, _logSpeed + step, scale, _slope);
        Residuals(model, _logSpeed - step, scale, below);
        for (int k = 0; k < _slope.Length; k++) _slope[k] = (_slope[k] - below[k]) / (2 * step);
    }

    private void Residuals(StandModel model, double logSpeed, IReadOnlyList<double> scale, Span<double> residuals)
    {
        double speed = Math.Exp(logSpeed);
        (double thrust, double torque) = Row.NoPropeller ? (0, 0) : model.Air(speed);
        double current = model.CurrentFor(torque, speed);
        double power = model.Power(current, speed);
        double voltage = ThrottleIsDuty ? model.BridgeVoltage(current, speed) / Row.Throttle : double.NaN;
        for (int k = 0; k < residuals.Length; k++)
        {
            (Observed what, double value, double sigma) = Observations[k];
            double predicted = what switch
            {
                Observed.Speed => speed,
                Observed.Thrust => thrust,
                Observed.Torque => torque,
                Observed.Voltage => voltage,
                Observed.Current => power / voltage,
                _ => power,
            };
            residuals[k] = (predicted - value) / (sigma * scale[(int)what]);
        }
    }

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        double sum = 0;
        for (int k = 0; k < a.Length; k++) sum += a[k] * b[k];
        return sum;
    }
}
