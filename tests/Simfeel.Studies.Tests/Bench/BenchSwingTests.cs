using Simfeel.Studies.Bench;
using Simfeel.Studies.Fit;

namespace Simfeel.Studies.Tests.Bench;

/// <summary>Swing tests from a readings file to an inertia, against textbooks.</summary>
public class BenchSwingTests
{
    /// <summary>
    /// R. S. Khurmi and J. K. Gupta, Theory of Machines, chapter on simple harmonic motion, bifilar suspension (cited from memory): a
    /// connecting rod of 1.5 kg on wires of 1.25 m, tied 120 mm to either side of its centre of gravity, makes 20 swings in 40
    /// seconds; radius of gyration 107 mm, moment of inertia 0.017 kg m2. By hand: k = (2 s / 2 pi) x 0.12 m x sqrt(9.81 / 1.25).
    /// </summary>
    [Fact]
    public void A_connecting_rod_on_two_wires()
    {
        BenchReport report = BenchCases.Report("[mass]\nmass_g = 1500\n[yaw]\nspacing_mm = 240\nlength_mm = 1250\ntimes_s = 40\nswing_deg = 0");
        double inertia = BenchCases.Of(report, BenchKind.Inertia, BenchAxis.Z).Measured!.Value;
        Assert.Equal(0.017, inertia, 3);
        Assert.Equal(0.107, Math.Sqrt(inertia / 1.5), 3);
        double byHand = 1 / Math.PI * 0.12 * Math.Sqrt(9.80665 / 1.25);
        Assert.Equal(byHand, Math.Sqrt(inertia / 1.5), 9);
    }

    /// <summary>I. E. Irodov, Problems in General Physics, 4.45: a rod hung at its ends, T = 2 pi sqrt(l / 3g), I = m l^2 / 12.</summary>
    [Fact]
    public void Irodovs_rod_with_another_count_of_swings()
    {
        double ten = 10 * 2 * Math.PI * Math.Sqrt(1.2 / (3 * 9.80665));
        BenchReport report = BenchCases.Report($"[mass]\nmass_g = 1500\n[timing]\nswings = 10\n[roll]\nspacing_mm = 900\nlength_mm = 1200\ntimes_s = [{ten:R}, {ten:R}]\nswing_deg = 0");
        Assert.Equal(1.5 * 0.9 * 0.9 / 12, BenchCases.Of(report, BenchKind.Inertia, BenchAxis.X).Measured!.Value, 9);
    }

    /// <summary>A stick that swings along is a thin rod about its middle, m l^2 / 12, and weighs on the wires.</summary>
    [Fact]
    public void A_stick_is_taken_off()
    {
        const double craft = 1.447e-3, stick = 0.01 * 0.25 * 0.25 / 12;
        double time = 20 * SwingTest.ExactPeriod(craft + stick, 0.61, 0.2, 1, 12 * Math.PI / 180, 9.80665);
        BenchReport report = BenchCases.Report($"[mass]\nmass_g = 600\n[roll]\nspacing_mm = 200\nlength_mm = 1000\ntimes_s = {time:R}\nswing_deg = 12\nstick_mass_g = 10\nstick_length_mm = 250");
        Assert.Equal(craft, BenchCases.Of(report, BenchKind.Inertia, BenchAxis.X).Measured!.Value, 9);
        FitException error = Assert.Throws<FitException>(() => BenchCases.Report($"[mass]\nmass_g = 600\n[roll]\nspacing_mm = 200\nlength_mm = 1000\ntimes_s = {time:R}\nstick_mass_g = 100\nstick_length_mm = 900"));
        Assert.Equal((4, "roll.stick_mass_g"), (error.Diagnostics[0].Line!.Value, error.Diagnostics[0].Key));
    }

    /// <summary>The band is wider with fewer timings of the same scatter, and its shares name what it comes from.</summary>
    [Fact]
    public void More_timings_make_a_narrower_band()
    {
        double Band(string times) => BenchCases.Of(
            BenchCases.Report($"[mass]\nmass_g = 598\n[roll]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = {times}"), BenchKind.Inertia, BenchAxis.X).Measured!.HalfBand;
        Assert.True(Band("[30.4, 30.6, 30.2]") > 1.3 * Band("[30.4, 30.6, 30.2, 30.4, 30.6, 30.2, 30.4, 30.6, 30.2]"));
        // one timing: no scatter to see, so the stated 0.2 s counts; a watch stated to be better narrows it
        Assert.True(Band("30.4") > 1.1 * Band("30.4\n[timing]\nrun_pm_s = 0.02"));
    }

    /// <summary>
    /// Twice the radius of gyration apart a craft turns as slowly as it sways, T = 2 pi sqrt(L / g) (both periods are textbook): the
    /// plan stays clear of that, and its small-swing period is T_sway x 2k / d.
    /// </summary>
    [Theory]
    [InlineData("sanderling")]
    [InlineData("wagtail")]
    [InlineData("gannet")]
    public void Planned_wires_turn_faster_than_they_sway(string name)
    {
        BenchPlan plan = BenchPlan.Of(BenchCases.Starter(name));
        Assert.Equal(3, plan.Tests.Count);
        Assert.All(plan.Tests, test =>
        {
            double sway = 2 * Math.PI * Math.Sqrt(test.Length / 9.80665);
            double k = Math.Sqrt(test.Axis.Moment(plan.Build.Craft.I_BBcm_B) / plan.Build.Craft.Mass);
            // ten degrees lengthen it by about 1/4 of (10 deg)^2 / 4, so 0.2 %
            Assert.InRange(test.Period / (sway * 2 * k / test.Spacing), 1.0005, 1.004);
            Assert.InRange(test.Period, 0.9, 0.81 * sway);
            Assert.True(test.Spacing < test.Length / 3);
        });
    }
}
