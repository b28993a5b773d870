using MathNet.Numerics.LinearAlgebra;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Rotors;

namespace Simfeel.Benchmarks;

/// <summary>The kernel's derivative of one craft, lane 0 of the specimens, for integrators that are not ours.</summary>
internal sealed unsafe class ScalarModel : IDisposable
{
    /// <summary>Numbers of a state.</summary>
    public const int States = StateIndex.RotorSpeed + HeldManoeuvre.Rotors;

    private readonly RotorTable _table;
    private readonly CraftLanes<Lane1>* _craft = LaneMemory.Allocate<CraftLanes<Lane1>>();
    private readonly FieldLanes<Lane1>* _field = LaneMemory.Allocate<FieldLanes<Lane1>>();
    private readonly LoadLanes<Lane1>* _load = LaneMemory.Allocate<LoadLanes<Lane1>>();
    private readonly Lane1* _blocks = LaneMemory.Allocate<Lane1>((2 * StateIndex.Stride) + HeldManoeuvre.Rotors);

    /// <summary>Packs the craft.</summary>
    public ScalarModel(RotorTable table)
    {
        _table = table;
        _craft->RotorCount = HeldManoeuvre.Rotors;
        CraftPacking.Pack(_craft, 0, Specimen.Craft(0, table));
        _field->Density.v = HeldManoeuvre.Density;
        _field->Gravity.v = HeldManoeuvre.Gravity;
        _field->WindX.v = HeldManoeuvre.Wind(0).X;
        for (int k = 0; k < HeldManoeuvre.Rotors; k++) ((Lane1*)&_field->ThrustFactor)[k].v = 1;
    }

    /// <summary>Sets the duty of a rotor.</summary>
    public void SetDuty(int rotor, double duty) => Command[rotor].v = duty;

    /// <summary>Derivative of a state.</summary>
    public void Derivative(ReadOnlySpan<double> state, Span<double> derivative)
    {
        Lane1* x = _blocks, dx = _blocks + StateIndex.Stride;
        state[..States].CopyTo(new(x, States));
        Kernel<Lane1>.Derivative(x, Command, _craft, _field, _load, dx);
        new ReadOnlySpan<double>(dx, States).CopyTo(derivative);
    }

    /// <summary>The same between vectors of MathNet, a new one each time, as its solvers want it.</summary>
    public Vector<double> Derivative(double time, Vector<double> state)
    {
        double[] result = new double[States];
        Derivative(state.AsArray(), result);
        return Vector<double>.Build.Dense(result);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        LaneMemory.Free(_craft);
        LaneMemory.Free(_field);
        LaneMemory.Free(_load);
        LaneMemory.Free(_blocks);
        GC.KeepAlive(_table);
    }

    private Lane1* Command => _blocks + (2 * StateIndex.Stride);
}
