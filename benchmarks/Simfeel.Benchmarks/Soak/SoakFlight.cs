using Simfeel.Flight;
using Simfeel.Flight.Fields;
using Simfeel.Flight.Traces;
using Simfeel.Physics;
using Simfeel.Physics.Guards;
using Simfeel.Physics.Maths;

namespace Simfeel.Benchmarks.Soak;

/// <summary>
/// A recorded session over a field that an <see cref="ErraticPilot"/> flies as fast as the machine can, and what it showed. The
/// guards of the kernel look at every step of it; whatever they find is thrown.
/// </summary>
internal sealed class SoakFlight : IDisposable
{
    private readonly FlightSession _session;
    private readonly TraceRecorder _recorder;
    private readonly ErraticPilot _pilot;
    private readonly PilotProfile _profile;
    private readonly TraceSize _size;
    private double _energy = double.NaN;
    private int _flown;

    public SoakFlight(TraceHeader header, FlyableBuild a, FlyableBuild b, FieldMap map, string file, int seed)
    {
        _profile = header.Profile;
        _session = new(a.Unit, b.Unit, _profile, header.Conditions, map);
        _recorder = TraceRecorder.Start(file, header);
        _pilot = new(seed);
        _size = new(header, file);
    }

    public ErraticPilot Pilot => _pilot;

    /// <summary>Time flown, s.</summary>
    public double Time => _session.Readings * _profile.StickPeriod;

    /// <summary>Largest difference of the attitude's squared length from 1.</summary>
    public double MostAttitudeError { get; private set; }

    /// <summary>Steepest rise of a craft's energy between two readings that nothing touched, as a share of the guard's bound.</summary>
    public double MostEnergyShare { get; private set; }

    /// <summary>Fastest speed, m/s, and rate, rad/s.</summary>
    public (double Speed, double Rate) Fastest { get; private set; }

    /// <summary>What the format says the finished file should have, bytes.</summary>
    public long FinishedSize => _size.OfItsBatches();

    /// <summary>Size of the file, and what the format says it should be with full batches, bytes.</summary>
    public (long Size, long Predicted) File => (_size.Size, _size.Predicted);

    /// <summary>Hash over both craft now.</summary>
    public ulong Hash => _session.Hash();

    /// <summary>Flies on for some time, s.</summary>
    public void Fly(double seconds)
    {
        long until = _session.Readings + (long)Math.Round(seconds / _profile.StickPeriod);
        while (_session.Readings < until)
        {
            PilotInput input = _pilot.Next(_session, _profile.StickPeriod);
            _session.Fly(input);
            _recorder.Add(input, _session);
            Look(input);
            if (_session.Readings % _size.ReadingsPerRow == 0) _size.AddRow(_session.Flies(0), _session.Flies(1));
            if (_session.Readings % _size.ReadingsPerBatch != 0) continue;
            // the disk is not to fall behind, and batches are to be full
            Settle(() => _recorder.Written > Time - (0.5 * _profile.StickPeriod));
        }
    }

    /// <summary>Ends the recording.</summary>
    public void Finish()
    {
        _recorder.Finish();
        if (_recorder.Trouble is string trouble) throw new InvalidOperationException(trouble);
    }

    public void Dispose()
    {
        _recorder.Dispose();
        _session.Dispose();
    }

    private void Settle(Func<bool> done)
    {
        while (!done())
        {
            if (_recorder.Trouble is string trouble) throw new InvalidOperationException(trouble);
            Thread.Sleep(1);
        }
    }

    private void Look(in PilotInput input)
    {
        int flown = _session.Flown;
        CraftState state = _session.State(flown);
        MostAttitudeError = Math.Max(MostAttitudeError, Math.Abs((state.q_WB.Norm * state.q_WB.Norm) - 1));
        Fastest = (Math.Max(Fastest.Speed, state.v_WB.Length), Math.Max(Fastest.Rate, state.w_WB_B.Length));
        Craft craft = _session.Unit(flown).Unit.Craft;
        double energy = EnergyOf(craft, state, _session.Unit(flown).Gravity);
        bool alike = flown == _flown && !_session.Condition(flown).Touching
            && !input.Has(PilotSwitches.Restart | PilotSwitches.SwapFromStart | PilotSwitches.SwapInPlace);
        if (alike && energy > _energy)
            MostEnergyShare = Math.Max(MostEnergyShare, (energy - _energy) / (_profile.StickPeriod * Guard.MostPower(craft.Battery)));
        (_energy, _flown) = (energy, flown);
    }

    /// <summary>Energy of motion and height, rotors included, J.</summary>
    private static double EnergyOf(Craft craft, in CraftState s, double gravity)
    {
        double energy = (0.5 * craft.Mass * Vec3.Dot(s.v_WB, s.v_WB)) + (0.5 * Vec3.Dot(s.w_WB_B, craft.I_BBcm_B * s.w_WB_B));
        PerRotor speeds = s.RotorSpeeds;
        for (int k = 0; k < craft.Rotors.Count; k++)
            energy += craft.Rotors[k].SpinInertia * speeds[k] * ((0.5 * speeds[k]) + (craft.Rotors[k].Spin * s.w_WB_B.Z));
        return energy - (craft.Mass * gravity * s.p_WB.Z);
    }
}
