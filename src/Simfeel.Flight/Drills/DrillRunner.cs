using Simfeel.Physics.Guards;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;

namespace Simfeel.Flight.Drills;

/// <summary>Flies drills.</summary>
public static class DrillRunner
{
    /// <summary>Least and largest stick effort.</summary>
    public const double LeastEffort = 0.25, LargestEffort = 1;

    /// <summary>Flies a drill with one craft.</summary>
    /// <param name="drill">The drill.</param>
    /// <param name="unit">The craft and its gains.</param>
    /// <param name="profile">The pilot, the same for every craft that is compared.</param>
    /// <param name="effort">Share of full stick, 0.25 to 1.</param>
    /// <param name="field">The field; all effects, seed 1, high above the ground if null.</param>
    /// <param name="rotorHold">Time for which polynomials stand for the rotors, s; 0 where the tables are flown.</param>
    /// <exception cref="ArgumentOutOfRangeException">The effort is out of range, or the hold negative.</exception>
    public static FlightLog Fly(
        Drill drill, TunedUnit unit, PilotProfile profile, double effort = 1, FieldConditions? field = null, double rotorHold = 0) =>
        FlyLanes<Lane1>(drill, [unit], profile, effort, field, rotorHold: rotorHold)[0];

    /// <summary>Flies a drill with as many craft as the lane type is wide, or fewer; all with the same number of rotors.</summary>
    /// <param name="drill">The drill.</param>
    /// <param name="units">The craft and their gains.</param>
    /// <param name="profile">The pilot.</param>
    /// <param name="effort">Share of full stick, 0.25 to 1.</param>
    /// <param name="field">The field; all effects, seed 1, high above the ground if null.</param>
    /// <param name="buffers">Where the logs go; memory of their own if null.</param>
    /// <param name="rotorHold">
    /// Time for which polynomials stand for the rotors, s (<see cref="RotorModel"/>); 0 where the tables are
    /// flown.
    /// </param>
    /// <param name="loadsFrom">
    /// Time from which a row of the log holds loads and accelerations, s; before it, state and duties only, for whoever reads no more.
    /// </param>
    public static FlightLog[] FlyLanes<T>(
        Drill drill,
        IReadOnlyList<TunedUnit> units,
        PilotProfile profile,
        double effort = 1,
        FieldConditions? field = null,
        LogBuffers? buffers = null,
        double rotorHold = 0,
        double loadsFrom = 0)
        where T : unmanaged, ILane<T>
    {
        ArgumentNullException.ThrowIfNull(drill);
        ArgumentNullException.ThrowIfNull(units);
        ArgumentNullException.ThrowIfNull(profile);
        if (!(effort >= LeastEffort && effort <= LargestEffort))
            throw new ArgumentOutOfRangeException(nameof(effort), effort, $"Stick effort is {LeastEffort} to {LargestEffort}.");
        if (units.Count < 1 || units.Count > T.Width)
            throw new ArgumentException($"Give 1 to {T.Width} craft, not {units.Count}.", nameof(units));

        field ??= new FieldConditions();
        buffers ??= new LogBuffers();
        using FlightLoop<T> loop = new(units[0].Unit.Craft.Rotors.Count, profile, field);
        if (rotorHold != 0)
            loop.Batch.SetRotorModel(RotorModel.Polynomials, (int)Math.Round(rotorHold * profile.StepRate));
        int rows = (int)Math.Round(drill.Duration / profile.StickPeriod) + 1;
        int firstLoads = (int)Math.Min(rows, Math.Round(loadsFrom / profile.StickPeriod)), rotors = loop.Batch.RotorCount;
        int craft = units.Count, stateNumbers = RowIndex.States(rotors) * craft, loadNumbers = RowIndex.Loads(rotors) * craft;
        double[] states = buffers.States((long)rows * stateNumbers), loads = buffers.Loads((long)(rows - firstLoads) * loadNumbers);
        LanePilot[] pilots = new LanePilot[units.Count];
        for (int lane = 0; lane < units.Count; lane++)
        {
            DrillStart start = drill.Start(units[lane], effort, field.Effects);
            loop.SetUnit(lane, units[lane], start);
            if (drill.MotorsOff) loop.SetMotors(lane, false);
            LogRows log = new(states, loads, (lane, craft), rotors, (rows, firstLoads));
            pilots[lane] = new LanePilot(drill, new(units[lane], profile, effort, start), log, buffers.Sticks(lane, rows));
        }
        // the pilots see a copy that stays in the cache, since the log's memory is far away
        double[] stateNow = new double[CraftBatch<T>.RoomFor(RowIndex.States(rotors), craft)];
        double[] loadNow = new double[CraftBatch<T>.RoomFor(RowIndex.Loads(rotors), craft)];
        LogRow[] now = [.. pilots.Select((_, lane) => new LogRows(stateNow, loadNow, (lane, craft), rotors, (1, 0))[0])];
        for (int row = 0; row < rows; row++)
        {
            loop.Batch.RecordStates(craft, stateNow);
            if (row >= firstLoads || drill.FeelsLoads)
            {
                loop.Batch.Evaluate();
                loop.Batch.RecordLoads(craft, loadNow);
            }
            double time = loop.Time;
            for (int lane = 0; lane < pilots.Length; lane++)
            {
                LanePilot pilot = pilots[lane];
                if (pilot.Read(row, time, now[lane])) loop.SetCommand(lane, new(pilot.RollRate, pilot.PitchRate, pilot.YawRate), pilot.Collective);
            }
            stateNow.AsSpan(0, stateNumbers).CopyTo(states.AsSpan(row * stateNumbers));
            if (row >= firstLoads) loadNow.AsSpan(0, loadNumbers).CopyTo(loads.AsSpan((row - firstLoads) * loadNumbers));
            if (row == rows - 1) break;
            Tick(loop, profile, drill);
        }
        return [.. pilots.Select((pilot, lane) => pilot.ToLog(drill.Name, effort, field, loop.Contact(lane)?.HasTouched ?? false))];
    }

