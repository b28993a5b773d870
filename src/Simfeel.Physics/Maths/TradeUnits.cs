namespace Simfeel.Physics.Maths;

/// <summary>Units that the trade speaks in, for the borders where results are shown; inside all is SI.</summary>
public static class TradeUnits
{
    /// <summary>A gram-force, N.</summary>
    public const double GramForce = 9.80665e-3;

    /// <summary>An inch, m.</summary>
    public const double Inch = 0.0254;

    /// <summary>Revolutions per minute in one rad/s.</summary>
    public const double RpmPerRadian = 30 / Math.PI;
}
