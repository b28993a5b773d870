using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Guards;

/// <summary>Flies the step of a <see cref="StepRecord"/> again.</summary>
internal static unsafe class StepReplay
{
    /// <summary>With tables that hold the record's cells and else nothing but what is not a number.</summary>
    public static (KernelStage Stage, Invariant Broken) Fly(StepRecord record)
    {
        int bytes = record.IsSingle ? sizeof(float) : sizeof(double);
        ulong[] tables = new ulong[record.RotorCount];
        try
        {
            for (int k = 0; k < tables.Length; k++)
            {
                byte* table = LaneMemory.Allocate<byte>(RotorTable.PackedCount * bytes);
                tables[k] = (ulong)table;
                if (record.IsSingle) new Span<float>(table, RotorTable.PackedCount).Fill(float.NaN);
                else new Span<double>(table, RotorTable.PackedCount).Fill(double.NaN);
            }
            foreach ((int rotor, ulong offset, double[] terms) in record.Cells)
            {
                byte* cell = (byte*)tables[rotor] + offset;
                for (int n = 0; n < terms.Length; n++)
                {
                    if (record.IsSingle) ((float*)cell)[n] = (float)terms[n];
                    else ((double*)cell)[n] = terms[n];
                }
            }
            return Fly(record, tables);
        }
        finally
        {
            foreach (ulong table in tables) LaneMemory.Free((void*)table);
        }
    }

    /// <summary>With tables in memory, whose cells it adds to the record.</summary>
    public static (KernelStage Stage, Invariant Broken) Fly(StepRecord record, ulong[] tables)
    {
        if (record.IsSingle)
        {
            using StepReplay<LaneF16> replay = new(record, tables);
            return replay.Find();
        }
        using StepReplay<Lane1> alone = new(record, tables);
        return alone.Find();
    }
}

