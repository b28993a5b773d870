namespace Simfeel.Studies.Fit;

/// <summary>What a fit has to warn of: results so far from the build that something else was probably measured.</summary>
public static class FitCautions
{
    private const double MostFactor = 1.33, LeastFactor = 0.75, MostKv = 0.12, MostInertia = 2;

    /// <summary>Of a thrust table; limits are common practice for scatter between propellers and motors of one name.</summary>
    public static IReadOnlyList<string> Of(StandFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        FittedConstant kv = fit.Constant("motor.kv_rpm_per_V");
        bool far = Far(fit.Constant("propeller.thrust_factor")) || Far(fit.Constant("propeller.torque_factor"))
            || (kv.Determined && Math.Abs((kv.Value / kv.Before) - 1) > MostKv);
        return far ? ["Caution: that is far from the build. Is this the same motor and propeller?"] : [];

        static bool Far(FittedConstant constant) => constant.Determined && constant.Value / constant.Before is > MostFactor or < LeastFactor;
    }

    /// <summary>Of a swing test: inertia measured and before, in one unit.</summary>
    public static IReadOnlyList<string> OfSwing(double measured, double before) =>
        measured / before is > MostInertia or < 1 / MostInertia
            ? ["Caution: that is far from what the parts say. Check the axis, the units and the time of one swing."]
            : [];
}
