using Simfeel.Cockpit.Platform;

namespace Simfeel.Cockpit.Input;

/// <summary>Keys and pad buttons that come with the program.</summary>
internal static class ActionDefaults
{
    public static (int Key, PadPress Pad) Of(PilotAction action) => action switch
    {
        PilotAction.Arm => (Scancode.Space, new(PadButton.A)),
        PilotAction.Restart => (Scancode.R, new(PadButton.B)),
        PilotAction.Swap => (Scancode.Tab, new(PadButton.X)),
        PilotAction.SwapInPlace => (Scancode.X, new(PadButton.Y)),
        PilotAction.Shadow => (Scancode.F, new(PadButton.RightShoulder)),
        PilotAction.Level => (Scancode.L, new(PadButton.A, Shift: true)),
        PilotAction.Pause => (Scancode.P, new(PadButton.DpLeft)),
        PilotAction.SingleStep => (Scancode.N, new(PadButton.DpRight)),
        PilotAction.Slower => (Scancode.Minus, new(PadButton.DpDown)),
        PilotAction.Faster => (Scancode.EqualSign, new(PadButton.DpUp)),
        PilotAction.View => (Scancode.V, new(PadButton.Back)),
        PilotAction.MassView => (Scancode.M, new(PadButton.Y, Shift: true)),
        PilotAction.Graphs => (Scancode.G, new(PadButton.LeftStick)),
        PilotAction.Bench => (Scancode.B, new(PadButton.X, Shift: true)),
        PilotAction.Results => (Scancode.T, new(PadButton.B, Shift: true)),
        PilotAction.Picture => (Scancode.F12, new(PadButton.RightStick)),
        PilotAction.Help => (Scancode.F1, new(PadButton.Start, Shift: true)),
        PilotAction.Mark => (Scancode.K, new(PadButton.RightShoulder, Shift: true)),
        PilotAction.PreviousMark => (Scancode.Comma, new(PadButton.DpLeft, Shift: true)),
        PilotAction.NextMark => (Scancode.Period, new(PadButton.DpRight, Shift: true)),
        PilotAction.Marks => (Scancode.J, new(PadButton.DpDown, Shift: true)),
        PilotAction.LevelGrid => (Scancode.H, new(PadButton.DpUp, Shift: true)),
        PilotAction.Menu => (Scancode.Escape, new(PadButton.Start)),
        _ => throw new ArgumentOutOfRangeException(nameof(action), action, "There is no such action."),
    };
}
