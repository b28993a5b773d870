using System.Globalization;
using System.Text;
using Simfeel.Physics;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Rotors;

namespace Simfeel.Benchmarks;

/// <summary>
/// Order of both integrators on the same flight with and without the bends of the right-hand side. A motor that comes to its
/// current limit bends it sharply; the rotor table, straight between its nodes, bends it a little at every node that a rotor
/// passes. A step over a bend is wrong by the square of the step, whatever the order of the method.
/// </summary>
internal static class Bends
{
    /// <summary>Speed whose coefficients stand for all, rad/s, and a current that no motor reaches, A.</summary>
    private const double Speed = 1300, NoLimit = 1e4;

    private static readonly int[] Rates = [1000, 2000, 4000, 8000, 16000];

    /// <summary>Appends a table.</summary>
    public static void Write(StringBuilder text, RotorTable table)
    {
        text.AppendLine();
        text.AppendLine("## Order with and without bends");
        text.AppendLine();
        text.AppendLine("Attitude error in deg of the hard second, one craft, against Runge-Kutta at the reference's step, and the order from one step to the next. What bends the right-hand side is left out in turn.");
        text.AppendLine();
        text.AppendLine("| craft | integrator | " + string.Join(" | ", Rates.Select(rate => $"1/{rate} s")) + " |");
        text.AppendLine("| --- | --- |" + string.Concat(Rates.Select(_ => " --- |")));
        Rows("as it is", table, null);
        Rows("motors without current limits", table, WithoutLimits);
        Rows("one value for each rotor coefficient", Uniform(table), null);
        Rows("both", Uniform(table), WithoutLimits);

        void Rows(string name, RotorTable rotor, Func<Craft, Craft>? change)
        {
            HeldManoeuvre second = HeldManoeuvre.HardSecond;
            using HeldFlight<Lane1> flight = new(second, rotor, change);
            CraftState[] truth = Path(Integrator.RungeKutta, Reference.StepRate);
            foreach (Integrator integrator in Enum.GetValues<Integrator>())
            {
                text.Append(CultureInfo.InvariantCulture, $"| {name} | {(integrator == Integrator.Midpoint ? "midpoint" : "Runge-Kutta")} |");
                double before = double.NaN;
                foreach (int rate in Rates)
                {
                    double error = FlightError.Between(Path(integrator, rate), truth).Attitude, order = Math.Log2(before / error);
                    text.Append(CultureInfo.InvariantCulture, $" {error:g2}{(double.IsFinite(order) ? $" (order {order.ToString("f1", CultureInfo.InvariantCulture)})" : "")} |");
                    before = error;
                }
                text.AppendLine();
            }

            CraftState[] Path(Integrator integrator, int rate)
            {
                CraftState[] path = new CraftState[second.HoldsPerSecond];
                flight.Fly(integrator, rate / second.HoldsPerSecond, path);
                return path;
            }
        }
    }

    private static Craft WithoutLimits(Craft craft) => craft with
    {
        Rotors = [.. craft.Rotors.Select(rotor => rotor with { CurrentLimit = NoLimit, BrakeCurrentLimit = NoLimit })],
    };

    /// <summary>A rotor whose coefficients are everywhere those of a slow climb.</summary>
    private static RotorTable Uniform(RotorTable table)
    {
        RotorCoefficients c = table.At(Speed, Specimen.Craft(0, table).Rotors[0].Radius, axial: 2, inPlane: 3);
        double[] one = [c.Thrust, c.Torque, c.InPlane, c.Pitch];
        return new([.. Enumerable.Range(0, RotorTable.NodeCount).Select(n => one[n % one.Length])]);
    }
}
