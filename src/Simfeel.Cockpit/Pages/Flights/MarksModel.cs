using Simfeel.Cockpit.Marks;

namespace Simfeel.Cockpit.Pages.Flights;

/// <summary>What the pages of time marks show and do.</summary>
public sealed class MarksModel
{
    /// <summary>The marks.</summary>
    public required Func<TimeMarks> Marks { get; init; }

    /// <summary>One line on where the marks are kept.</summary>
    public string Where { get; init; } = "";

    /// <summary>Whether a replay holds at every mark.</summary>
    public required Func<bool> HoldsAtMarks { get; init; }

    /// <summary>Has a replay hold at every mark, or not.</summary>
    public required Action<bool> SetHoldsAtMarks { get; init; }

    /// <summary>Sets a mark at the present moment.</summary>
    public required Action Set { get; init; }

    /// <summary>Gives a mark another note.</summary>
    public required Action<int, string> SetNote { get; init; }

    /// <summary>Deletes a mark.</summary>
    public required Action<int> Delete { get; init; }

    /// <summary>Goes to a mark; null in a live flight.</summary>
    public Action<int>? Jump { get; init; }
}
