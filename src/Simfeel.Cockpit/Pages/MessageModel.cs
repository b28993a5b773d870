namespace Simfeel.Cockpit.Pages;

/// <summary>One answer to a message.</summary>
/// <param name="Text">What the button says.</param>
/// <param name="Action">What it does; the page is closed first. Null only closes the page.</param>
public sealed record MessageChoice(string Text, Action? Action);

/// <summary>What a message shows and which answers it takes.</summary>
public sealed class MessageModel
{
    /// <summary>Heading.</summary>
    public required string Title { get; init; }

    /// <summary>What happened and what to do; may change while the page is open.</summary>
    public required string Text { get; set; }

    /// <summary>Answers, the usual one first; at least one.</summary>
    public required IReadOnlyList<MessageChoice> Choices { get; init; }

    /// <summary>Answer that Back gives.</summary>
    public int BackChoice { get; init; }
}
