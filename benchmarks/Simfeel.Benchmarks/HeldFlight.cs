using Simfeel.Physics;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Rotors;

namespace Simfeel.Benchmarks;

/// <summary>A second of a <see cref="HeldManoeuvre"/> by one of our integrators, for any lane type.</summary>
internal interface IHeldFlight : IDisposable
{
    /// <summary>Craft side by side.</summary>
    int Width { get; }

    /// <summary>Flies the second.</summary>
    /// <param name="integrator">The integrator.</param>
    /// <param name="stepsPerHold">Steps in each stretch.</param>
    /// <param name="path">Receives lane 0 at the end of every stretch; nothing is read where null.</param>
    void Fly(Integrator integrator, int stepsPerHold, CraftState[]? path = null);
}

/// <inheritdoc cref="IHeldFlight"/>
internal sealed unsafe class HeldFlight<T> : IHeldFlight
    where T : unmanaged, ILane<T>
{
    private const int Rotors = HeldManoeuvre.Rotors;
    private readonly HeldManoeuvre _manoeuvre;
    private readonly CraftBatch<T> _batch = new(Rotors);
    private readonly T* _duties;

    /// <summary>Neighbours of the specimen, one in each lane.</summary>
    /// <param name="manoeuvre">What to fly.</param>
    /// <param name="table">The specimens' rotor.</param>
    /// <param name="change">What is different about them; nothing if null.</param>
    public HeldFlight(HeldManoeuvre manoeuvre, RotorTable table, Func<Craft, Craft>? change = null)
    {
        _manoeuvre = manoeuvre;
        _duties = LaneMemory.Allocate<T>(manoeuvre.HoldsPerSecond * Rotors);
        for (int lane = 0; lane < T.Width; lane++)
        {
            Craft craft = Specimen.Craft(lane, table);
            _batch.SetCraft(lane, change?.Invoke(craft) ?? craft);
            _batch.SetField(lane, HeldManoeuvre.Density, HeldManoeuvre.Gravity, HeldManoeuvre.Wind(lane));
            for (int n = 0; n < manoeuvre.HoldsPerSecond * Rotors; n++)
                LaneMemory.Set(_duties + n, lane, manoeuvre.Duty(n / Rotors, n % Rotors, lane));
        }
    }

    /// <inheritdoc/>
    public int Width => T.Width;

    /// <inheritdoc/>
    public void Fly(Integrator integrator, int stepsPerHold, CraftState[]? path = null)
    {
        double step = _manoeuvre.Hold / stepsPerHold;
        for (int lane = 0; lane < T.Width; lane++) _batch.SetState(lane, HeldManoeuvre.Start(lane));
        for (int hold = 0; hold < _manoeuvre.HoldsPerSecond; hold++)
        {
            for (int k = 0; k < Rotors; k++) _batch.Commands[k] = _duties[(hold * Rotors) + k];
            for (int n = 0; n < stepsPerHold; n++) _batch.Step(integrator, step);
            if (path is not null) path[hold] = _batch.GetState(0);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _batch.Dispose();
        LaneMemory.Free(_duties);
    }
}
