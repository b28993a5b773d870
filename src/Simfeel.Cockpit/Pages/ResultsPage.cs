using System.Globalization;
using Simfeel.Cockpit.Overlay;
using Simfeel.Studies.Flights;

namespace Simfeel.Cockpit.Pages;

/// <summary>What was found in the flights, build A beside build B.</summary>
/// <param name="model">What it shows.</param>
public sealed class ResultsPage(ResultsModel model) : Page
{
    /// <inheritdoc/>
    public override bool IsOverFlight => true;

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
        new Label(() => model.Footnote, TextStyle.Small, Palette.Quiet),
        new Button("Close", Leave),
    ];

    /// <summary>Which of two numbers is greater, and by how much, in words and with an arrow.</summary>
    internal static string Greater(double? a, double? b)
    {
        if (a is not { } first || b is not { } second) return a is null && b is null ? "neither flew it" : "only one flew it";
        double least = Math.Min(Math.Abs(first), Math.Abs(second));
        double gap = Math.Abs(second - first);
        if (gap == 0) return "the same";
        string which = second > first ? "B greater ▶" : "◀ A greater";
        if (least > 0 && gap / least < 0.005) return "the same";
        return least == 0 ? which : FormattableString.Invariant($"{which} by {100 * gap / least:0} %");
    }

    private string[] Headings() => ["", "A: " + model.Builds[0], "B: " + model.Builds[1], "which is greater"];

    private IReadOnlyList<string[]> Rows() =>
        [.. model.Rows.Select(row => (string[])[row.Name, Number(row.A, row), Number(row.B, row), Greater(row.A, row.B)])];

    private static string Number(double? value, FindRow row) => value is not { } number
        ? "not flown"
        : $"{number.ToString("F" + row.Decimals, CultureInfo.InvariantCulture)} {row.Unit}".TrimEnd();
}
