namespace Simfeel.Cockpit.Input;

/// <summary>Keys and pad buttons that come with the program.</summary>
internal static class ActionDefaults
{
    // USB HID usages of the keyboard page (HID Usage Tables 1.12, section 10), which SDL's scancodes are
    private const int B = 5, F = 9, G = 10, H = 11, J = 13, K = 14, L = 15, M = 16, N = 17, P = 19, R = 21, T = 23, V = 25, X = 27;
    private const int Escape = 41, Tab = 43, Space = 44, Minus = 45, EqualSign = 46, Comma = 54, Period = 55, F1 = 58, F12 = 69;

    public static (int Key, PadPress Pad) Of(PilotAction action) => action switch
    {
        PilotAction.Arm => (Space, new(PadButton.A)),
        PilotAction.Restart => (R, new(PadButton.B)),
        PilotAction.Swap => (Tab, new(PadButton.X)),
        PilotAction.SwapInPlace => (X, new(PadButton.Y)),
        PilotAction.Shadow => (F, new(PadButton.RightShoulder)),
        PilotAction.Level => (L, new(PadButton.A, Shift: true)),
        PilotAction.Pause => (P, new(PadButton.DpLeft)),
        PilotAction.SingleStep => (N, new(PadButton.DpRight)),
        PilotAction.Slower => (Minus, new(PadButton.DpDown)),
        PilotAction.Faster => (EqualSign, new(PadButton.DpUp)),
        PilotAction.View => (V, new(PadButton.Back)),
        PilotAction.MassView => (M, new(PadButton.Y, Shift: true)),
        PilotAction.Graphs => (G, new(PadButton.LeftStick)),
        PilotAction.Bench => (B, new(PadButton.X, Shift: true)),
        PilotAction.Results => (T, new(PadButton.B, Shift: true)),
        PilotAction.Picture => (F12, new(PadButton.RightStick)),
        PilotAction.Help => (F1, new(PadButton.Start, Shift: true)),
        PilotAction.Mark => (K, new(PadButton.RightShoulder, Shift: true)),
        PilotAction.PreviousMark => (Comma, new(PadButton.DpLeft, Shift: true)),
        PilotAction.NextMark => (Period, new(PadButton.DpRight, Shift: true)),
        PilotAction.Marks => (J, new(PadButton.DpDown, Shift: true)),
        PilotAction.LevelGrid => (H, new(PadButton.DpUp, Shift: true)),
        PilotAction.Menu => (Escape, new(PadButton.Start)),
        _ => throw new ArgumentOutOfRangeException(nameof(action), action, "There is no such action."),
    };
}
