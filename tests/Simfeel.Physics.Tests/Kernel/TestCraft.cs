using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>
/// Craft for tests. A batch needs at least one rotor, so a plain rigid body carries silent ones: a table of zeros (no
/// load of the air), current limits of zero (no motor torque) and no loss torque. A silent rotor turns freely for ever.
/// </summary>
/// <remarks>
/// What a silent rotor does to the rigid body. The kernel takes I_BBcm_B with the rotors standing still, so that total
/// momentum is L = I w + h z with h = sum s_k J_k w_k (w_k relative to the body). A free rotor keeps
/// J_k (w_k + s_k w_z), its momentum about the shaft in inertial space, so
/// L = (I - sum J zz) w + z sum s_k J_k (w_k + s_k w_z): a rigid body of inertia I - sum J zz with a constant h' on
/// board. Rotors that stand still in inertial space (w_k = -s_k w_z) give h' = 0: <see cref="RigidBody"/> therefore adds
/// sum J to Izz and <see cref="RigidStart"/> sets those speeds, which makes the body rigid to rounding for spin inertias
/// of any size. The gyrostat formulas of the literature take I with the rotors locked and h relative to the body, which
/// is the kernel's own I_BBcm_B and h.
/// </remarks>
internal static class TestCraft
{
    /// <summary>Zero coefficients everywhere.</summary>
    public static RotorTable NoAir { get; } = Constant(0, 0, 0, 0);

    /// <summary>A table without pattern: coefficients of the size that propellers have, no two nodes alike.</summary>
    public static RotorTable Irregular { get; } = MakeIrregular(12345);

    /// <summary>A flat open-circuit voltage at all charge nodes, V.</summary>
    public static double[] Flat(double voltage) => [.. BatteryConstants.ChargeNodes.Select(_ => voltage)];

    /// <summary>The same four coefficients at every node.</summary>
    public static RotorTable Constant(double thrust, double torque, double inPlane, double pitch) =>
        Filled((_, _, _) => new(thrust, torque, inPlane, pitch));

    /// <summary>A table with coefficients given by node (angle, in-plane, speed).</summary>
    public static RotorTable Filled(Func<int, int, int, RotorCoefficients> at)
    {
        double[] nodes = new double[RotorTable.NodeCount];
        for (int k = 0; k <= RotorTableGrid.SpeedCells; k++)
            for (int j = 0; j <= RotorTableGrid.InPlaneCells; j++)
                for (int i = 0; i <= RotorTableGrid.AngleCells; i++)
                {
                    int o = RotorTable.NodeOffset(i, j, k);
                    (nodes[o], nodes[o + 1], nodes[o + 2], nodes[o + 3]) = at(i, j, k);
                }
        return new(nodes);
    }

    /// <summary>A rotor that exerts nothing, at the centre of gravity.</summary>
    public static RotorConstants SilentRotor(int spin, double spinInertia) => new()
    {
        p_BcmR_B = Vec3.Zero,
        Spin = spin,
        Radius = 0.0635,
        Table = NoAir,
        SpinInertia = spinInertia,
        Kt = 0.005,
        Resistance = 0.06,
        CurrentLimit = 0,
        BrakeCurrentLimit = 0,
        TorqueLimit = 1,
    };

    /// <summary>A battery that holds its voltage but for the series resistance, with charge for hours.</summary>
    public static BatteryConstants FlatBattery(double voltage, double resistance, double electronicsPower = 0) => new()
    {
        OpenCircuitVoltage = Flat(voltage),
        Capacity = 1e6,
        SeriesResistance = resistance,
        ElectronicsPower = electronicsPower,
    };

    /// <summary>A rigid body of a true inertia tensor, with two silent rotors; start it from <see cref="RigidStart"/>.</summary>
    public static Craft RigidBody(double mass, Mat3 inertia, Vec3 dragArea = default, double spinShare = 0.1)
    {
        double spin = spinShare * inertia.M22;
        return new()
        {
            Mass = mass,
            I_BBcm_B = inertia + Mat3.Diagonal(0, 0, 2 * spin),
            Rotors = [SilentRotor(1, spin), SilentRotor(-1, spin)],
            Battery = FlatBattery(16, 0.02),
            DragArea = dragArea,
        };
    }

    /// <summary>At the origin, level, turning at a rate, the silent rotors still in inertial space.</summary>
    public static CraftState RigidStart(Craft craft, Vec3 rate)
    {
        CraftState state = CraftState.AtRest(craft);
        state.w_WB_B = rate;
        for (int k = 0; k < craft.Rotors.Count; k++) state.RotorSpeeds[k] = -craft.Rotors[k].Spin * rate.Z;
        return state;
    }

