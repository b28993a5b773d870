using Simfeel.Physics.Guards;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Kernel;

/// <content>What is said of a step that broke an invariant.</content>
public sealed unsafe partial class CraftBatch<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>
    /// The step that has just been flown, whose beginning still stands in <c>_state</c>: flown again by the first craft that it
    /// broke, alone, to find the stage.
    /// </summary>
    private FlightFaultException Fault(Integrator integrator, double step, bool primed, bool fits)
    {
        int lane = 0;
        while (lane < T.Width - 1 && LaneMemory.Get(&_guard->Broken, lane) == 0) lane++;
        StepMemory<T> memory = new()
        {
            Constants = _constants,
            Field = _field,
            Guard = _guard,
            State = _state,
            // what the first step works out for itself is part of it
            Derivative = primed ? _derivative : _scratch,
            Commands = _command,
            Fits = _fits,
        };
        if (!primed) LaneMemory.Clear(_scratch, StateIndex.Stride);
        StepRecord record = new()
        {
            Craft = _names[lane] ?? "",
            Lane = lane,
            Number = Steps,
            Step = step,
            Integrator = integrator,
            RotorCount = RotorCount,
            IsSingle = T.IsSingle,
            DynamicInflow = _constants->DynamicInflow != 0,
            Primed = primed,
            Fitted = _hold > 0 && integrator == Integrator.Midpoint,
            FitAhead = fits ? FitAhead(step) : 0,
            Numbers = memory.Read(RotorCount, lane),
        };
        ulong[] tables = new ulong[RotorCount];
        for (int k = 0; k < RotorCount; k++) tables[k] = ((RotorLanes<T>*)&_constants->Rotors)[k].Table.Address[lane];
        (record.Stage, record.Broken) = StepReplay.Fly(record, tables);
        _primed = _weighed = false;
        return new(record);
    }
}
