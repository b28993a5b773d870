using System.Runtime.CompilerServices;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Motors;

namespace Simfeel.Physics.Kernel;

/// <summary><see cref="MotorModel.ReserveUp"/> and <see cref="MotorModel.ReserveDown"/> of every rotor over lanes.</summary>
internal static unsafe class Reserves<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Works out the reserves at a state whose loads are known.</summary>
    /// <param name="x">State.</param>
    /// <param name="craft">Constants.</param>
    /// <param name="load">Loads at that state.</param>
    /// <param name="up">Receives the reserve up of each rotor, N m.</param>
    /// <param name="down">Receives the reserve down, N m.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    public static void Evaluate(T* x, CraftLanes<T>* craft, LoadLanes<T>* load, T* up, T* down)
    {
        RotorLanes<T>* rotors = (RotorLanes<T>*)&craft->Rotors;
        RotorLoad<T>* loads = (RotorLoad<T>*)&load->Rotors;
        for (int k = 0; k < craft->RotorCount; k++)
        {
            T w = x[StateIndex.RotorSpeed + k], used = loads[k].MotorTorque;
            up[k] = TorqueAt(rotors + k, T.Of(1), load->PackVoltage, w) - used;
            down[k] = used - TorqueAt(rotors + k, T.Of(0), load->PackVoltage, w);
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static T TorqueAt(RotorLanes<T>* rotor, T duty, T voltage, T speed)
    {
        T free = MotorLaws<T>.FreeCurrent(duty, voltage, rotor->Kt * speed, MotorLaws<T>.Conductance(rotor, speed));
        T current = MotorLaws<T>.HeldCurrent(free, rotor->BrakeLimit, rotor->CurrentLimit);
        return MotorLaws<T>.ShaftTorque(rotor, current, speed);
    }
}
