namespace Simfeel.Cockpit.Platform;

/// <summary>
/// Keys by their place on the keyboard, as <see cref="WindowEvent.Code"/> has them: usages of the keyboard page (HID Usage Tables 1.12,
/// section 10), which SDL's scancodes are.
/// </summary>
internal static class Scancode
{
    public const int A = 4, B = 5, D = 7, F = 9, G = 10, H = 11, J = 13, K = 14, L = 15, M = 16, N = 17, P = 19, R = 21, S = 22, T = 23, V = 25, W = 26, X = 27;

    public const int Enter = 40, Escape = 41, Backspace = 42, Tab = 43, Space = 44, Minus = 45, EqualSign = 46, Comma = 54, Period = 55;

    public const int F1 = 58, F12 = 69;

    public const int Home = 74, Delete = 76, End = 77, Right = 79, Left = 80, Down = 81, Up = 82, KeypadEnter = 88;

    public const int LeftShift = 225, RightShift = 229;
}
