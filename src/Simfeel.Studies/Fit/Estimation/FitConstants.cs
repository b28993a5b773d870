using Simfeel.Builds;

namespace Simfeel.Studies.Fit.Estimation;

/// <summary>The constants that a fit looks for, in the order of <see cref="StandFactors"/>.</summary>
internal static class FitConstants
{
    public const int Thrust = 0, Torque = 1, Kv = 2, Resistance = 3, Loss = 4, Inductance = 5;

    /// <summary>
    /// How far the build's own number is trusted before the table is seen: standard deviation of its logarithm. Guesses
    /// on the wide side: blade-element models of unknown blades are off by up to a quarter, a printed KV by a few percent,
    /// rules for winding, losses and inductance by a third and more (common practice).
    /// </summary>
    public static IReadOnlyList<double> Prior { get; } = [0.25, 0.25, 0.06, 0.35, 0.6, 0.6];

    /// <summary>A constant counts as told by the table where that narrows it at least this much.</summary>
    public const double Narrowing = 1.0 / 3;

    public static string KeyOf(int constant, StandModel model) => constant switch
    {
        Thrust => "propeller.thrust_factor",
        Torque => "propeller.torque_factor",
        Kv => "motor.kv_rpm_per_V",
        Resistance => "motor.winding_resistance_mohm",
        Loss => model.HasNoLoadCurrent ? "motor.no_load_current_A" : "motor.loss_factor",
        _ => "motor.inductance_uH",
    };

    public static string MeaningOf(int constant, StandModel model) => constant switch
    {
        Thrust => "thrust over that of the blade-element model",
        Torque => "torque over that of the blade-element model",
        Kv => "no-load speed per volt",
        Resistance => "winding resistance between two wires",
        Loss => model.HasNoLoadCurrent ? "no-load current" : "iron and friction losses over the usual ones",
        _ => "winding inductance, from the droop of speed under load",
    };

    /// <summary>Why a table tells nothing of a constant, in words.</summary>
    public static string WhyNot(int constant, IReadOnlyList<StandRow> rows, bool throttleIsDuty, double sigma)
    {
        bool speed = rows.Any(row => row.Speed > 0), power = rows.Any(row => row.Voltage * row.Current > 0 || row.ElectricalPower > 0);
        bool voltage = rows.Any(row => row.Voltage > 0), torque = rows.Any(row => row.Torque > 0), thrust = rows.Any(row => row.Thrust > 0);
        bool duty = throttleIsDuty || rows.Any(row => row.Throttle >= 0.995);
        string missing = constant switch
        {
            Thrust => !thrust ? "no thrust column" : !speed ? "no rotor speed" : "",
            Torque => torque && !speed ? "no rotor speed" : !torque && !(power && speed) ? "no torque column" + (speed ? "" : " and no rotor speed") : "",
            Kv => !speed ? "no rotor speed" : !voltage ? "no voltage" : !duty ? "no row at full throttle, and the throttle is not the duty" : "",
            Inductance => !speed ? "no rotor speed" : !voltage ? "no voltage" : !throttleIsDuty ? "the throttle is not known to be the duty, and full throttle alone does not tell it from KV" : "",
            _ => !power ? "no voltage and current" : !speed ? "no rotor speed" : !torque ? "no torque column, so losses and shaft power cannot be told apart" : "",
        };
        string much = $"these rows hold it to {200 * sigma:F0} % only (95 %)";
        return missing.Length > 0 ? missing : much;
    }

    /// <summary>The build with the constants of a model that the table determined.</summary>
    /// <exception cref="FitException">A constant lies outside what build files allow.</exception>
    public static Build Apply(StandModel fitted, IReadOnlyList<int> determined, string source)
    {
        Build build = fitted.Build.Build;
        double Old(string key) => build.Values.First(value => value.Key == key).Typical;
        List<KeyValuePair<string, double>> changes = [];
        foreach (int constant in determined)
        {
            string key = KeyOf(constant, fitted);
            double value = constant switch
            {
                Resistance => 1e3 * fitted.WindingResistance,
                Inductance => Old(key) * fitted.Rotor.CommutationDroop / fitted.Build.Craft.Rotors[0].CommutationDroop,
                Loss when fitted.HasNoLoadCurrent => Old(key),
                _ => Old(key) * fitted.Factors[constant],
            };
            changes.Add(new(key, value));
        }
        Build after = Edited(build, changes, source);
        if (determined.Contains(Loss) && fitted.HasNoLoadCurrent)
        {
            // losses grow almost in proportion to the no-load current, so two corrections are exact to rounding
            const string key = "motor.no_load_current_A";
            for (int n = 0; n < 3; n++)
                after = Edited(after, [new(key, after.Values.First(v => v.Key == key).Typical * fitted.Rotor.LossTorque / after.Motor.Electrics.LossTorque)], source);
        }
        return after;
    }

    private static Build Edited(Build build, List<KeyValuePair<string, double>> changes, string source)
    {
        BuildResult result = BuildEditor.Edit(build, changes);
        if (result.Build is not null) return result.Build;
        Diagnostic error = result.Diagnostics.First(d => d.Severity == Severity.Error);
        throw new FitException(source, null, $"The fit gives {error.Key} = {error.Value}, which no build may have: {error.Message}", "is it this build's motor and propeller, and were the columns read right?");
    }
}
