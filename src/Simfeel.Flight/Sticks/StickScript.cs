namespace Simfeel.Flight;

/// <summary>
/// Inputs from a list: from each time on the sticks and switches stand as it says; pulses act at the first reading only. For
/// tests, tours and measurements of the window, where no pilot sits.
/// </summary>
public sealed class StickScript
{
    private readonly (double Time, Sticks Sticks, PilotSwitches Switches)[] _steps;
    private const PilotSwitches Pulses = PilotSwitches.Restart | PilotSwitches.SwapFromStart | PilotSwitches.SwapInPlace;

    /// <summary>A script.</summary>
    /// <param name="steps">Times (s) in rising order with what holds from then on; the first at 0.</param>
    public StickScript(params (double Time, Sticks Sticks, PilotSwitches Switches)[] steps)
    {
        ArgumentNullException.ThrowIfNull(steps);
        if (steps.Length == 0 || steps[0].Time != 0) throw new ArgumentException("A script starts at time 0.", nameof(steps));
        for (int n = 1; n < steps.Length; n++)
        {
            if (!(steps[n].Time > steps[n - 1].Time)) throw new ArgumentException("Times rise from step to step.", nameof(steps));
        }
        _steps = steps;
    }

    /// <summary>The input of a stick reading.</summary>
    /// <param name="reading">Counted from 0.</param>
    /// <param name="period">Time between two readings, s.</param>
    public PilotInput At(long reading, double period)
    {
        int step = StepAt(reading * period);
        bool first = reading == 0 || StepAt((reading - 1) * period) != step;
        PilotSwitches switches = first ? _steps[step].Switches : _steps[step].Switches & ~Pulses;
        return PilotInput.Of(_steps[step].Sticks, switches);
    }

    private int StepAt(double time)
    {
        int step = 0;
        // half a microsecond, so that a time given in decimals is met by the reading at that time
        while (step + 1 < _steps.Length && _steps[step + 1].Time <= time + 5e-7) step++;
        return step;
    }
}
