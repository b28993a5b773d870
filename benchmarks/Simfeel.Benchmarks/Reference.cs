using System.Globalization;
using Simfeel.Physics;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Rotors;

namespace Simfeel.Benchmarks;

/// <summary>
/// The truth about a <see cref="HeldManoeuvre"/>: our Runge-Kutta at a step far below all that is judged, held against DOP853 of
/// SciPy at its tightest on the model written a second time in Python, and against our own at twice the step.
/// </summary>
internal sealed class Reference : IDisposable
{
    /// <summary>Steps a second.</summary>
    public const int StepRate = 256_000;

    /// <summary>Relative and absolute tolerance of the other reference.</summary>
    private const double Tightest = 1e-12;

    /// <summary>How far the two models may differ in a derivative, relative, and the two references in attitude, deg.</summary>
    private const double MostOfDerivative = 1e-9, MostAngle = 1e-4;

    private readonly CraftState[] _path;
    private readonly string _folder = Path.Combine(TwinBuild.RepositoryRoot(), "artifacts", "scipy");

    /// <summary>Flies it, and asks SciPy where there is one.</summary>
    /// <param name="table">The specimens' table.</param>
    /// <param name="manoeuvre">The manoeuvre.</param>
    /// <exception cref="InvalidOperationException">The two disagree.</exception>
    public Reference(RotorTable table, HeldManoeuvre manoeuvre)
    {
        using HeldFlight<Lane1> flight = new(manoeuvre, table);
        _path = Fly(StepRate);
        FlightError half = Of(Fly(StepRate / 2));
        Agreement = $"Reference of {manoeuvre.Name}: our Runge-Kutta at {StepRate} steps a second; at half of that it lies {Words(half)} away.";
        ModelExport.Write(_folder, table, [manoeuvre]);
        Scipy = ScipyProcess.Start(_folder);
        if (Scipy is null) return;
        (int states, double worst, int where, double residue) = Scipy.Check();
        FlightError theirs = Of(Scipy.Fly(new(manoeuvre.Name, "DOP853", Tightest, Tightest), withPath: true).Path);
        if (!(worst <= MostOfDerivative && theirs.Attitude <= MostAngle))
        {
            Scipy.Dispose();
            throw new InvalidOperationException(FormattableString.Invariant(
                $"The kernel and benchmarks/scipy/model.py differ: derivatives by {worst:g2} from state {where} on, flights by {theirs.Attitude:g2} deg."));
        }
        Agreement += string.Create(CultureInfo.InvariantCulture,
            $" DOP853 of SciPy at {Tightest:g1} on the model in benchmarks/scipy/model.py lies {Words(theirs)} away from it. Derivatives of both models at {states} random states agree to {worst:g2} of each vector (worst from state {where} on); the pack's power balance in Python closes to {residue:g2}.");

        CraftState[] Fly(int rate)
        {
            CraftState[] path = new CraftState[manoeuvre.HoldsPerSecond];
            flight.Fly(Integrator.RungeKutta, rate / manoeuvre.HoldsPerSecond, path);
            return path;
        }
    }

    /// <summary>SciPy, where it could be started.</summary>
    public ScipyProcess? Scipy { get; }

    /// <summary>How well the references agree, in a sentence or two.</summary>
    public string Agreement { get; }

    /// <summary>How far a path lies from the reference.</summary>
    public FlightError Of(ReadOnlySpan<CraftState> path) => FlightError.Between(path, _path);

    /// <inheritdoc/>
    public void Dispose() => Scipy?.Dispose();

    private static string Words(FlightError error) =>
        string.Create(CultureInfo.InvariantCulture, $"{error.Attitude:g2} deg, {error.Position:g2} mm and {error.RotorSpeed:g2} rad/s");
}
