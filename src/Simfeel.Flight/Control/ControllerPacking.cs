using Simfeel.Flight.Drills;
using Simfeel.Flight.Tuning;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;

namespace Simfeel.Flight.Control;

/// <summary>Writes a <see cref="TunedUnit"/> into one lane of the rate controller.</summary>
internal static unsafe class ControllerPacking
{
    /// <summary>Fills a lane; <see cref="ControllerLanes{T}.RotorCount"/> is already set.</summary>
    /// <param name="controller">Receives the constants.</param>
    /// <param name="state">Receives a memory settled at the start.</param>
    /// <param name="lane">The lane.</param>
    /// <param name="unit">The craft with its gains.</param>
    /// <param name="profile">The pilot, whose loop rate and filters the constants hold.</param>
    /// <param name="start">Where the flight begins.</param>
    public static void Pack<T>(
        ControllerLanes<T>* controller, ControllerState<T>* state, int lane, TunedUnit unit, PilotProfile profile, in DrillStart start)
        where T : unmanaged, ILane<T>
    {
        double period = profile.LoopPeriod;
        AxisLanes<T>* axes = (AxisLanes<T>*)&controller->Axes;
        AxisState<T>* memory = (AxisState<T>*)&state->Axes;
        MixLanes<T>* mix = (MixLanes<T>*)&controller->Mix;
        for (int axis = 0; axis < 3; axis++)
        {
            AxisGains gains = unit.Gains[axis];
            Set(&axes[axis].Proportional, gains.Proportional);
            Set(&axes[axis].IntegralStep, gains.Integral * period);
            Set(&axes[axis].DerivativeRate, gains.Derivative / period);
            Set(&axes[axis].FeedForwardRate, gains.FeedForward / period);
            // without a controller the filter lets nothing of the gyro through
            Set(&axes[axis].GyroShare, unit.Policy == TuningPolicy.Bare ? 0 : FirstOrderFilter.Share(unit.Unit.GyroLowPass_Hz, period));
            Set(&axes[axis].DerivativeShare, FirstOrderFilter.Share(profile.DerivativeLowPass_Hz, period));
            Set(&axes[axis].FeedForwardShare, FirstOrderFilter.Share(profile.FeedForwardLowPass_Hz, period));
            Set(&axes[axis].IntegralLimit, unit.IntegralLimit[axis]);
            Set(&memory[axis].Rate, start.State.w_WB_B[axis]);
            Set(&memory[axis].Change, 0);
            Set(&memory[axis].Command, start.State.w_WB_B[axis]);
            Set(&memory[axis].CommandChange, 0);
            // the integrator already carries what an off-centre load or the speed asks for
            Set(&memory[axis].Integral, start.Trim[axis]);
        }
        for (int k = 0; k < controller->RotorCount; k++)
        {
            Set(&mix[k].Roll, unit.Allocation.Shares[k, 0]);
            Set(&mix[k].Pitch, unit.Allocation.Shares[k, 1]);
            Set(&mix[k].Yaw, unit.Allocation.Shares[k, 2]);
        }
        Set(&controller->Idle, unit.IdleShare);
        Set(&controller->B1, unit.Map.B1);
        Set(&controller->B2, unit.Map.B2);
        Set(&controller->B3, unit.Map.B3);

        void Set(T* at, double value) => LaneMemory.Set(at, lane, value);
    }
}
