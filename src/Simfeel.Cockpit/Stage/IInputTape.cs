using Simfeel.Flight;

namespace Simfeel.Cockpit.Stage;

/// <summary>Inputs of an earlier flight, one after the other.</summary>
public interface IInputTape
{
    /// <summary>The next input; false at the end.</summary>
    bool TryNext(out PilotInput input);
}
