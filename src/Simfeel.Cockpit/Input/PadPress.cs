namespace Simfeel.Cockpit.Input;

/// <summary>A pad button, alone or while the left shoulder is held.</summary>
/// <param name="Button">The button.</param>
/// <param name="Shift">The left shoulder is held.</param>
public readonly record struct PadPress(PadButton Button, bool Shift = false)
{
    /// <summary>As it stands in a file and on a page: <c>x</c>, <c>leftshoulder+x</c>.</summary>
    public override string ToString() => (Shift ? "leftshoulder+" : "") + Button.ToString().ToLowerInvariant();

    /// <summary>As a page shows it: <c>left shoulder + X</c>.</summary>
    public string Words => (Shift ? "left shoulder + " : "") + Button switch
    {
        PadButton.LeftStick => "left stick in",
        PadButton.RightStick => "right stick in",
        PadButton.LeftShoulder => "left shoulder",
        PadButton.RightShoulder => "right shoulder",
        PadButton.DpUp => "cross up",
        PadButton.DpDown => "cross down",
        PadButton.DpLeft => "cross left",
        PadButton.DpRight => "cross right",
        _ => Button.ToString(),
    };

    /// <summary>Reads what <see cref="ToString"/> writes.</summary>
    public static bool TryParse(string text, out PadPress press)
    {
        string word = (text ?? "").Trim();
        bool shift = word.StartsWith("leftshoulder+", StringComparison.OrdinalIgnoreCase);
        if (shift) word = word["leftshoulder+".Length..];
        bool isKnown = Enum.TryParse(word, ignoreCase: true, out PadButton button) && Enum.IsDefined(button) && word.All(char.IsLetter);
        press = new(button, shift);
        return isKnown;
    }
}
