namespace Simfeel.Cockpit.Application;

/// <summary>A file that was named cannot be used; the message says which and why.</summary>
public sealed class UnusableFileException(string message) : Exception(message);
