using Simfeel.Cockpit.Marks;

namespace Simfeel.Cockpit.Overlay;

/// <summary>What the time bar of a replay shows. The application fills it every frame; nothing is allocated.</summary>
public sealed class TimelineReadout
{
    /// <summary>Whether there is a bar at all.</summary>
    public bool Shown { get; set; }

    /// <summary>Time since the recording began, s.</summary>
    public double Position { get; set; }

    /// <summary>Length of the recording, s.</summary>
    public double Length { get; set; }

    /// <summary>Marks on the bar; null for none.</summary>
    public TimeMarks? Marks { get; set; }

    /// <summary>Note of the mark that was just passed, shown large; empty for none.</summary>
    public string Caption { get; set; } = "";
}
