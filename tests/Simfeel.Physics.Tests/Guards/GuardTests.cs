using Simfeel.Physics.Guards;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Rotors;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Guards;

/// <summary>
/// A sound flight is spoilt in one lane after some steps; the step after must be stopped, and the fault must name that lane, that
/// step, the stage that was spoilt and the invariant, in every lane width, and again from its text.
/// </summary>
public class GuardTests
{
    private const int Sound = 37;
    private const double Step = 1.0 / 4000;

    /// <summary>What is done to a lane, where it must be noticed, and what is then broken.</summary>
    public static TheoryData<string, KernelStage, Invariant> Spoilt => new()
    {
        { "position", KernelStage.Entry, Invariant.FiniteState },
        { "inflow", KernelStage.Entry, Invariant.FiniteState },
        { "infinite rate", KernelStage.Entry, Invariant.FiniteState },
        { "attitude", KernelStage.Entry, Invariant.UnitAttitude },
        { "no attitude", KernelStage.Entry, Invariant.UnitAttitude },
        { "duty", KernelStage.Commands, Invariant.FiniteState },
        { "wind", KernelStage.Field, Invariant.FiniteState },
        { "drag area", KernelStage.BodyAir, Invariant.FiniteState },
        { "voltage", KernelStage.SourceVoltage, Invariant.FiniteState },
        { "losses", KernelStage.Motors, Invariant.FiniteState },
        { "hub", KernelStage.RotorFlow, Invariant.FiniteState },
        { "table", KernelStage.RotorAir, Invariant.FiniteState },
        { "spin", KernelStage.Advance, Invariant.UnitAttitude },
        { "driving air", KernelStage.BodyAir, Invariant.PlausibleEnergy },
        { "driving losses", KernelStage.Motors, Invariant.PlausibleEnergy },
        { "driving table", KernelStage.RotorAir, Invariant.PlausibleEnergy },
    };

    [Theory]
    [MemberData(nameof(Spoilt))]
    public void One_craft(string what, KernelStage stage, Invariant broken) => Check<Lane1>(what, 0, stage, broken);

    [Theory]
    [MemberData(nameof(Spoilt))]
    public void One_of_four(string what, KernelStage stage, Invariant broken) => Check<Lane4>(what, 2, stage, broken);

    [Theory]
    [MemberData(nameof(Spoilt))]
    public void One_of_eight(string what, KernelStage stage, Invariant broken) => Check<Lane8>(what, 7, stage, broken);

    [Theory]
    [MemberData(nameof(Spoilt))]
    public void One_of_sixteen_in_single_precision(string what, KernelStage stage, Invariant broken) => Check<LaneF16>(what, 11, stage, broken);

    [Theory]
    [InlineData("table", KernelStage.RotorAir, Invariant.FiniteState)]
    [InlineData("losses", KernelStage.Motors, Invariant.FiniteState)]
    [InlineData("driving table", KernelStage.RotorAir, Invariant.PlausibleEnergy)]
    public void With_four_evaluations_a_step(string what, KernelStage stage, Invariant broken) =>
        Check<Lane4>(what, 3, stage, broken, Integrator.RungeKutta);

    [Theory]
    [InlineData("table", KernelStage.RotorAir, Invariant.FiniteState)]
    [InlineData("duty", KernelStage.Commands, Invariant.FiniteState)]
    [InlineData("driving air", KernelStage.BodyAir, Invariant.PlausibleEnergy)]
    public void With_rotors_by_polynomials(string what, KernelStage stage, Invariant broken) =>
        Check<Lane8>(what, 5, stage, broken, rotors: RotorModel.Polynomials);

    [Fact]
    public void A_table_that_goes_bad_in_flight_is_found_where_polynomials_are_fitted_to_it()
    {
        // the nodes are kept, not copied, and packed when first flown: bad beside the sound flight's cells only
        RotorTable table = Bad(double.NaN, j => j >= 12);
        using CraftBatch<Lane4> batch = Flight<Lane4>(RotorModel.Polynomials, table);
        FlightFaultException fault = Assert.Throws<FlightFaultException>(() =>
        {
            for (int n = 0; n < 4000; n++)
            {
                batch.SetField(0, 1.2, 9.81, new(0.03 * n, 0, 0));
                batch.Step(Integrator.Midpoint, Step);
            }
        });
        Assert.True(fault.Record.Number > Sound, $"step {fault.Record.Number}");
        Assert.Equal((KernelStage.FitRotors, Invariant.FiniteState), (fault.Record.Stage, fault.Record.Broken));
        Assert.Equal((KernelStage.FitRotors, Invariant.FiniteState), StepRecord.Parse(fault.Record.ToText()).Fly());
    }

