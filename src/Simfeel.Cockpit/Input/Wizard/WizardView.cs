using Simfeel.Flight;

namespace Simfeel.Cockpit.Input.Wizard;

/// <summary>What a page shows of the sticks wizard: one question, what moves, what may be chosen.</summary>
public sealed class WizardView
{
    /// <summary>Heading, such as "Move the right stick to the right and let go".</summary>
    public string Title { get; set; } = "";

    /// <summary>One or two sentences of help.</summary>
    public string Help { get; set; } = "";

    /// <summary>Answers that can be chosen; empty while the wizard only watches the sticks.</summary>
    public IReadOnlyList<string> Choices { get; set; } = [];

    /// <summary>Raw axes, -1 to 1.</summary>
    public double[] Axes { get; set; } = [];

    /// <summary>Raw axis that is being looked at; -1 for none.</summary>
    public int Axis { get; set; } = -1;

    /// <summary>Sticks as they would be flown with what is known so far.</summary>
    public Sticks Live { get; set; }

    /// <summary>0 to 1.</summary>
    public double Progress { get; set; }

    /// <summary>The wizard is done; its profile can be stored.</summary>
    public bool Done { get; set; }
}