    /// <summary>
    /// A quadcopter of five-inch class with invented constants, unequal in every number that can be, with products of
    /// inertia and a drag point off the centre of gravity.
    /// </summary>
    /// <param name="table">Coefficients of all rotors.</param>
    /// <param name="vary">Any number: another craft for each.</param>
    public static Craft Quad(RotorTable table, int vary = 0)
    {
        double f = 1 + (0.03 * vary);
        RotorConstants[] rotors = new RotorConstants[4];
        for (int k = 0; k < 4; k++)
        {
            double x = k is 0 or 3 ? 0.08 : -0.082, y = k < 2 ? 0.081 : -0.08;
            rotors[k] = new()
            {
                p_BcmR_B = new(f * x, f * y, -0.012 - (0.001 * k)),
                Spin = (k & 1) == 0 ? 1 : -1,
                Radius = 0.0635 * f,
                Table = table,
                SpinInertia = 1.2e-5 * f * (1 + (0.02 * k)),
                Kt = 0.0049 / f,
                Resistance = 0.07 + (0.002 * k),
                CommutationDroop = 1.2e-5,
                CurrentLimit = 45,
                BrakeCurrentLimit = 30,
                TorqueLimit = 0.35,
                LossTorque = 0.004,
                LossTorquePerSpeed = 1.5e-6,
            };
        }
        return new()
        {
            Mass = 0.65 * f,
            I_BBcm_B = new(
                2.5e-3 * f, 3e-5, -8e-5,
                3e-5, 2.1e-3, 2e-5 * f,
                -8e-5, 2e-5 * f, 4.3e-3),
            Rotors = rotors,
            Battery = new()
            {
                OpenCircuitVoltage = [13.0, 13.9, 14.3, 14.7, 14.9, 15.1, 15.3, 15.55, 15.85, 16.2, 16.5, 16.8],
                Capacity = 1300 * 3.6 * f,
                SeriesResistance = 0.018 * f,
                PairResistance = 0.009,
                PairCapacitance = 1200,
                ElectronicsPower = 9,
            },
            DragArea = new(0.008 * f, 0.011, 0.019),
            p_BcmD_B = new(0.004, -0.003, 0.006 * f),
        };
    }

    /// <summary>Flies one craft in a batch of its own and returns where it ended.</summary>
    public static CraftState Fly(
        Craft craft, CraftState start, Integrator integrator, double step, int steps,
        double density = 0, double gravity = 0, Vec3 wind_W = default, double duty = 0)
    {
        using CraftBatch<Lane1> batch = Batch(craft, start, density, gravity, wind_W, duty);
        for (int n = 0; n < steps; n++) batch.Step(integrator, step);
        return batch.GetState(0);
    }

    /// <summary>A batch of one craft.</summary>
    public static CraftBatch<Lane1> Batch(
        Craft craft, CraftState start, double density = 0, double gravity = 0, Vec3 wind_W = default, double duty = 0)
    {
        CraftBatch<Lane1> batch = new(craft.Rotors.Count);
        batch.SetCraft(0, craft);
        batch.SetField(0, density, gravity, wind_W);
        batch.SetState(0, start);
        for (int k = 0; k < craft.Rotors.Count; k++) batch.SetCommand(0, k, duty);
        return batch;
    }

    /// <summary>Angular momentum of body and rotors in the world, N m s.</summary>
    public static Vec3 Momentum_W(Craft craft, CraftState s)
    {
        double h = 0;
        for (int k = 0; k < craft.Rotors.Count; k++) h += craft.Rotors[k].Spin * craft.Rotors[k].SpinInertia * s.RotorSpeeds[k];
        return s.q_WB.Rotate((craft.I_BBcm_B * s.w_WB_B) + (h * Vec3.UnitZ));
    }

    /// <summary>
    /// Kinetic energy of body and rotors, J. A rotor turns at w_k + s_k w_z in space; J w_z^2 / 2 is in I already.
    /// </summary>
    public static double KineticEnergy(Craft craft, CraftState s)
    {
        double energy = 0.5 * ((craft.Mass * Vec3.Dot(s.v_WB, s.v_WB)) + Vec3.Dot(s.w_WB_B, craft.I_BBcm_B * s.w_WB_B));
        for (int k = 0; k < craft.Rotors.Count; k++)
        {
            RotorConstants rotor = craft.Rotors[k];
            double w = s.RotorSpeeds[k];
            energy += rotor.SpinInertia * w * ((0.5 * w) + (rotor.Spin * s.w_WB_B.Z));
        }
        return energy;
    }

    /// <summary>
    /// Random coefficients at every node; torque always against the rotation, so that no rotor drives itself.
    /// </summary>
    public static RotorTable MakeIrregular(int seed)
    {
        Random random = new(seed);
        return Filled((i, _, _) => new(
            (0.06 * random.NextDouble()) - 0.01,
            Math.Sign(RotorTableGrid.DirectionAt(i, 0).Rotation) * (0.0005 + (0.009 * random.NextDouble())),
            0.05 * random.NextDouble(),
            (0.02 * random.NextDouble()) - 0.01));
    }
}
