using Simfeel.Cockpit.Platform;
using Simfeel.Cockpit.Settings;

namespace Simfeel.Cockpit.Input;

/// <summary>Which key and which pad button does what. Each action has one key and one pad button at any time.</summary>
public sealed class ActionMap
{
    private const int Scancodes = 512;

    private static readonly PilotAction[] All = Enum.GetValues<PilotAction>();

    private readonly int[] _keys = new int[All.Length];
    private readonly PadPress[] _pads = new PadPress[All.Length];

    /// <summary>A map with the keys and buttons that come with the program.</summary>
    public ActionMap()
    {
        foreach (PilotAction action in All) (_keys[(int)action], _pads[(int)action]) = ActionDefaults.Of(action);
    }

    /// <summary>Keys that fly (see <see cref="KeyboardSticks"/>) and so do nothing else, as scancodes.</summary>
    public static IReadOnlyList<int> FlyingKeys => KeyboardSticks.Keys;

    /// <summary>Key of an action, as an SDL scancode (USB HID usage).</summary>
    public int KeyOf(PilotAction action) => _keys[(int)action];

    /// <summary>Pad button of an action.</summary>
    public PadPress PadOf(PilotAction action) => _pads[(int)action];

    /// <summary>Name of a key as SDL has it, such as "Tab"; "key 300" for one without.</summary>
    public static unsafe string KeyName(int scancode)
    {
        string name = scancode is > 0 and < Scancodes ? Sdl.Text(Sdl.SDL_GetScancodeName(scancode)) : "";
        return name.Length > 0 ? name : $"key {scancode}";
    }

    /// <summary>The action of a key that went down; repeats do nothing. Never allocates.</summary>
    public bool TryKey(in WindowEvent happened, out PilotAction action)
    {
        action = default;
        if (happened is not { Kind: WindowEventKind.KeyDown, Value: 0 }) return false;
        int at = Array.IndexOf(_keys, happened.Code);
        action = (PilotAction)Math.Max(at, 0);
        return at >= 0;
    }

    /// <summary>The action of a pad button that went down. Never allocates.</summary>
    public bool TryPad(PadButton button, bool shift, out PilotAction action)
    {
        for (int n = 0; n < _pads.Length; n++)
        {
            action = (PilotAction)n;
            if (_pads[n].Button == button && _pads[n].Shift == shift) return true;
        }
        action = default;
        return false;
    }

    /// <summary>
    /// Puts an action on another key. Where another action has that key, the two change keys, so that none is left without.
    /// </summary>
    /// <param name="action">The action.</param>
    /// <param name="scancode">The key.</param>
    /// <param name="said">What was done, or why nothing was.</param>
    public bool TrySetKey(PilotAction action, int scancode, out string said)
    {
        if (scancode is <= 0 or >= Scancodes)
        {
            said = $"There is no key {scancode}.";
            return false;
        }
        if (FlyingKeys.Contains(scancode))
        {
            said = $"{KeyName(scancode)} flies the craft and cannot do anything else.";
            return false;
        }
        int holder = Array.IndexOf(_keys, scancode);
        if (holder >= 0) _keys[holder] = _keys[(int)action];
        _keys[(int)action] = scancode;
        said = holder < 0 || holder == (int)action
            ? $"{Name(action)} is on {KeyName(scancode)}."
            : $"{Name(action)} is on {KeyName(scancode)}; {Name((PilotAction)holder)} went to {KeyName(_keys[holder])}.";
        return true;
    }

    /// <summary>Puts an action on another pad button; where another action has it, the two change buttons.</summary>
    /// <param name="action">The action.</param>
    /// <param name="press">The button.</param>
    /// <param name="said">What was done, or why nothing was.</param>
    public bool TrySetPad(PilotAction action, PadPress press, out string said)
    {
        if (press.Button is PadButton.LeftShoulder or PadButton.Guide)
        {
            said = press.Button == PadButton.Guide ? "That button belongs to the system." : "The left shoulder is the shift of the pad.";
            return false;
        }
        int holder = Array.IndexOf(_pads, press);
        if (holder >= 0) _pads[holder] = _pads[(int)action];
        _pads[(int)action] = press;
        said = holder < 0 || holder == (int)action
            ? $"{Name(action)} is on {press}."
            : $"{Name(action)} is on {press}; {Name((PilotAction)holder)} went to {_pads[holder]}.";
        return true;
    }

    /// <summary>An action in plain words, such as "Swap in place".</summary>
    public static string Name(PilotAction action)
    {
        string words = TomlSheet.WordOf(action.ToString()).Replace('_', ' ');
        return char.ToUpperInvariant(words[0]) + words[1..];
    }
}
