namespace Simfeel.Cockpit.Platform;

/// <summary>Something of the machine is missing, said in one sentence that tells what to do.</summary>
public sealed class MissingOnMachineException(string message) : Exception(message);
