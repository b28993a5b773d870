using Simfeel.Studies.Plots;
using Simfeel.Studies.Validation;

namespace Simfeel.Studies.Tests.Validation;

/// <summary>
/// The rotor model beside published numbers. Which source stands behind a case is written beside its data; the tolerances
/// here are those agreed before the model ran, so that a case cannot widen its own bound unseen.
/// </summary>
public class ValidationCatalogueTests
{
    private static readonly Dictionary<string, Lazy<CaseResult>> Results =
        ValidationCatalogue.All.ToDictionary(known => known.Name, known => new Lazy<CaseResult>(known.Run));

    public static TheoryData<string> Names => [.. ValidationCatalogue.All.Select(known => known.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_check_keeps_its_bound(string name) =>
        Assert.All(Results[name].Value.Checks, check => Assert.True(
            check.Inside,
            $"{check.What}: mean {check.MeanError:G4}, rms {check.RootMeanSquareError:G4}, worst {check.WorstError:G4}, bound {check.Bound:G4}"));

    [Theory]
    // Closed forms, values worked out apart from this project (Leishman 2006, Johnson 1980).
    [InlineData("momentum-theory", "v/v_h in climb", 4, 1e-9)]
    [InlineData("momentum-theory", "v/v_h in climb, single branch", 4, 1e-9)]
    [InlineData("momentum-theory", "v/v_h as a windmill", 4, 1e-9)]
    [InlineData("momentum-theory", "v/v_h as a windmill, single branch from 2.5 v_h on", 3, 1e-9)]
    [InlineData("momentum-theory", "P/P_h as a windmill", 4, 1e-6)]
    [InlineData("momentum-theory", "v/v_h edge-on", 5, 1e-9)]
    [InlineData("momentum-theory", "thrust of that v/v_h, single branch", 5, 1e-8)]
    // Castles and Gray, NACA TN-2474: descents of Table I, hover of Table V.
    [InlineData("vortex-ring", "v/v_h of runs 4 and 5, 0 to 2 v_h (fitted to them)", 20, 0.35)]
    [InlineData("vortex-ring", "v/v_h of run 3 (not fitted)", 7, 0.35)]
    [InlineData("vortex-ring", "quartic, values worked out apart", 8, 1e-6)]
    [InlineData("vortex-ring", "branch beside the quartic", 8, 0.25)]
    [InlineData("vortex-ring", "branch beside momentum theory from 2.5 v_h on", 3, 0.20)]
    [InlineData("vortex-ring", "descent of ideal autorotation over v_h", 2, 0.20)]
    [InlineData("vortex-ring", "CQ negative from 2.1 v_h on", 4, 0)]
    [InlineData("castles-gray-hover", "CT, run 15", 4, 0.15)]
    [InlineData("castles-gray-hover", "CQ - CQ0, run 15", 4, 0.10)]
    [InlineData("castles-gray-hover", "CT, run 16", 4, 0.15)]
    // Johnson 1980, integrals worked out apart from this project.
    [InlineData("closed-form-blade", "CT with 2000 annuli", 3, 1e-6)]
    [InlineData("closed-form-blade", "induced CP with 2000 annuli", 3, 1e-6)]
    [InlineData("closed-form-blade", "order of convergence of CT up to 200 annuli", 9, 0.20)]
    // Knight and Hefner, NACA TN-626.
    [InlineData("knight-hefner", "CT at 6 deg", 2, 0.15)]
    [InlineData("knight-hefner", "CQ at 6 deg", 2, 0.15)]
    [InlineData("knight-hefner", "CT at 8 and 10 deg", 4, 0.08)]
    [InlineData("knight-hefner", "CQ at 8 and 10 deg", 4, 0.08)]
    [InlineData("knight-hefner", "CT at 12 deg", 2, 0.10)]
    [InlineData("knight-hefner", "CQ at 12 deg", 2, 0.14)]
    [InlineData("knight-hefner", "CQ at 0 deg", 2, 0.30)]
    [InlineData("knight-hefner", "CT rises from 0 to 2 to 4 deg", 4, 0)]
    [InlineData("knight-hefner", "CQ rises from 0 to 2 to 4 deg", 4, 0)]
    // Caradonna and Tung, NASA TM-81232.
    [InlineData("caradonna-tung", "CT at 12 over CT at 8 deg", 3, 0.12)]
    [InlineData("caradonna-tung", "CT at 8 over CT at 5 deg", 2, 0.12)]
    // UIUC Propeller Data Site, volume 2 (AIAA 2014-2151).
    [InlineData("da4002", "static CT", 7, 0.20)]
    [InlineData("da4002", "static CP", 7, 0.35)]
    [InlineData("da4002", "axial CT, J up to 0.6", 21, 0.15)]
    [InlineData("da4002", "axial CP, J up to 0.6", 21, 0.25)]
    [InlineData("da4002", "J without thrust", 2, 0.07)]
    [InlineData("da4002", "J of best efficiency", 3, 0.08)]
    [InlineData("da4022", "static CT", 8, 0.20)]
    [InlineData("da4022", "static CP", 8, 0.35)]
    [InlineData("da4022", "axial CT, J up to 0.6, mean", 27, 0.20)]
    [InlineData("da4022", "axial CP, J up to 0.6", 27, 0.25)]
    [InlineData("da4022", "J without thrust", 3, 0.07)]
    [InlineData("da4022", "J of best efficiency", 3, 0.08)]
    [InlineData("small-propellers", "CT, measured blades, mean of ten", 65, 0.10)]
    [InlineData("small-propellers", "CP, measured blades, mean of ten", 65, 0.10)]
    [InlineData("small-propellers", "axial CT above 0.07, measured blades, two of ten", 12, 0.25)]
    [InlineData("small-propellers", "axial CP there", 12, 0.30)]
    [InlineData("small-propellers", "nr640, CT of 10 feet above that of 5 inch", 1, 0)]
    [InlineData("small-propellers", "nr640, CT/CP of 10 feet above that of 5 inch", 1, 0)]
    // XFOIL 6.99.
    [InlineData("section-lift", "cl, SDA1075 (fitted to it), each", 66, 0.15)]
    [InlineData("section-lift", "cl, SDA1075 (fitted to it)", 66, 0.065)]
    [InlineData("section-drag", "cd, SDA1075 up to 8 deg (fitted to it)", 42, 0.20)]
    // Cheeseman and Bennett, ARC R&M 3021.
    [InlineData("ground-effect", "thrust ratio without speed", 6, 1e-6)]
    [InlineData("ground-effect", "falls with height", 199, 0)]
    [InlineData("ground-effect", "is 1 at 100 radii", 2, 1e-5)]
    // Momentum theory over the runs of the other cases.
    [InlineData("bounds", "figure of merit of the model", 169, 0)]
    [InlineData("bounds", "efficiency of the model", 72, 0)]
    public void Tolerances_agreed_beforehand_hold(string name, string what, int points, double tolerance)
    {
        ValidationCheck check = Assert.Single(Results[name].Value.Checks, check => check.What == what);
        Assert.Equal(BoundBasis.SetBefore, check.Basis);
        Assert.Equal(tolerance, check.Bound);
        Assert.Equal(points, check.Points.Count);
        Assert.True(check.Inside, $"mean {check.MeanError:G4}, worst {check.WorstError:G4}");
    }

    /// <summary>A bound taken from a run says little once the model is far better than it; then it is to be drawn in.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Bounds_taken_from_a_run_lie_close_to_it(string name) =>
        Assert.All(Results[name].Value.Checks.Where(check => check.Basis == BoundBasis.FromRun), check =>
        {
            double found = check.Rule == CheckRule.RootMeanSquareWithin ? check.RootMeanSquareError : Math.Abs(check.WorstError);
            Assert.InRange(found, check.Bound / 2, check.Bound);
        });

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_case_shows_points_beside_the_model_on_named_axes(string name)
    {
        ValidationCase known = ValidationCatalogue.All.Single(c => c.Name == name);
        ChartSheet sheet = Results[name].Value.Sheet;
        Assert.All([known.Title, known.Source, known.ShortSource, known.Note], text => Assert.False(string.IsNullOrWhiteSpace(text)));
        Assert.Matches("^[a-z0-9-]+$", name);
        Assert.NotEmpty(Results[name].Value.Checks);
        Assert.Contains(sheet.Charts, chart => chart.Legend != LegendPlace.None);
        Assert.All(sheet.Charts, chart =>
        {
            Assert.NotEqual("", chart.X.Label);
            Assert.True(chart.Y.Label != "" || chart.Y.Names.Count > 0);
            Assert.Contains(chart.Series, series => series.Mark == ChartMark.Points);
            Assert.True(chart.Series.Count >= 2);
            Assert.All(chart.Series, series =>
            {
                Assert.Equal(series.X.Count, series.Y.Count);
                Assert.All(series.X.Concat(series.Y), value => Assert.True(double.IsFinite(value), $"{chart.Title}, {series.Name}"));
            });
        });
    }

    [Fact]
    public void Runs_repeat_to_the_bit()
    {
        foreach (ValidationCase known in ValidationCatalogue.All.Where(c => c is VortexRingCase or Da4022Case or CaradonnaTungCase))
        {
            double[] again = [.. known.Run().Checks.Select(check => check.WorstError)];
            Assert.Equal(Results[known.Name].Value.Checks.Select(check => check.WorstError), again);
        }
    }
}
