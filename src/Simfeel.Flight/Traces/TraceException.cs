using Simfeel.Builds;

namespace Simfeel.Flight.Traces;

/// <summary>A trace that cannot be written or read; the message says what is wrong in one line, for people.</summary>
public sealed class TraceException : Exception
{
    /// <summary>With a message.</summary>
    public TraceException(string message)
        : base(OneLine.Of(message))
    {
    }

    /// <summary>With a message and what lies behind it.</summary>
    public TraceException(string message, Exception inner)
        : base(OneLine.Of(message), inner)
    {
    }
}
