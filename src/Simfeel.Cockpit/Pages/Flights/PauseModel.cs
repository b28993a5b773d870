namespace Simfeel.Cockpit.Pages.Flights;

/// <summary>What the pause menu shows and does. An action that is null has no button.</summary>
public sealed class PauseModel
{
    /// <summary>One line on the flight, such as "Wagtail (A) is flown over Gull Point."; may change.</summary>
    public string State { get; set; } = "";

    /// <summary>Flies on.</summary>
    public required Action Resume { get; init; }

    /// <summary>Both craft back to their start.</summary>
    public Action? Restart { get; init; }

    /// <summary>Flies the other build from the start.</summary>
    public Action? Swap { get; init; }

    /// <summary>Flies the next flight of a blind trial.</summary>
    public Action? NextFlight { get; init; }

    /// <summary>Opens the vote on a blind trial.</summary>
    public Action? Vote { get; init; }

    /// <summary>Opens the part bench.</summary>
    public Action? Bench { get; init; }

    /// <summary>Opens the after-flight table.</summary>
    public Action? Results { get; init; }

    /// <summary>Opens the list of time marks.</summary>
    public Action? Marks { get; init; }

    /// <summary>Opens the sticks wizard.</summary>
    public Action? Sticks { get; init; }

    /// <summary>Opens the settings.</summary>
    public Action? Settings { get; init; }

    /// <summary>Opens the list of keys.</summary>
    public Action? Keys { get; init; }

    /// <summary>Ends the flight.</summary>
    public required Action EndFlight { get; init; }

    /// <summary>Where ending the flight leads.</summary>
    public required string AfterFlight { get; init; }
}
