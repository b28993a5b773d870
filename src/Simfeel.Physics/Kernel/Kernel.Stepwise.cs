using Simfeel.Physics.Guards;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Kernel;

/// <content>A step taken stage by stage, for whoever looks for the stage that broke it. Same stages, same order, same bits.</content>
public static unsafe partial class Kernel<T>
    where T : unmanaged, ILane<T>
{
    /// <summary><see cref="Derivative"/> with a look at what every stage left.</summary>
    internal static void DerivativeStepwise(
        T* x, T* command, CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load, T* dx, Action<KernelStage> look)
    {
        Kinematics(x, field, load, dx);
        look(KernelStage.Kinematics);
        SourceVoltage(x, craft, load, dx);
        look(KernelStage.SourceVoltage);
        TerminalVoltage(x, command, craft, load);
        look(KernelStage.TerminalVoltage);
        if (craft->Fits != null)
        {
            BodyAir(craft, field, load);
            look(KernelStage.BodyAir);
            FittedRotors(x, craft, field, load, dx);
            look(KernelStage.FittedRotors);
            Motors(x, craft, load);
            look(KernelStage.Motors);
            Battery(x, command, craft, load, dx);
            look(KernelStage.Battery);
            MotorReactions(craft, load);
            look(KernelStage.MotorReactions);
        }
        else
        {
            RotorFlow(x, craft, load);
            look(KernelStage.RotorFlow);
            Motors(x, craft, load);
            look(KernelStage.Motors);
            Battery(x, command, craft, load, dx);
            look(KernelStage.Battery);
            BodyAir(craft, field, load);
            look(KernelStage.BodyAir);
            RotorAir(x, craft, field, load, dx);
            look(KernelStage.RotorAir);
        }
        Accelerations(x, craft, field, load, dx);
        look(KernelStage.Accelerations);
    }

    /// <summary><see cref="MidpointStep"/> with a look at what every stage left.</summary>
    internal static void MidpointStepwise(
        T* x, T* dx, T* next, T* dnext, T* command, CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load, T* scratch, double step,
        Action<KernelStage> look)
    {
        int used = StateIndex.Used(craft->RotorCount, craft->DynamicInflow != 0);
        PredictMiddle(x, dx, scratch, 0.5 * step, used);
        look(KernelStage.Predict);
        dnext[StateIndex.Charge] = dx[StateIndex.Charge];
        DerivativeStepwise(scratch, command, craft, field, load, dnext, look);
        AdvanceToEnd(x, dnext, next, step, used);
    }

    /// <summary><see cref="RungeKuttaStep"/> with a look at what every stage left.</summary>
    internal static void RungeKuttaStepwise(
        T* x, T* next, T* command, CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load, T* scratch, double step,
        Action<KernelStage> look)
    {
        T* k = scratch, y = scratch + StateIndex.Stride, sum = scratch + (2 * StateIndex.Stride);
        int used = StateIndex.Used(craft->RotorCount, craft->DynamicInflow != 0);
        k[StateIndex.Charge] = T.Of(0);
        DerivativeStepwise(x, command, craft, field, load, k, look);
        Advance(x, k, sum, step / 6, used);
        for (int n = 0; n < 3; n++)
        {
            Advance(x, k, y, n < 2 ? step / 2 : step, used);
            look(KernelStage.Predict);
            DerivativeStepwise(y, command, craft, field, load, k, look);
            if (n < 2) Advance(sum, k, sum, step / 3, used);
        }
        AdvanceToUnit(sum, k, next, step / 6, used);
    }
}
