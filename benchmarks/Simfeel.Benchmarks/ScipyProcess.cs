using System.ComponentModel;
using System.Diagnostics;
using System.Text.Json;
using System.Text.Json.Nodes;
using Simfeel.Physics;

namespace Simfeel.Benchmarks;

/// <summary>benchmarks/scipy/fly.py in a process of its own, which waits for requests and works on one at a time.</summary>
internal sealed class ScipyProcess : IDisposable
{
    /// <summary>Variable that names another Python than the system's, which Debian's python3-scipy belongs to.</summary>
    private const string Variable = "SIMFEEL_PYTHON", Usual = "/usr/bin/python3";

    private readonly Process _process;

    private ScipyProcess(Process process, string versions) => (_process, Versions) = (process, versions);

    /// <summary>Versions of Python and its packages.</summary>
    public string Versions { get; }

    /// <summary>Starts it on a folder of <see cref="ModelExport"/>; null with a message on standard error where that cannot be done.</summary>
    public static ScipyProcess? Start(string folder)
    {
        string python = Environment.GetEnvironmentVariable(Variable) ?? Usual;
        string script = Path.Combine(TwinBuild.RepositoryRoot(), "benchmarks", "scipy", "fly.py");
        ProcessStartInfo start = new(python, [script, folder]) { RedirectStandardInput = true, RedirectStandardOutput = true };
        // one core, as everything else here
        foreach (string library in new[] { "OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS" }) start.Environment[library] = "1";
        start.Environment["PYTHONDONTWRITEBYTECODE"] = "1";
        try
        {
            Process process = Process.Start(start)!;
            if (process.StandardOutput.ReadLine() is string line && JsonNode.Parse(line) is JsonNode told)
                return new(process, $"Python {told["python"]}, NumPy {told["numpy"]}, SciPy {told["scipy"]}");
            process.Dispose();
            Console.Error.WriteLine($"No SciPy rows: {python} ended, see above. Install NumPy and SciPy (Debian: apt-get install python3-scipy).");
        }
        catch (Win32Exception)
        {
            Console.Error.WriteLine($"No SciPy rows: {python} was not found. Install it with SciPy (Debian: apt-get install python3-scipy), or name another in {Variable}.");
        }
        return null;
    }

    /// <summary>Derivatives of the Python model against the kernel's: states, worst relative error, where, and its power balance.</summary>
    public (int States, double Worst, int Where, double PowerResidue) Check()
    {
        JsonNode answer = Ask(new() { ["do"] = "check" });
        return ((int)answer["states"]!, (double)answer["worst"]!, (int)answer["where"]!, (double)answer["power_residue"]!);
    }

    /// <summary>Flies.</summary>
    public ScipyFlight Fly(ScipyWish wish, bool withPath)
    {
        JsonNode answer = Ask(new()
        {
            ["do"] = "fly",
            ["manoeuvre"] = wish.Manoeuvre,
            ["method"] = wish.Method,
            ["rtol"] = wish.Tolerance,
            ["atol"] = wish.AbsoluteTolerance,
            ["holds"] = wish.Holds,
            ["pieces"] = wish.Pieces,
            ["max_step"] = wish.LongestStep,
            ["path"] = withPath,
        });
        CraftState[] path = [.. answer["path"]!.AsArray().Select(row => FlightError.StateOf([.. row!.AsArray().Select(number => (double)number!)]))];
        return new((double)answer["seconds"]! / (double)answer["flown"]!, (int)answer["evaluations"]! / (double)answer["flown"]!, path);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _process.StandardInput.Close();
        _process.WaitForExit();
        _process.Dispose();
    }

    private JsonNode Ask(JsonObject request)
    {
        _process.StandardInput.WriteLine(request.ToJsonString(JsonSerializerOptions.Default));
        string? answer = _process.StandardOutput.ReadLine();
        return answer is null
            ? throw new InvalidOperationException("The Python process ended; its message is above.")
            : JsonNode.Parse(answer)!;
    }
}

/// <summary>A flight wanted from SciPy's solve_ivp.</summary>
/// <param name="Manoeuvre">Name of a manoeuvre.</param>
/// <param name="Method">Its name in SciPy.</param>
/// <param name="Tolerance">Relative tolerance.</param>
/// <param name="AbsoluteTolerance">Absolute tolerance, the same for all states.</param>
/// <param name="Holds">Stretches to fly; 0 for all.</param>
/// <param name="Pieces">Calls of the solver in each stretch.</param>
/// <param name="LongestStep">Longest step, s; 0 for any.</param>
internal sealed record ScipyWish(
    string Manoeuvre, string Method, double Tolerance, double AbsoluteTolerance, int Holds = 0, int Pieces = 1, double LongestStep = 0);

/// <summary>What came of it, for each simulated second.</summary>
/// <param name="Seconds">Time taken, s.</param>
/// <param name="Evaluations">Derivatives evaluated.</param>
/// <param name="Path">State at the end of each stretch; empty where it was not wanted.</param>
internal sealed record ScipyFlight(double Seconds, double Evaluations, CraftState[] Path);
