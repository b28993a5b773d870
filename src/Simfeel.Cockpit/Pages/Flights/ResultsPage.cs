using System.Globalization;
using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Pages.Widgets;
using Simfeel.Flight;
using Simfeel.Studies.Compare;
using Simfeel.Studies.Flights;

namespace Simfeel.Cockpit.Pages.Flights;

/// <summary>What was found in the flights, build A beside build B.</summary>
/// <param name="model">What it shows.</param>
public sealed class ResultsPage(ResultsModel model) : Page
{
    /// <summary>
    /// Rate from which a craft was turned and not just held, deg/s: a tenth of what half stick commands. A percent of less compares trembling.
    /// </summary>
    internal static double LeastRate { get; } = 0.1 * new PilotProfile().RollPitch.Rate(0.5) * 180 / Math.PI;

    /// <summary>Angular acceleration from which a craft was turned, deg/s^2: <see cref="LeastRate"/> within a tenth of a second.</summary>
    internal static double LeastAcceleration { get; } = LeastRate / 0.1;

    /// <inheritdoc/>
    public override bool IsOverFlight => true;

    /// <inheritdoc/>
    public override IReadOnlyList<PilotAction> Closing => [PilotAction.Results, PilotAction.Bench];

    private protected override IReadOnlyList<Widget> Build() =>
    [
        new Label("After-flight table", TextStyle.Title),
        new Label(
            model.Rows.Count > 0
                ? "What your flights so far show. Fly the same with both before you judge."
                : "Nothing was found yet. Fly each build for a while: roll hard and stop, climb, drop and catch.",
            TextStyle.Body),
        .. model.Rows.Count > 0
            ? [new Table(Headings(), Rows, [.. model.Rows.Select(row => row.Meaning)])]
            : Array.Empty<Widget>(),
        Label.Quiet(model.Rows.Count > 0
            ? string.Create(CultureInfo.InvariantCulture, $"Not flown: no rate above {LeastRate:F0} deg/s, a tenth of what half stick gives, or no acceleration above {LeastAcceleration:F0} deg/s².")
            : ""),
        new Label(() => model.Footnote, TextStyle.Small, Palette.Quiet),
        new Button("Close", Leave),
    ];

    /// <summary>Which of two numbers is greater, and by how many percent of their mean, in words and with an arrow.</summary>
    internal static string Greater(double? a, double? b)
    {
        if (a is not { } first || b is not { } second) return a is null && b is null ? "neither flew it" : "only one flew it";
        double percent = MetricPair.Percent(first, second);
        if (Math.Abs(percent) < 0.5) return "the same";
        string which = second > first ? "B greater ▶" : "◀ A greater";
        // against 0 it is 200 % whatever the other is
        return first == 0 || second == 0 ? which : FormattableString.Invariant($"{which} by {Math.Abs(percent):0} %");
    }

    /// <summary>A number of a row; null where the craft did not really fly it.</summary>
    internal static double? Flown(double? value, string unit) => value is { } number && Math.Abs(number) < Least(unit) ? null : value;

    private static double Least(string unit) => unit switch
    {
        "deg/s" => LeastRate,
        "deg/s²" => LeastAcceleration,
        _ => 0,
    };

    private string[] Headings() => ["", "A: " + model.Builds[0], "B: " + model.Builds[1], "which is greater"];

    private IReadOnlyList<string[]> Rows() =>
        [.. model.Rows.Select(row => Cells(row with { A = Flown(row.A, row.Unit), B = Flown(row.B, row.Unit) }))];

    private static string[] Cells(FindRow row) => [row.Name, Number(row.A, row), Number(row.B, row), Greater(row.A, row.B)];

    private static string Number(double? value, FindRow row) => value is not { } number
        ? "not flown"
        : $"{number.ToString("F" + row.Decimals, CultureInfo.InvariantCulture)} {row.Unit}".TrimEnd();
}
