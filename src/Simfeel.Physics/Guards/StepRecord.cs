using Simfeel.Physics.Kernel;

namespace Simfeel.Physics.Guards;

/// <summary>
/// One step of one craft, whole: all that it depends on, so that it can be flown again to the same bits by whoever has this
/// record. Of the rotors' tables it holds the cells that the step looked into.
/// </summary>
public sealed class StepRecord
{
    /// <summary>Name of the craft's build; empty where nobody gave one.</summary>
    public string Craft { get; internal init; } = "";

    /// <summary>Lane in which it flew.</summary>
    public int Lane { get; internal init; }

    /// <summary>Number of the step, counted from 0.</summary>
    public long Number { get; internal init; }

    /// <summary>The step, s.</summary>
    public double Step { get; internal init; }

    /// <summary>Time at its beginning, s.</summary>
    public double Time => Number * Step;

    /// <summary>The integrator.</summary>
    public Integrator Integrator { get; internal init; }

    /// <summary>Rotors of the craft.</summary>
    public int RotorCount { get; internal init; }

    /// <summary>Whether it flew in single precision.</summary>
    public bool IsSingle { get; internal init; }

    /// <summary>Whether induced velocities were integrated.</summary>
    public bool DynamicInflow { get; internal init; }

    /// <summary>Whether the derivative of the step before was known; else it is worked out at the state first.</summary>
    public bool Primed { get; internal init; }

    /// <summary>Whether the rotors flew by polynomials.</summary>
    public bool Fitted { get; internal init; }

    /// <summary>Time ahead for which the polynomials were fitted in this very step, s; 0 where they held from before.</summary>
    public double FitAhead { get; internal init; }

    /// <summary>What was broken.</summary>
    public Invariant Broken { get; internal set; }

    /// <summary>The first stage whose outcome broke it.</summary>
    public KernelStage Stage { get; internal set; }

    /// <summary>Constants, air, state and commands, <see cref="StepNumbers.Names"/>.</summary>
    internal double[] Numbers { get; init; } = [];

    /// <summary>Cells of the rotors' tables that the step looked into: rotor from 0, bytes from the table's start, contents.</summary>
    internal List<(int Rotor, ulong Offset, double[] Terms)> Cells { get; init; } = [];

    /// <summary>As text, for a file; numbers with as many digits as give the same bits back.</summary>
    public string ToText() => StepRecordText.Write(this);

    /// <summary>Out of text.</summary>
    /// <exception cref="FormatException">It is no such text; the message says where and why.</exception>
    public static StepRecord Parse(string text) => StepRecordText.Parse(text);

    /// <summary>Flies the step again and says what it breaks, at which stage; <see cref="KernelStage.None"/> where it breaks nothing.</summary>
    public (KernelStage Stage, Invariant Broken) Fly() => StepReplay.Fly(this);
}
