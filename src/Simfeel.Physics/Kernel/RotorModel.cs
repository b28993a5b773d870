namespace Simfeel.Physics.Kernel;

/// <summary>What the rotors of a batch fly by.</summary>
public enum RotorModel
{
    /// <summary>Their tables, at every step. What everything flies by unless it says otherwise.</summary>
    Table,

    /// <summary>
    /// Polynomials fitted to the tables every few milliseconds (<see cref="Kernel{T}.FitRotors"/>), quicker. For
    /// <see cref="Integrator.Midpoint"/> only; samples and <see cref="Integrator.RungeKutta"/> keep to the tables.
    /// </summary>
    Polynomials,
}
