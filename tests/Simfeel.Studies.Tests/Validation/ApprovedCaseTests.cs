using System.Globalization;
using System.Text;
using Simfeel.Studies.Plots;
using Simfeel.Studies.Tests.Approved;
using Simfeel.Studies.Validation;

namespace Simfeel.Studies.Tests.Validation;

/// <summary>
/// What each comparison shows, published numbers beside the model's, to four digits: titles, axes, series, bounds and errors,
/// <see cref="ApprovedPage"/>. A copied number that changes, or a model that moves, shows as a line.
/// </summary>
public class ApprovedCaseTests
{
    [Fact]
    public void Momentum_theory() => Check(new MomentumTheoryCase());

    [Fact]
    public void Vortex_ring() => Check(new VortexRingCase());

    [Fact]
    public void Castles_and_Gray_in_hover() => Check(new CastlesGrayHoverCase());

    [Fact]
    public void Closed_form_blade() => Check(new ClosedFormBladeCase());

    [Fact]
    public void Knight_and_Hefner() => Check(new KnightHefnerCase());

    [Fact]
    public void Caradonna_and_Tung() => Check(new CaradonnaTungCase());

    [Fact]
    public void Propeller_of_five_inch_with_its_section() => Check(new Da4002Case());

    [Fact]
    public void Propeller_of_three_blades_of_that_source() => Check(new Da4022Case());

    [Fact]
    public void Small_propellers_of_two_volumes() => Check(new SmallPropellersCase());

    [Fact]
    public void Lift_of_the_default_section() => Check(new DefaultSectionLiftCase());

    [Fact]
    public void Drag_of_the_default_section() => Check(new DefaultSectionDragCase());

    [Fact]
    public void Ground_effect() => Check(new GroundEffectCase());

    [Fact]
    public void Bounds_of_all_runs() => Check(new BoundsCase());

    private static void Check(ValidationCase known)
    {
        CaseResult result = known.Run();
        StringBuilder text = new();
        Line($"{known.Name}: {known.Title}");
        Line(known.Source);
        Line(known.ShortSource);
        Line(known.Note);
        foreach (ValidationCheck check in result.Checks)
        {
            Line("");
            Line($"{check.What}: {check.Rule} {Number(check.Bound)} {(check.Relative ? "of it" : "apart")}, {check.Basis}, {(check.Inside ? "kept" : "broken")}");
            Line($"mean {Error(check.MeanError)}, rms {Error(check.RootMeanSquareError)}, worst {Error(check.WorstError)}");
            // long lists are equally spaced or drawn below: every eighth will do
            int every = check.Points.Count > 80 ? 8 : 1;
            Line(string.Join("; ", check.Points.Where((_, n) => n % every == 0).Select(point => $"{Number(point.Published)} {Number(point.Model)}")));
        }
        ChartSheet sheet = result.Sheet;
        Line("");
        Line($"sheet: {sheet.Title}, {sheet.Columns} x {sheet.RowHeight}");
        foreach (Chart chart in sheet.Charts)
        {
            Line("");
            Line($"chart: {chart.Title}; {Axis(chart.X)}; {Axis(chart.Y)}; {chart.Legend}");
            foreach (ChartNote note in chart.Notes) Line($"note: {note.Text} {Number(note.X)} {Number(note.Y)} {note.Side}");
            foreach (ChartSeries series in chart.Series)
            {
                int every = series.X.Count > 60 ? 8 : 1;
                Line($"{series.Mark} {series.Style} {series.Name} ({series.X.Count}): " + string.Join("; ", series.X.Zip(series.Y).Where((_, n) => n % every == 0 || n == series.X.Count - 1).Select(p => $"{Number(p.First)} {Number(p.Second)}")));
            }
        }
        ApprovedPage.Check($"validation-{known.Name}.txt", text.ToString());

        void Line(string line) => text.Append(line).Append('\n');
    }

    private static string Axis(ChartAxis axis) =>
        $"{axis.Label} {(axis.From is double from ? Number(from) : "..")} to {(axis.To is double to ? Number(to) : "..")}{(axis.Logarithmic ? " log" : "")}{(axis.Names.Count > 0 ? " " + string.Join(", ", axis.Names) : "")}";

    private static string Error(double value) => Math.Abs(value) < 1e-6 ? "0" : Number(value);

    /// <summary>Four digits; what is nothing but rounding is nothing.</summary>
    private static string Number(double value) => Math.Abs(value) < 1e-10 ? "0" : value.ToString("G4", CultureInfo.InvariantCulture);
}
