using System.Runtime.CompilerServices;
using Simfeel.Builds;
using Simfeel.Physics.Rotors;
using Simfeel.Studies.Validation;

namespace Simfeel.Studies.Tests.Validation;

/// <summary>The published data themselves, and what follows from them alone.</summary>
public class PublishedBladeTests
{
    /// <summary>k^2 of measured planforms is 0.30 to 0.40 with thickness in proportion to chord; 0.397 for DA4002 (computed from UIUC geometry elsewhere).</summary>
    [Fact]
    public void Gyration_radius_of_measured_blades()
    {
        Assert.Equal(0.397, Da4002.Propeller.Measured(LowReynoldsPolar.Instance).GyrationRadiusSquared, 0.01);
        Assert.All(SmallPropellers.WithBlades, p => Assert.InRange(p.Measured(LowReynoldsPolar.Instance).GyrationRadiusSquared, 0.28, 0.42));
    }

    /// <summary>The efficiencies that the same source prints follow from J, CT and CP (AIAA 2014-2151; read to three digits).</summary>
    [Theory]
    [InlineData(4031, 0.568, 0.551)]
    [InlineData(5039, 0.627, 0.589)]
    [InlineData(6045, 0.617, 0.632)]
    [InlineData(6045, 0.194, 0.259)]
    public void Copied_rows_give_the_printed_efficiency(double rpm, double advance, double efficiency)
    {
        var (j, ct, cp) = Da4002.Propeller.Sweeps.Single(s => s.Rpm == rpm).Points.Single(p => p.Advance == advance);
        Assert.Equal(efficiency, j * ct / cp, 0.002);
    }

    /// <summary>The specimen that users fly in the wind tunnel is the one that the validation runs, to every digit.</summary>
    [Fact]
    public void Propeller_file_holds_the_same_blades_and_section()
    {
        string assets = Path.Combine(Path.GetDirectoryName(Here())!, "..", "..", "..", "assets", "validation");
        PropellerResult file = BuildReader.ReadPropeller(Path.Combine(assets, "da4002.toml"));
        Assert.Empty(file.Diagnostics);
        RotorGeometry read = file.Propeller!.Blades.Geometry(), held = Da4002.Propeller.Measured(SectionTables.Sda1075Polar);
        Assert.Equal(held.Stations, read.Stations, (a, b) => Near(a.Radius, b.Radius) && Near(a.Chord, b.Chord) && Near(a.Twist, b.Twist));
        Assert.Equal((held.Diameter, held.Blades, held.RootCutOut), (read.Diameter, read.Blades, read.RootCutOut));
        Assert.Equal(held.Polar, read.Polar);

        static bool Near(double a, double b) => Math.Abs(a - b) < 1e-12;
        static string Here([CallerFilePath] string path = "") => path;
    }

    [Fact]
    public void Static_rows_and_series_are_in_order()
    {
        Assert.Equal(10, SmallPropellers.WithBlades.Length);
        Assert.Equal(10, SmallPropellers.WithBlades.Select(p => p.Name).Distinct().Count());
        foreach (MeasuredPropeller propeller in SmallPropellers.WithBlades.AddRange(SmallPropellers.FirstVolume))
        {
            Assert.Equal(propeller.Static.OrderBy(p => p.Rpm), propeller.Static);
            Assert.All(propeller.Sweeps, sweep => Assert.Equal(sweep.Points.OrderBy(p => p.Advance), sweep.Points));
            // A slip of the hand in one digit of CT or CP would move the figure of merit out of what such propellers have.
            Assert.All(propeller.Static, p => Assert.InRange(RotorRun.FigureOfMerit(new(p.Thrust, p.Power)), 0.2, 0.7));
        }
    }

    /// <summary>At the angles and Reynolds numbers of the table the section is the table.</summary>
    [Fact]
    public void Sda1075_is_its_table()
    {
        SectionTable table = SectionTables.Sda1075;
        for (int row = 0; row < table.Reynolds.Length; row++)
            for (int i = 0; i < table.AnglesDeg.Length; i++)
            {
                SectionCoefficients c = SectionTables.Sda1075Polar.At(RotorRun.Radians(table.AnglesDeg[i]), table.Reynolds[row], 0);
                Assert.Equal(table.Lift[row][i], c.Lift, 1e-12);
                Assert.Equal(table.Drag[row][i], c.Drag, 1e-12);
            }
    }
}
