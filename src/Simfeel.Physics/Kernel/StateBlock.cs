using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Kernel;

/// <summary>A craft's state as the numbers of its block, in the order of <see cref="StateIndex"/>.</summary>
public static class StateBlock
{
    /// <summary>Writes a state of a craft with a number of rotors; room for <see cref="StateIndex.Stride"/> numbers.</summary>
    public static void Write(in CraftState state, int rotorCount, Span<double> block)
    {
        Three(state.p_WB, block[StateIndex.Position..]);
        Three(state.v_WB, block[StateIndex.Velocity..]);
        Three(state.w_WB_B, block[StateIndex.Rate..]);
        block[StateIndex.Attitude] = state.q_WB.W;
        block[StateIndex.Attitude + 1] = state.q_WB.X;
        block[StateIndex.Attitude + 2] = state.q_WB.Y;
        block[StateIndex.Attitude + 3] = state.q_WB.Z;
        block[StateIndex.Charge] = state.Charge;
        block[StateIndex.PairVoltage] = state.PairVoltage;
        for (int k = 0; k < rotorCount; k++)
        {
            block[StateIndex.RotorSpeed + k] = state.RotorSpeeds[k];
            block[StateIndex.Inflow(rotorCount) + k] = state.InducedVelocities[k];
        }

        static void Three(Vec3 v, Span<double> to) => (to[0], to[1], to[2]) = (v.X, v.Y, v.Z);
    }

    /// <summary>Mixes the bits of a state into a running hash, as <see cref="CraftBatch{T}.Hash"/> does for a lane.</summary>
    /// <param name="hash">The hash so far.</param>
    /// <param name="state">The state.</param>
    /// <param name="rotorCount">Rotors of the craft.</param>
    /// <param name="dynamicInflow">Whether the induced velocities are part of the state.</param>
    public static ulong Mix(ulong hash, in CraftState state, int rotorCount, bool dynamicInflow)
    {
        Span<double> block = stackalloc double[StateIndex.Stride];
        Write(state, rotorCount, block);
        foreach (double number in block[..StateIndex.Used(rotorCount, dynamicInflow)]) hash = StateHash.Mix(hash, number);
        return hash;
    }
}
