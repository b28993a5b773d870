using Simfeel.Flight;

namespace Simfeel.Cockpit.Stage;

/// <summary>A script in place of a pilot; its last step goes on for ever.</summary>
internal sealed class ScriptTape(StickScript script, double period) : IInputTape
{
    private long _reading;

    /// <inheritdoc/>
    public bool TryNext(out PilotInput input)
    {
        input = script.At(_reading++, period);
        return true;
    }
}
