using Simfeel.Cockpit.Input.Wizard;

namespace Simfeel.Cockpit.Pages.Wizard;

/// <summary>What the page of the sticks wizard shows and does.</summary>
public sealed class WizardModel
{
    /// <summary>Name of the device; empty while none is there.</summary>
    public required Func<string> Device { get; init; }

    /// <summary>What the wizard shows now.</summary>
    public required Func<WizardView> View { get; init; }

    /// <summary>Takes an answer, index of <see cref="WizardView.Choices"/>.</summary>
    public required Action<int> Choose { get; init; }

    /// <summary>Stores the profile when the wizard is done.</summary>
    public required Action Store { get; init; }

    /// <summary>Starts over.</summary>
    public required Action Again { get; init; }

    /// <summary>Leaves the wizard without storing; called when the page is left before it is done.</summary>
    public required Action Cancel { get; init; }
}
