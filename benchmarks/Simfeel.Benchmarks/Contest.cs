using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Rotors;

namespace Simfeel.Benchmarks;

/// <summary>All that is timed, set up and checked once.</summary>
internal sealed class Contest : IDisposable
{
    private readonly IFlight[] _flights;

    /// <summary>Builds the twin, packs the flights, and compares every twin with its C# kernel.</summary>
    public Contest()
    {
        Twin = TwinBuild.Load();
        RotorTable table = Specimen.Table();
        _flights = [new Flight<Lane1>(table, Twin), new Flight<Lane4>(table, Twin), new Flight<Lane8>(table, Twin), new Flight<LaneF16>(table, Twin)];
        foreach (IFlight flight in _flights)
        {
            string name = flight.Width switch { 1 => "Lane1", 4 => "Lane4", 8 => "Lane8", _ => "LaneF16" };
            Entrants.Add(new Entrant($"C# {name}", flight, Native: false));
            Entrants.Add(new Entrant($"C# {name}, guarded", flight, Native: false, Guarded: true));
            Controlled.Add(new Entrant($"C# {name} with controller", flight, Native: false));
            Entrants.Add(new Entrant($"C# {name}, rotors by polynomials", flight, Native: false, Fitted: true));
            Controlled.Add(new Entrant($"C# {name} with controller, rotors by polynomials", flight, Native: false, Fitted: true));
            Following.Add($"{name} {flight.CheckControlled()}");
            if (!flight.HasTwin) continue;
            string native = flight.Width switch { 1 => "C++ scalar", 4 => "C++ AVX2 double", 8 => "C++ AVX-512 double", _ => "C++ AVX-512 float" };
            Entrants.Add(new Entrant(native, flight, Native: true));
            foreach (Integrator integrator in Enum.GetValues<Integrator>())
                Agreement.Add($"{name}, {integrator}: {flight.Compare(integrator)}");
        }
    }

    /// <summary>The twin, where it could be built.</summary>
    public Twin? Twin { get; }

    /// <summary>Kernels in the order of the tables.</summary>
    public List<Entrant> Entrants { get; } = [];

    /// <summary>The C# kernels with the rate controller at every step; there is no twin of it.</summary>
    public List<Entrant> Controlled { get; } = [];

    /// <summary>How far each of them was off its sticks at the end.</summary>
    public List<string> Following { get; } = [];

    /// <summary>How closely each twin followed.</summary>
    public List<string> Agreement { get; } = [];

    /// <summary>Drops the entrants whose name does not contain a text.</summary>
    public void Keep(string text)
    {
        foreach (List<Entrant> entrants in (List<Entrant>[])[Entrants, Controlled])
            entrants.RemoveAll(e => !e.Name.Contains(text, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>The entrant of a width.</summary>
    public Entrant? Find(int width, bool native) => Entrants.Find(e => e.Flight.Width == width && e.Native == native && !e.Fitted && !e.Guarded);

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (IFlight flight in _flights) flight.Dispose();
        Twin?.Dispose();
    }
}

/// <summary>One kernel at one width.</summary>
/// <param name="Name">As printed.</param>
/// <param name="Flight">What it flies.</param>
/// <param name="Native">True for C++.</param>
/// <param name="Fitted">True with polynomials for the rotors; with the midpoint rule only.</param>
/// <param name="Guarded">True with a look after every step whether the invariants hold, as in every flight; the twin has none.</param>
internal sealed record Entrant(string Name, IFlight Flight, bool Native, bool Fitted = false, bool Guarded = false)
{
    /// <summary>Flies the manoeuvre once.</summary>
    public void Fly(Integrator integrator)
    {
        (Flight.Fitted, Flight.Guarded) = (Fitted, Guarded);
        if (Native) Flight.FlyTwin(integrator);
        else Flight.Fly(integrator);
    }

    /// <summary>Flies the manoeuvre's sticks through the rate controller once.</summary>
    public void FlyControlled()
    {
        Flight.Fitted = Fitted;
        Flight.FlyControlled();
    }
}
