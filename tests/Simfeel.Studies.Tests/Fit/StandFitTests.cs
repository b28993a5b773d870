using Simfeel.Studies.Fit;
using Simfeel.Studies.Fit.Reading;
using Xunit.Abstractions;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>Constants of stands that are known are found again.</summary>
public class StandFitTests(ITestOutputHelper output)
{
    [Fact]
    public void Explore()
    {
        string[] starters = ["wagtail", "curlew", "sanderling", "gannet", "redshank", "knot"];
        for (int n = 0; n < 30; n++)
        {
            Random random = new(100 + n);
            double F(double s) => 1 + (s * ((2 * random.NextDouble()) - 1));
            Dictionary<string, double> f = new()
            {
                ["propeller.thrust_factor"] = F(0.2),
                ["propeller.torque_factor"] = F(0.2),
                ["motor.kv_rpm_per_V"] = F(0.06),
                ["motor.winding_resistance_mohm"] = F(0.3),
                ["motor.loss_factor"] = F(0.3),
                ["motor.inductance_uH"] = F(0.3),
            };
            var watch = System.Diagnostics.Stopwatch.StartNew();
            SyntheticStand stand = new SyntheticStand(starters[n % 6], n, f).Sweep(32, 0.1).NoPropeller(8);
            long t0 = watch.ElapsedMilliseconds;
            StandTable table = StandTableReader.Parse(stand.Csv(), "x.csv", new StandModel(stand.Start));
            try
            {
                StandFit fit = StandFitter.Fit(stand.Start, table);
                output.WriteLine($"{n} {starters[n % 6]} {t0} {watch.ElapsedMilliseconds} {fit.Throttle} rows {fit.Rows.Count} {string.Join("; ", fit.Refused)}");
                foreach (FittedConstant c in fit.Constants)
                {
                    double truth = stand.Truth.Values.Single(v => v.Key == c.Key).Typical;
                    output.WriteLine($"   {c.Key,-32} off {100 * ((c.Value / truth) - 1),7:F2} %  sigma {100 * c.RelativeSigma:F2} % {c.Determined} {c.WhyNot} truth {truth / stand.Value(c.Key):F3}");
                }
                output.WriteLine("   " + string.Join(", ", fit.Residuals.Select(r => $"{r.Quantity} {r.RmsPercent:F2}")));
            }
            catch (FitException e)
            {
                output.WriteLine($"{n} {starters[n % 6]} {e.Message}");
            }
        }
    }
}