    [Fact]
    public void The_state_stays_where_it_was_and_a_mended_craft_flies_on()
    {
        using CraftBatch<Lane4> batch = Flight<Lane4>();
        for (int n = 0; n < Sound; n++) batch.Step(Integrator.Midpoint, Step);
        batch.SetCommand(1, 2, double.NaN);
        ulong before = batch.Hash(1), other = batch.Hash(3);
        Assert.Throws<FlightFaultException>(() => batch.Step(Integrator.Midpoint, Step));
        Assert.Equal((before, other), (batch.Hash(1), batch.Hash(3)));
        batch.SetCommand(1, 2, 0.4);
        batch.Step(Integrator.Midpoint, Step);
        Assert.Equal(Sound + 1, batch.Steps);
    }

    [Fact]
    public void Contact_may_add_any_energy_between_steps_once_it_is_told()
    {
        using CraftBatch<Lane1> batch = Flight<Lane1>();
        batch.Step(Integrator.Midpoint, Step);
        Throw(batch, 60);
        batch.StateChanged();
        batch.Step(Integrator.Midpoint, Step);
        Throw(batch, 120);
        FlightFaultException fault = Assert.Throws<FlightFaultException>(() => batch.Step(Integrator.Midpoint, Step));
        // nothing that the step did is to blame, which is said
        Assert.Equal((KernelStage.None, Invariant.PlausibleEnergy), (fault.Record.Stage, fault.Record.Broken));

        static unsafe void Throw(CraftBatch<Lane1> batch, double speed) => LaneMemory.Set(batch.State + StateIndex.Velocity, 0, speed);
    }

    [Fact]
    public void The_message_names_craft_time_step_and_stage()
    {
        using CraftBatch<Lane4> batch = Flight<Lane4>();
        for (int n = 0; n < 400; n++) batch.Step(Integrator.Midpoint, Step);
        batch.SetCommand(3, 0, double.NaN);
        FlightFaultException fault = Assert.Throws<FlightFaultException>(() => batch.Step(Integrator.Midpoint, Step));
        Assert.Equal("Craft of 3: the flight was stopped at 0.10000 s, step 400, stage Commands: a number of its state is not finite.", fault.Message);
        fault.During = "drill roll";
        Assert.StartsWith("Craft of 3 in drill roll: ", fault.Message, StringComparison.Ordinal);
    }

    private static void Check<T>(
        string what, int lane, KernelStage stage, Invariant broken, Integrator integrator = Integrator.Midpoint, RotorModel rotors = RotorModel.Table)
        where T : unmanaged, ILane<T>
    {
        using CraftBatch<T> batch = Flight<T>(rotors);
        for (int n = 0; n < Sound; n++) batch.Step(integrator, Step);
        Spoil(batch, lane, what);
        FlightFaultException fault = Assert.Throws<FlightFaultException>(() => batch.Step(integrator, Step));
        StepRecord record = fault.Record;
        // lane 0 fills the others, which the test never spoils but where it is alone
        Assert.Equal((lane, (long)Sound, stage, broken), (record.Lane, record.Number, record.Stage, record.Broken));
        Assert.Equal($"Craft of {lane}", record.Craft);
        Assert.Equal(Sound * Step, record.Time, 12);

        string text = record.ToText();
        StepRecord read = StepRecord.Parse(text);
        Assert.Equal(text, read.ToText());
        Assert.Equal((stage, broken), read.Fly());
    }

    private static CraftBatch<T> Flight<T>(RotorModel rotors = RotorModel.Table, RotorTable? table = null)
        where T : unmanaged, ILane<T>
    {
        CraftBatch<T> batch = new(4);
        batch.SetEffects(AirEffects.All, 50);
        batch.SetRotorModel(rotors, 8);
        for (int lane = 0; lane < T.Width; lane++)
        {
            Craft craft = TestCraft.Quad(table ?? Table, lane);
            batch.SetCraft(lane, craft, $"Craft of {lane}");
            batch.SetField(lane, 1.2, 9.81, new(2, -1, 0.3));
            batch.SetState(lane, Start(craft));
            for (int k = 0; k < 4; k++) batch.SetCommand(lane, k, 0.4);
        }
        return batch;
    }

