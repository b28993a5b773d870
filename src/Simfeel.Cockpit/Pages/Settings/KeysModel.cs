namespace Simfeel.Cockpit.Pages.Settings;

/// <summary>One action with its key and its pad button.</summary>
public sealed class KeyLine
{
    /// <summary>What the action does, in a few words.</summary>
    public required string Name { get; init; }

    /// <summary>Name of its key, such as "R"; empty for none.</summary>
    public required Func<string> Key { get; init; }

    /// <summary>Name of its pad button, such as "button 3"; empty for none.</summary>
    public required Func<string> Pad { get; init; }

    /// <summary>What else lies on the same key or button, as a sentence; empty for nothing.</summary>
    public required Func<string> Clash { get; init; }

    /// <summary>Puts the action on another key (SDL scancode).</summary>
    public required Action<int> SetKey { get; init; }

    /// <summary>Puts the action on another button of the pad.</summary>
    public required Action<int> SetPad { get; init; }
}

/// <summary>What the page of keys shows and changes.</summary>
public sealed class KeysModel
{
    /// <summary>All actions, in the order to show them.</summary>
    public required IReadOnlyList<KeyLine> Lines { get; init; }

    /// <summary>How the keyboard flies, in a sentence or two; empty for nothing to say.</summary>
    public string FlyingKeys { get; init; } = "";

    /// <summary>Puts every action back on its first key and button.</summary>
    public required Action Reset { get; init; }
}
