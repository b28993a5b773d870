namespace Simfeel.Builds.Writing;

/// <summary>A measured number for a build file, in the unit of its key.</summary>
/// <param name="Key">Full key, such as <c>motor.kv_rpm_per_V</c>; not of an extra part.</param>
/// <param name="Low">Low end of what it may be.</param>
/// <param name="Typical">The number itself.</param>
/// <param name="High">High end of what it may be.</param>
public sealed record MeasuredNumber(string Key, double Low, double Typical, double High)
{
    /// <summary>A number whose uncertainty is not known.</summary>
    public MeasuredNumber(string key, double value)
        : this(key, value, value, value)
    {
    }
}
