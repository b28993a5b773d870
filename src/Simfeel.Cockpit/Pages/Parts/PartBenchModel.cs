using Simfeel.Cockpit.Parts;

namespace Simfeel.Cockpit.Pages.Parts;

/// <summary>What the page of the part bench shows and does.</summary>
public sealed class PartBenchModel
{
    /// <summary>Name of the build that lies on the bench.</summary>
    public required Func<string> Build { get; init; }

    /// <summary>Numbers that can be changed.</summary>
    public required Func<IReadOnlyList<PartBenchItem>> Items { get; init; }

    /// <summary>What the changes change.</summary>
    public required Func<IReadOnlyList<PartBenchDifference>> Differences { get; init; }

    /// <summary>How the changed build stands, such as "The next restart flies the change." or why it is refused.</summary>
    public required Func<string> State { get; init; }

    /// <summary>Whether the change is being worked out.</summary>
    public required Func<bool> Working { get; init; }

    /// <summary>Whether the change was refused; the last good build flies on.</summary>
    public required Func<bool> Refused { get; init; }

    /// <summary>Called after a number was changed.</summary>
    public required Action<PartBenchItem> Changed { get; init; }

    /// <summary>Puts every number back to what the file gives.</summary>
    public required Action Reset { get; init; }

    /// <summary>Restarts with the changed build and leaves the page; null for no such button.</summary>
    public Action? Fly { get; init; }

    /// <summary>Puts the other build on the bench; null for no such button.</summary>
    public Action? OtherBuild { get; init; }
}
