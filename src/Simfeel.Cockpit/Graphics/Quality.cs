namespace Simfeel.Cockpit.Graphics;

/// <summary>How much the picture costs.</summary>
public enum Quality
{
    /// <summary>For software drawing: no shadow map, a blob under the craft, few plants.</summary>
    Low,

    /// <summary>Shadows, all plants.</summary>
    Medium,

    /// <summary>Fine shadows, smoothed edges.</summary>
    High,
}
