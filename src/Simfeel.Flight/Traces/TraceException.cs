namespace Simfeel.Flight.Traces;

/// <summary>A trace that cannot be written or read; the message says what is wrong, for people.</summary>
public sealed class TraceException : Exception
{
    /// <summary>With a message.</summary>
    public TraceException(string message)
        : base(message)
    {
    }

    /// <summary>With a message and what lies behind it.</summary>
    public TraceException(string message, Exception inner)
        : base(message, inner)
    {
    }
}
