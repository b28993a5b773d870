using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Pages.Widgets;
using Simfeel.Cockpit.Parts;

namespace Simfeel.Cockpit.Pages.Parts;

/// <summary>The part bench: numbers of the build on sliders, and what changing them changes.</summary>
/// <param name="model">What it shows and does.</param>
public sealed class PartBenchPage(PartBenchModel model) : Page
{
    private IReadOnlyList<PartBenchItem>? _items;

    /// <inheritdoc/>
    public override bool IsOverFlight => true;

    /// <inheritdoc/>
    public override IReadOnlyList<PilotAction> Closing => [PilotAction.Bench];

    /// <inheritdoc/>
    public override bool IsLive => true;

    private protected override IReadOnlyList<Widget> Build()
    {
        _items = model.Items();
        List<Widget> last = [];
        if (model.Fly is { } fly) last.Add(new Button("Fly it", fly, "restarts with the change", main: true));
        last.Add(new Button("Back to the file", model.Reset, "every number as the build has it"));
        if (model.OtherBuild is { } other) last.Add(new Button("Other build", other, "onto the bench"));
        last.Add(new Button("Close", Leave, "the flight goes on"));
        return
        [
            new Label(() => "Part bench: " + model.Build(), TextStyle.Title, Palette.Ink),
            new Label(() => model.Working() || model.Refused() ? "" : model.State(), TextStyle.Body, Palette.Ink),
            new Label(() => model.Working() ? "Working it out ..." : "", TextStyle.Body, Palette.Quiet),
            new Label(
                () => model.Refused() && !model.Working() ? "! Refused; the last good build stays. " + model.State() : "",
                TextStyle.Body, Palette.Warning),
            new Flow([.. _items.Select(Slider)], 400, 10),
            new Table(["", "before", "after", "change"], Rows),
            new Flow(last, 190),
        ];
    }

    private protected override void Follow()
    {
        if (!ReferenceEquals(_items, model.Items())) Rebuild();
    }

    private static string Number(double value) =>
        Math.Abs(value) >= 1000 ? FormattableString.Invariant($"{value:0}") : FormattableString.Invariant($"{value:G4}");

    private static string[] Row(PartBenchDifference row)
    {
        string unit = row.Unit.Length > 0 ? " " + row.Unit : "";
        double share = row.Before == 0 ? double.NaN : 100 * (row.After - row.Before) / Math.Abs(row.Before);
        string change = row.After == row.Before ? "same"
            : double.IsNaN(share) ? "changed"
            : FormattableString.Invariant($"{(share > 0 ? "▲ more, +" : "▼ less, ")}{share:0.0} %");
        return [row.Name, Number(row.Before) + unit, Number(row.After) + unit, change];
    }

    private IReadOnlyList<string[]> Rows() => [.. model.Differences().Select(Row)];

    private Slider Slider(PartBenchItem item) => new(
        item.Label,
        new(item.Low, item.High, item.Step),
        () => item.Value,
        value =>
        {
            item.Value = value;
            model.Changed(item);
        },
        value => FormattableString.Invariant($"{value:0.###} {item.Unit}").TrimEnd(),
        FormattableString.Invariant($"file: {item.Original:0.###} {item.Unit}").TrimEnd());
}
