namespace Simfeel.Physics.Guards;

/// <summary>The places of a step, in the order in which they are reached, at which a fault can begin.</summary>
public enum KernelStage
{
    /// <summary>
    /// None: flown again alone, the step breaks nothing. The state was given energy between steps without
    /// <see cref="Kernel.CraftBatch{T}.StateChanged"/>, or memory, processor or another thread are to be suspected.
    /// </summary>
    None,

    /// <summary>The state before the step: one that was set, or what contact made of it.</summary>
    Entry,

    /// <summary>The commands: duties of the speed controllers, from the rate controller or whoever set them.</summary>
    Commands,

    /// <summary>Air, gravity, wind, and what wakes and ground do to the thrusts.</summary>
    Field,

    /// <summary>The rotors' polynomials, fitted to their tables.</summary>
    FitRotors,

    /// <summary>The state half a step ahead, or at another of the integrator's inner states.</summary>
    Predict,

    /// <summary>Attitude and flow at the body.</summary>
    Kinematics,

    /// <summary>Source voltage of the battery.</summary>
    SourceVoltage,

    /// <summary>Voltage of the battery under the motors' load.</summary>
    TerminalVoltage,

    /// <summary>Flow at the rotors.</summary>
    RotorFlow,

    /// <summary>Currents and torques of the motors.</summary>
    Motors,

    /// <summary>What the current does to the battery.</summary>
    Battery,

    /// <summary>Drag of the body.</summary>
    BodyAir,

    /// <summary>Loads of the air on the rotors, from their tables.</summary>
    RotorAir,

    /// <summary>Loads of the air on the rotors, from their polynomials.</summary>
    FittedRotors,

    /// <summary>Reactions of the motors, where the rotors fly by polynomials.</summary>
    MotorReactions,

    /// <summary>Newton's and Euler's laws.</summary>
    Accelerations,

    /// <summary>The state at the end of the step: every stage was sound, but the step is too long for what it was to cross.</summary>
    Advance,
}

/// <summary>What holds after every step of every flight.</summary>
public enum Invariant
{
    /// <summary>Every number of the state is finite.</summary>
    FiniteState,

    /// <summary>The attitude is of unit length.</summary>
    UnitAttitude,

    /// <summary>The energy rises by no more than the battery can have given.</summary>
    PlausibleEnergy,
}
