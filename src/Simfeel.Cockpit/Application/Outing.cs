using Simfeel.Builds;
using Simfeel.Cockpit.Graphics.Aircraft;
using Simfeel.Cockpit.Overlay;
using Simfeel.Cockpit.Stage;
using Simfeel.Flight;
using Simfeel.Flight.Contact;
using Simfeel.Flight.Fields;
using Simfeel.Physics;
using Simfeel.Physics.Air;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Application;

/// <summary>
/// Two builds taken to a field: the stage they fly on, and what overlay, sound and views need to know of it each frame.
/// Nothing is allocated in flight.
/// </summary>
internal sealed class Outing : IDisposable
{
    /// <summary>Rotor speed that is drawn where the real one would tell which craft it is, rad/s: a blur.</summary>
    private const double AnyRotorSpeed = 1200;

    private readonly FlyableBuild[] _builds;
    private readonly PilotProfile _profile;
    private readonly CraftPose[] _poses = new CraftPose[2];
    private readonly double[] _hoverSticks;
    private readonly AssembledBuild? _look;
    private readonly double _sink;

    /// <summary>Puts two builds on the start pad.</summary>
    /// <param name="a">First build.</param>
    /// <param name="b">Second build.</param>
    /// <param name="profile">Who flies.</param>
    /// <param name="conditions">Moving air and seed.</param>
    /// <param name="map">The field.</param>
    /// <param name="session">A session of these builds; a new one if null.</param>
    /// <param name="look">What both craft look like, whatever they are; as they are if null.</param>
    public Outing(
        FlyableBuild a, FlyableBuild b, PilotProfile profile, FieldConditions conditions, FieldMap map, FlightSession? session = null, AssembledBuild? look = null)
    {
        _look = look;
        // whatever flies, what is drawn stands on the ground
        if (look is not null) _sink = (a.Unit.Unit.Body?.RestHeight ?? 0) - (ContactBody.Of(look)?.RestHeight ?? 0);
        _builds = [a, b];
        _profile = profile;
        Map = map;
        Conditions = conditions;
        Stage = new(session ?? new(a.Unit, b.Unit, profile, conditions, map), profile);
        _hoverSticks = [a.Unit.Throttle.HoverStick, b.Unit.Throttle.HoverStick];
        ReserveScale = _builds.Max(build => Full(build));
    }

    /// <summary>The field.</summary>
    public FieldMap Map { get; }

    /// <summary>Moving air and seed.</summary>
    public FieldConditions Conditions { get; }

    /// <summary>Who flies.</summary>
    public PilotProfile Profile => _profile;

    /// <summary>The flight.</summary>
    public FlightStage Stage { get; }

    /// <summary>Full length of the bars of torque reserve, N m.</summary>
    public double ReserveScale { get; }

    /// <summary>0 or 1: the build that is flown.</summary>
    public int Flown => Stage.Session.Flown;

    /// <summary>A build.</summary>
    public FlyableBuild Build(int index) => _builds[index];

    /// <summary>A build as it was put together.</summary>
    public AssembledBuild Assembled(int index) => _builds[index].Assembled;

    /// <summary>What a craft looks like.</summary>
    public AssembledBuild Look(int index) => _look ?? Assembled(index);

    /// <summary>Throttle at which the flown craft hovers.</summary>
    public double HoverStick => _hoverSticks[Flown];

    /// <summary>Poses of both craft some time ago (s), the other one translucent or not drawn.</summary>
    public ReadOnlySpan<CraftPose> Poses(double delay)
    {
        for (int craft = 0; craft < 2; craft++)
        {
            Stage.Pose(craft, delay, ref _poses[craft]);
            if (_look is not null)
            {
                _poses[craft].p_WB += new Vec3(0, 0, _sink);
                for (int k = 0; k < Craft.MaxRotors; k++) _poses[craft].RotorSpeeds[k] = Stage.Session.Condition(craft).Armed ? AnyRotorSpeed : 0;
            }
            _poses[craft].Opacity = craft == Flown ? 1 : Stage.Session.Shadow ? 0.45f : 0;
        }
        return _poses;
    }

    /// <summary>Thrusts for the arrows of the mass view, from the samples of this frame.</summary>
    public void SetThrust(int craft, in Sample sample) => _poses[craft].Thrust = sample.Thrust;

    /// <summary>Writes what the overlay shows of one build.</summary>
    public void Fill(BuildReadout readout, int craft, in Sample sample)
    {
        CraftState state = sample.State;
        readout.Name = _builds[craft].Name;
        readout.RotorCount = _builds[craft].Unit.Unit.Craft.Rotors.Count;
        readout.StruckRotors = Stage.Session.Condition(craft).StruckRotors;
        readout.Flying = Stage.Session.Flies(craft);
        readout.Speed = state.v_WB.Length;
        double height = -state.p_WB.Z - (_builds[craft].Unit.Unit.Body?.RestHeight ?? 0);
        // feet press a little into the ground, which is no height below it
        readout.Height = height is > -0.01 and < 0 ? 0 : height;
        readout.PackVoltage = sample.PackVoltage;
        BatterySpec battery = Assembled(craft).Build.Battery;
        (readout.EmptyVoltage, readout.FullVoltage) = (battery.Cells * battery.CellVoltage[0], battery.Cells * battery.CellVoltage[^1]);
        readout.PackCurrent = sample.PackCurrent;
        Vec3 command = Stage.Session.CommandedRate(craft);
        for (int axis = 0; axis < 3; axis++)
        {
            readout.Rates[axis] = state.w_WB_B[axis];
            readout.RateCommands[axis] = command[axis];
        }
        for (int k = 0; k < readout.RotorCount; k++)
        {
            readout.ReserveUp[k] = sample.ReserveUp[k];
            readout.ReserveDown[k] = sample.ReserveDown[k];
            readout.RotorSpeed[k] = state.RotorSpeeds[k];
        }
        Vec3 felt_B = state.q_WB.Conjugate.Rotate(sample.a_WB - new Vec3(0, 0, StandardAtmosphere.StandardGravity));
        readout.LoadFactor = -felt_B.Z / StandardAtmosphere.StandardGravity;
    }

    /// <inheritdoc/>
    public void Dispose() => Stage.Dispose();

    /// <summary>Largest reserve of one rotor in hover, up or down, N m.</summary>
    private static double Full(FlyableBuild build)
    {
        TunedUnit unit = build.Unit;
        Craft craft = unit.Unit.Craft;
        using CraftBatch<Physics.Lanes.Lane1> batch = new(craft.Rotors.Count);
        batch.SetCraft(0, craft);
        batch.SetField(0, unit.Density, unit.Gravity);
        batch.SetState(0, unit.Hover.State);
        for (int k = 0; k < craft.Rotors.Count; k++) batch.SetCommand(0, k, unit.Hover.Rotor.Duty);
        batch.Evaluate();
        Sample sample = batch.GetSample(0);
        return 1.1 * Math.Max(sample.ReserveUp[0], sample.ReserveDown[0]);
    }
}
