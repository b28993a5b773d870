namespace Simfeel.Physics.Kernel;

/// <summary>How a batch moves through time.</summary>
public enum Integrator
{
    /// <summary>Midpoint rule with one evaluation a step; second order. For flight and studies.</summary>
    Midpoint,

    /// <summary>Classical Runge-Kutta, four evaluations a step; fourth order. The reference.</summary>
    RungeKutta,
}