    private static CraftState Start(Craft craft)
    {
        CraftState state = CraftState.AtRest(craft, 0.9);
        state.v_WB = new(3, -1, 0.5);
        state.w_WB_B = new(2, -3, 1);
        for (int k = 0; k < 4; k++)
        {
            state.RotorSpeeds[k] = 900 + (20 * k);
            state.InducedVelocities[k] = 5;
        }
        return state;
    }

    private static void Spoil<T>(CraftBatch<T> batch, int lane, string what)
        where T : unmanaged, ILane<T>
    {
        Craft craft = TestCraft.Quad(Table, lane);
        CraftState state = batch.GetState(lane);
        string name = $"Craft of {lane}";
        switch (what)
        {
            case "position":
                batch.SetState(lane, state with { p_WB = new(0, double.NaN, 0) });
                break;
            case "inflow":
                state.InducedVelocities[3] = double.NaN;
                batch.SetState(lane, state);
                break;
            case "infinite rate":
                batch.SetState(lane, state with { w_WB_B = new(0, 0, double.PositiveInfinity) });
                break;
            case "attitude":
                batch.SetState(lane, state with { q_WB = new(state.q_WB.W * 1.001, state.q_WB.X * 1.001, state.q_WB.Y * 1.001, state.q_WB.Z * 1.001) });
                break;
            case "no attitude":
                batch.SetState(lane, state with { q_WB = default });
                break;
            case "duty":
                batch.SetCommand(lane, 2, double.NaN);
                break;
            case "wind":
                batch.SetField(lane, 1.2, 9.81, new(0, double.NaN, 0));
                break;
            case "drag area":
                batch.SetCraft(lane, craft with { DragArea = new(0.01, double.NaN, 0.02) }, name);
                break;
            case "voltage":
                batch.SetCraft(lane, craft with { Battery = craft.Battery with { OpenCircuitVoltage = TestCraft.Flat(double.NaN) } }, name);
                break;
            case "losses":
                batch.SetCraft(lane, With(craft, rotor => rotor with { LossTorque = double.NaN }), name);
                break;
            case "hub":
                batch.SetCraft(lane, With(craft, rotor => rotor with { p_BcmR_B = new(0.08, double.NaN, 0) }), name);
                break;
            case "table":
                batch.SetCraft(lane, With(craft, rotor => rotor with { Table = NotANumber }), name);
                break;
            case "spin":
                batch.SetState(lane, state with { w_WB_B = new(20_000, 0, 0) });
                break;
            case "driving air":
                batch.SetCraft(lane, craft with { DragArea = new(-1e6, -1e6, -1e6), p_BcmD_B = default }, name);
                break;
            case "driving losses":
                batch.SetCraft(lane, With(craft, rotor => rotor with { LossTorque = -50 }), name);
                break;
            case "driving table":
                batch.SetCraft(lane, With(craft, rotor => rotor with { Table = Driving }), name);
                break;
            default:
                throw new ArgumentException(what);
        }
    }

    private static RotorTable Table { get; } = TestCraft.Constant(0.018, 0.0022, 0.03, 0.004);

    private static RotorTable NotANumber { get; } = Bad(double.NaN, _ => true);

    private static RotorTable Driving { get; } = Bad(500, _ => true);

    /// <summary>A table whose thrust goes bad after the constructor has looked at it, in some rows of in-plane flow.</summary>
    private static RotorTable Bad(double thrust, Func<int, bool> row)
    {
        double[] nodes = Table.Nodes.ToArray();
        RotorTable table = new(nodes);
        for (int j = 0; j <= RotorTableGrid.InPlaneCells; j++)
            for (int k = 0; row(j) && k <= RotorTableGrid.SpeedCells; k++)
                for (int i = 0; i <= RotorTableGrid.AngleCells; i++) nodes[RotorTable.NodeOffset(i, j, k)] = thrust;
        return table;
    }

    private static Craft With(Craft craft, Func<RotorConstants, RotorConstants> change) =>
        craft with { Rotors = [change(craft.Rotors[0]), .. craft.Rotors.Skip(1)] };
}
