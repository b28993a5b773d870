using Simfeel.Physics;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;

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
    /// Not for a drill whose script reads them.
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
        LanePilot[] pilots = new LanePilot[units.Count];
        int rows = (int)Math.Round(drill.Duration / profile.StickPeriod) + 1;
        int firstLoads = (int)Math.Min(rows, Math.Round(loadsFrom / profile.StickPeriod));
        for (int lane = 0; lane < units.Count; lane++)
        {
            DrillStart start = drill.Start(units[lane], effort, field.Effects);
            loop.SetUnit(lane, units[lane], start);
            if (drill.MotorsOff) loop.SetMotors(lane, false);
            pilots[lane] = new LanePilot(drill, new(units[lane], profile, effort, start), buffers.Rows(lane, rows));
        }
        for (int row = 0; row < rows; row++)
        {
            if (row >= firstLoads) loop.Batch.Evaluate();
            for (int lane = 0; lane < pilots.Length; lane++)
            {
                ref Sample sample = ref pilots[lane].Row(row);
                if (row >= firstLoads) loop.Batch.GetSample(lane, out sample);
                else loop.Batch.GetStateAndDuty(lane, ref sample);
                (Vec3 rate, double collective) = pilots[lane].Read(row, loop.Time, sample);
                loop.SetCommand(lane, rate, collective);
            }
            if (row == rows - 1) break;
            for (int step = 0; step < profile.StepsPerStickReading; step++) loop.Tick();
        }
        return Array.ConvertAll(pilots, pilot => pilot.ToLog(drill.Name, effort, field));
    }

    /// <summary>One lane's script, thumbs, radio and log.</summary>
    private sealed class LanePilot
    {
        private readonly TunedUnit _unit;
        private readonly PilotProfile _profile;
        private readonly Func<PilotView, Sticks> _script;
        private readonly ThrottleCurve _throttle;
        private readonly ArraySegment<Sample> _samples;
        private readonly ArraySegment<Sticks> _sticks;
        private readonly int _radioRows;
        private Vec3 _turned, _rate;
        private Sticks _thumbs;

        public LanePilot(Drill drill, in ScriptStart start, (ArraySegment<Sample> Samples, ArraySegment<Sticks> Sticks) rows)
        {
            _unit = start.Unit;
            _profile = start.Profile;
            _throttle = _unit.Throttle;
            _script = drill.NewScript(start);
            (_samples, _sticks) = rows;
            _radioRows = (int)Math.Round(_profile.RadioDelay / _profile.StickPeriod);
        }

        /// <summary>Where the sample of a row goes.</summary>
        public ref Sample Row(int row) => ref _samples.Array![_samples.Offset + row];

        public (Vec3 Rate, double Collective) Read(int row, double time, in Sample sample)
        {
            Vec3 rate = sample.State.w_WB_B;
            if (row > 0) _turned += _profile.StickPeriod / 2 * (_rate + rate);
            _rate = rate;
            Sticks wanted = _script(new PilotView(time, sample, _turned));
            Span<Sticks> sticks = _sticks;
            _thumbs = row == 0 ? wanted : Thumbs(_thumbs, wanted);
            sticks[row] = _thumbs;
            Sticks heard = sticks[Math.Max(0, row - _radioRows)];
            return (_profile.RateFor(heard), _throttle.Share(heard.Throttle));
        }

        public FlightLog ToLog(string drill, double effort, FieldConditions field) => new()
        {
            Drill = drill,
            Unit = _unit,
            Profile = _profile,
            Field = field,
            Effort = effort,
            Samples = new(_samples),
            Sticks = _sticks,
        };

        private Sticks Thumbs(Sticks now, Sticks wanted)
        {
            double most = _profile.StickPeriod / _profile.ThumbTime;
            return new(
                Toward(now.Roll, wanted.Roll, most),
                Toward(now.Pitch, wanted.Pitch, most),
                Toward(now.Yaw, wanted.Yaw, most),
                Toward(now.Throttle, wanted.Throttle, most / 2));

            static double Toward(double from, double to, double most) => from + Math.Clamp(to - from, -most, most);
        }
    }
}
