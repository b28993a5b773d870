namespace Simfeel.Cockpit.Graphics.Views;

/// <summary>Where a picture is seen from.</summary>
public enum View
{
    /// <summary>Through the craft's own camera.</summary>
    Onboard,

    /// <summary>From behind and a little above.</summary>
    Chase,

    /// <summary>By the eye of the pilot who stands on the field.</summary>
    Ground,

    /// <summary>Two pictures side by side, build A left, build B right; each is made with one of the other views and a rig of its own.</summary>
    Split,
}
