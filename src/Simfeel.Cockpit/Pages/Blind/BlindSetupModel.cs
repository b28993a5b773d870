using Simfeel.Cockpit.Application.Blind;

namespace Simfeel.Cockpit.Pages.Blind;

/// <summary>What the page before blind flights does.</summary>
public sealed class BlindSetupModel
{
    /// <summary>Begins with what is set.</summary>
    public required Action<BlindOptions> Begin { get; init; }
}
