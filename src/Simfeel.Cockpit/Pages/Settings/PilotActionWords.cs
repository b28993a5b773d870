using Simfeel.Cockpit.Input;

namespace Simfeel.Cockpit.Pages.Settings;

/// <summary>What pilot actions are called on pages.</summary>
public static class PilotActionWords
{
    /// <summary>A few words.</summary>
    public static string Of(PilotAction action) => action switch
    {
        PilotAction.Arm => "Arm, disarm",
        PilotAction.Restart => "Restart both",
        PilotAction.Swap => "Other build, from the start",
        PilotAction.SwapInPlace => "Other build, from here",
        PilotAction.Shadow => "Other build flies along",
        PilotAction.Level => "Self-levelling",
        PilotAction.Pause => "Hold time",
        PilotAction.SingleStep => "One step of held time",
        PilotAction.Slower => "Slower time",
        PilotAction.Faster => "Faster time",
        PilotAction.View => "Next view",
        PilotAction.MassView => "Mass view",
        PilotAction.Graphs => "Graphs",
        PilotAction.Bench => "Part bench",
        PilotAction.Results => "After-flight table",
        PilotAction.Picture => "Store a picture",
        PilotAction.Help => "This list",
        PilotAction.Mark => "Set a time mark",
        PilotAction.PreviousMark => "To the mark before",
        PilotAction.NextMark => "To the next mark",
        PilotAction.Marks => "Time marks",
        PilotAction.LevelGrid => "Level grid at this height",
        PilotAction.Menu => "Menu, close a page",
        _ => action.ToString(),
    };
}
