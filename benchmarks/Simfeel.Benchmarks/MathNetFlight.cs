using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;
using Simfeel.Physics;
using Simfeel.Physics.Kernel;

namespace Simfeel.Benchmarks;

/// <summary>
/// A <see cref="HeldManoeuvre"/> by the fourth-order Runge-Kutta of MathNet.Numerics. The derivative is our scalar kernel's, so
/// only the integrator differs; a derivative written with the library's own vectors would make its time longer.
/// </summary>
internal sealed class MathNetFlight(HeldManoeuvre manoeuvre, ScalarModel model)
{
    /// <summary>Flies the second; see <see cref="IHeldFlight.Fly"/>.</summary>
    public void Fly(int stepsPerHold, CraftState[]? path = null)
    {
        double[] block = new double[StateIndex.Stride];
        StateBlock.Write(HeldManoeuvre.Start(0), HeldManoeuvre.Rotors, block);
        Vector<double> state = Vector<double>.Build.Dense(block[..ScalarModel.States]);
        for (int hold = 0; hold < manoeuvre.HoldsPerSecond; hold++)
        {
            for (int k = 0; k < HeldManoeuvre.Rotors; k++) model.SetDuty(k, manoeuvre.Duty(hold, k, 0));
            // its N counts the states of the answer, the first included
            state = RungeKutta.FourthOrder(state, 0, manoeuvre.Hold, stepsPerHold + 1, model.Derivative)[^1];
            if (path is not null) path[hold] = FlightError.StateOf(state.AsArray());
        }
    }
}