/// <summary>One step, flown stage by stage with the same craft in every lane.</summary>
internal sealed unsafe class StepReplay<T> : IDisposable
    where T : unmanaged, ILane<T>
{
    private readonly StepRecord _record;
    private readonly ulong[] _tables;
    private readonly int _rotors;
    private readonly int _used;
    private readonly CraftLanes<T>* _constants = LaneMemory.Allocate<CraftLanes<T>>();
    private readonly FieldLanes<T>* _field = LaneMemory.Allocate<FieldLanes<T>>();
    private readonly GuardLanes<T>* _guard = LaneMemory.Allocate<GuardLanes<T>>();
    private readonly LoadLanes<T>* _load = LaneMemory.Allocate<LoadLanes<T>>();
    private readonly RotorFitLanes<T>* _fits = LaneMemory.Allocate<RotorFitLanes<T>>(Craft.MaxRotors);
    private readonly T* _command = LaneMemory.Allocate<T>(Craft.MaxRotors);
    private readonly T* _x = LaneMemory.Allocate<T>(StateIndex.Stride);
    private readonly T* _dx = LaneMemory.Allocate<T>(StateIndex.Stride);
    private readonly T* _next = LaneMemory.Allocate<T>(StateIndex.Stride);
    private readonly T* _dnext = LaneMemory.Allocate<T>(StateIndex.Stride);
    private readonly T* _scratch = LaneMemory.Allocate<T>(3 * StateIndex.Stride);
    private KernelStage _first;
    private StepWork _work;

    public StepReplay(StepRecord record, ulong[] tables)
    {
        (_record, _tables, _rotors) = (record, tables, record.RotorCount);
        _used = StateIndex.Used(_rotors, record.DynamicInflow);
        StepMemory<T> memory = new()
        {
            Constants = _constants,
            Field = _field,
            Guard = _guard,
            State = _x,
            Derivative = _dx,
            Commands = _command,
            Fits = _fits,
        };
        memory.Write(_rotors, record.Numbers);
        _constants->RotorCount = _rotors;
        _constants->DynamicInflow = record.DynamicInflow ? 1 : 0;
        for (int k = 0; k < _rotors; k++)
        {
            for (int lane = 0; lane < T.Width; lane++) ((RotorLanes<T>*)&_constants->Rotors)[k].Table.Address[lane] = tables[k];
        }
    }

    /// <summary>What the step breaks, and the first stage whose outcome did; the energy where it breaks nothing.</summary>
    public (KernelStage Stage, Invariant Broken) Find()
    {
        // leaves the energy at the beginning
        _guard->Energy = T.Of(double.PositiveInfinity);
        _ = Kernel<T>.IsSound(_x, _constants, _field, _guard, _record.Step);
        bool field = Finite((T*)_field, StepNumbers.Field.Count) && Finite((T*)&_field->ThrustFactor, _rotors);
        // in any case, since it keeps the cells
        Fly();
        if (!Finite(_x, _used)) return (KernelStage.Entry, Invariant.FiniteState);
        if (!IsUnit(_x)) return (KernelStage.Entry, Invariant.UnitAttitude);
        if (!Finite(_command, _rotors)) return (KernelStage.Commands, Invariant.FiniteState);
        if (!field) return (KernelStage.Field, Invariant.FiniteState);
        if (!Finite(_next, _used)) return (_first == KernelStage.None ? KernelStage.Advance : _first, Invariant.FiniteState);
        if (!IsUnit(_next)) return (KernelStage.Advance, Invariant.UnitAttitude);
        bool sound = Kernel<T>.IsSound(_next, _constants, _field, _guard, _record.Step);
        return (sound ? KernelStage.None : _work.Culprit(_record), Invariant.PlausibleEnergy);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        LaneMemory.Free(_constants);
        LaneMemory.Free(_field);
        LaneMemory.Free(_guard);
        LaneMemory.Free(_load);
        LaneMemory.Free(_fits);
        LaneMemory.Free(_command);
        LaneMemory.Free(_x);
        LaneMemory.Free(_dx);
        LaneMemory.Free(_next);
        LaneMemory.Free(_dnext);
        LaneMemory.Free(_scratch);
    }

    private void Fly()
    {
        if (_record.Integrator == Integrator.RungeKutta)
        {
            Kernel<T>.RungeKuttaStepwise(_x, _next, _command, _constants, _field, _load, _scratch, _record.Step, Look);
            return;
        }
        if (!_record.Primed)
        {
            _dx[StateIndex.Charge] = T.Of(0);
            Kernel<T>.DerivativeStepwise(_x, _command, _constants, _field, _load, _dx, Look);
        }
        if (_record.FitAhead > 0)
        {
            Kernel<T>.FitRotors(_x, _dx, _record.FitAhead, _constants, _field, _load, _scratch, _fits);
            KeepCells();
        }
        if (_record.Fitted)
        {
            _constants->Fits = _fits;
            if (!Finite((T*)_fits, _rotors * StepNumbers.Fit.Count)) Note(KernelStage.FitRotors);
        }
        Kernel<T>.MidpointStepwise(_x, _dx, _next, _dnext, _command, _constants, _field, _load, _scratch, _record.Step, Look);
    }

    private void Look(KernelStage stage)
    {
        if (stage == KernelStage.RotorFlow) KeepCells();
        if (stage == KernelStage.BodyAir) _work.Body = Loads();
        if (stage == KernelStage.Accelerations) Weigh();
        bool sound = stage == KernelStage.Predict
            ? Finite(_record.Integrator == Integrator.Midpoint ? _scratch : _scratch + StateIndex.Stride, _used)
            : AreLoadsFinite() && Finite(_dx, _used) && Finite(_dnext, _used) && (_record.Integrator == Integrator.Midpoint || Finite(_scratch, _used));
        if (!sound) Note(stage);
    }

    private void Note(KernelStage stage)
    {
        if (_first == KernelStage.None) _first = stage;
    }

    /// <summary>What the stages' loads do to the craft at the state at which they were worked out.</summary>
    private void Weigh()
    {
        T* x = _record.Integrator == Integrator.Midpoint ? _scratch : _x;
        _work.All = Loads();
        _work.AirVelocity = new(Of(&_load->AirX), Of(&_load->AirY), Of(&_load->AirZ));
        _work.Rate = new(Of(x + StateIndex.Rate), Of(x + StateIndex.Rate + 1), Of(x + StateIndex.Rate + 2));
        _work.Mass = Of(&_guard->Mass);
        _work.MostPower = Of(&_guard->MostPower);
        RotorLoad<T>* loads = (RotorLoad<T>*)&_load->Rotors;
        RotorLanes<T>* rotors = (RotorLanes<T>*)&_constants->Rotors;
        _work.Clear();
        for (int k = 0; k < _rotors; k++)
        {
            _work.AddRotor(
                Of(x + StateIndex.RotorSpeed + k), Of(&rotors[k].InverseSpinInertia), Of(&loads[k].MotorTorque), Of(&loads[k].AirTorque),
                Of(&rotors[k].Spin), _record.Step);
        }
    }

    private StepLoads Loads() => new(
        new(Of(&_load->ForceX), Of(&_load->ForceY), Of(&_load->ForceZ)), new(Of(&_load->MomentX), Of(&_load->MomentY), Of(&_load->MomentZ)));

    private bool AreLoadsFinite()
    {
        RotorLoad<T>* rotors = (RotorLoad<T>*)&_load->Rotors;
        bool finite = Finite((T*)_load, (int)((T*)rotors - (T*)_load));
        for (int k = 0; k < _rotors; k++)
        {
            RotorLoad<T>* rotor = rotors + k;
            // addresses stand between them, which are no numbers
            finite &= Finite((T*)rotor, (int)((T*)&rotor->Cell - (T*)rotor)) && Finite(&rotor->Cell.X, 3) && Finite(&rotor->Thrust, 2);
        }
        return finite;
    }

    private void KeepCells()
    {
        for (int k = 0; k < _rotors; k++)
        {
            ulong address = ((RotorLoad<T>*)&_load->Rotors)[k].Cell.Cell.Address[0], offset = address - _tables[k];
            if (_record.Cells.Exists(cell => cell.Rotor == k && cell.Offset == offset)) continue;
            double[] terms = new double[RotorTable.CellSize];
            for (int n = 0; n < terms.Length; n++) terms[n] = T.IsSingle ? ((float*)address)[n] : ((double*)address)[n];
            _record.Cells.Add((k, offset, terms));
        }
    }

    private static bool Finite(T* first, int count)
    {
        bool finite = true;
        for (int n = 0; n < count; n++) finite &= double.IsFinite(Of(first + n));
        return finite;
    }

    private static bool IsUnit(T* x)
    {
        double sum = 0;
        for (int n = 0; n < 4; n++) sum += Of(x + StateIndex.Attitude + n) * Of(x + StateIndex.Attitude + n);
        return Math.Abs(sum - 1) < Guard.AttitudeTolerance;
    }

    private static double Of(T* number) => LaneMemory.Get(number, 0);
}
