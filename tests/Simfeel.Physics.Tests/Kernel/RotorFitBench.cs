using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>Flow at a rotor: its speed, rad/s, axial and in-plane speed of its hub through the air, m/s.</summary>
internal readonly record struct RotorFlowState(double Speed, double Axial, double InPlane)
{
    public static RotorFlowState operator +(RotorFlowState a, RotorFlowState b) => new(a.Speed + b.Speed, a.Axial + b.Axial, a.InPlane + b.InPlane);

    public static RotorFlowState operator -(RotorFlowState a, RotorFlowState b) => new(a.Speed - b.Speed, a.Axial - b.Axial, a.InPlane - b.InPlane);
}

/// <summary>One rotor at the centre of gravity of a craft, whose polynomials can be fitted at any state and read.</summary>
internal sealed unsafe class RotorFitBench : IDisposable
{
    private const double Density = 1.225;

    private readonly RotorTable _table;
    private readonly CraftLanes<Lane1>* _craft = LaneMemory.Allocate<CraftLanes<Lane1>>();
    private readonly FieldLanes<Lane1>* _field = LaneMemory.Allocate<FieldLanes<Lane1>>();
    private readonly LoadLanes<Lane1>* _load = LaneMemory.Allocate<LoadLanes<Lane1>>();
    private readonly Lane1* _state = LaneMemory.Allocate<Lane1>(4 * StateIndex.Stride);
    private readonly RotorFitLanes<Lane1>* _fit = LaneMemory.Allocate<RotorFitLanes<Lane1>>(Craft.MaxRotors);

    public RotorFitBench(RotorTable table, double radius)
    {
        (_table, Radius) = (table, radius);
        _craft->RotorCount = 1;
        CraftPacking.PackRotor((RotorLanes<Lane1>*)&_craft->Rotors, 0, TestCraft.SilentRotor(1, 1e-5) with { Table = table, Radius = radius });
        _field->Density = Lane1.Of(Density);
        _state[StateIndex.Attitude] = Lane1.Of(1);
    }

    public double Radius { get; }

    /// <summary>Makes the polynomials at a state.</summary>
    public void Fit(RotorFlowState at)
    {
        // level: axial speed is upwards
        _state[StateIndex.Velocity] = Lane1.Of(0.6 * at.InPlane);
        _state[StateIndex.Velocity + 1] = Lane1.Of(0.8 * at.InPlane);
        _state[StateIndex.Velocity + 2] = Lane1.Of(-at.Axial);
        _state[StateIndex.RotorSpeed] = Lane1.Of(at.Speed);
        Lane1* still = _state + StateIndex.Stride;
        Kernel<Lane1>.FitRotors(_state, still, 0, _craft, _field, _load, still + StateIndex.Stride, _fit);
    }

    /// <summary>Thrust, torque, drag and moment over in-plane speed by the polynomials.</summary>
    public double[] Fitted(RotorFlowState at)
    {
        return [Value(_fit->Thrust, at.Speed * at.Speed), Value(_fit->Torque, at.Speed * at.Speed), Value(_fit->Drag, at.Speed), Value(_fit->Pitch, at.Speed)];

        double Value(LoadFit<Lane1> fit, double speed) =>
            fit.Constant.v + (fit.Speed.v * speed) + (fit.Axial.v * at.Axial) + (fit.InPlane.v * at.InPlane * at.InPlane);
    }

    /// <summary>The same by the table, as <see cref="RotorCoefficients"/> defines them.</summary>
    public double[] Tabled(RotorFlowState at)
    {
        RotorCoefficients c = _table.At(at.Speed, Radius, at.Axial, at.InPlane);
        double tip = at.Speed * Radius, square = (tip * tip) + (at.Axial * at.Axial) + (at.InPlane * at.InPlane), flow = Math.Sqrt(square);
        double mass = Density * Math.PI * Radius * Radius;
        return [c.Thrust * mass * square, c.Torque * mass * Radius * square, c.InPlane * mass * flow, c.Pitch * mass * Radius * flow];
    }

    /// <summary>Hover's thrust and torque at a tip speed; that thrust, and that thrust at the tip, over the tip speed.</summary>
    public double[] Scale(double tip)
    {
        double[] hover = Tabled(new(tip / Radius, 0, 0));
        return [hover[0], hover[1], hover[0] / tip, hover[0] * Radius / tip];
    }

    /// <summary>The cell of the table that a state falls into.</summary>
    public (int Angle, int InPlane, int Speed) Cell(RotorFlowState at)
    {
        (double angle, double inPlane, double speed) = RotorTableGrid.IndicesOf(at.Speed, Radius, at.Axial, at.InPlane);
        return ((int)angle, (int)inPlane, (int)speed);
    }

    public void Dispose()
    {
        LaneMemory.Free(_craft);
        LaneMemory.Free(_field);
        LaneMemory.Free(_load);
        LaneMemory.Free(_state);
        LaneMemory.Free(_fit);
    }
}