    private static void Tick<T>(FlightLoop<T> loop, PilotProfile profile, Drill drill)
        where T : unmanaged, ILane<T>
    {
        try
        {
            for (int step = 0; step < profile.StepsPerStickReading; step++) loop.Tick();
        }
        catch (FlightFaultException fault)
        {
            fault.During = $"drill {drill.Name}";
            throw;
        }
    }

    /// <summary>One lane's script, thumbs, radio and log.</summary>
    private sealed class LanePilot
    {
        private readonly TunedUnit _unit;
        private readonly PilotProfile _profile;
        private readonly Func<PilotView, Sticks> _script;
        private readonly ThrottleCurve _throttle;
        private readonly LogRows _rows;
        private readonly ArraySegment<Sticks> _sticks;
        private readonly int _radioRows;
        private readonly double _most;
        private readonly PilotView _view;

        /// <summary>What the craft heard last; nothing yet.</summary>
        private Sticks _heard = new(double.NaN, double.NaN, double.NaN, double.NaN);

        public LanePilot(Drill drill, in ScriptStart start, LogRows rows, ArraySegment<Sticks> sticks)
        {
            _unit = start.Unit;
            _profile = start.Profile;
            _throttle = _unit.Throttle;
            _script = drill.NewScript(start);
            _view = new(_profile.StickPeriod);
            (_rows, _sticks) = (rows, sticks);
            _most = _profile.StickPeriod / _profile.ThumbTime;
            _radioRows = (int)Math.Round(_profile.RadioDelay / _profile.StickPeriod);
        }

        /// <summary>What the heard sticks ask of the craft: rates, rad/s, and collective share of full thrust.</summary>
        public double RollRate { get; private set; }

        public double PitchRate { get; private set; }

        public double YawRate { get; private set; }

        public double Collective { get; private set; }

        /// <summary>Moves the sticks by what the craft does; true where the craft hears something new.</summary>
        public bool Read(int row, double time, LogRow now)
        {
            _view.Move(time, now);
            Sticks wanted = _script(_view);
            Span<Sticks> sticks = _sticks;
            if (row == 0) sticks[row] = wanted;
            else Thumbs(sticks[row - 1], wanted, _most, out sticks[row]);
            ref readonly Sticks heard = ref sticks[Math.Max(0, row - _radioRows)];
            // sticks rest for most of a drill, and most move alone
            bool roll = heard.Roll != _heard.Roll, pitch = heard.Pitch != _heard.Pitch, yaw = heard.Yaw != _heard.Yaw;
            bool throttle = heard.Throttle != _heard.Throttle;
            if (roll) RollRate = _profile.RollPitch.Rate(heard.Roll);
            if (pitch) PitchRate = _profile.RollPitch.Rate(heard.Pitch);
            if (yaw) YawRate = _profile.Yaw.Rate(heard.Yaw);
            if (throttle) Collective = _throttle.Share(heard.Throttle);
            _heard = heard;
            return roll || pitch || yaw || throttle;
        }

        public FlightLog ToLog(string drill, double effort, FieldConditions field, bool touchesGround) => new()
        {
            Drill = drill,
            Unit = _unit,
            Profile = _profile,
            Field = field,
            Effort = effort,
            Samples = _rows,
            Sticks = _sticks,
            TouchesGround = touchesGround,
        };

        /// <summary>Where thumbs that move a stick by some deflection at most get from one row to the next.</summary>
        private static void Thumbs(in Sticks now, in Sticks wanted, double most, out Sticks next)
        {
            next = new(
                Toward(now.Roll, wanted.Roll, most),
                Toward(now.Pitch, wanted.Pitch, most),
                Toward(now.Yaw, wanted.Yaw, most),
                Toward(now.Throttle, wanted.Throttle, most / 2));

            static double Toward(double from, double to, double most) => from + Math.Clamp(to - from, -most, most);
        }
    }
}
