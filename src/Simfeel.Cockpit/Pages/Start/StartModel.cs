namespace Simfeel.Cockpit.Pages.Start;

/// <summary>What the start page shows and does.</summary>
public sealed class StartModel
{
    /// <summary>Builds to pick from; at least one.</summary>
    public required IReadOnlyList<BuildChoice> Builds { get; set; }

    /// <summary>Picked builds, A and B, as indices of <see cref="Builds"/>.</summary>
    public int[] Picked { get; } = [0, 0];

    /// <summary>Names of the fields; at least one.</summary>
    public required IReadOnlyList<string> Fields { get; set; }

    /// <summary>Picked field.</summary>
    public int Field { get; set; }

    /// <summary>Name of the stick device, or "Keyboard".</summary>
    public string SticksName { get; set; } = "";

    /// <summary>How the stick device stands, such as "ready" or "not set up yet: choose Sticks".</summary>
    public string SticksState { get; set; } = "";

    /// <summary>Whether <see cref="SticksState"/> asks for attention.</summary>
    public bool SticksNeedCare { get; set; }

    /// <summary>Flies the picked builds.</summary>
    public required Action Fly { get; init; }

    /// <summary>Opens the lessons.</summary>
    public required Action Lessons { get; init; }

    /// <summary>Opens the page before blind flights.</summary>
    public required Action Blind { get; init; }

    /// <summary>Opens the sticks wizard.</summary>
    public required Action Sticks { get; init; }

    /// <summary>Opens the settings.</summary>
    public required Action Settings { get; init; }

    /// <summary>Opens the list of keys.</summary>
    public required Action Help { get; init; }

    /// <summary>Leaves the program.</summary>
    public required Action Quit { get; init; }

    /// <summary>Called after another build or field was picked; may be null.</summary>
    public Action? Changed { get; init; }
}
